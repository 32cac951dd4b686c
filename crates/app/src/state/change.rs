//! Changes of the open setup, and what they are called in the list of steps that can be undone.

use steerloft_setup::setup::{Chosen, Record, Rods, Setup, ValueError};

use crate::format;

/// One change of a setup.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// Another value for an adjustment.
    Adjust {
        /// The adjustment's place in the car's list.
        adjustment: usize,
        /// The value.
        value: Chosen,
    },
    /// The rods set in another way.
    Rods(Rods),
    /// The record written anew.
    Record(Box<Record>),
}

impl Change {
    /// Makes the change.
    pub(super) fn apply(self, setup: &mut Setup) -> Result<(), ValueError> {
        match self {
            Self::Adjust { adjustment, value } => setup.set(adjustment, value),
            Self::Rods(rods) => setup.set_rods(rods),
            Self::Record(record) => {
                setup.record = *record;
                Ok(())
            }
        }
    }
}

/// What the step from one setup to another is called, such as "Servo station 0 mm -> 2 mm".
pub(super) fn label(before: &Setup, after: &Setup) -> String {
    let mut adjusted =
        (0..after.car.adjustments.len()).filter(|&index| before.value(index) != after.value(index));
    if let Some(index) = adjusted.next() {
        let adjustment = &after.car.adjustments[index];
        let others = if adjusted.next().is_some() {
            " and others"
        } else {
            ""
        };
        return format!(
            "{} {} -> {}{others}",
            adjustment.name,
            format::value(adjustment, &before.value(index)),
            format::value(adjustment, &after.value(index))
        );
    }
    if before.rods != after.rods {
        return format!(
            "Rods {} -> {}",
            rods_in_words(&before.rods),
            rods_in_words(&after.rods)
        );
    }
    "Record".to_owned()
}

/// How rods are set, in words.
#[must_use]
pub fn rods_in_words(rods: &Rods) -> String {
    match rods {
        Rods::HoldToe(toe) => format!("toe {}\u{b0}", format::short(*toe, 2)),
        Rods::FixedLength(length) => format!("{} mm", format::short(*length, 2)),
        Rods::FixedLengths { left, right } => {
            format!(
                "{} / {} mm",
                format::short(*left, 2),
                format::short(*right, 2)
            )
        }
    }
}
