//! A setup: a car, what is chosen for each of its adjustments, how the rods are set, and the record.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::adjustment::Adjustment;
use crate::car::Car;
use crate::limits::{MAX_LENGTH, MAX_TOE, MIN_LENGTH};
use crate::values::{same_value, short};

pub use crate::record::{Felt, Laps, Parent, Record, Run};

/// A setup document, complete in itself.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Setup {
    /// The car.
    pub car: Car,
    /// Chosen value by adjustment name; an adjustment not listed stands at its base.
    #[serde(default)]
    pub chosen: BTreeMap<String, Chosen>,
    /// How the tie rods are set.
    pub rods: Rods,
    /// The record.
    #[serde(default)]
    pub record: Record,
}

/// A chosen value of an adjustment.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Chosen {
    /// Value of a slide, in its unit.
    Slide(f64),
    /// Total thickness of a stack, mm.
    Stack(f64),
    /// Name of a choice's option.
    Choice(String),
}

/// How the tie rods are set.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Rods {
    /// Rod lengths follow from this toe of each wheel, degrees, toe-in positive, at input 0 and travel 0.
    HoldToe(f64),
    /// Both rods have this centre-to-centre length, mm.
    FixedLength(f64),
    /// Each rod has its own centre-to-centre length, mm.
    FixedLengths {
        /// The left rod.
        left: f64,
        /// The right rod.
        right: f64,
    },
}

/// A value that an adjustment or the rods cannot take.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ValueError {
    /// There is no such adjustment.
    #[error("adjustment {index} of {count} does not exist; they count from 0")]
    NoSuchAdjustment {
        /// The index asked for.
        index: usize,
        /// How many adjustments the car has.
        count: usize,
    },
    /// The value is of another kind than the adjustment.
    #[error("\"{adjustment}\" takes {expected}, not {found}")]
    WrongKind {
        /// Name of the adjustment.
        adjustment: String,
        /// What it takes, such as "a slide's value".
        expected: &'static str,
        /// What was given, likewise.
        found: &'static str,
    },
    /// The value is outside the range.
    #[error("\"{adjustment}\" goes from {least} to {greatest}; {found} is outside")]
    OutOfRange {
        /// Name of the adjustment.
        adjustment: String,
        /// Least value, with its unit.
        least: String,
        /// Greatest value, with its unit.
        greatest: String,
        /// What was given, with its unit.
        found: String,
    },
    /// The spacers at hand cannot make that total.
    #[error(
        "the spacers of \"{adjustment}\" cannot make {found}; the nearest they make is {nearest}"
    )]
    NotAchievable {
        /// Name of the adjustment.
        adjustment: String,
        /// What was given, with its unit.
        found: String,
        /// The nearest total the spacers make, with its unit.
        nearest: String,
    },
    /// There is no option of that name.
    #[error("\"{adjustment}\" has no option \"{found}\"; it has {options}")]
    NoSuchOption {
        /// Name of the adjustment.
        adjustment: String,
        /// What was given.
        found: String,
        /// The options there are, quoted.
        options: String,
    },
    /// The rods cannot be set so.
    #[error("{what} of {found} is not possible; it goes from {least} to {greatest}")]
    Rods {
        /// What was to be set, such as "a rod length".
        what: &'static str,
        /// What was given, with its unit.
        found: String,
        /// Least value, with its unit.
        least: String,
        /// Greatest value, with its unit.
        greatest: String,
    },
}

impl ValueError {
    /// What would be right, as advice that follows the message.
    #[must_use]
    pub(crate) fn right(&self) -> String {
        match self {
            Self::NoSuchAdjustment { .. } => "choose for an adjustment of this car".to_owned(),
            Self::WrongKind { expected, .. } => format!("give {expected}"),
            Self::OutOfRange { .. } | Self::Rods { .. } => "give a value of that range".to_owned(),
            Self::NotAchievable { nearest, .. } => format!("give {nearest}, or list more spacers"),
            Self::NoSuchOption { .. } => "choose one of those".to_owned(),
        }
    }
}

impl Chosen {
    /// What kind of value this is, in words.
    #[must_use]
    pub const fn kind_name(&self) -> &'static str {
        match self {
            Self::Slide(_) => "a slide's value",
            Self::Stack(_) => "a stack's total",
            Self::Choice(_) => "an option's name",
        }
    }
}

impl Setup {
    /// The value of the adjustment at this index: the chosen one, or its base.
    ///
    /// # Panics
    /// If the car has no adjustment at this index, as indexing a list does.
    #[must_use]
    pub fn value(&self, adjustment: usize) -> Chosen {
        self.value_of(&self.car.adjustments[adjustment])
    }

    /// The value of an adjustment of this car: the chosen one, or its base.
    #[must_use]
    pub fn value_of(&self, adjustment: &Adjustment) -> Chosen {
        let chosen = self.chosen.get(&adjustment.name);
        chosen.cloned().unwrap_or_else(|| adjustment.base())
    }

    /// Chooses a value for the adjustment at this index; the base value takes the choice back.
    ///
    /// A slide takes any value of its range: one off its steps can be thought through, though not built
    /// ([`Adjustment::is_buildable`] tells). A total must be one that the spacers at hand make.
    pub fn set(&mut self, adjustment: usize, value: Chosen) -> Result<(), ValueError> {
        let Some(adjustment) = self.car.adjustments.get(adjustment) else {
            return Err(ValueError::NoSuchAdjustment {
                index: adjustment,
                count: self.car.adjustments.len(),
            });
        };
        adjustment.accepts(&value)?;
        if same_value(&value, &adjustment.base()) {
            self.chosen.remove(&adjustment.name);
        } else {
            self.chosen.insert(adjustment.name.clone(), value);
        }
        Ok(())
    }

    /// Sets the rods: a toe within [`MAX_TOE`], or lengths from [`MIN_LENGTH`] to [`MAX_LENGTH`].
    pub fn set_rods(&mut self, rods: Rods) -> Result<(), ValueError> {
        rods.check()?;
        self.rods = rods;
        Ok(())
    }
}

impl Rods {
    /// Whether the rods can be set so.
    pub(crate) fn check(&self) -> Result<(), ValueError> {
        match *self {
            Self::HoldToe(toe) if toe.abs() <= MAX_TOE => Ok(()),
            Self::HoldToe(toe) => Err(ValueError::Rods {
                what: "a toe",
                found: format!("{}°", short(toe)),
                least: format!("{}°", short(-MAX_TOE)),
                greatest: format!("{}°", short(MAX_TOE)),
            }),
            Self::FixedLength(length) => check_rod_length(length),
            Self::FixedLengths { left, right } => {
                check_rod_length(left)?;
                check_rod_length(right)
            }
        }
    }
}

fn check_rod_length(length: f64) -> Result<(), ValueError> {
    if (MIN_LENGTH..=MAX_LENGTH).contains(&length) {
        return Ok(());
    }
    Err(ValueError::Rods {
        what: "a rod length",
        found: format!("{} mm", short(length)),
        least: format!("{} mm", short(MIN_LENGTH)),
        greatest: format!("{} mm", short(MAX_LENGTH)),
    })
}
