//! Where a pivot stands in the pose on screen, and how it got there from where it is drawn.

use steerloft_setup::adjustment::PointName;
use steerloft_setup::handles::point_of;
use steerloft_solver::Isometry3;
use steerloft_solver::frame::{Point, Side, Vector};

use crate::state::Shown;

/// A pivot in the pose on screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Posed {
    /// Where it is, chassis axes, mm.
    pub(super) place: Point,
    /// Motion of the body that carries it, from as drawn to the pose.
    pub(super) motion: Isometry3<f64>,
}

/// The pivot in the pose on screen; none for a point the car does not have.
pub(super) fn posed(shown: &Shown, point: PointName, side: Side) -> Option<Posed> {
    let drawn = point_of(&shown.layout, point, side)?;
    let corner = shown.pose.corners.get(side);
    let motion = match point {
        PointName::WheelCentre | PointName::SteeringArm => corner.knuckle,
        PointName::RodInner => *shown.pose.drive.carrier.get(side),
        // A ball carried by an arm, or a point that slides: its place moves, and a drag moves it as drawn.
        PointName::KingpinLower => shift(corner.kingpin_lower - drawn),
        PointName::KingpinUpper => shift(corner.kingpin_upper - drawn),
        _ => Isometry3::identity(),
    };
    Some(Posed {
        place: motion * drawn,
        motion,
    })
}

fn shift(by: Vector) -> Isometry3<f64> {
    Isometry3::translation(by.x, by.y, by.z)
}
