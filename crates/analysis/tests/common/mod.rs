//! Setups that the tests start from.
#![allow(dead_code, reason = "each test program uses some of these")]

use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;

/// The supplied pan car with swinging upper arms, at base.
pub(crate) fn pan_car() -> Setup {
    SUPPLIED[0].setup()
}

/// The supplied car of this file name, at base.
pub(crate) fn car(file_name: &str) -> Setup {
    let mut cars = SUPPLIED.iter();
    let found = cars.find(|supplied| supplied.file_name == file_name);
    found
        .unwrap_or_else(|| panic!("{file_name} is supplied"))
        .setup()
}

/// Every supplied car, at base.
pub(crate) fn cars() -> impl Iterator<Item = Setup> {
    SUPPLIED
        .iter()
        .map(steerloft_setup::supplied::Supplied::setup)
}

/// Chooses a value by the adjustment's name.
pub(crate) fn choose(setup: &mut Setup, name: &str, value: Chosen) {
    let mut adjustments = setup.car.adjustments.iter();
    let index = adjustments
        .position(|adjustment| adjustment.name == name)
        .unwrap_or_else(|| panic!("the car has an adjustment \"{name}\""));
    if let Err(error) = setup.set(index, value) {
        panic!("{error}");
    }
}
