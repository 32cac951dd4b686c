//! Edits of the list of adjustments, with what is chosen for them.

use super::EditError;
use crate::adjustment::{Adjustment, FromStock, Kind};
use crate::car::Car;
use crate::setup::Setup;
use crate::values::same_value;

fn index_in(car: &Car, index: usize) -> Result<(), EditError> {
    let count = car.adjustments.len();
    if index < count {
        return Ok(());
    }
    Err(EditError::NoSuchAdjustment { index, count })
}

/// Puts an adjustment into the list; behind its end means at its end.
pub(super) fn add(car: &mut Car, at: usize, adjustment: Adjustment) {
    let at = at.min(car.adjustments.len());
    car.adjustments.insert(at, adjustment);
}

/// Renames an adjustment and takes its chosen value along. A name that another has is left for the check to refuse.
pub(super) fn rename(setup: &mut Setup, index: usize, name: String) -> Result<(), EditError> {
    index_in(&setup.car, index)?;
    let is_taken = setup.car.adjustments.iter().any(|other| other.name == name);
    let adjustment = &mut setup.car.adjustments[index];
    if !is_taken && let Some(value) = setup.chosen.remove(&adjustment.name) {
        setup.chosen.insert(name.clone(), value);
    }
    adjustment.name = name;
    Ok(())
}

/// Replaces all of an adjustment but its name.
pub(super) fn replace(
    setup: &mut Setup,
    index: usize,
    adjustment: Adjustment,
) -> Result<(), EditError> {
    index_in(&setup.car, index)?;
    let held = &mut setup.car.adjustments[index];
    let name = std::mem::take(&mut held.name);
    *held = Adjustment { name, ..adjustment };
    if let Some(value) = setup.chosen.remove(&held.name) {
        let value = if held.accepts(&value).is_ok() {
            value
        } else {
            held.nearest(&value)
        };
        if !same_value(&value, &held.base()) {
            setup.chosen.insert(held.name.clone(), value);
        }
    }
    Ok(())
}

/// Moves an adjustment to another index; behind the end means to the end.
pub(super) fn reorder(car: &mut Car, from: usize, to: usize) -> Result<(), EditError> {
    index_in(car, from)?;
    let adjustment = car.adjustments.remove(from);
    add(car, to, adjustment);
    Ok(())
}

/// Removes an adjustment with what is chosen for it.
pub(super) fn remove(setup: &mut Setup, index: usize) -> Result<(), EditError> {
    index_in(&setup.car, index)?;
    let adjustment = setup.car.adjustments.remove(index);
    setup.chosen.remove(&adjustment.name);
    Ok(())
}

/// Renames a stock where it stands and in the stacks that take from it.
pub(super) fn rename_stock(car: &mut Car, index: usize, name: &str) -> Result<(), EditError> {
    let count = car.stock.len();
    let Some(stock) = car.stock.get_mut(index) else {
        return Err(EditError::NoSuchStock { index, count });
    };
    let before = std::mem::replace(&mut stock.name, name.to_owned());
    for adjustment in &mut car.adjustments {
        if let Kind::Stack {
            stock: Some(FromStock { name: from, .. }),
            ..
        } = &mut adjustment.kind
            && *from == before
        {
            name.clone_into(from);
        }
    }
    Ok(())
}
