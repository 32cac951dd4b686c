//! A range of numbers.

/// From a least to a greatest number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// The least.
    pub from: f64,
    /// The greatest.
    pub to: f64,
}

impl Range {
    /// A range from one number to the other.
    #[must_use]
    pub const fn new(from: f64, to: f64) -> Self {
        Self { from, to }
    }

    /// So much to both sides of zero.
    #[must_use]
    pub const fn around_zero(reach: f64) -> Self {
        Self::new(-reach, reach)
    }

    /// The range widened to hold a value; as it is for a value that is not finite.
    #[must_use]
    pub fn with(self, value: f64) -> Self {
        if value.is_finite() {
            Self::new(self.from.min(value), self.to.max(value))
        } else {
            self
        }
    }

    /// The least range that holds all values; none of no values.
    #[must_use]
    pub fn of(values: impl IntoIterator<Item = f64>) -> Option<Self> {
        let mut finite = values.into_iter().filter(|value| value.is_finite());
        let first = finite.next()?;
        Some(finite.fold(Self::new(first, first), Self::with))
    }

    /// How far it goes.
    #[must_use]
    pub fn length(self) -> f64 {
        self.to - self.from
    }

    /// The range and so much more at both ends.
    #[must_use]
    pub fn widened(self, by: f64) -> Self {
        Self::new(self.from - by, self.to + by)
    }
}

/// The least of 1, 2 and 5 times a power of ten that is no less than this.
#[must_use]
pub fn round_step(least: f64) -> f64 {
    let power = 10_f64.powf(least.max(1e-9).log10().floor());
    let round = [1.0, 2.0, 5.0].map(|digit| digit * power);
    round
        .into_iter()
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}

#[cfg(test)]
mod tests {
    use super::{Range, round_step};

    #[test]
    fn a_range_of_values_holds_them_all() {
        assert_eq!(
            Range::of([2.0, -1.0, f64::NAN, 0.5]),
            Some(Range::new(-1.0, 2.0))
        );
        assert_eq!(Range::of([]), None);
    }

    #[test]
    fn steps_are_round() {
        for (least, round) in [
            (0.1, 0.1),
            (0.11, 0.2),
            (0.3, 0.5),
            (0.7, 1.0),
            (6.0, 10.0),
            (42.0, 50.0),
        ] {
            let step = round_step(least);
            assert!((step - round).abs() < 1e-12, "{least}: {step}");
        }
    }
}
