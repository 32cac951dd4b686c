//! Changes of the open setup, and what they are called in the list of steps that can be undone.

use steerloft_setup::car::Servo;
use steerloft_setup::check::{Fault, check};
use steerloft_setup::edit::{CarEdit, EditError};
use steerloft_setup::servo::ServoPart;
use steerloft_setup::setup::{Chosen, Record, Rods, Run, Setup, ValueError};

use super::car_edit;
use crate::format;
use crate::units::Units;

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
    /// The car itself changed.
    Car(Box<CarEdit>),
    /// The body of its servo measured anew: the arm moves to where such a servo has it, and stays on its tooth.
    ServoBody(Box<ServoPart>),
}

/// Why a change cannot be made.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub(super) enum ChangeError {
    /// A value that the parts do not allow.
    #[error(transparent)]
    Value(#[from] ValueError),
    /// A car that would not pass its checks.
    #[error(transparent)]
    Car(#[from] EditError),
    /// A record that a file could not hold.
    #[error(transparent)]
    Record(#[from] Fault),
}

impl Change {
    /// Makes the change.
    pub(super) fn apply(self, setup: &mut Setup) -> Result<(), ChangeError> {
        match self {
            Self::Adjust { adjustment, value } => setup.set(adjustment, value)?,
            Self::Rods(rods) => setup.set_rods(rods)?,
            Self::Record(record) => {
                setup.record = *record;
                check(setup)?;
            }
            Self::Car(edit) => *setup = setup.edited(&edit)?,
            Self::ServoBody(part) => {
                let spline = setup.car.servo.and_then(|servo| servo.spline);
                let mut fitted = setup.edited(&CarEdit::FitServo(*part))?;
                if let Some(servo) = fitted.car.servo {
                    fitted = fitted.edited(&CarEdit::Servo(Some(Servo { spline, ..servo })))?;
                }
                *setup = fitted;
            }
        }
        Ok(())
    }
}

/// What the step from one setup to another is called, such as "Servo station: 0 to 2 mm".
pub(super) fn label(before: &Setup, after: &Setup, units: Units) -> String {
    if before.car != after.car {
        return car_edit::label(&before.car, &after.car, units);
    }
    let mut adjusted =
        (0..after.car.adjustments.len()).filter(|&index| before.value(index) != after.value(index));
    if let Some(index) = adjusted.next() {
        let adjustment = &after.car.adjustments[index];
        let others = if adjusted.next().is_some() {
            " and others"
        } else {
            ""
        };
        let (from, to) = (before.value(index), after.value(index));
        return format!(
            "{}: {}{others}",
            adjustment.name,
            from_to(
                &units.value(adjustment, &from),
                &units.value(adjustment, &to)
            )
        );
    }
    if before.rods != after.rods {
        let (from, to) = (
            rods_in_words(&before.rods, units),
            rods_in_words(&after.rods, units),
        );
        return format!("Rods: {}", from_to(&from, &to));
    }
    record(&before.record, &after.record)
}

/// Two values, the unit of both told once where they share it.
pub(super) fn from_to(from: &str, to: &str) -> String {
    let unit = to.rsplit_once(' ').filter(|(number, _)| is_number(number));
    let bare = unit.and_then(|(_, unit)| from.strip_suffix(unit)?.strip_suffix(' '));
    let from = bare.filter(|number| is_number(number)).unwrap_or(from);
    format!("{from} to {to}")
}

fn is_number(text: &str) -> bool {
    let digits = text.trim_start_matches('\u{2212}');
    !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit() || c == '.')
}

/// Which part of the record was written.
fn record(before: &Record, after: &Record) -> String {
    let parts = [
        ("Name", before.name != after.name),
        ("Date", before.date != after.date),
        ("Event", before.event != after.event),
        ("Surface", before.surface != after.surface),
        ("Grip", before.grip != after.grip),
        ("Notes", before.notes != after.notes),
    ];
    if let Some((part, _)) = parts.iter().find(|(_, differs)| *differs) {
        return format!("Record: {}", part.to_lowercase());
    }
    if before.id != after.id {
        return "Record: identity given".to_owned();
    }
    let (was, is) = (before.runs.len(), after.runs.len());
    match is.cmp(&was) {
        std::cmp::Ordering::Greater => format!("Record: run {is} added"),
        std::cmp::Ordering::Less => "Record: a run removed".to_owned(),
        std::cmp::Ordering::Equal => runs(&before.runs, &after.runs),
    }
}

/// Which part of which run was written.
fn runs(before: &[Run], after: &[Run]) -> String {
    let pairs = before.iter().zip(after).enumerate();
    let mut changed = pairs.filter(|(_, (was, is))| was != is);
    let Some((index, (was, is))) = changed.next() else {
        return "Record: runs".to_owned();
    };
    let parts = [
        ("when", was.date != is.date),
        ("surface", was.surface != is.surface),
        ("grip", was.grip != is.grip),
        ("temperature", was.temperature != is.temperature),
        ("tyres", was.tyres != is.tyres),
        ("turning in", was.felt.entry != is.felt.entry),
        ("mid-corner", was.felt.middle != is.felt.middle),
        ("coming out", was.felt.exit != is.felt.exit),
        ("laps", was.laps != is.laps),
        ("found", was.notes != is.notes),
        ("next idea", was.next_idea != is.next_idea),
    ];
    let part = parts.iter().find(|(_, differs)| *differs);
    let part = part.map_or("", |(part, _)| part);
    format!("Run {}: {part}", index + 1)
}

/// How rods are set, in words.
#[must_use]
pub fn rods_in_words(rods: &Rods, units: Units) -> String {
    match rods {
        Rods::HoldToe(toe) => format!("toe {}\u{b0}", format::short(*toe, 2)),
        Rods::FixedLength(length) => units.short_length(*length, 2),
        Rods::FixedLengths { left, right } => {
            format!(
                "{} / {}",
                units.short(*left, 2),
                units.short_length(*right, 2)
            )
        }
    }
}
