//! One line of gauge readings as it is typed.

use steerloft_setup::readings::{AtHeight, Height, Readings, Turned};

use crate::entry::{self, Measure};
use crate::format;
use crate::units::Units;

/// Standard uncertainty of toe and camber at first, degrees: toe plates with callipers (common practice, no source).
const UNCERTAINTY: f64 = 0.1;

/// Standard uncertainty of the angle of a turned wheel at first, degrees: turn plates (common practice, no source).
const TURNED_UNCERTAINTY: f64 = 0.3;

/// What was read, and what its place is told by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReadingKind {
    /// Toe, at a wheel travel.
    Toe,
    /// Toe, at a ride height.
    ToeAtHeight,
    /// Camber, at a wheel travel.
    Camber,
    /// Camber, at a ride height.
    CamberAtHeight,
    /// Angles of the wheels, at a steering input.
    Turned,
}

impl ReadingKind {
    /// All, in the order in which they are listed.
    pub const ALL: [Self; 5] = [
        Self::Toe,
        Self::ToeAtHeight,
        Self::Camber,
        Self::CamberAtHeight,
        Self::Turned,
    ];

    /// What it is called.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Toe => "toe at travel",
            Self::ToeAtHeight => "toe at ride height",
            Self::Camber => "camber at travel",
            Self::CamberAtHeight => "camber at ride height",
            Self::Turned => "wheel angle at input",
        }
    }

    /// Whether its place is a length whatever the drive.
    #[must_use]
    pub const fn is_at_length(self) -> bool {
        !matches!(self, Self::Turned)
    }
}

/// A line of the table, as it is typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadingRow {
    /// What was read.
    pub kind: ReadingKind,
    /// Where: travel or ride height, or the steering input.
    pub at: String,
    /// The left wheel's value, degrees; empty if it was not read.
    pub left: String,
    /// The right wheel's.
    pub right: String,
    /// Standard uncertainty of each, degrees.
    pub uncertainty: String,
}

impl ReadingRow {
    /// A line with nothing read yet.
    #[must_use]
    pub fn new(kind: ReadingKind) -> Self {
        let uncertainty = match kind {
            ReadingKind::Turned => TURNED_UNCERTAINTY,
            _ => UNCERTAINTY,
        };
        Self {
            kind,
            at: "0".to_owned(),
            left: String::new(),
            right: String::new(),
            uncertainty: format::short(uncertainty, 3),
        }
    }

    /// Reads the line into readings; what cannot be read is told in words.
    pub(super) fn read_into(
        &self,
        readings: &mut Readings,
        input: Measure<'_>,
        units: Units,
    ) -> Result<(), String> {
        let read = |what: &str, text: &str, measure| {
            entry::read(text, measure, units).map_err(|error| format!("{what}: {error}"))
        };
        let side = |what: &str, text: &str| {
            let is_given = !text.trim().is_empty();
            is_given
                .then(|| read(what, text, Measure::Angle))
                .transpose()
        };
        let place = if self.kind.is_at_length() {
            Measure::Length
        } else {
            input
        };
        let at = read("where", &self.at, place)?;
        let (left, right) = (side("left", &self.left)?, side("right", &self.right)?);
        let uncertainty = read("uncertainty", &self.uncertainty, Measure::Angle)?;
        if uncertainty <= 0.0 {
            return Err("uncertainty: give more than 0".to_owned());
        }
        if left.is_none() && right.is_none() {
            return Err("give the left or the right wheel's value".to_owned());
        }
        let at_height = |at| AtHeight {
            at,
            left,
            right,
            uncertainty,
        };
        match self.kind {
            ReadingKind::Toe => readings.toe.push(at_height(Height::Travel(at))),
            ReadingKind::ToeAtHeight => readings.toe.push(at_height(Height::RideHeight(at))),
            ReadingKind::Camber => readings.camber.push(at_height(Height::Travel(at))),
            ReadingKind::CamberAtHeight => readings.camber.push(at_height(Height::RideHeight(at))),
            ReadingKind::Turned => readings.turned.push(Turned {
                input: at,
                left,
                right,
                uncertainty,
            }),
        }
        Ok(())
    }

    /// The lines that say what readings say, with lengths in these units.
    pub(super) fn of(readings: &Readings, input: Measure<'_>, units: Units) -> Vec<Self> {
        let length = |value| units.short(value, 3);
        let angle = |value: Option<f64>| value.map_or(String::new(), |one| format::short(one, 4));
        let at_height = |one: &AtHeight, [travel, height]: [ReadingKind; 2]| {
            let (kind, at) = match one.at {
                Height::Travel(at) => (travel, length(at)),
                Height::RideHeight(at) => (height, length(at)),
            };
            Self {
                kind,
                at,
                left: angle(one.left),
                right: angle(one.right),
                uncertainty: format::short(one.uncertainty, 4),
            }
        };
        let toe = [ReadingKind::Toe, ReadingKind::ToeAtHeight];
        let camber = [ReadingKind::Camber, ReadingKind::CamberAtHeight];
        let toes = readings.toe.iter().map(|one| at_height(one, toe));
        let cambers = readings.camber.iter().map(|one| at_height(one, camber));
        let turned = readings.turned.iter().map(|one| Self {
            kind: ReadingKind::Turned,
            at: match input {
                Measure::Length => length(one.input),
                _ => format::short(one.input, 4),
            },
            left: angle(one.left),
            right: angle(one.right),
            uncertainty: format::short(one.uncertainty, 4),
        });
        toes.chain(cambers).chain(turned).collect()
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    const UNITS: Units = Units::Millimetres;

    fn read(row: &ReadingRow) -> Result<Readings, String> {
        let mut readings = Readings::default();
        row.read_into(&mut readings, Measure::Angle, UNITS)?;
        Ok(readings)
    }

    #[test]
    fn lines_say_what_was_typed_and_come_back_from_it() {
        let mut row = ReadingRow::new(ReadingKind::ToeAtHeight);
        row.at = "0,5 in".to_owned();
        row.left = "1.25".to_owned();
        let readings = read(&row).unwrap();
        assert_eq!(readings.toe[0].at, Height::RideHeight(12.7));
        let values = (readings.toe[0].left, readings.toe[0].right);
        assert_eq!(values, (Some(1.25), None));
        let rows = ReadingRow::of(&readings, Measure::Angle, UNITS);
        assert_eq!(rows[0].at, "12.7");
        assert_eq!(read(&rows[0]).unwrap(), readings);
    }

    #[test]
    fn what_cannot_be_read_says_where() {
        let mut row = ReadingRow::new(ReadingKind::Turned);
        assert!(read(&row).unwrap_err().contains("left or the right"));
        row.right = "12 apples".to_owned();
        assert!(read(&row).unwrap_err().starts_with("right: "));
        row.right = "12".to_owned();
        row.uncertainty = "0".to_owned();
        assert!(read(&row).unwrap_err().starts_with("uncertainty: "));
    }
}
