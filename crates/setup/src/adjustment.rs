//! Adjustments: everything a user can change on the car, as data.

use serde::{Deserialize, Serialize};

use crate::car::Position;

mod names;

pub use names::{Member, PointName, Scalar};

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
        /// Spacers that fit, and how many of each at most in one place.
        parts: Vec<Spacer>,
        /// The car's stock that they are taken from, where other stacks take from it too.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stock: Option<FromStock>,
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

/// Where a stack's spacers come from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FromStock {
    /// Name of the stock.
    pub name: String,
    /// In how many places of the car the stack is built, such as 2 for one a side.
    pub places: u32,
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
