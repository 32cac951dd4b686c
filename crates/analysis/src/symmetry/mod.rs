//! How alike the two sides are, and what single change would explain a difference.
//!
//! Each figure of the left wheel, or of the turn to the left, is held against that of the right one. Where they differ by
//! more than a builder notices, every single thing that could be off on one side is tried: it is changed until the
//! differences are as small as it can make them (one unknown, Gauss and Newton's iteration on solved setups), and those
//! that take away nearly all of it are told: what a builder sets before what is made so, and then the smallest first.

mod cause;
mod difference;
mod explain;

use steerloft_setup::layout::assemble;
use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;

pub use cause::Cause;
pub use difference::Difference;
pub use explain::{Explanation, LEAST_SHARE};

use self::difference::{differences, pairs};
use crate::find::{Gauge, Measure, Progress, Wheel};

/// The sides held against each other.
#[derive(Debug, Clone, PartialEq)]
pub struct Symmetry {
    /// The figures of both sides.
    pub differences: Vec<Difference>,
    /// Single changes that explain the differences: those that explain all of it first, of those what a builder sets first,
    /// then by size.
    pub explanations: Vec<Explanation>,
}

impl Symmetry {
    /// The symmetry of a setup, the Ackermann share taken with the inner wheel at an angle, degrees.
    ///
    /// # Errors
    /// Why the setup cannot be assembled.
    pub fn of(setup: &Setup, inner: f64) -> Result<Self, SolveError> {
        Self::watched(setup, inner, &Progress::default())
    }

    /// As [`Symmetry::of`], by something that is told how far the search for explanations is and may stop it; then those
    /// found so far are told.
    ///
    /// # Errors
    /// As [`Symmetry::of`].
    pub fn watched(setup: &Setup, inner: f64, progress: &Progress) -> Result<Self, SolveError> {
        let gauge = Gauge::of(setup);
        let pairs = pairs(inner);
        let differences = differences(&gauge, &assemble(setup)?, &pairs);
        let explanations = if differences.iter().any(Difference::is_noticeable) {
            explain::explanations(setup, &gauge, &pairs, &differences, progress)
        } else {
            Vec::new()
        };
        Ok(Self {
            differences,
            explanations,
        })
    }

    /// The difference that is noticed most: of the locks if they differ, of the rods only if nothing else does; none where
    /// none is noticed.
    #[must_use]
    pub fn greatest(&self) -> Option<&Difference> {
        let noticed = self.differences.iter();
        let matter = |one: &Difference| match one.measure {
            Measure::LockLeft(Wheel::Left) => 2,
            Measure::RodLength(_) => 0,
            _ => 1,
        };
        let size = |one: &Difference| one.in_noticeable().abs();
        noticed
            .filter(|difference| difference.is_noticeable())
            .max_by(|a, b| {
                let what = matter(a).cmp(&matter(b));
                what.then(size(a).total_cmp(&size(b)))
            })
    }

    /// What is found, in a sentence: "Left locks 1.4° earlier: servo arm off centre by 0.80°".
    #[must_use]
    pub fn finding(&self) -> Option<String> {
        let what = self.greatest()?.words();
        Some(match self.explanations.first() {
            Some(explanation) => format!("{what}: {}", explanation.words),
            None => format!("{what}: no single change explains it"),
        })
    }
}
