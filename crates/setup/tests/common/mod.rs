//! Setups that the tests start from.
#![allow(dead_code, reason = "each test program uses some of these")]

pub(crate) mod axle;
pub(crate) mod wrong_text;

use steerloft_setup::adjustment::{Adjustment, Kind, Place};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;

/// The supplied pan car with swinging upper arms, at base.
pub(crate) fn base_car() -> Setup {
    SUPPLIED[0].setup()
}

/// The supplied pan car with sliding kingpins, at base.
pub(crate) fn sliding_car() -> Setup {
    SUPPLIED[1].setup()
}

/// The supplied car of this file name, at base.
pub(crate) fn car(file_name: &str) -> Setup {
    let mut cars = SUPPLIED.iter();
    let found = cars.find(|supplied| supplied.file_name == file_name);
    found
        .unwrap_or_else(|| panic!("{file_name} is supplied"))
        .setup()
}

/// The text of the supplied car of this file name.
pub(crate) fn text_of(file_name: &str) -> &'static str {
    let mut cars = SUPPLIED.iter();
    let found = cars.find(|supplied| supplied.file_name == file_name);
    found
        .unwrap_or_else(|| panic!("{file_name} is supplied"))
        .text
}

/// Every supplied car, at base.
pub(crate) fn cars() -> impl Iterator<Item = Setup> {
    SUPPLIED
        .iter()
        .map(steerloft_setup::supplied::Supplied::setup)
}

/// The setup with each value that one adjustment can take, both ends of what has no steps included; each with what
/// was changed, in words.
pub(crate) fn one_change_each(setup: &Setup) -> Vec<(String, Setup)> {
    let mut changed = Vec::new();
    for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
        for value in values_of(adjustment) {
            let label = format!(
                "{}, {}: {}",
                setup.car.name,
                adjustment.name,
                adjustment.label_of(&value)
            );
            let mut setup = setup.clone();
            if let Err(error) = setup.set(index, value) {
                panic!("{label}: {error}");
            }
            changed.push((label, setup));
        }
    }
    changed
}

/// Every value an adjustment can take; both ends of a slide without steps.
pub(crate) fn values_of(adjustment: &Adjustment) -> Vec<Chosen> {
    match (&adjustment.kind, adjustment.values()) {
        (_, Some(values)) => values,
        (Kind::Slide { range, .. }, None) => vec![Chosen::Slide(range.0), Chosen::Slide(range.1)],
        (_, None) => panic!("only a slide has no list of values"),
    }
}

/// The setup with one adjustment more, at the end of the list.
pub(crate) fn with_adjustment(setup: &Setup, name: &str, kind: Kind) -> Setup {
    let mut setup = setup.clone();
    setup.car.adjustments.push(Adjustment {
        name: name.to_owned(),
        place: Place::Chassis,
        notes: String::new(),
        kind,
    });
    setup
}

/// Index of the adjustment of this name.
pub(crate) fn index_of(setup: &Setup, name: &str) -> usize {
    let mut adjustments = setup.car.adjustments.iter();
    let found = adjustments.position(|adjustment| adjustment.name == name);
    found.unwrap_or_else(|| panic!("the car has an adjustment \"{name}\""))
}

/// Chooses a value by the adjustment's name.
pub(crate) fn choose(setup: &mut Setup, name: &str, value: Chosen) {
    let index = index_of(setup, name);
    if let Err(error) = setup.set(index, value) {
        panic!("{error}");
    }
}

/// Chooses an option by the adjustment's name.
pub(crate) fn choose_option(setup: &mut Setup, name: &str, option: &str) {
    choose(setup, name, Chosen::Choice(option.to_owned()));
}
