//! The length of the next step along a path that is followed by trial.

/// Shortest step that is tried, as a share of the path. A path stalls this close to a lock.
pub(crate) const SHORTEST_STEP: f64 = 1e-12;

/// How many times over a step must have been sure for one of twice its length to be tried. What makes a step sure changes little
/// from one to the next: with less the longer one would nearly always be tried in vain.
pub(crate) const AMPLE: f64 = 1.8;

/// The step that is tried next, as a share of the path: the whole path first, half after a failure, and the double after a
/// step that was amply sure.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pace {
    /// The step, as a share of the path.
    pub(crate) step: f64,
}

impl Pace {
    pub(crate) fn new() -> Self {
        Self { step: 1.0 }
    }

    /// The step went; whether it was sure [`AMPLE`] times over.
    pub(crate) fn went(&mut self, amply: bool) {
        if amply {
            self.step *= 2.0;
        }
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
    fn steps_double_while_they_go_amply() {
        let mut pace = Pace::new();
        pace.failed();
        pace.failed();
        assert!(pace.step.total_cmp(&0.25).is_eq());
        pace.went(true);
        assert!(pace.step.total_cmp(&0.5).is_eq());
        pace.went(false);
        assert!(pace.step.total_cmp(&0.5).is_eq());
        pace.went(true);
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
