//! The solver against published and recalculated values, each with its source beside it.
//!
//! How a source was used is said in three phrases. *Published*: the value is printed in the source named.
//! *Value from memory*: source and value are recalled, not read for this test. *Computed here*: the formula is
//! the source's, the numbers were chosen and computed for this test, outside this program.
//!
//! Millimetres and degrees, unless a length is given in the unit of its source: the solver's lengths scale.
#![allow(clippy::unwrap_used, clippy::panic)]

mod ackermann;
mod camber_with_steer;
mod four_bar;
mod jacking;
mod level_rod;
mod ratio;
mod rig;
mod rotation;
mod signs;
mod spatial_four_bar;
mod steering_axis;
mod toe;
mod trapezium;
mod turning;

/// Asserts that two numbers agree within a tolerance.
#[track_caller]
fn near(actual: f64, expected: f64, tolerance: f64) {
    assert!(
        (actual - expected).abs() <= tolerance,
        "expected {expected} within {tolerance}, got {actual}"
    );
}
