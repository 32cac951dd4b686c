//! Setups that the tests start from.
#![allow(dead_code, reason = "each test program uses some of these")]

pub(crate) mod axle;

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
