//! Where a pivot stands in the pose on screen, and how it got there from where it is drawn.

use steerloft_setup::adjustment::PointName;
use steerloft_setup::handles::point_of;
use steerloft_solver::Isometry3;
use steerloft_solver::drive::Drive;
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
    let drawn = point_of(shown.layout(), point, side)?;
    let corner = shown.pose.corners.get(side);
    let motion = match point {
        PointName::WheelCentre | PointName::SteeringArm => corner.knuckle,
        PointName::RodInner => *shown.pose.drive.carrier.get(side),
        // A ball carried by an arm, or a point that slides: its place moves, and a drag moves it as drawn.
        PointName::KingpinLower => shift(corner.kingpin_lower - drawn),
        PointName::KingpinUpper => shift(corner.kingpin_upper - drawn),
        PointName::CrossBall | PointName::DragServo | PointName::DragCrank => {
            on_crank(shown, point, side, &drawn)?
        }
        _ => Isometry3::identity(),
    };
    Some(Posed {
        place: motion * drawn,
        motion,
    })
}

/// Motion of the servo arm or crank that carries a ball of twin cranks, from as drawn to the pose.
fn on_crank(shown: &Shown, point: PointName, side: Side, drawn: &Point) -> Option<Isometry3<f64>> {
    let drive = &shown.layout().axle.drive;
    let Drive::TwinCrank(cranks) = drive else {
        return None;
    };
    let mut links = drive.links(&shown.pose.drive);
    let (drag, cross) = (links.next()?, links.next()?);
    let (lever, posed) = match (point, side) {
        (PointName::DragServo, _) => (&cranks.servo, drag.from),
        (PointName::DragCrank, _) => (cranks.cranks.get(cranks.driven), drag.to),
        (_, Side::Left) => (&cranks.cranks.left, cross.from),
        (_, Side::Right) => (&cranks.cranks.right, cross.to),
    };
    let axis = lever.axis_direction / lever.axis_direction.norm();
    Some(turn_to(drawn, &posed, &lever.axis_point, &axis))
}

/// The turn about an axis that takes one point to another one as far from the axis.
fn turn_to(from: &Point, to: &Point, axis_point: &Point, axis: &Vector) -> Isometry3<f64> {
    let square = |point: &Point| {
        let along = point - axis_point;
        along - axis * axis.dot(&along)
    };
    let (from, to) = (square(from), square(to));
    let angle = from.cross(&to).dot(axis).atan2(from.dot(&to));
    let turn = Isometry3::new(Vector::zeros(), axis * angle);
    shift(axis_point - turn * axis_point) * turn
}

fn shift(by: Vector) -> Isometry3<f64> {
    Isometry3::translation(by.x, by.y, by.z)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::state::{Cursor, Derived, Document};
    use steerloft_setup::supplied::SUPPLIED;

    #[test]
    fn a_turn_about_a_leaning_axis_takes_a_point_to_the_other() {
        let axis = Vector::new(0.2, -0.3, 1.0).normalize();
        let centre = Point::new(3.0, -2.0, 5.0);
        let from = Point::new(13.0, 4.0, 7.0);
        let turn = Isometry3::new(Vector::zeros(), axis * 0.7);
        let to = centre + turn * (from - centre);
        let found = turn_to(&from, &to, &centre, &axis);
        assert!((found * from - to).norm() < 1e-12);
        assert!((found * centre - centre).norm() < 1e-12);
    }

    #[test]
    fn every_pivot_of_a_steered_car_stands_on_a_joint_of_its_drawing() {
        for car in SUPPLIED {
            let setup = car.setup();
            let cursor = Cursor {
                input: setup.car.ranges.input.1 * 0.6,
                travel: setup.car.ranges.travel.1 * 0.5,
            };
            let derived = Derived::new(&Document::unnamed(setup), cursor);
            let shown = derived.shown().unwrap();
            let pose = &shown.pose;
            for handle in &shown.handles {
                let place = posed(shown, handle.point, handle.side).unwrap().place;
                let corner = pose.corners.get(handle.side);
                let mut joints = vec![
                    corner.wheel_centre,
                    corner.steering_arm,
                    corner.rod_inner,
                    corner.kingpin_lower,
                    corner.kingpin_upper,
                ];
                let suspension = &shown.layout().axle.corners.get(handle.side).suspension;
                for arm in suspension.arms(corner) {
                    joints.extend(arm.hinge);
                    joints.push(arm.ball);
                }
                for link in shown.layout().axle.drive.links(&pose.drive) {
                    joints.extend([link.from, link.to]);
                }
                for lever in shown.layout().axle.drive.levers(&pose.drive) {
                    joints.push(lever.axis_point);
                }
                let off = joints.iter().map(|joint| (joint - place).norm());
                let off = off.fold(f64::INFINITY, f64::min);
                assert!(off < 1e-6, "{}: {handle:?} is {off} mm off", car.title);
            }
        }
    }
}
