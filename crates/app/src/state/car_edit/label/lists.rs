//! What a change of the obstacles or of the spacers at hand is called.

use steerloft_setup::car::Car;

use super::super::super::change::from_to;
use super::super::{Axis, Field, ObstacleField};
use crate::format;
use crate::units::Units;

/// The step between two lists of obstacles; nothing where they are the same.
pub(super) fn obstacles(before: &Car, after: &Car, units: Units) -> Option<String> {
    let (was, is) = (&before.obstacles, &after.obstacles);
    let names = |list: &[steerloft_setup::car::Obstacle]| {
        list.iter().map(|one| one.name.clone()).collect::<Vec<_>>()
    };
    if let Some(told) = named(&names(was), &names(is), "Obstacle ") {
        return Some(told);
    }
    let index = was.iter().zip(is).position(|(was, is)| was != is)?;
    let name = &is[index].name;
    let number = numbers().find_map(|(words, number)| {
        let field = Field::Obstacle(index, number);
        let (from, to) = (field.value(before)?, field.value(after)?);
        if field.unit(before) != field.unit(after) || from.to_bits() == to.to_bits() {
            return None;
        }
        let amount = |value| match field.unit(after) {
            "" => format::short(value, 3),
            unit => units.amount(value, unit, 3),
        };
        Some(format!(
            "Obstacle {name}, {words}: {}",
            from_to(&amount(from), &amount(to))
        ))
    });
    Some(number.unwrap_or_else(|| format!("Obstacle {name} described")))
}

/// The step between two lists of stocks; nothing where they are the same.
pub(super) fn stocks(before: &Car, after: &Car) -> Option<String> {
    let (was, is) = (&before.stock, &after.stock);
    let names = |list: &[steerloft_setup::stock::Stock]| {
        list.iter().map(|one| one.name.clone()).collect::<Vec<_>>()
    };
    named(&names(was), &names(is), "Box of spacers ").or_else(|| {
        let pairs = was.iter().zip(is);
        let (_, changed) = pairs.into_iter().find(|(was, is)| was != is)?;
        Some(format!("Spacers in {}", changed.name))
    })
}

/// What came, went or was renamed between two lists of names.
fn named(before: &[String], after: &[String], what: &str) -> Option<String> {
    let missing_in = |list: &[String], name: &&String| !list.contains(*name);
    let added = after.iter().find(|name| missing_in(before, name));
    let removed = before.iter().find(|name| missing_in(after, name));
    match (added, removed) {
        (Some(added), Some(removed)) => Some(format!("{what}{removed} renamed {added}")),
        (Some(added), None) => Some(format!("{what}{added} added")),
        (None, Some(removed)) => Some(format!("{what}{removed} removed")),
        (None, None) => None,
    }
}

/// Every number of an obstacle, with what it is called in a step.
fn numbers() -> impl Iterator<Item = (String, ObstacleField)> {
    let of = |word: &'static str, number: fn(Axis) -> ObstacleField| {
        Axis::ALL.map(move |axis| (format!("{word} {}", axis.letter()), number(axis)))
    };
    let places = of("place", ObstacleField::Place);
    places
        .into_iter()
        .chain(of("extent", ObstacleField::Extent))
}
