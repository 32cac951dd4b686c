//! Wants: what a setup should do, and how far it is from that.

use super::measure::Measure;

/// What a figure should be. A whole curve says so by its own points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Target {
    /// This value.
    Value(f64),
    /// Anything from the first to the second.
    Range(f64, f64),
}

impl Target {
    /// How far a value is from the target; 0 where it is met.
    #[must_use]
    pub fn deviation(&self, value: f64) -> f64 {
        match *self {
            Self::Value(wanted) => (value - wanted).abs(),
            Self::Range(least, most) => (least - value).max(value - most).max(0.0),
        }
    }
}

/// Something wanted of a setup.
#[derive(Debug, Clone, PartialEq)]
pub struct Want {
    /// Of what.
    pub measure: Measure,
    /// What it should be; not looked at for a whole curve.
    pub target: Target,
    /// How much it matters against the other wants; 1 for all that matter alike.
    pub weight: f64,
}

impl Want {
    /// What a setup's values cost: the square of the deviation in noticeable differences, times the weight. Without a
    /// value, nothing is.
    pub(super) fn cost(&self, deviation: Option<f64>) -> Option<f64> {
        let steps = deviation? / self.measure.noticeable();
        Some(self.weight * steps * steps)
    }

    /// How far values (one for each wheel meant) are from the target, in the measure's unit: of several the farthest. A
    /// curve's values are its deviations already.
    pub(super) fn deviation(&self, mut values: impl Iterator<Item = Option<f64>>) -> Option<f64> {
        values.try_fold(0.0_f64, |farthest, value| {
            let off = if self.measure.curve().is_some() {
                value?
            } else {
                self.target.deviation(value?)
            };
            Some(farthest.max(off))
        })
    }

    /// Whether a deviation is no more than a builder notices.
    pub(super) fn is_met(&self, deviation: f64) -> bool {
        deviation <= self.measure.noticeable()
    }
}
