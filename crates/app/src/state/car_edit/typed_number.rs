//! A number of an adjustment as it is typed, in the unit of lengths that is shown.

use steerloft_setup::adjustment::Unit;

use crate::entry::{self, Measure};
use crate::format;
use crate::units::Units;

/// Decimals of inches, and of what is counted per inch: a number that is not altered stays as fine as it was.
const DECIMALS: usize = 6;

/// What a number measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Measured {
    /// A length: held in mm, or in mm per unit of the adjustment.
    Length(Option<Unit>),
    /// An angle: held in degrees, or in degrees per unit of the adjustment.
    Angle(Option<Unit>),
    /// A part of a direction.
    Direction,
}

impl Measured {
    /// A value of an adjustment itself.
    pub(super) fn in_unit(unit: Unit) -> Self {
        match unit {
            Unit::Millimetres => Self::Length(None),
            Unit::Degrees => Self::Angle(None),
        }
    }

    /// What a value in the unit that is shown is multiplied with for the one that is held.
    fn held(self, units: Units) -> f64 {
        let length = units.millimetres(1.0);
        match self {
            Self::Length(None | Some(Unit::Degrees)) => length,
            Self::Angle(Some(Unit::Millimetres)) => 1.0 / length,
            // A length per length has no unit.
            _ => 1.0,
        }
    }

    fn read(self, text: &str, units: Units) -> Result<f64, String> {
        let plain = entry::read(text, Measure::Plain(""), units);
        let read = match self {
            Self::Direction => plain,
            _ if plain.is_ok() => plain.map(|shown| shown * self.held(units)),
            // With a unit of its own, which stands for that of what is measured, not for that of the adjustment.
            Self::Length(per) => entry::read(text, Measure::Length, units).map(|mm| match per {
                Some(Unit::Millimetres) => mm / units.millimetres(1.0),
                _ => mm,
            }),
            Self::Angle(per) => entry::read(text, Measure::Angle, units).map(|degrees| match per {
                Some(Unit::Millimetres) => degrees / units.millimetres(1.0),
                _ => degrees,
            }),
        };
        read.map_err(|error| error.to_string())
    }
}

/// A number as it is typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TypedNumber {
    /// The text.
    pub text: String,
    /// What was written there for the number that there is, with what it measures: as long as nobody alters it, the number
    /// stays as fine as it was.
    written: Option<(String, Measured, f64)>,
}

impl TypedNumber {
    /// A number that is held in mm and degrees.
    pub(super) fn of(held: f64, measured: Measured, units: Units) -> Self {
        let text = match units {
            Units::Millimetres => held.to_string(),
            Units::Inches => format::short(held / measured.held(units), DECIMALS),
        };
        Self {
            text: text.clone(),
            written: Some((text, measured, held)),
        }
    }

    /// What it says, in mm and degrees.
    pub(super) fn read(&self, measured: Measured, units: Units) -> Result<f64, String> {
        match &self.written {
            Some((text, known, held)) if *text == self.text && *known == measured => Ok(*held),
            _ => measured.read(&self.text, units),
        }
    }
}

impl From<&str> for TypedNumber {
    fn from(text: &str) -> Self {
        Self {
            text: text.to_owned(),
            written: None,
        }
    }
}
