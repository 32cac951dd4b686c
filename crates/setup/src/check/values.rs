//! Checks of single values.

use super::{Fault, Path};
use crate::car::Position;
use crate::limits::{MAX_LENGTH, MAX_NAME, MAX_TEXT, MIN_LENGTH};
use crate::values::{listed, short};

/// A finite number from `least` to `greatest`, in `unit`, such as "mm"; none for a bare number.
pub(super) fn number(
    at: &Path,
    value: f64,
    least: f64,
    greatest: f64,
    unit: &str,
) -> Result<(), Fault> {
    if value.is_finite() && (least..=greatest).contains(&value) {
        return Ok(());
    }
    let wrong = if value.is_finite() {
        format!(
            "{} is not a sensible value here",
            format!("{value} {unit}").trim_end()
        )
    } else {
        "this is not a finite number".to_owned()
    };
    let right = format!("give {} to {} {unit}", short(least), short(greatest));
    let right = right.trim_end();
    Err(Fault::new(at, wrong, right))
}

/// A whole number from `least` to `greatest` of something.
pub(super) fn whole(
    at: &Path,
    value: u32,
    least: u32,
    greatest: u32,
    what: &str,
) -> Result<(), Fault> {
    if (least..=greatest).contains(&value) {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("{value} {what} is not a sensible number here"),
        format!("give {least} to {greatest}"),
    ))
}

/// A coordinate, length or displacement of any sign, mm.
pub(super) fn coordinate(at: &Path, value: f64) -> Result<(), Fault> {
    number(at, value, -MAX_LENGTH, MAX_LENGTH, "mm")
}

/// A length that must not vanish, mm.
pub(super) fn length(at: &Path, value: f64) -> Result<(), Fault> {
    number(at, value, MIN_LENGTH, MAX_LENGTH, "mm")
}

/// A place or displacement: three coordinates.
pub(super) fn position(at: &Path, value: Position) -> Result<(), Fault> {
    let coordinates = [value.0, value.1, value.2];
    for (index, coordinate_value) in coordinates.into_iter().enumerate() {
        coordinate(&at.item(index), coordinate_value)?;
    }
    Ok(())
}

/// A direction: three bounded numbers that do not vanish together.
pub(super) fn direction(at: &Path, value: Position) -> Result<(), Fault> {
    position(at, value)?;
    if value.vector().norm() >= MIN_LENGTH {
        return Ok(());
    }
    Err(Fault::new(
        at,
        "this direction has no length",
        "give a vector such as (1.0, 0.0, 0.0)",
    ))
}

/// Least and greatest of a range, each within bounds and in this order; `may_vanish` lets both be equal.
pub(super) fn range(
    at: &Path,
    value: (f64, f64),
    bounds: (f64, f64),
    unit: &str,
    may_vanish: bool,
) -> Result<(), Fault> {
    number(&at.item(0), value.0, bounds.0, bounds.1, unit)?;
    number(&at.item(1), value.1, bounds.0, bounds.1, unit)?;
    if value.0 < value.1 || (may_vanish && value.0 <= value.1) {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!(
            "the range from {} to {} {unit} is not in order",
            short(value.0),
            short(value.1)
        ),
        "give the least value first and the greatest after it",
    ))
}

/// A name: not empty, on one line, not too long, no blanks around it.
pub(super) fn name(at: &Path, value: &str) -> Result<(), Fault> {
    let wrong = if value.is_empty() {
        "this name is empty"
    } else if value.trim() != value {
        "this name has blanks around it"
    } else if value.chars().any(char::is_control) {
        "this name holds a control character"
    } else if value.chars().count() > MAX_NAME {
        "this name is too long"
    } else {
        return Ok(());
    };
    let right = format!("give a name of 1 to {MAX_NAME} characters on one line");
    Err(Fault::new(at, wrong, right))
}

/// Free text, not too long.
pub(super) fn text(at: &Path, value: &str) -> Result<(), Fault> {
    let characters = value.chars().count();
    if characters <= MAX_TEXT {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("this text has {characters} characters"),
        format!("keep it to {MAX_TEXT}"),
    ))
}

/// How many of something there may be.
pub(super) fn count(at: &Path, found: usize, most: usize, what: &str) -> Result<(), Fault> {
    if found <= most {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("there are more than {most} {what} here"),
        format!("keep it to {most}"),
    ))
}

/// Advice that names what there is to choose from.
pub(super) fn one_of<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let listed = listed(names);
    if listed.is_empty() {
        "there is none to choose from".to_owned()
    } else {
        format!("choose one of {listed}")
    }
}
