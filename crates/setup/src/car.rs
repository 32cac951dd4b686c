//! The car as its file gives it: points, parts and limits at base, before any adjustment.
//!
//! Millimetres and degrees, chassis axes (x forward, y left, z up), in the reference pose.

use serde::{Deserialize, Serialize};
use steerloft_solver::frame::{Point, Vector};

use crate::adjustment::{Adjustment, Unit};

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
    /// The steering servo's case, where one is to be drawn.
    #[serde(default)]
    pub servo: Option<ServoCase>,
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
    /// Everything that can be changed on the car, in the order in which the effects apply.
    pub adjustments: Vec<Adjustment>,
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
}

/// A steering drive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
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
}

impl Drive {
    /// Unit of the steering input: degrees of an arm, or mm of a rack.
    #[must_use]
    pub const fn input_unit(&self) -> Unit {
        match self {
            Self::SwingArm { .. } => Unit::Degrees,
        }
    }
}

/// The servo's case as a box along chassis axes; it goes where the arm's axis point goes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ServoCase {
    /// Size along x, y and z, mm.
    pub size: Position,
    /// Centre of the box, chassis axes, mm.
    pub centre: Position,
}

/// How far the car's moving parts go: ends of the sweeps.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ranges {
    /// Least and greatest steering input, degrees.
    pub input: (f64, f64),
    /// Full droop (negative) and full bump, mm.
    pub travel: (f64, f64),
}

/// The tie rod's parts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TieRodParts {
    /// From a ball's centre to the open end of its cup, mm.
    pub cup_length: f64,
    /// Shortest centre-to-centre length the parts allow, mm.
    pub shortest: f64,
    /// Longest centre-to-centre length the thread allows, mm.
    pub longest: f64,
}
