//! An effect of an adjustment while it is being written.

use steerloft_setup::adjustment::{Effect, EffectSides, Member, PointName, Scalar};
use steerloft_setup::car::Position;

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
    pub vector: [String; 3],
    /// Angle, length or amount per unit.
    pub amount: String,
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
            vector: ["1", "0", "0"].map(str::to_owned),
            amount: "1".to_owned(),
            through: PointName::WheelCentre,
            member: Member::UpperArm,
            scalar: Scalar::Wheelbase,
            sides: EffectSides::Mirrored,
        }
    }
}

impl EffectDraft {
    /// An effect to be changed.
    #[must_use]
    pub fn of(effect: &Effect) -> Self {
        let draft = Self::default();
        match effect {
            Effect::Move { points, by, sides } => Self {
                kind: EffectKind::Move,
                points: points.clone(),
                vector: texts(*by),
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
                vector: texts(*about),
                amount: degrees.to_string(),
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
                vector: texts(*normal),
                sides: *sides,
                ..draft
            },
            Effect::Lengthen { member, by, sides } => Self {
                kind: EffectKind::Lengthen,
                member: *member,
                amount: by.to_string(),
                sides: *sides,
                ..draft
            },
            Effect::Add { scalar, by } => Self {
                kind: EffectKind::Add,
                scalar: *scalar,
                amount: by.to_string(),
                ..draft
            },
        }
    }

    /// The effect, or why it is none yet. `read` turns a text into a number.
    pub fn build(&self, read: &impl Fn(&str) -> Result<f64, String>) -> Result<Effect, String> {
        let (points, sides, through) = (self.points.clone(), self.sides, self.through);
        let vector = || {
            let [x, y, z] = &self.vector;
            Ok::<_, String>(Position(read(x)?, read(y)?, read(z)?))
        };
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
                by: vector()?,
                sides,
            },
            EffectKind::Turn => Effect::Turn {
                points,
                through,
                about: vector()?,
                degrees: read(&self.amount)?,
                sides,
            },
            EffectKind::Reflect => Effect::Reflect {
                points,
                through,
                normal: vector()?,
                sides,
            },
            EffectKind::Lengthen => Effect::Lengthen {
                member: self.member,
                by: read(&self.amount)?,
                sides,
            },
            EffectKind::Add => Effect::Add {
                scalar: self.scalar,
                by: read(&self.amount)?,
            },
        })
    }
}

fn texts(Position(x, y, z): Position) -> [String; 3] {
    [x, y, z].map(|value| value.to_string())
}
