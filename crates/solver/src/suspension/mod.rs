//! Suspension kinds: how a knuckle is carried, one kind a file.
//!
//! Every kind answers the same question: at a value of its one suspension coordinate, where does the steering
//! axis lie in the chassis and in the knuckle, and how does it move? The closure asks nothing else, so a further
//! kind is a further file here.

mod arm;
pub(crate) mod axis_frame;
mod double_wishbone;
mod fixed_kingpin;
mod sliding_kingpin;
mod strut;
mod swinging_upper_arm;

pub use arm::Arm;

use crate::axle::Knuckle;
use crate::error::Fault;
use crate::frame::{Point, Vector, mirrored_vector};
use crate::pose::{ArmPose, CornerPose};
use crate::twist::Twist;
use axis_frame::AxisFrame;
use double_wishbone::DoubleWishbone;
use fixed_kingpin::FixedKingpin;
use sliding_kingpin::SlidingKingpin;
use strut::Strut;
use swinging_upper_arm::SwingingUpperArm;

/// What carries the knuckle. Every kind has one travel freedom (none for [`Suspension::FixedKingpin`]) and
/// one steering freedom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Suspension {
    /// The knuckle turns about an axis fixed in the chassis; no travel.
    FixedKingpin,
    /// The knuckle turns about an axis fixed in the chassis and slides along it.
    SlidingKingpin,
    /// The kingpin slides through a ball fixed in the chassis at the knuckle's `kingpin_lower`; the ball at
    /// its upper end is carried by a swinging arm.
    SwingingUpperArm(Arm),
    /// A lower and an upper arm carry the knuckle's two kingpin balls.
    DoubleWishbone {
        /// The lower arm.
        lower: Arm,
        /// The upper arm.
        upper: Arm,
    },
    /// A lower arm carries the knuckle's `kingpin_lower`; the knuckle slides along a line through the top mount
    /// fixed in the chassis at its `kingpin_upper`.
    Strut {
        /// The lower arm.
        lower: Arm,
        /// Direction of the slide line in the knuckle as drawn; any length.
        slide_direction: Vector,
    },
}

impl Suspension {
    /// Whether the wheel can move up and down against the chassis.
    #[must_use]
    pub const fn has_travel(&self) -> bool {
        !matches!(self, Self::FixedKingpin)
    }

    /// The arms of this kind at a pose of their corner, for drawing; the lower one first.
    pub fn arms(&self, pose: &CornerPose) -> impl Iterator<Item = ArmPose> + use<> {
        let lower = |arm: &Arm| Some(arm.with_ball_at(pose.kingpin_lower));
        let upper = |arm: &Arm| Some(arm.with_ball_at(pose.kingpin_upper));
        let arms = match self {
            Self::FixedKingpin | Self::SlidingKingpin => [None, None],
            Self::SwingingUpperArm(arm) => [None, upper(arm)],
            Self::DoubleWishbone {
                lower: low,
                upper: high,
            } => [lower(low), upper(high)],
            Self::Strut { lower: low, .. } => [lower(low), None],
        };
        arms.into_iter().flatten()
    }

    pub(crate) fn mirrored(&self) -> Self {
        match self {
            Self::FixedKingpin => Self::FixedKingpin,
            Self::SlidingKingpin => Self::SlidingKingpin,
            Self::SwingingUpperArm(arm) => Self::SwingingUpperArm(arm.mirrored()),
            Self::DoubleWishbone { lower, upper } => Self::DoubleWishbone {
                lower: lower.mirrored(),
                upper: upper.mirrored(),
            },
            Self::Strut {
                lower,
                slide_direction,
            } => Self::Strut {
                lower: lower.mirrored(),
                slide_direction: mirrored_vector(slide_direction),
            },
        }
    }

