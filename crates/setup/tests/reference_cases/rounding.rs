//! Numbers as a case file holds them: free of the dust that binary fractions leave behind decimals.

use steerloft_solver::frame::{Point, Vector};

/// A number with at most twelve decimals; no negative zero.
pub(crate) fn decimals(value: f64) -> f64 {
    rounded(value, 1e12)
}

pub(crate) fn place(point: &Point) -> [f64; 3] {
    numbers(&point.coords)
}

pub(crate) fn numbers(vector: &Vector) -> [f64; 3] {
    [vector.x, vector.y, vector.z].map(decimals)
}

/// So many values from the least to the greatest, at even steps, with at most six decimals.
pub(crate) fn evenly((least, greatest): (f64, f64), count: u32) -> Vec<f64> {
    let step = (greatest - least) / f64::from(count - 1);
    (0..count)
        .map(|index| rounded(least + step * f64::from(index), 1e6))
        .collect()
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "a serialiser asks by reference"
)]
pub(crate) fn is_zero(value: &f64) -> bool {
    *value == 0.0
}

fn rounded(value: f64, grains: f64) -> f64 {
    (value * grains).round() / grains + 0.0
}
