//! What the benches are held against: every pose closed afresh by a general Newton iteration on all bodies and joints of the
//! axle.

#![allow(
    dead_code,
    unreachable_pub,
    clippy::expect_used,
    reason = "shared by several benches, as the general closure is with the solver's"
)]

#[path = "../../../solver/benches/general_newton/mod.rs"]
pub mod general_newton;

use general_newton::axle::{Division, GeneralAxle};
use steerloft_setup::layout::assemble;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;

/// Steps in which the general closure is led to an end of the steering.
const STEPS: u32 = 6;

/// Whether it is measured: Cargo passes `--bench` then; anything else is a trial run.
pub fn measures() -> bool {
    std::env::args().any(|argument| argument == "--bench")
        && std::env::args().all(|argument| argument != "--test")
}

/// The setup of a supplied car, by the name of its file.
pub fn supplied(file: &str) -> Setup {
    let supplied = SUPPLIED.iter().find(|car| car.file_name == file);
    supplied.expect("the cars are supplied").setup()
}

/// Closes the poses of a setup at some wheel travels straight ahead, and a few to both ends of the steering. How many closed.
pub fn closed(setup: &Setup, travels: &[f64]) -> usize {
    let Ok(assembly) = assemble(setup) else {
        return 0;
    };
    let drawn = GeneralAxle::new(&assembly, Division::Whole);
    let mut closed = 0;
    for travel in travels {
        closed += usize::from(drawn.clone().close(0.0, *travel));
    }
    let (from, to) = setup.car.ranges.input;
    for end in [from.to_radians(), to.to_radians()] {
        let mut axle = drawn.clone();
        for step in 1..=STEPS {
            let input = end * f64::from(step) / f64::from(STEPS);
            closed += usize::from(axle.close(input, 0.0));
        }
    }
    closed
}
