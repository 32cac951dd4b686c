//! What a typed value measures, and which units it may have.

use super::EntryError;
use crate::units::Units;

/// What a value measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure<'a> {
    /// A length, held in mm.
    Length,
    /// An angle, held in degrees.
    Angle,
    /// Anything else: the sign of its one unit, empty if it has none.
    Plain(&'a str),
}

/// Units of length with what one of them is in mm. The inch is 25.4 mm exactly since the international yard and pound
/// agreement of 1959.
const LENGTHS: [(&str, f64); 13] = [
    ("mm", 1.0),
    ("millimetre", 1.0),
    ("millimetres", 1.0),
    ("cm", 10.0),
    ("m", 1_000.0),
    ("in", 25.4),
    ("inch", 25.4),
    ("inches", 25.4),
    ("\"", 25.4),
    ("\u{2033}", 25.4),
    ("\u{201d}", 25.4),
    ("thou", 0.025_4),
    ("mil", 0.025_4),
];

/// Units of angle with what one of them is in degrees.
const ANGLES: [(&str, f64); 5] = [
    ("\u{b0}", 1.0),
    ("deg", 1.0),
    ("degree", 1.0),
    ("degrees", 1.0),
    ("rad", 180.0 / std::f64::consts::PI),
];

impl<'a> Measure<'a> {
    /// What is held in a unit with this sign.
    #[must_use]
    pub fn in_unit(sign: &'a str) -> Self {
        match sign {
            "mm" => Self::Length,
            "\u{b0}" => Self::Angle,
            other => Self::Plain(other),
        }
    }

    /// What a number without unit is multiplied with.
    pub(super) fn bare(self, units: Units) -> f64 {
        match self {
            Self::Length => units.millimetres(1.0),
            Self::Angle | Self::Plain(_) => 1.0,
        }
    }

    /// What a number with this unit is multiplied with.
    pub(super) fn factor(self, word: &str) -> Result<f64, EntryError> {
        let lower = word.to_lowercase();
        let find = |table: &[(&str, f64)]| {
            let found = table.iter().find(|(unit, _)| *unit == lower);
            found.map(|(_, factor)| *factor)
        };
        let (own, known) = match self {
            Self::Length => (find(&LENGTHS), find(&ANGLES).is_some() || lower == "%"),
            Self::Angle => (find(&ANGLES), find(&LENGTHS).is_some() || lower == "%"),
            Self::Plain(unit) => (
                (unit.to_lowercase() == lower).then_some(1.0),
                find(&LENGTHS).is_some() || find(&ANGLES).is_some(),
            ),
        };
        own.ok_or_else(|| {
            let (word, right) = (word.to_owned(), self.right());
            if known {
                EntryError::WrongUnit { word, right }
            } else {
                EntryError::UnknownUnit { word, right }
            }
        })
    }

    /// The units that would be right, in words.
    fn right(self) -> String {
        match self {
            Self::Length => "mm, cm, m, in or thou".to_owned(),
            Self::Angle => "deg, \u{b0} or rad".to_owned(),
            Self::Plain("") => "no unit".to_owned(),
            Self::Plain(unit) => unit.to_owned(),
        }
    }
}
