//! The value of a typed sum.
//!
//! A sum is made of products, a product of numbers and brackets. A unit after a product of plain numbers belongs to the
//! whole of it, so "1/8 in" is an eighth of an inch; a whole number before a fraction is added to it, so "1 1/2 in" is an
//! inch and a half.

use super::lexer::Word;
use super::{EntryError, Measure};
use crate::units::Units;

/// Brackets within each other at most.
const DEEPEST: usize = 16;

/// A value on its way: a plain number, or one that a unit has turned into mm or degrees.
#[derive(Debug, Clone, Copy)]
struct Amount {
    value: f64,
    has_unit: bool,
}

/// The value of all words together.
pub(super) fn value(words: &[Word], measure: Measure<'_>, units: Units) -> Result<f64, EntryError> {
    if words.is_empty() {
        return Err(EntryError::Empty);
    }
    let mut reader = Reader {
        words,
        at: 0,
        depth: 0,
        measure,
        units,
    };
    let amount = reader.sum()?;
    match reader.peek() {
        None => Ok(reader.in_unit(amount)),
        Some(Word::Close) => Err(EntryError::Bracket),
        Some(word) => Err(EntryError::SignMissing {
            word: word.quoted(),
        }),
    }
}

struct Reader<'a> {
    words: &'a [Word],
    at: usize,
    depth: usize,
    measure: Measure<'a>,
    units: Units,
}

impl Reader<'_> {
    fn peek(&self) -> Option<&Word> {
        self.words.get(self.at)
    }

    fn take(&mut self, wanted: &Word) -> bool {
        let found = self.peek() == Some(wanted);
        self.at += usize::from(found);
        found
    }

    /// The amount in mm or degrees: a plain one in the unit that is shown.
    fn in_unit(&self, amount: Amount) -> f64 {
        if amount.has_unit {
            amount.value
        } else {
            amount.value * self.measure.bare(self.units)
        }
    }

    fn sum(&mut self) -> Result<Amount, EntryError> {
        let mut total = self.product()?;
        loop {
            let sign = if self.take(&Word::Plus) {
                1.0
            } else if self.take(&Word::Minus) {
                -1.0
            } else {
                return Ok(total);
            };
            let next = self.product()?;
            total = if total.has_unit || next.has_unit {
                Amount {
                    value: self.in_unit(total) + sign * self.in_unit(next),
                    has_unit: true,
                }
            } else {
                Amount {
                    value: total.value + sign * next.value,
                    has_unit: false,
                }
            };
        }
    }

    fn product(&mut self) -> Result<Amount, EntryError> {
        let mut product = self.signed(true)?;
        self.unit(&mut product)?;
        loop {
            let divides = if self.take(&Word::Times) {
                false
            } else if self.take(&Word::Over) {
                true
            } else {
                break;
            };
            let next = self.signed(false)?;
            if (divides || product.has_unit) && next.has_unit {
                return Err(EntryError::UnitTwice);
            }
            if divides && next.value == 0.0 {
                return Err(EntryError::DividedByZero);
            }
            product = Amount {
                value: if divides {
                    product.value / next.value
                } else {
                    product.value * next.value
                },
                has_unit: product.has_unit || next.has_unit,
            };
            self.unit(&mut product)?;
        }
        Ok(product)
    }

    /// A number or bracket with any signs before it; the first of a product may be a mixed number.
    fn signed(&mut self, first: bool) -> Result<Amount, EntryError> {
        let mut sign = 1.0;
        loop {
            if self.take(&Word::Minus) {
                sign = -sign;
            } else if !self.take(&Word::Plus) {
                break;
            }
        }
        let mut amount = self.single(first)?;
        amount.value *= sign;
        Ok(amount)
    }

    fn single(&mut self, first: bool) -> Result<Amount, EntryError> {
        match self.peek() {
            Some(Word::Number(value)) => {
                let mut value = *value;
                self.at += 1;
                if first && value.fract() == 0.0 {
                    value += self.fraction()?;
                }
                Ok(Amount {
                    value,
                    has_unit: false,
                })
            }
            Some(Word::Open) => self.bracket(),
            Some(Word::Close) if self.depth == 0 => Err(EntryError::Bracket),
            _ => Err(EntryError::NumberMissing {
                place: self.place(),
            }),
        }
    }

    /// The fraction of a mixed number, such as the half of "1 1/2"; 0 if none follows.
    fn fraction(&mut self) -> Result<f64, EntryError> {
        let rest = self.words.get(self.at..).unwrap_or_default();
        let [Word::Number(over), Word::Over, Word::Number(under), ..] = rest else {
            return Ok(0.0);
        };
        if *under == 0.0 {
            return Err(EntryError::DividedByZero);
        }
        let fraction = over / under;
        self.at += 3;
        Ok(fraction)
    }

    fn bracket(&mut self) -> Result<Amount, EntryError> {
        self.at += 1;
        self.depth += 1;
        if self.depth > DEEPEST {
            return Err(EntryError::TooDeep);
        }
        let inside = self.sum()?;
        if !self.take(&Word::Close) {
            return Err(EntryError::Bracket);
        }
        self.depth -= 1;
        Ok(inside)
    }

    /// Turns a plain amount into one with the unit that follows, if one does.
    fn unit(&mut self, amount: &mut Amount) -> Result<(), EntryError> {
        let Some(Word::Unit(word)) = self.peek() else {
            return Ok(());
        };
        let factor = self.measure.factor(word)?;
        if amount.has_unit {
            return Err(EntryError::UnitTwice);
        }
        self.at += 1;
        amount.value *= factor;
        amount.has_unit = true;
        Ok(())
    }

    /// Where a number is missing, in words.
    fn place(&self) -> String {
        match (
            self.at.checked_sub(1).and_then(|at| self.words.get(at)),
            self.peek(),
        ) {
            (Some(before), _) => format!("after \u{201c}{}\u{201d}", before.quoted()),
            (None, Some(next)) => format!("before \u{201c}{}\u{201d}", next.quoted()),
            (None, None) => "here".to_owned(),
        }
    }
}