    /// Makes the kind ready to be moved.
    ///
    /// `drawn` is the steering axis as drawn in the knuckle.
    pub(crate) fn kinematics(
        &self,
        knuckle: &Knuckle,
        drawn: AxisFrame,
    ) -> Result<Kinematics, Fault> {
        Ok(match self {
            Self::FixedKingpin => Kinematics::FixedKingpin(FixedKingpin::new(drawn)),
            Self::SlidingKingpin => Kinematics::SlidingKingpin(SlidingKingpin::new(drawn)),
            Self::SwingingUpperArm(arm) => {
                Kinematics::SwingingUpperArm(SwingingUpperArm::new(knuckle, arm)?)
            }
            Self::DoubleWishbone { lower, upper } => {
                Kinematics::DoubleWishbone(DoubleWishbone::new(knuckle, lower, upper)?)
            }
            Self::Strut {
                lower,
                slide_direction,
            } => Kinematics::Strut(Strut::new(knuckle, lower, slide_direction)?),
        })
    }
}

/// The steering axis as drawn in the knuckle, with its origin at the upper kingpin point.
pub(crate) fn drawn_axis(knuckle: &Knuckle) -> Result<AxisFrame, Fault> {
    let axis = (knuckle.kingpin_upper - knuckle.kingpin_lower)
        .try_normalize(f64::MIN_POSITIVE)
        .ok_or(Fault::KingpinPointsCoincide)?;
    if !is_upright(&axis) {
        return Err(Fault::KingpinTooLevel);
    }
    Ok(AxisFrame::on_axis(
        knuckle.kingpin_upper,
        axis,
        &AxisFrame::hint(),
    ))
}

/// Least z of a unit steering axis: it must point up, and meet the road plane at any tilt of the road that is let in.
const LEAST_UPRIGHT: f64 = 0.6;

/// Whether a unit axis stands upright enough for a steering axis.
fn is_upright(axis: &Vector) -> bool {
    axis.z >= LEAST_UPRIGHT
}

/// Change of the suspension coordinate over which a unit axis that changes at a rate stays upright.
fn stays_upright(axis: &Vector, axis_rate: &Vector) -> f64 {
    ((axis.z - LEAST_UPRIGHT) / axis_rate.norm()).min(f64::MAX)
}

/// A suspension kind made ready to be moved by its one coordinate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Kinematics {
    FixedKingpin(FixedKingpin),
    SlidingKingpin(SlidingKingpin),
    SwingingUpperArm(SwingingUpperArm),
    DoubleWishbone(DoubleWishbone),
    Strut(Strut),
}

/// Where the steering axis lies at one value of the suspension coordinate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Carriage {
    /// The steering axis in chassis axes.
    pub(crate) frame: AxisFrame,
    /// Motion of `frame` per unit of the suspension coordinate.
    pub(crate) motion: Twist,
    /// Rate of the unit axis per unit of the suspension coordinate.
    pub(crate) axis_rate: Vector,
    /// Change of the suspension coordinate over which the members stay together, at the least.
    pub(crate) stay: f64,
}

/// A steering axis that moves in the knuckle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct AxisInKnuckle {
    /// Where it lies in the knuckle as drawn.
    pub(crate) frame: AxisFrame,
    /// Rotation of `frame` per unit of the suspension coordinate, in the axes of the knuckle as drawn.
    pub(crate) turn: Vector,
}

/// How the motion of a [`Carriage`] changes along the suspension coordinate: second derivatives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bend {
    /// Acceleration of the frame's origin, mm per unit squared.
    pub(crate) origin: Vector,
    /// Rate of the frame's angular velocity, rad per unit squared.
    pub(crate) angular: Vector,
    /// Rate of the steering axis's turn in the knuckle, rad per unit squared.
    pub(crate) in_knuckle: Vector,
}

impl Bend {
    /// A carriage that goes straight, without turning.
    const NONE: Self = Self {
        origin: Vector::new(0.0, 0.0, 0.0),
        angular: Vector::new(0.0, 0.0, 0.0),
        in_knuckle: Vector::new(0.0, 0.0, 0.0),
    };
}

/// A unit vector along a line of changing direction and length, with its derivatives.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Along {
    rate: Vector,
    bend: Vector,
}

