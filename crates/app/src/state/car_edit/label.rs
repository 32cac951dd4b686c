//! What a change of the car is called in the list of steps that can be undone.

use steerloft_setup::adjustment::{Adjustment, PointName};
use steerloft_setup::car::{Car, Position, RightCorner};
use steerloft_solver::frame::Side;

use super::super::equipment;
use super::{Field, NUMBERS};
use crate::format;
use crate::units::Units;

/// The name of a step between two cars that differ.
pub(in super::super) fn label(before: &Car, after: &Car, units: Units) -> String {
    adjustments(&before.adjustments, &after.adjustments)
        .or_else(|| sides(before, after))
        .or_else(|| equipment::label(before, after, units))
        .or_else(|| point(before, after, units))
        .or_else(|| number(before, after, units))
        .or_else(|| (before.name != after.name).then(|| format!("Car name: {}", after.name)))
        .or_else(|| (before.build_errors != after.build_errors).then(|| "Build errors".to_owned()))
        .unwrap_or_else(|| "Car notes".to_owned())
}

fn adjustments(before: &[Adjustment], after: &[Adjustment]) -> Option<String> {
    let missing = |one: &Adjustment, list: &[Adjustment]| {
        let mut others = list.iter();
        !others.any(|other| other.name == one.name)
    };
    let added = after.iter().find(|one| missing(one, before));
    let removed = before.iter().find(|one| missing(one, after));
    match (added, removed) {
        (Some(added), Some(removed)) => Some(format!("{} renamed {}", removed.name, added.name)),
        (Some(added), None) => Some(format!("{} added", added.name)),
        (None, Some(removed)) => Some(format!("{} removed", removed.name)),
        (None, None) => {
            let (was, is) = before.iter().zip(after).find(|(was, is)| was != is)?;
            Some(if was.name == is.name {
                format!("{} described", is.name)
            } else {
                "Adjustments in another order".to_owned()
            })
        }
    }
}

fn sides(before: &Car, after: &Car) -> Option<String> {
    match (&before.right, &after.right) {
        (RightCorner::Mirrored, RightCorner::Given(_)) => {
            Some("Right side given separately".to_owned())
        }
        (RightCorner::Given(_), RightCorner::Mirrored) => Some("Right side mirrored".to_owned()),
        _ => None,
    }
}

fn point(before: &Car, after: &Car, units: Units) -> Option<String> {
    let points = PointName::ALL
        .into_iter()
        .flat_map(|point| Side::BOTH.map(|side| (point, side)));
    for (point, side) in points {
        let (Some(was), Some(is)) = (before.point(point, side), after.point(point, side)) else {
            continue;
        };
        if was != is {
            let name = name_of(point, side);
            return Some(format!(
                "{name}: {} to {}",
                position(was, point, units),
                position(is, point, units)
            ));
        }
    }
    None
}

/// Name of a point with its side, if it has one of its own.
fn name_of(point: PointName, side: Side) -> String {
    let mut letters = point.label().chars();
    let name: String = letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .chain(letters)
        .collect();
    if point.is_shared() {
        name
    } else {
        format!("{name}, {side}")
    }
}

fn position(Position(x, y, z): Position, point: PointName, units: Units) -> String {
    let [x, y, z] = [x, y, z].map(|value| {
        if point.is_direction() {
            format::short(value, 3)
        } else {
            units.short(value, 2)
        }
    });
    format!("({x}, {y}, {z})")
}

fn number(before: &Car, after: &Car, units: Units) -> Option<String> {
    let numbers = NUMBERS.into_iter().flat_map(|(_, numbers)| numbers);
    for number in numbers {
        let field = Field::Number(*number);
        let (was, is) = (field.value(before)?, field.value(after)?);
        if was.to_bits() != is.to_bits() {
            let amount = |value| units.amount(value, field.unit(after), 3);
            return Some(format!(
                "{}: {} to {}",
                number.title(),
                amount(was),
                amount(is)
            ));
        }
    }
    None
}
