//! What can be wrong with a number that was typed.

use thiserror::Error;

use super::LONGEST;

/// Why a text is no value, in words for whoever typed it.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum EntryError {
    /// Nothing was typed.
    #[error("type a number")]
    Empty,
    /// The text is longer than any value needs.
    #[error("this is longer than {LONGEST} characters")]
    TooLong,
    /// Comma and point in one number: it cannot be known which separates the decimals.
    #[error(
        "\u{201c}{number}\u{201d} has more than one comma or point; write one, before the decimals"
    )]
    TwoSeparators {
        /// The number as typed.
        number: String,
    },
    /// A character that belongs to no number, sign or unit.
    #[error("\u{201c}{character}\u{201d} does not belong in a number")]
    Stranger {
        /// The character.
        character: char,
    },
    /// A word that is no unit.
    #[error("\u{201c}{word}\u{201d} is no unit; {right} would be right")]
    UnknownUnit {
        /// The word as typed.
        word: String,
        /// Units that would be right.
        right: String,
    },
    /// A unit of something else, such as degrees for a length.
    #[error("\u{201c}{word}\u{201d} measures something else; {right} would be right")]
    WrongUnit {
        /// The unit as typed.
        word: String,
        /// Units that would be right.
        right: String,
    },
    /// A product or quotient in which two parts have a unit.
    #[error("only one part of a product can have a unit, and not what it is divided by")]
    UnitTwice,
    /// No number where one is needed.
    #[error("a number is missing {place}")]
    NumberMissing {
        /// Where, such as "at the end".
        place: String,
    },
    /// Two numbers side by side.
    #[error("a sign is missing before \u{201c}{word}\u{201d}")]
    SignMissing {
        /// What follows.
        word: String,
    },
    /// A bracket that is not closed, or closes nothing.
    #[error("a bracket is open or one too many")]
    Bracket,
    /// Brackets within brackets without end.
    #[error("too many brackets within each other")]
    TooDeep,
    /// A division by zero.
    #[error("nothing can be divided by 0")]
    DividedByZero,
    /// More than a number can hold.
    #[error("this is too large a number")]
    TooLarge,
}
