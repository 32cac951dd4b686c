//! Millimetres or inches: the unit in which lengths are shown and typed.
//!
//! Everything is held in mm; what is shown is converted where its text is made, and typed numbers where they are read.

use serde::{Deserialize, Serialize};
use steerloft_setup::adjustment::{Adjustment, Kind, Unit};
use steerloft_setup::setup::Chosen;

use crate::format;

/// Millimetres in an inch, exactly (international yard and pound agreement, 1959).
const INCH: f64 = 25.4;

/// Decimals that inches have more than millimetres, so that what is shown is as fine.
const FINER: usize = 2;

/// The unit of lengths on screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Units {
    /// Millimetres.
    #[default]
    Millimetres,
    /// Decimal inches.
    Inches,
}

/// A unit as it is shown: its sign, what a value in mm is multiplied with, and how many decimals it has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shown {
    /// The unit's sign.
    pub sign: &'static str,
    /// What a value held in mm and degrees is multiplied with.
    pub factor: f64,
    /// Decimals.
    pub decimals: usize,
}

impl Units {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Millimetres, Self::Inches];

    /// The unit's sign.
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self {
            Self::Millimetres => "mm",
            Self::Inches => "in",
        }
    }

    /// A length shown in this unit, in mm.
    #[must_use]
    pub fn millimetres(self, shown: f64) -> f64 {
        match self {
            Self::Millimetres => shown,
            Self::Inches => shown * INCH,
        }
    }

    /// A length in mm as it is shown in this unit.
    #[must_use]
    pub fn shown(self, millimetres: f64) -> f64 {
        match self {
            Self::Millimetres => millimetres,
            Self::Inches => millimetres / INCH,
        }
    }

    /// How a value is shown that is held in a unit with so many decimals. Units without a length stay as they are.
    #[must_use]
    pub fn unit(self, unit: &'static str, decimals: usize) -> Shown {
        let same = Shown {
            sign: unit,
            factor: 1.0,
            decimals,
        };
        if self == Self::Millimetres {
            return same;
        }
        let inches = |sign| Shown {
            sign,
            factor: 1.0 / INCH,
            decimals: decimals + FINER,
        };
        let per_inch = |sign| Shown {
            sign,
            factor: INCH,
            decimals: decimals.saturating_sub(1),
        };
        match unit {
            "mm" => inches("in"),
            "mm/\u{b0}" => inches("in/\u{b0}"),
            "\u{b0}/mm" => per_inch("\u{b0}/in"),
            "%/mm" => per_inch("%/in"),
            _ => same,
        }
    }

    /// A value held in a unit as text with the unit that is shown and as few decimals as say it.
    #[must_use]
    pub fn amount(self, value: f64, unit: &'static str, most: usize) -> String {
        let unit = self.unit(unit, most);
        format::with_unit(
            &format::short(value * unit.factor, unit.decimals),
            unit.sign,
        )
    }

    /// A length in mm as text with its unit, such as "2.00 mm".
    #[must_use]
    pub fn length(self, millimetres: f64, decimals: usize) -> String {
        let unit = self.unit("mm", decimals);
        let number = format::number(millimetres * unit.factor, unit.decimals);
        format::with_unit(&number, unit.sign)
    }

    /// The same with its sign always shown.
    #[must_use]
    pub fn signed_length(self, millimetres: f64, decimals: usize) -> String {
        let unit = self.unit("mm", decimals);
        let number = format::signed(millimetres * unit.factor, unit.decimals);
        format::with_unit(&number, unit.sign)
    }

    /// A length in mm as text with its unit and as few decimals as say it.
    #[must_use]
    pub fn short_length(self, millimetres: f64, most: usize) -> String {
        self.amount(millimetres, "mm", most)
    }

    /// A length in mm as a number in this unit with as few decimals as say it.
    #[must_use]
    pub fn short(self, millimetres: f64, most: usize) -> String {
        let unit = self.unit("mm", most);
        format::short(millimetres * unit.factor, unit.decimals)
    }

    /// A value of an adjustment in words, such as "2.5 mm" or "rear hole".
    #[must_use]
    pub fn value(self, adjustment: &Adjustment, value: &Chosen) -> String {
        match (&adjustment.kind, value) {
            (
                Kind::Slide {
                    unit: Unit::Millimetres,
                    ..
                },
                Chosen::Slide(length),
            )
            | (Kind::Stack { .. }, Chosen::Stack(length)) => self.short_length(*length, 3),
            _ => format::value(adjustment, value),
        }
    }

    /// A sentence of the program's own that tells lengths in mm, such as "the left tie rod is 2.31 mm too short", with
    /// them in this unit.
    #[must_use]
    pub fn sentence(self, sentence: &str) -> String {
        if self == Self::Millimetres {
            return sentence.to_owned();
        }
        let mut parts = sentence.split(" mm");
        let mut told = parts.next().unwrap_or_default().to_owned();
        for part in parts {
            let whole_word = !part.starts_with(|c: char| c.is_alphanumeric());
            let number = told
                .rfind(|c: char| !(c.is_ascii_digit() || c == '.'))
                .map_or(0, |at| {
                    at + told[at..].chars().next().map_or(0, char::len_utf8)
                });
            match told[number..].parse::<f64>() {
                Ok(millimetres) if whole_word => {
                    let decimals = decimals_of(&told[number..]);
                    told.truncate(number);
                    self.convert_start_of_range(&mut told);
                    told.push_str(&self.length(millimetres, decimals));
                }
                _ => told.push_str(" mm"),
            }
            told.push_str(part);
        }
        told
    }

    /// Converts the number at the end of a text such as "give 0.001 to ", which has its unit behind the second one.
    fn convert_start_of_range(self, told: &mut String) {
        const TO: &str = " to ";
        let Some(before) = told.strip_suffix(TO) else {
            return;
        };
        let is_number = |c: char| c.is_ascii_digit() || c == '.';
        let start = before.trim_end_matches(is_number).len();
        let decimals = decimals_of(&before[start..]);
        if let Ok(millimetres) = before[start..].parse::<f64>() {
            let shown = self.unit("mm", decimals);
            let number = format::number(millimetres * shown.factor, shown.decimals);
            told.truncate(start);
            told.push_str(&number);
            told.push_str(TO);
        }
    }
}

