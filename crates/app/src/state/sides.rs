//! The sides held against each other, worked out while the window goes on.

use steerloft_analysis::effects::INNER;
use steerloft_analysis::symmetry::{Explanation, Symmetry};

use super::{Bench, Moment, WorkedOut};

/// How alike the sides of the setup are that is worked on.
#[derive(Debug, Default)]
pub struct Sides {
    answers: WorkedOut<Moment, Result<Symmetry, String>>,
}

impl Sides {
    /// Has the sides compared for the setup as it stands, if that is not done or under way, and wakes the window then.
    pub fn follow(&mut self, bench: &Bench, wake: impl FnOnce() + Send + 'static) {
        let setup = bench.setup().clone();
        let work = move || Symmetry::of(&setup, INNER).map_err(|reason| reason.to_string());
        self.answers.ask(bench.moment(), wake, work);
    }

    /// The last comparison, or why there is none.
    #[must_use]
    pub fn last(&self) -> Option<&Result<Symmetry, String>> {
        self.answers.last()
    }

    /// Whether a newer one is being worked out.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answers.is_working()
    }
}

/// An explanation with how much of the difference it takes away.
#[must_use]
pub fn explained(explanation: &Explanation) -> String {
    format!(
        "{} ({:.0} % of it)",
        explanation.words,
        100.0 * explanation.share
    )
}
