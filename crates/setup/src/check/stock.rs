//! Checks of the stocks and of the stacks that take from them.

use super::adjustments::check_part;
use super::values::{count, one_of, whole};
use super::{Fault, Path, unique_names};
use crate::adjustment::{FromStock, Kind};
use crate::car::Car;
use crate::limits::{MAX_PLACES, MAX_SPACER_SIZES, MAX_STOCKED, MAX_STOCKS};
use crate::values::{SAME_VALUE, short};

/// Checks the car's stocks.
pub(super) fn check(at: &Path, car: &Car) -> Result<(), Fault> {
    count(at, car.stock.len(), MAX_STOCKS, "stocks")?;
    let names = car.stock.iter().map(|stock| stock.name.as_str());
    unique_names(names, |index| at.item(index).field("name"), "stocks")?;
    for (index, stock) in car.stock.iter().enumerate() {
        let at = at.item(index).field("parts");
        if stock.parts.is_empty() {
            return Err(Fault::new(
                &at,
                "this stock has no spacers",
                "give at least one, such as (thickness: 1.0, count: 8)",
            ));
        }
        count(&at, stock.parts.len(), MAX_SPACER_SIZES, "sizes of spacer")?;
        for index in 0..stock.parts.len() {
            check_part(&at.item(index), &stock.parts, index, MAX_STOCKED)?;
        }
    }
    Ok(())
}

/// Checks what the stacks take from stocks; `at` is the list of adjustments.
pub(super) fn check_taken(at: &Path, car: &Car) -> Result<(), Fault> {
    for (index, adjustment) in car.adjustments.iter().enumerate() {
        let Kind::Stack {
            parts,
            stock: Some(FromStock { name, places }),
            ..
        } = &adjustment.kind
        else {
            continue;
        };
        let kind_at = at.item(index).field("kind");
        let at = kind_at.field("stock").item(0);
        let Some(stock) = car.stock.iter().find(|stock| stock.name == *name) else {
            return Err(Fault::new(
                &at.field("name"),
                format!("\"{name}\" names no stock of this car"),
                one_of(car.stock.iter().map(|stock| stock.name.as_str())),
            ));
        };
        whole(&at.field("places"), *places, 1, MAX_PLACES, "places")?;
        for (index, part) in parts.iter().enumerate() {
            let held = stock
                .parts
                .iter()
                .any(|held| (held.thickness - part.thickness).abs() < SAME_VALUE);
            if !held {
                return Err(Fault::new(
                    &kind_at.field("parts").item(index).field("thickness"),
                    format!(
                        "the stock \"{name}\" has no spacers of {} mm",
                        short(part.thickness)
                    ),
                    "list them in the stock, or leave them out here",
                ));
            }
        }
    }
    Ok(())
}
