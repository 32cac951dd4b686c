//! What a document must satisfy beyond its shape: finite numbers within bounds, names used once, references
//! that lead somewhere, axes and levers that have a length.

mod adjustments;
mod car;
mod corner;
mod cross_link;
mod drive;
mod effects;
mod geometry;
mod links;
mod path;
mod readings;
mod record;
mod servo;
mod stock;
mod surroundings;
mod tie_rod_parts;
mod tie_rods;
mod values;

pub use path::{Path, Step};
pub use readings::check_readings;

use crate::setup::{Rods, Setup};
use values::name;

/// What is wrong with a document, and where.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{path}: {wrong}; {right}")]
pub struct Fault {
    /// Where the value stands.
    pub path: Path,
    /// What is wrong with it.
    pub wrong: String,
    /// What would be right.
    pub right: String,
}

impl Fault {
    fn new(path: &Path, wrong: impl Into<String>, right: impl Into<String>) -> Self {
        Self {
            path: path.clone(),
            wrong: wrong.into(),
            right: right.into(),
        }
    }
}

/// Checks a setup; the first fault in the document's order.
pub fn check(setup: &Setup) -> Result<(), Fault> {
    let root = Path::root();
    car::check(&root.field("car"), &setup.car)?;
    check_chosen(&root.field("chosen"), setup)?;
    check_rods(&root.field("rods"), setup.rods)?;
    record::check(&root.field("record"), &setup.record)
}

fn check_chosen(at: &Path, setup: &Setup) -> Result<(), Fault> {
    for (name, value) in &setup.chosen {
        let at = at.key(name);
        let adjustments = &setup.car.adjustments;
        let Some(adjustment) = adjustments
            .iter()
            .find(|adjustment| adjustment.name == *name)
        else {
            let names = adjustments
                .iter()
                .map(|adjustment| adjustment.name.as_str());
            return Err(Fault::new(
                &at,
                format!("a value is chosen for \"{name}\", which is no adjustment of this car"),
                values::one_of(names),
            ));
        };
        if let Err(error) = adjustment.accepts(value) {
            return Err(Fault::new(&at, error.to_string(), error.right()));
        }
    }
    Ok(())
}

fn check_rods(at: &Path, rods: Rods) -> Result<(), Fault> {
    rods.check()
        .map_err(|error| Fault::new(at, error.to_string(), error.right()))
}

/// Checks that names are fit and each used once; `at(i)` is where the i-th stands.
fn unique_names<'a>(
    names: impl Iterator<Item = &'a str>,
    at: impl Fn(usize) -> Path,
    what: &str,
) -> Result<(), Fault> {
    let mut seen: Vec<&str> = Vec::new();
    for (index, found) in names.enumerate() {
        name(&at(index), found)?;
        if let Some(first) = seen.iter().position(|earlier| *earlier == found) {
            return Err(Fault::new(
                &at(index),
                format!(
                    "the name \"{found}\" is used twice, by {what} {} and {}",
                    first + 1,
                    index + 1
                ),
                "give each its own name".to_owned(),
            ));
        }
        seen.push(found);
    }
    Ok(())
}
