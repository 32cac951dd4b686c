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

    /// How it is typed with a unit of its own, which stands for that of what is measured, not for that of the adjustment.
    fn measure(self) -> Measure<'static> {
        match self {
            Self::Length(_) => Measure::Length,
            Self::Angle(_) => Measure::Angle,
            Self::Direction => Measure::Plain(""),
        }
    }

    /// What a value for each unit of the adjustment that is shown is divided by for one for each that is held.
    fn per(self, units: Units) -> f64 {
        match self {
            Self::Length(Some(Unit::Millimetres)) | Self::Angle(Some(Unit::Millimetres)) => {
                units.millimetres(1.0)
            }
            _ => 1.0,
        }
    }

    /// What a value in the unit that is shown is multiplied with for the one that is held: a length per length has no unit.
    fn held(self, units: Units) -> f64 {
        let measured = match self {
            Self::Length(_) => units.millimetres(1.0),
            _ => 1.0,
        };
        measured / self.per(units)
    }

    /// A value that is held, as it is written.
    fn text(self, held: f64, units: Units) -> String {
        match units {
            Units::Millimetres => held.to_string(),
            Units::Inches => format::short(held / self.held(units), DECIMALS),
        }
    }

    fn read(self, text: &str, units: Units) -> Result<f64, String> {
        let plain = entry::read(text, Measure::Plain(""), units);
        let read = plain.map(|shown| shown * self.held(units)).or_else(|_| {
            entry::read(text, self.measure(), units).map(|read| read / self.per(units))
        });
        read.map_err(|error| error.to_string())
    }
}

/// A number as it is typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TypedNumber {
    /// The text.
    pub text: String,
    /// The number that there is, with what it measures: as long as nobody alters its text it stays as fine as it was.
    given: Option<(Measured, f64)>,
}

impl TypedNumber {
    /// A number that is held in mm and degrees.
    pub(super) fn of(held: f64, measured: Measured, units: Units) -> Self {
        Self {
            text: measured.text(held, units),
            given: Some((measured, held)),
        }
    }

    /// What it says, in mm and degrees.
    pub(super) fn read(&self, measured: Measured, units: Units) -> Result<f64, String> {
        match self.given {
            Some((known, held)) if known == measured && self.text == known.text(held, units) => {
                Ok(held)
            }
            _ => measured.read(&self.text, units),
        }
    }
}

impl From<&str> for TypedNumber {
    fn from(text: &str) -> Self {
        Self {
            text: text.to_owned(),
            given: None,
        }
    }
}