/// Decimals of a number as it is written.
fn decimals_of(number: &str) -> usize {
    number.split('.').nth(1).map_or(0, str::len)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_is_25_4_mm() {
        assert!((Units::Inches.millimetres(1.0) - 25.4).abs() < 1e-12);
        assert!((Units::Inches.shown(50.8) - 2.0).abs() < 1e-12);
        assert_eq!(Units::Inches.length(25.4, 1), "1.000 in");
        assert_eq!(Units::Millimetres.length(25.4, 1), "25.4 mm");
        assert_eq!(Units::Inches.short_length(-12.7, 3), "\u{2212}0.5 in");
    }

    #[test]
    fn rates_are_converted_as_their_length_is() {
        let rate = Units::Inches.unit("\u{b0}/mm", 3);
        assert_eq!((rate.sign, rate.decimals), ("\u{b0}/in", 2));
        assert!((0.1 * rate.factor - 2.54).abs() < 1e-12);
        let rate = Units::Inches.unit("mm/\u{b0}", 3);
        assert!((25.4 * rate.factor - 1.0).abs() < 1e-12);
        assert_eq!(Units::Inches.unit("Nm/Nm", 3).sign, "Nm/Nm");
    }

    #[test]
    fn sentences_tell_their_lengths_in_inches() {
        let told = |text| Units::Inches.sentence(text);
        assert_eq!(
            told("the left tie rod is 2.54 mm too short at 5 mm."),
            "the left tie rod is 0.1000 in too short at 0.20 in."
        );
        assert_eq!(told("give 0.001 to 10000 mm"), "give 0.00004 to 393.70 in");
        assert_eq!(told("go to 25.4 mm"), "go to 1.000 in");
        assert_eq!(told("too many mm here"), "too many mm here");
        assert_eq!(told("1.5 mmx"), "1.5 mmx");
        assert_eq!(told("at \u{2212}25.4 mm"), "at \u{2212}1.000 in");
        assert_eq!(told(" mm"), " mm");
    }
}
