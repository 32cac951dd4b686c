//! Adjustments: everything a user can change on the car, as data.

use serde::{Deserialize, Serialize};

use crate::car::Position;

/// One thing that can be changed on the car.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Adjustment {
    /// Plain name, unique in the car, such as "Servo station".
    pub name: String,
    /// Where on the car it is.
    pub place: Place,
    /// What the builder should know, in a sentence.
    #[serde(default)]
    pub notes: String,
    /// How it is set and what it does.
    pub kind: Kind,
}

/// Where on the car an adjustment is; lists are grouped by it in this order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Place {
    /// The servo and its mounts.
    Servo,
    /// The servo arm, saver, crank or column lever.
    SteeringDrive,
    /// The tie rods and the balls at their ends.
    TieRod,
    /// The knuckle and its steering arm.
    Knuckle,
    /// The suspension arms and kingpin mounts.
    Suspension,
    /// The chassis.
    Chassis,
    /// Wheel and tyre.
    Wheel,
}

/// How an adjustment is set, and what that does.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Kind {
    /// A continuous or stepped value. Effects apply times (value - base).
    Slide {
        /// Unit of the value.
        unit: Unit,
        /// Least and greatest value.
        range: (f64, f64),
        /// Step the parts allow, if they do not allow any value.
        #[serde(default)]
        step: Option<f64>,
        /// The value at which the car's points are given.
        base: f64,
        /// What one unit does.
        effects: Vec<Effect>,
    },
    /// A stack of spacers, washers or packing, by its total thickness in mm. Effects apply times (total - base).
    Stack {
        /// Spacers at hand.
        parts: Vec<Spacer>,
        /// Greatest total, mm.
        most: f64,
        /// The total at which the car's points are given.
        base: f64,
        /// What one mm does.
        effects: Vec<Effect>,
    },
    /// One of several named positions.
    Choice {
        /// The positions.
        options: Vec<ChoiceOption>,
        /// Name of the option at which the car's points are given.
        base: String,
    },
}

/// Unit of a slide's value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Unit {
    /// Millimetres.
    Millimetres,
    /// Degrees.
    Degrees,
}

/// A size of spacer and how many of it are at hand for one place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spacer {
    /// Thickness, mm.
    pub thickness: f64,
    /// How many.
    pub count: u32,
}

/// One named position of a choice.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChoiceOption {
    /// Plain name, unique in the choice, such as "rear hole".
    pub name: String,
    /// What choosing it does against the car's points as given.
    #[serde(default)]
    pub effects: Vec<Effect>,
}

/// What an adjustment does to the car, for one unit of its value.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Effect {
    /// Moves points along a displacement, given for the left side.
    Move {
        /// Which points.
        points: Vec<PointName>,
        /// Displacement per unit, mm.
        by: Position,
        /// On which sides.
        #[serde(default)]
        sides: EffectSides,
    },
    /// Turns points about an axis through another point, as given for the left side.
    Turn {
        /// Which points and directions.
        points: Vec<PointName>,
        /// A point of the axis, where it stands when this effect applies.
        through: PointName,
        /// Direction of the axis; right-handed.
        about: Position,
        /// Angle per unit, degrees.
        degrees: f64,
        /// On which sides.
        #[serde(default)]
        sides: EffectSides,
    },
    /// Reflects points in a plane through another point, such as ball studs changed to the other face of an arm.
    /// It applies whole, so only a choice's option may hold it.
    Reflect {
        /// Which points.
        points: Vec<PointName>,
        /// A point of the plane, where it stands when this effect applies.
        through: PointName,
        /// Normal of the plane, as given for the left side.
        normal: Position,
        /// On which sides.
        #[serde(default)]
        sides: EffectSides,
    },
    /// Lengthens a member.
    Lengthen {
        /// Which member.
        member: Member,
        /// Length per unit, mm.
        by: f64,
        /// On which sides.
        #[serde(default)]
        sides: EffectSides,
    },
    /// Adds to a scalar.
    Add {
        /// Which scalar.
        scalar: Scalar,
        /// Amount per unit, mm or degrees.
        by: f64,
    },
}

/// On which sides an effect applies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum EffectSides {
    /// On both, the right one as the mirror image of the left.
    #[default]
    Mirrored,
    /// On both in the same chassis direction.
    Together,
    /// On the left only.
    Left,
    /// On the right only, as the mirror image of what is given.
    Right,
}

/// A named point or direction of the car.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PointName {
    /// Centre of the wheel plane on the spin axis.
    WheelCentre,
    /// Direction of the spin axis; can be turned, not moved.
    SpinAxis,
    /// Lower point of the steering axis.
    KingpinLower,
    /// Upper point of the steering axis.
    KingpinUpper,
    /// Outer tie-rod ball.
    SteeringArm,
    /// Inner tie-rod ball.
    RodInner,
    /// A point of the steering drive's axis; the servo's case goes with it.
    DriveAxis,
    /// Direction of the steering drive's axis; can be turned, not moved.
    DriveDirection,
    /// Front point of the upper arm's hinge.
    UpperHingeFront,
    /// Rear point of the upper arm's hinge.
    UpperHingeRear,
}

/// A member whose length can be set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Member {
    /// The upper arm, hinge axis to ball.
    UpperArm,
}

/// A number of the car that is not a point.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Scalar {
    /// Front-axle station to rear axle, mm.
    Wheelbase,
    /// Where the front-axle station lies, mm ahead of the origin: a front axle moved against the chassis takes its
    /// points, this and the wheelbase along, so that the rear axle stays where it is.
    FrontStation,
    /// Chassis underside over the road, mm.
    RideHeight,
    /// Loaded tyre radius, both sides, mm.
    TyreRadius,
    /// Tread width, both sides, mm.
    TyreWidth,
    /// Camber of both wheels against the chassis, degrees.
    Camber,
    /// Chassis pitch against the road, degrees.
    Pitch,
    /// Chassis roll against the road, degrees.
    Roll,
}

impl PointName {
    /// Every name, in the order of the definition.
    pub const ALL: [Self; 10] = [
        Self::WheelCentre,
        Self::SpinAxis,
        Self::KingpinLower,
        Self::KingpinUpper,
        Self::SteeringArm,
        Self::RodInner,
        Self::DriveAxis,
        Self::DriveDirection,
        Self::UpperHingeFront,
        Self::UpperHingeRear,
    ];

    /// Whether this names a direction, which has no place.
    #[must_use]
    pub const fn is_direction(self) -> bool {
        matches!(self, Self::SpinAxis | Self::DriveDirection)
    }

    /// Whether both sides share it; it then counts as the left side's.
    #[must_use]
    pub const fn is_shared(self) -> bool {
        matches!(self, Self::DriveAxis | Self::DriveDirection)
    }

    /// The name in plain words, such as "outer tie-rod ball".
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::WheelCentre => "wheel centre",
            Self::SpinAxis => "spin axis",
            Self::KingpinLower => "lower kingpin point",
            Self::KingpinUpper => "upper kingpin point",
            Self::SteeringArm => "outer tie-rod ball",
            Self::RodInner => "inner tie-rod ball",
            Self::DriveAxis => "steering drive axis",
            Self::DriveDirection => "direction of the steering drive axis",
            Self::UpperHingeFront => "front hinge point of the upper arm",
            Self::UpperHingeRear => "rear hinge point of the upper arm",
        }
    }
}
