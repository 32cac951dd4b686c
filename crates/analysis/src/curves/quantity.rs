//! What a curve can show of each wheel.

use steerloft_solver::figures::camber::camber_of;
use steerloft_solver::figures::contact::contact_centre;
use steerloft_solver::figures::corner_figures;
use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::figures::steering_axis::{caster_of, inclination_of};
use steerloft_solver::figures::toe::{leftward_axis, steer_of, toe_of};
use steerloft_solver::frame::{Road, RoadAxes, Side};
use steerloft_solver::pose::CornerPose;

use super::{Axis, Series, Trace};
use crate::Range;

/// The road under a pose, with its axes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ground {
    road: Road,
    axes: RoadAxes,
}

impl Ground {
    pub(super) fn new(road: Road) -> Self {
        Self {
            road,
            axes: road.axes(),
        }
    }
}

/// A value of each wheel, in the unit of its axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Quantity {
    Toe,
    Steer,
    Camber,
    Caster,
    Inclination,
    /// How far outboard the tyre's contact lies.
    Contact,
    /// How far outboard the wheel's centre lies.
    Centre,
    /// How far forward the wheel's centre lies.
    Station,
    Scrub,
    Trail,
    Transmission,
}

impl Quantity {
    pub(super) fn of(self, corner: &CornerPose, ground: &Ground) -> f64 {
        let axes = &ground.axes;
        let steer = || steer_of(&leftward_axis(corner), axes);
        match self {
            Self::Toe => toe_of(corner.side, steer()).to_degrees(),
            Self::Steer => steer().to_degrees(),
            Self::Camber => camber_of(&corner.spin_axis, &axes.up).to_degrees(),
            Self::Caster => caster_of(&corner.kingpin_axis(), axes).to_degrees(),
            Self::Inclination => {
                inclination_of(corner.side, &corner.kingpin_axis(), axes).to_degrees()
            }
            Self::Contact => {
                let contact = contact_centre(corner, &axes.up);
                corner.side.sign() * contact.coords.dot(&axes.leftward)
            }
            Self::Centre => corner.side.sign() * corner.wheel_centre.coords.dot(&axes.leftward),
            Self::Station => corner.wheel_centre.coords.dot(&axes.forward),
            Self::Scrub => corner_figures(corner, &ground.road).scrub_radius,
            Self::Trail => corner_figures(corner, &ground.road).trail,
            Self::Transmission => outer_transmission(corner).angle.to_degrees(),
        }
    }

    /// The axis that shows it, with the range to be shown at least.
    pub(super) const fn axis(self, least: Range) -> Axis {
        let (quantity, unit, sign, decimals) = match self {
            Self::Toe => ("toe", "deg", "toe-in +", 3),
            Self::Steer => ("steer angle", "deg", "left +", 2),
            Self::Camber => ("camber", "deg", "top out +", 2),
            Self::Caster => ("caster", "deg", "top back +", 2),
            Self::Inclination => ("kingpin inclination", "deg", "top in +", 2),
            Self::Contact => ("contact from rest", "mm", "outboard +", 3),
            Self::Centre => ("wheel centre from rest", "mm", "outboard +", 3),
            Self::Station => ("wheel centre from rest", "mm", "forward +", 3),
            Self::Scrub => ("scrub radius", "mm", "contact outboard +", 2),
            Self::Trail => ("trail", "mm", "contact behind +", 2),
            Self::Transmission => ("rod to steering arm", "deg", "90 best", 1),
        };
        Axis {
            quantity,
            unit,
            sign,
            decimals,
            least,
        }
    }
}

/// A series for each wheel.
pub(super) fn of_sides(points: impl Fn(Side) -> Vec<[f64; 2]>) -> Vec<Series> {
    let of_side = |side: Side| Series {
        name: side.to_string(),
        trace: match side {
            Side::Left => Trace::Left,
            Side::Right => Trace::Right,
        },
        is_reference: false,
        points: points(side),
    };
    Side::BOTH.map(of_side).into()
}

/// The series of the axle as a whole.
pub(super) fn of_axle(name: &str, points: Vec<[f64; 2]>) -> Vec<Series> {
    vec![Series {
        name: name.to_owned(),
        trace: Trace::Axle,
        is_reference: false,
        points,
    }]
}
