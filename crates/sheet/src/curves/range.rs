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

    /// How far it goes.
    #[must_use]
    pub fn length(self) -> f64 {
        self.to - self.from
    }
}
