//! The ways in which tie rods are set.

use steerloft_setup::setup::Rods;
use steerloft_solver::frame::Sides;

/// What is given for the rods, apart from its value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RodMode {
    /// The toe of each wheel is given; the lengths follow.
    HoldToe,
    /// One length for both rods is given; toe follows.
    OneLength,
    /// A length for each rod is given; toe follows.
    TwoLengths,
}

/// In which way the rods are set.
#[must_use]
pub fn rod_mode(rods: &Rods) -> RodMode {
    match rods {
        Rods::HoldToe(_) => RodMode::HoldToe,
        Rods::FixedLength(_) => RodMode::OneLength,
        Rods::FixedLengths { .. } => RodMode::TwoLengths,
    }
}

/// Rods set in the wanted way so that the car changes as little as that way allows.
///
/// `lengths` are the lengths the rods have at present, mm; `toe` the toe of the wheels at rest, degrees. One length for
/// both rods is the mean of the two.
#[must_use]
pub fn with_mode(mode: RodMode, lengths: Sides<f64>, toe: Sides<f64>) -> Rods {
    match mode {
        RodMode::HoldToe => Rods::HoldToe(hundredths(f64::midpoint(toe.left, toe.right))),
        RodMode::OneLength => {
            Rods::FixedLength(hundredths(f64::midpoint(lengths.left, lengths.right)))
        }
        RodMode::TwoLengths => Rods::FixedLengths {
            left: hundredths(lengths.left),
            right: hundredths(lengths.right),
        },
    }
}

/// Rounded to what callipers and gauges can tell.
fn hundredths(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}
