//! An effect of an adjustment while it is being written.

use steerloft_setup::adjustment::{Effect, EffectSides, Member, PointName, Scalar, Unit};
use steerloft_setup::car::Position;

use super::NumberField;
use super::typed_number::{Measured, TypedNumber};
use crate::units::Units;

/// What an effect does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EffectKind {
    /// Moves points.
    Move,
    /// Turns points about an axis.
    Turn,
    /// Lengthens a member.
    Lengthen,
    /// Adds to a number.
    Add,
    /// Reflects points in a plane.
    Reflect,
}

impl EffectKind {
    /// Every kind, as listed.
    pub const ALL: [Self; 5] = [
        Self::Move,
        Self::Turn,
        Self::Lengthen,
        Self::Add,
        Self::Reflect,
    ];

    /// In plain words.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Move => "move points",
            Self::Turn => "turn points",
            Self::Lengthen => "lengthen a member",
            Self::Add => "change a number",
            Self::Reflect => "reflect points",
        }
    }
}

/// An effect being written: everything any kind needs, numbers as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct EffectDraft {
    /// What it does.
    pub kind: EffectKind,
    /// The points it moves, turns or reflects.
    pub points: Vec<PointName>,
    /// Displacement per unit, direction of the axis, or normal of the plane.
    pub vector: [TypedNumber; 3],
    /// Angle, length or amount per unit.
    pub amount: TypedNumber,
    /// A point of the axis or plane.
    pub through: PointName,
    /// The member it lengthens.
    pub member: Member,
    /// The number it changes.
    pub scalar: Scalar,
    /// On which sides.
    pub sides: EffectSides,
}

impl Default for EffectDraft {
    fn default() -> Self {
        Self {
            kind: EffectKind::Move,
            points: Vec::new(),
            vector: ["1", "0", "0"].map(TypedNumber::from),
            amount: "1".into(),
            through: PointName::WheelCentre,
            member: Member::UpperArm,
            scalar: Scalar::Wheelbase,
            sides: EffectSides::Mirrored,
        }
    }
}

impl EffectDraft {
    /// An effect to be changed. `per` is the unit of its adjustment, which a choice does not have.
    #[must_use]
    pub fn of(effect: &Effect, per: Option<Unit>, units: Units) -> Self {
        let draft = Self::default();
        let number = |value: f64, measured| TypedNumber::of(value, measured, units);
        let vector =
            |Position(x, y, z): Position, measured| [x, y, z].map(|part| number(part, measured));
        match effect {
            Effect::Move { points, by, sides } => Self {
                kind: EffectKind::Move,
                points: points.clone(),
                vector: vector(*by, Measured::Length(per)),
                sides: *sides,
                ..draft
            },
            Effect::Turn {
                points,
                through,
                about,
                degrees,
                sides,
            } => Self {
                kind: EffectKind::Turn,
                points: points.clone(),
                through: *through,
                vector: vector(*about, Measured::Direction),
                amount: number(*degrees, Measured::Angle(per)),
                sides: *sides,
                ..draft
            },
            Effect::Reflect {
                points,
                through,
                normal,
                sides,
            } => Self {
                kind: EffectKind::Reflect,
                points: points.clone(),
                through: *through,
                vector: vector(*normal, Measured::Direction),
                sides: *sides,
                ..draft
            },
            Effect::Lengthen { member, by, sides } => Self {
                kind: EffectKind::Lengthen,
                member: *member,
                amount: number(*by, Measured::Length(per)),
                sides: *sides,
                ..draft
            },
            Effect::Add { scalar, by } => Self {
                kind: EffectKind::Add,
                scalar: *scalar,
                amount: number(*by, measured_of(*scalar, per)),
                ..draft
            },
        }
    }

    /// The effect, or why it is none yet.
    pub fn build(&self, per: Option<Unit>, units: Units) -> Result<Effect, String> {
        let (points, sides, through) = (self.points.clone(), self.sides, self.through);
        let vector = |measured| {
            let read = |index: usize| self.vector[index].read(measured, units);
            Ok::<_, String>(Position(read(0)?, read(1)?, read(2)?))
        };
        let amount = |measured| self.amount.read(measured, units);
        let takes_points = matches!(
            self.kind,
            EffectKind::Move | EffectKind::Turn | EffectKind::Reflect
        );
        if takes_points && points.is_empty() {
            return Err("choose at least one point".to_owned());
        }
        Ok(match self.kind {
            EffectKind::Move => Effect::Move {
                points,
                by: vector(Measured::Length(per))?,
                sides,
            },
            EffectKind::Turn => Effect::Turn {
                points,
                through,
                about: vector(Measured::Direction)?,
                degrees: amount(Measured::Angle(per))?,
                sides,
            },
            EffectKind::Reflect => Effect::Reflect {
                points,
                through,
                normal: vector(Measured::Direction)?,
                sides,
            },
            EffectKind::Lengthen => Effect::Lengthen {
                member: self.member,
                by: amount(Measured::Length(per))?,
                sides,
            },
            EffectKind::Add => Effect::Add {
                scalar: self.scalar,
                by: amount(measured_of(self.scalar, per))?,
            },
        })
    }
}

/// What is added to a number of the car.
fn measured_of(scalar: Scalar, per: Option<Unit>) -> Measured {
    if NumberField::Scalar(scalar).is_angle() {
        Measured::Angle(per)
    } else {
        Measured::Length(per)
    }
}
