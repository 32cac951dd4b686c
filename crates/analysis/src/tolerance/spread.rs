//! The spread of a figure, and what it is due to.

use super::quantiles::Quantiles;
use crate::find::Measure;

/// The spread of a figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Spread {
    /// The figure, of one wheel, one turn, or the axle.
    pub measure: Measure,
    /// Its value of the exact car; none where it has none.
    pub exact: Option<f64>,
    /// Where the values of the cars lie; none where none has one.
    pub quantiles: Option<Quantiles>,
    /// Their standard deviation.
    pub deviation: f64,
    /// What it is due to, the most first; what is below a hundredth is left out.
    pub shares: Vec<Share>,
}

/// What part of a spread is due to something.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// Place of the source in the list.
    pub source: usize,
    /// Its share of the variance, 0 to 1.
    pub share: f64,
}

/// Shares of the variance below this are not told: some are due to nothing but the finite number of cars.
const LEAST_SHARE: f64 = 0.01;

/// Shares of the variance of values that are due to each of several independent errors, one list of errors for each value.
///
/// The share is the square of the correlation of the error with the value: for errors independent of each other and a value
/// that depends on them nearly linearly, the standardised regression coefficient squared, and the shares add up to nearly 1
/// (Saltelli and others, "Global Sensitivity Analysis. The Primer", 2008, chapter 1; cited from memory).
pub(super) fn shares(values: &[f64], errors: &[&[f64]], sources: usize) -> (f64, Vec<f64>) {
    #[allow(clippy::cast_precision_loss, reason = "a count of samples")]
    let count = values.len().max(1) as f64;
    let mean = values.iter().sum::<f64>() / count;
    let variance = values
        .iter()
        .map(|value| (value - mean).powi(2))
        .sum::<f64>()
        / count;
    let shares = (0..sources).map(|source| {
        let of_source = || errors.iter().map(|errors| errors[source]);
        let middle = of_source().sum::<f64>() / count;
        let spread = of_source()
            .map(|error| (error - middle).powi(2))
            .sum::<f64>()
            / count;
        let pairs = of_source().zip(values);
        let common = pairs
            .map(|(error, value)| (error - middle) * (value - mean))
            .sum::<f64>()
            / count;
        let both = spread * variance;
        if both > 0.0 {
            common * common / both
        } else {
            0.0
        }
    });
    let shares = shares.collect();
    (variance.sqrt(), shares)
}

/// The shares worth telling, the greatest first.
pub(super) fn greatest(shares: &[f64]) -> Vec<Share> {
    let told = shares.iter().enumerate();
    let mut told: Vec<Share> = told
        .filter(|(_, share)| **share >= LEAST_SHARE)
        .map(|(source, share)| Share {
            source,
            share: *share,
        })
        .collect();
    told.sort_by(|a, b| b.share.total_cmp(&a.share));
    told
}