impl Along {
    /// From the line's vector, its rate and its acceleration. Derived here by differentiating v / |v| twice.
    fn of(line: &Vector, line_rate: &Vector, line_bend: &Vector) -> Self {
        let length = line.norm();
        let unit = line / length;
        let stretch = unit.dot(line_rate);
        let rate = (line_rate - unit * stretch) / length;
        let across = (line_bend - unit * unit.dot(line_bend)) / length;
        Self {
            rate,
            bend: across - rate * (2.0 * stretch / length) - unit * rate.norm_squared(),
        }
    }
}

impl Kinematics {
    /// What the suspension coordinate of a mirror image is to be multiplied by: a slide goes on upward, a swing turns round.
    pub(crate) fn mirrored_sign(&self) -> f64 {
        match self {
            Self::FixedKingpin(_) | Self::SlidingKingpin(_) => 1.0,
            Self::SwingingUpperArm(_) | Self::DoubleWishbone(_) | Self::Strut(_) => -1.0,
        }
    }

    /// Whether the steering axis stands still in the chassis.
    pub(crate) fn is_fixed_axis(&self) -> bool {
        matches!(self, Self::FixedKingpin(_) | Self::SlidingKingpin(_))
    }

    /// Whether the steering axis moves in the knuckle.
    #[inline]
    pub(crate) fn moves_axis_in_knuckle(&self) -> bool {
        matches!(self, Self::Strut(_))
    }

    /// The steering axis in the knuckle, for a kind in which it moves there; nothing for another, or where the
    /// members cannot be put together.
    pub(crate) fn axis_in_knuckle(&self, coordinate: f64) -> Option<AxisInKnuckle> {
        match self {
            Self::Strut(kind) => kind.axis_in_knuckle(coordinate),
            _ => None,
        }
    }

    /// Second derivatives of the carriage, or nothing where the members cannot be put together.
    pub(crate) fn bend(&self, coordinate: f64) -> Option<Bend> {
        match self {
            Self::FixedKingpin(_) | Self::SlidingKingpin(_) => Some(Bend::NONE),
            Self::SwingingUpperArm(kind) => kind.bend(coordinate),
            Self::DoubleWishbone(kind) => kind.bend(coordinate),
            Self::Strut(kind) => kind.bend(coordinate),
        }
    }

    /// Where the steering axis lies, or nothing where the members cannot be put together.
    #[inline]
    pub(crate) fn carriage(&self, coordinate: f64) -> Option<Carriage> {
        match self {
            Self::FixedKingpin(kind) => Some(kind.carriage()),
            Self::SlidingKingpin(kind) => Some(kind.carriage(coordinate)),
            Self::SwingingUpperArm(kind) => kind.carriage(coordinate),
            Self::DoubleWishbone(kind) => kind.carriage(coordinate),
            Self::Strut(kind) => kind.carriage(coordinate),
        }
    }

    /// Whether the members can be put together and the steering axis stands upright enough.
    pub(crate) fn together(&self, coordinate: f64) -> bool {
        self.carriage(coordinate).is_some()
            && (!self.moves_axis_in_knuckle() || self.axis_in_knuckle(coordinate).is_some())
    }

    /// The place of the steering axis where an arm lines up with the kingpin, at a coordinate within rounding of that
    /// end of its range; nothing elsewhere.
    pub(crate) fn lined_up(&self, coordinate: f64) -> Option<Carriage> {
        match self {
            Self::DoubleWishbone(kind) => kind.lined_up(coordinate),
            _ => None,
        }
    }

    /// Lower and upper point of the steering axis as it lies at the given coordinate, or nothing where the members
    /// cannot be put together.
    pub(crate) fn kingpin(&self, coordinate: f64, knuckle: &Knuckle) -> Option<(Point, Point)> {
        match self {
            Self::FixedKingpin(_) | Self::SlidingKingpin(_) => {
                Some((knuckle.kingpin_lower, knuckle.kingpin_upper))
            }
            Self::SwingingUpperArm(kind) => Some(kind.kingpin(coordinate)),
            Self::DoubleWishbone(kind) => kind.kingpin(coordinate),
            Self::Strut(kind) => Some(kind.kingpin(coordinate)),
        }
    }
}
