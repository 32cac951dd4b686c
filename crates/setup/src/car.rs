//! The car as its file gives it: points, parts and limits at base, before any adjustment.
//!
//! Millimetres and degrees, chassis axes (x forward, y left, z up), in the reference pose.

use serde::{Deserialize, Serialize};
use steerloft_solver::frame::{Point, Side, Vector};

use crate::adjustment::Adjustment;
use crate::stock::Stock;

mod build_errors;
mod drive;
mod servo;
mod surroundings;
mod tie_rod;

pub use build_errors::{BuildErrors, PointError};
pub use drive::{Crank, Drive, DrivenCrank, InnerBallsOn};
pub use servo::{Pulse, Servo, ServoAction, ServoCase, ServoClass, ServoSaver, Spline};
pub use surroundings::{Clearances, Loads, Obstacle, Rim, Shape};
pub use tie_rod::{BallJoints, Hands, Thread, TieRodParts};

/// A position or direction in chassis axes: x forward, y left, z up; mm for positions.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Position(pub f64, pub f64, pub f64);

impl Position {
    /// As a point of the chassis, mm.
    #[must_use]
    pub fn point(&self) -> Point {
        Point::new(self.0, self.1, self.2)
    }

    /// As a direction or displacement.
    #[must_use]
    pub fn vector(&self) -> Vector {
        Vector::new(self.0, self.1, self.2)
    }
}

/// A car: what can be measured on it and what can be changed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Car {
    /// Plain name, such as "1:12 pan car".
    pub name: String,
    /// Free text about the car.
    #[serde(default)]
    pub notes: String,
    /// The left front corner.
    pub left: CornerPoints,
    /// The right front corner.
    pub right: RightCorner,
    /// What moves the inner tie-rod balls.
    pub drive: Drive,
    /// The steering servo, where there is one.
    #[serde(default)]
    pub servo: Option<Servo>,
    /// The servo saver, where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub saver: Option<ServoSaver>,
    /// Front-axle station to rear axle, mm.
    pub wheelbase: f64,
    /// Chassis underside over the road at the origin, mm.
    pub ride_height: f64,
    /// Chassis pitch against the road, degrees, nose down positive.
    #[serde(default)]
    pub pitch: f64,
    /// Chassis roll against the road, degrees, right side down positive.
    #[serde(default)]
    pub roll: f64,
    /// How far things move.
    pub ranges: Ranges,
    /// The tie rod's parts and limits.
    pub tie_rod: TieRodParts,
    /// The tie rods' ball joints, where their limits are known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub joints: Option<BallJoints>,
    /// Load and grip of the front wheels.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub loads: Option<Loads>,
    /// Sizes of parts that could touch.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clearances: Option<Clearances>,
    /// What stands in the way.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub obstacles: Vec<Obstacle>,
    /// How far the car as built may be off its dimensions.
    #[serde(default, skip_serializing_if = "BuildErrors::is_usual")]
    pub build_errors: BuildErrors,
    /// Spacers at hand that several stacks share.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stock: Vec<Stock>,
    /// Everything that can be changed on the car, in the order in which the effects apply.
    pub adjustments: Vec<Adjustment>,
}

impl Car {
    /// The points that a side's corner is given by: the left one's for a mirrored right corner.
    #[must_use]
    pub(crate) fn corner(&self, side: Side) -> &CornerPoints {
        match (&self.right, side) {
            (RightCorner::Given(right), Side::Right) => right,
            _ => &self.left,
        }
    }
}

/// The points of one corner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CornerPoints {
    /// Centre of the wheel plane on the spin axis.
    pub wheel_centre: Position,
    /// Camber at straight ahead against the chassis, degrees, top outboard positive.
    pub camber: f64,
    /// Lower point of the steering axis.
    pub kingpin_lower: Position,
    /// Upper point of the steering axis.
    pub kingpin_upper: Position,
    /// Centre of the outer tie-rod ball.
    pub steering_arm: Position,
    /// Loaded tyre radius, mm.
    pub tyre_radius: f64,
    /// Tread width, mm.
    pub tyre_width: f64,
    /// What carries the knuckle.
    pub suspension: Suspension,
}

/// The right front corner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(
    clippy::large_enum_variant,
    reason = "a car has one, and files and callers read the points directly"
)]
pub enum RightCorner {
    /// The mirror image of the left one.
    Mirrored,
    /// Given separately, in chassis axes (y negative).
    Given(CornerPoints),
}

/// A suspension kind with the points only it has.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Suspension {
    /// The knuckle turns about an axis fixed in the chassis; no travel.
    FixedKingpin,
    /// The knuckle turns about an axis fixed in the chassis and slides along it.
    SlidingKingpin,
    /// The kingpin slides through a ball fixed in the chassis at `kingpin_lower`; an arm carries its upper ball.
    SwingingUpperArm {
        /// Front point of the arm's hinge axis.
        upper_hinge_front: Position,
        /// Rear point of the arm's hinge axis.
        upper_hinge_rear: Position,
    },
    /// A lower and an upper arm carry the kingpin's two balls.
    DoubleWishbone {
        /// Front point of the lower arm's hinge axis.
        lower_hinge_front: Position,
        /// Rear point of the lower arm's hinge axis.
        lower_hinge_rear: Position,
        /// Front point of the upper arm's hinge axis.
        upper_hinge_front: Position,
        /// Rear point of the upper arm's hinge axis.
        upper_hinge_rear: Position,
    },
    /// A lower arm carries the ball at `kingpin_lower`; the knuckle slides through a top mount fixed in the chassis
    /// at `kingpin_upper`.
    Strut {
        /// Front point of the arm's hinge axis.
        lower_hinge_front: Position,
        /// Rear point of the arm's hinge axis.
        lower_hinge_rear: Position,
        /// Direction of the line along which the knuckle slides; along the steering axis if it is left out.
        #[serde(default)]
        slide_direction: Option<Position>,
    },
}

impl Suspension {
    /// Whether an upper arm carries the upper kingpin point.
    #[must_use]
    pub const fn has_upper_arm(&self) -> bool {
        matches!(
            self,
            Self::SwingingUpperArm { .. } | Self::DoubleWishbone { .. }
        )
    }

    /// Whether a lower arm carries the lower kingpin point.
    #[must_use]
    pub const fn has_lower_arm(&self) -> bool {
        matches!(self, Self::DoubleWishbone { .. } | Self::Strut { .. })
    }
}

/// How far the car's moving parts go: ends of the sweeps.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ranges {
    /// Least and greatest steering input, in the drive's unit: degrees of an arm, mm of a rack.
    pub input: (f64, f64),
    /// Full droop (negative) and full bump, mm; both 0 for a fixed kingpin.
    pub travel: (f64, f64),
}
