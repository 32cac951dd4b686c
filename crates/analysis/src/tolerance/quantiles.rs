//! Where values lie.

/// Where the values of a sample lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quantiles {
    /// The least.
    pub least: f64,
    /// Five in a hundred are below.
    pub low: f64,
    /// The middle one.
    pub middle: f64,
    /// Five in a hundred are above.
    pub high: f64,
    /// The greatest.
    pub greatest: f64,
}

/// Share of the values below [`Quantiles::low`] and above [`Quantiles::high`].
const TAIL: f64 = 0.05;

impl Quantiles {
    /// Of finite values, which are put in order; none of none.
    #[must_use]
    pub fn of(values: &mut [f64]) -> Option<Self> {
        values.sort_by(f64::total_cmp);
        let (least, greatest) = (*values.first()?, *values.last()?);
        Some(Self {
            least,
            low: at_share(values, TAIL)?,
            middle: at_share(values, 0.5)?,
            high: at_share(values, 1.0 - TAIL)?,
            greatest,
        })
    }

    /// Width of the band that nine in ten lie in.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.high - self.low
    }
}

/// The value at a share of ordered values, between two of them by proportion (definition 7 of Hyndman and Fan, "Sample
/// Quantiles in Statistical Packages", The American Statistician 50(4), 1996; cited from memory).
#[allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "counts of samples, and a share from 0 to 1"
)]
fn at_share(ordered: &[f64], share: f64) -> Option<f64> {
    let place = share * ordered.len().checked_sub(1)? as f64;
    let below = place.floor();
    let (low, high) = (
        *ordered.get(below as usize)?,
        *ordered.get(place.ceil() as usize)?,
    );
    Some(low + (high - low) * (place - below))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn quantiles_lie_between_values_by_proportion() {
        let mut values: Vec<f64> = (0..=100).rev().map(f64::from).collect();
        let quantiles = Quantiles::of(&mut values).unwrap();
        let Quantiles {
            least,
            low,
            middle,
            high,
            greatest,
        } = quantiles;
        let pairs = [least, low, middle, high, greatest]
            .into_iter()
            .zip([0.0, 5.0, 50.0, 95.0, 100.0]);
        for (value, wanted) in pairs {
            assert!((value - wanted).abs() < 1e-12, "{value} for {wanted}");
        }
        let pair = Quantiles::of(&mut [3.0, 1.0]).unwrap();
        assert!((pair.middle - 2.0).abs() < 1e-12 && (pair.low - 1.1).abs() < 1e-12);
        assert_eq!(Quantiles::of(&mut []), None);
    }
}
