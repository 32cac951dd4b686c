//! The length of the next step along a path that is followed by trial.

/// Shortest step that is tried, as a share of the path. A path stalls this close to a lock.
pub(crate) const SHORTEST_STEP: f64 = 1e-12;

/// The step that is tried next, as a share of the path: the whole path first, half after a failure, and the double after a
/// step that went.
///
/// A longer step is tried after every one that went: where such tries were made rarer, a lock was told short of where it is.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pace {
    /// The step, as a share of the path.
    pub(crate) step: f64,
}

impl Pace {
    pub(crate) fn new() -> Self {
        Self { step: 1.0 }
    }

    /// The step went.
    pub(crate) fn went(&mut self) {
        self.step *= 2.0;
    }

    /// The step failed. Nothing is left to try below [`SHORTEST_STEP`].
    pub(crate) fn failed(&mut self) -> Option<()> {
        self.step *= 0.5;
        (self.step >= SHORTEST_STEP).then_some(())
    }
}

#[cfg(test)]
mod tests {
    use super::{Pace, SHORTEST_STEP};

    #[test]
    fn steps_double_while_they_go() {
        let mut pace = Pace::new();
        pace.failed();
        pace.failed();
        assert!(pace.step.total_cmp(&0.25).is_eq());
        pace.went();
        assert!(pace.step.total_cmp(&0.5).is_eq());
        pace.went();
        assert!(pace.step.total_cmp(&1.0).is_eq());
    }

    #[test]
    fn the_shortest_step_is_the_last() {
        let mut pace = Pace::new();
        let tries = std::iter::from_fn(|| pace.failed()).count();
        assert_eq!(tries, 39);
        assert!(pace.step < SHORTEST_STEP && pace.step * 2.0 >= SHORTEST_STEP);
    }
}
