//! The list of stocks: spacers at hand that several stacks share.

use steerloft_setup::adjustment::{Kind, Spacer};
use steerloft_setup::car::Car;
use steerloft_setup::edit::CarEdit;
use steerloft_setup::stock::Stock;

/// The edit that changes one of them; none where there is none at this place.
#[must_use]
pub fn changed(car: &Car, index: usize, change: impl FnOnce(&mut Stock)) -> Option<CarEdit> {
    let mut stock = car.stock.clone();
    change(stock.get_mut(index)?);
    Some(CarEdit::Stock(stock))
}

/// The edit that adds one with a name of its own.
#[must_use]
pub fn added(car: &Car) -> CarEdit {
    let names: Vec<&str> = car.stock.iter().map(|one| one.name.as_str()).collect();
    let mut stock = car.stock.clone();
    let spacers = |thickness, count| Spacer { thickness, count };
    stock.push(Stock {
        name: super::fresh_name("Spacers", &names),
        parts: vec![spacers(0.5, 4), spacers(1.0, 8)],
    });
    CarEdit::Stock(stock)
}

/// The edit that takes one away.
#[must_use]
pub fn without(car: &Car, index: usize) -> CarEdit {
    let mut stock = car.stock.clone();
    if index < stock.len() {
        stock.remove(index);
    }
    CarEdit::Stock(stock)
}

/// Names of the adjustments that take from a stock.
pub fn takers<'a>(car: &'a Car, stock: &'a str) -> impl Iterator<Item = &'a str> {
    let adjustments = car.adjustments.iter();
    adjustments.filter_map(move |adjustment| match &adjustment.kind {
        Kind::Stack {
            stock: Some(from), ..
        } if from.name == stock => Some(adjustment.name.as_str()),
        _ => None,
    })
}
