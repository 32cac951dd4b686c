//! Numbers as people type them: decimal comma or point, sums and products, and units.
//!
//! [`read`] turns a text such as "2+0,5", "1/8 in" or "2 in + 0.5" into a value in mm or degrees, or says in words what is
//! wrong with it. It knows no screen, takes any text and never panics.

mod error;
mod lexer;
mod measure;
mod sum;

pub use error::EntryError;
pub use measure::Measure;

use crate::units::Units;

/// Longest text that is read, characters.
pub const LONGEST: usize = 120;

/// Reads what was typed for a value: mm for a length, degrees for an angle, the number itself for anything else.
///
/// A number without a unit of its own is taken in the unit that is shown: mm or inches for lengths, degrees for angles.
pub fn read(text: &str, measure: Measure<'_>, units: Units) -> Result<f64, EntryError> {
    if text.chars().nth(LONGEST).is_some() {
        return Err(EntryError::TooLong);
    }
    let words = lexer::words(text)?;
    let value = sum::value(&words, measure, units)?;
    if value.is_finite() {
        Ok(value)
    } else {
        Err(EntryError::TooLarge)
    }
}

/// Whether a text says more than one plain number, so that its result is worth showing while it is typed.
#[must_use]
pub fn is_reckoned(text: &str) -> bool {
    let digits = text.trim().trim_start_matches(['-', '+', '\u{2212}']);
    !digits
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',') || c.is_whitespace())
}

#[cfg(test)]
mod tests;
