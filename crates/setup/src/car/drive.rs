//! Steering drives as a car's file gives them.

use serde::{Deserialize, Serialize};
use steerloft_solver as solver;

use super::Position;
use crate::adjustment::Unit;

/// A steering drive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[allow(
    clippy::large_enum_variant,
    reason = "a car has one, and files and callers read the points directly"
)]
pub enum Drive {
    /// Both inner balls on one arm that turns about an axis.
    SwingArm {
        /// A point of the arm's axis.
        axis_point: Position,
        /// Direction of the arm's axis; the input turns right-handed about it.
        axis_direction: Position,
        /// Left inner ball at input 0.
        rod_inner_left: Position,
        /// Right inner ball at input 0.
        rod_inner_right: Position,
    },
    /// A left and a right crank tied by a cross link; a drag link from the servo arm turns one of them. The input
    /// turns the servo arm. All points are those at input 0.
    TwinCrank {
        /// The left crank's axis.
        crank_left: Crank,
        /// The right crank's axis.
        crank_right: Crank,
        /// The cross link's ball on the left crank.
        cross_left: Position,
        /// The cross link's ball on the right crank.
        cross_right: Position,
        /// Left inner ball.
        rod_inner_left: Position,
        /// Right inner ball.
        rod_inner_right: Position,
        /// What carries the inner balls.
        #[serde(default)]
        inner_on: InnerBallsOn,
        /// The servo arm's axis; the input turns right-handed about its direction.
        servo_arm: Crank,
        /// The drag link's ball on the servo arm.
        drag_servo: Position,
        /// The drag link's ball on the driven crank.
        drag_crank: Position,
        /// Which crank the drag link turns.
        driven: DrivenCrank,
        /// Length of the drag link, mm, where it is set otherwise than drawn.
        #[serde(default)]
        drag_length: Option<f64>,
        /// Length of the cross link, mm, where it is set otherwise than drawn.
        #[serde(default)]
        cross_length: Option<f64>,
    },
    /// Both inner balls move along one direction, as on a rack. The input is their displacement, mm.
    Slider {
        /// Direction of a positive input.
        direction: Position,
        /// Left inner ball at input 0.
        rod_inner_left: Position,
        /// Right inner ball at input 0.
        rod_inner_right: Position,
    },
}

/// The axis of a crank or servo arm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Crank {
    /// A point of the axis.
    pub axis_point: Position,
    /// Direction of the axis.
    pub axis_direction: Position,
}

/// What carries the inner tie-rod balls of twin cranks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum InnerBallsOn {
    /// Each crank carries its side's ball.
    #[default]
    Cranks,
    /// The cross link carries both, on the line between its own two balls.
    CrossLink,
}

/// Which of two cranks the drag link turns.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum DrivenCrank {
    /// The left one.
    Left,
    /// The right one.
    Right,
}

impl Drive {
    /// Unit of the steering input: degrees of an arm, or mm of a rack.
    #[must_use]
    pub const fn input_unit(&self) -> Unit {
        match self {
            Self::SwingArm { .. } | Self::TwinCrank { .. } => Unit::Degrees,
            Self::Slider { .. } => Unit::Millimetres,
        }
    }

    /// A point of the axis that the servo turns, at base, which its case goes with; none for a rack.
    #[must_use]
    pub const fn servo_axis(&self) -> Option<Position> {
        match self {
            Self::SwingArm { axis_point, .. } => Some(*axis_point),
            Self::TwinCrank { servo_arm, .. } => Some(servo_arm.axis_point),
            Self::Slider { .. } => None,
        }
    }

    /// Direction of the axis about which the inner tie-rod balls turn, of the left one of two cranks; none for a rack.
    #[must_use]
    pub const fn inner_axis_direction(&self) -> Option<Position> {
        match self {
            Self::SwingArm { axis_direction, .. } => Some(*axis_direction),
            Self::TwinCrank { crank_left, .. } => Some(crank_left.axis_direction),
            Self::Slider { .. } => None,
        }
    }

    /// The inner tie-rod balls at base, left and right.
    #[must_use]
    pub const fn rod_inner(&self) -> (Position, Position) {
        match self {
            Self::SwingArm {
                rod_inner_left,
                rod_inner_right,
                ..
            }
            | Self::TwinCrank {
                rod_inner_left,
                rod_inner_right,
                ..
            }
            | Self::Slider {
                rod_inner_left,
                rod_inner_right,
                ..
            } => (*rod_inner_left, *rod_inner_right),
        }
    }
}

impl Drive {
    /// The inner tie-rod balls at base, left and right, to be changed.
    pub(crate) const fn rod_inner_mut(&mut self) -> (&mut Position, &mut Position) {
        match self {
            Self::SwingArm {
                rod_inner_left,
                rod_inner_right,
                ..
            }
            | Self::TwinCrank {
                rod_inner_left,
                rod_inner_right,
                ..
            }
            | Self::Slider {
                rod_inner_left,
                rod_inner_right,
                ..
            } => (rod_inner_left, rod_inner_right),
        }
    }
}

impl Crank {
    /// As the solver takes it.
    pub(crate) fn to_solver(self) -> solver::drive::Crank {
        solver::drive::Crank {
            axis_point: self.axis_point.point(),
            axis_direction: self.axis_direction.vector(),
        }
    }
}

impl From<InnerBallsOn> for solver::drive::InnerBallsOn {
    fn from(on: InnerBallsOn) -> Self {
        match on {
            InnerBallsOn::Cranks => Self::Cranks,
            InnerBallsOn::CrossLink => Self::CrossLink,
        }
    }
}

impl From<DrivenCrank> for solver::frame::Side {
    fn from(driven: DrivenCrank) -> Self {
        match driven {
            DrivenCrank::Left => Self::Left,
            DrivenCrank::Right => Self::Right,
        }
    }
}
