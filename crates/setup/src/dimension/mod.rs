//! Dimensions of a car, each by itself: what may be a little off on the car as built, and what readings can find.
//!
//! A dimension is a number of the car at base, of one side or of both as mirror images. [`Dimension::add`] changes it;
//! adjustments apply on top, as they do to every car.

mod change;
mod list;

use std::fmt;

use serde::{Deserialize, Serialize};
use steerloft_solver::frame::Side;

use crate::adjustment::{PointName, Unit};
use crate::car::BuildErrors;

pub(crate) use change::keep_on_cross_link;
pub use change::{DimensionError, put_back, with_rods_fixed, with_sides_apart};
pub use list::dimensions;

/// A dimension of a car.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Dimension {
    /// A coordinate of a point, mm.
    Point {
        /// The point.
        point: PointName,
        /// Whose; both for what both sides share.
        #[serde(default)]
        side: Whose,
        /// Which coordinate.
        axis: Axis,
    },
    /// A direction turned about a chassis axis, degrees, right-handed on the left side.
    Direction {
        /// The direction.
        point: PointName,
        /// Whose; both for what both sides share.
        #[serde(default)]
        side: Whose,
        /// The axis it is turned about.
        axis: Axis,
    },
    /// Camber against the chassis, degrees.
    Camber {
        /// Whose.
        #[serde(default)]
        side: Whose,
    },
    /// Loaded tyre radius, mm.
    TyreRadius {
        /// Whose.
        #[serde(default)]
        side: Whose,
    },
    /// Length of a tie rod, mm; only where the rods' lengths are fixed.
    Rod {
        /// Whose.
        #[serde(default)]
        side: Whose,
    },
    /// Where the servo's arm, or the rack, stands at steering input 0: degrees about its axis, or mm along the rack.
    Centre,
    /// Length of the drag link, mm; only where it is given.
    DragLink,
    /// Length of the cross link, mm; only where it is given.
    CrossLink,
    /// Wheelbase, mm.
    Wheelbase,
    /// Ride height, mm.
    RideHeight,
    /// Pitch of the chassis, degrees.
    Pitch,
    /// Roll of the chassis, degrees.
    Roll,
}

/// Whose a dimension is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Whose {
    /// The left side's.
    Left,
    /// The right side's.
    Right,
    /// Both sides', the right one as the mirror image; or what both sides share.
    #[default]
    Both,
}

/// An axis of the chassis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Axis {
    /// Forward.
    X,
    /// To the left.
    Y,
    /// Up.
    Z,
}

impl Axis {
    /// All three.
    pub const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];

    /// What a coordinate along it tells.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::X => "fore and aft",
            Self::Y => "sideways",
            Self::Z => "height",
        }
    }
}

impl Whose {
    /// The sides meant.
    pub fn sides(self) -> impl Iterator<Item = Side> {
        Side::BOTH.into_iter().filter(move |side| match self {
            Self::Left => *side == Side::Left,
            Self::Right => *side == Side::Right,
            Self::Both => true,
        })
    }

    /// Before a part's name: "left ", or nothing for both.
    const fn prefix(self) -> &'static str {
        match self {
            Self::Left => "left ",
            Self::Right => "right ",
            Self::Both => "",
        }
    }
}

impl From<Side> for Whose {
    fn from(side: Side) -> Self {
        match side {
            Side::Left => Self::Left,
            Side::Right => Self::Right,
        }
    }
}

impl Dimension {
    /// Whose it is.
    #[must_use]
    pub const fn side(&self) -> Whose {
        match self {
            Self::Point { side, .. }
            | Self::Direction { side, .. }
            | Self::Camber { side }
            | Self::TyreRadius { side }
            | Self::Rod { side } => *side,
            Self::Centre
            | Self::DragLink
            | Self::CrossLink
            | Self::Wheelbase
            | Self::RideHeight
            | Self::Pitch
            | Self::Roll => Whose::Both,
        }
    }

    /// Its unit, of a drive that is turned in a unit.
    #[must_use]
    pub const fn unit(&self, input: Unit) -> Unit {
        match self {
            Self::Direction { .. } | Self::Camber { .. } | Self::Pitch | Self::Roll => {
                Unit::Degrees
            }
            Self::Centre => input,
            Self::Point { .. }
            | Self::TyreRadius { .. }
            | Self::Rod { .. }
            | Self::DragLink
            | Self::CrossLink
            | Self::Wheelbase
            | Self::RideHeight => Unit::Millimetres,
        }
    }

    /// The most that it is off either way on a car built with such errors, in its unit.
    #[must_use]
    pub fn error(&self, errors: &BuildErrors, input: Unit) -> f64 {
        match (self, self.unit(input)) {
            (Self::Point { point, .. }, _) => errors.of_point(*point),
            (_, Unit::Degrees) => errors.angles,
            (_, Unit::Millimetres) => errors.lengths,
        }
    }
}

impl fmt::Display for Dimension {
    /// In plain words: "left outer tie-rod ball, height".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whose = self.side().prefix();
        match self {
            Self::Point { point, axis, .. } => {
                write!(f, "{whose}{}, {}", point.label(), axis.label())
            }
            Self::Direction { point, axis, .. } => {
                let axis = match axis {
                    Axis::X => "along the car",
                    Axis::Y => "across the car",
                    Axis::Z => "upright",
                };
                write!(f, "{whose}{}, turned about an axis {axis}", point.label())
            }
            Self::Camber { .. } => write!(f, "{whose}camber against the chassis"),
            Self::TyreRadius { .. } => write!(f, "{whose}tyre radius"),
            Self::Rod { .. } => write!(f, "{whose}tie-rod length"),
            Self::Centre => f.write_str("centre of the steering drive"),
            Self::DragLink => f.write_str("drag-link length"),
            Self::CrossLink => f.write_str("cross-link length"),
            Self::Wheelbase => f.write_str("wheelbase"),
            Self::RideHeight => f.write_str("ride height"),
            Self::Pitch => f.write_str("pitch of the chassis"),
            Self::Roll => f.write_str("roll of the chassis"),
        }
    }
}
