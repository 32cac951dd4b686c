//! The length of the next step along a path that is followed by trial.

/// Shortest step that is tried, as a share of the path. A path stalls this close to a lock.
pub(crate) const SHORTEST_STEP: f64 = 1e-12;

/// Most steps of one length between two tries of a longer one.
const MOST_PATIENCE: u32 = 16;

/// The step that is tried next, as a share of the path: the whole path first, half after a failure, and the double after
/// steps that went. Where longer steps keep failing they are tried less often.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pace {
    /// The step, as a share of the path.
    pub(crate) step: f64,
    /// Steps to go before a longer one is tried.
    steady: u32,
    /// How many steps go between two tries of a longer one.
    patience: u32,
    /// Whether the step is longer than the one before.
    longer: bool,
}

impl Pace {
    pub(crate) fn new() -> Self {
        Self {
            step: 1.0,
            steady: 0,
            patience: 0,
            longer: false,
        }
    }

    /// The step went.
    pub(crate) fn went(&mut self) {
        if self.longer {
            self.patience = 0;
        }
        self.longer = self.steady == 0;
        if self.longer {
            self.step *= 2.0;
        } else {
            self.steady -= 1;
        }
    }

    /// The step failed. Nothing is left to try below [`SHORTEST_STEP`].
    pub(crate) fn failed(&mut self) -> Option<()> {
        self.step *= 0.5;
        if self.longer {
            self.patience = (2 * self.patience + 1).min(MOST_PATIENCE);
        }
        self.steady = self.patience;
        self.longer = false;
        (self.step >= SHORTEST_STEP).then_some(())
    }
}

#[cfg(test)]
mod tests {
    use super::{MOST_PATIENCE, Pace, SHORTEST_STEP};

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

    /// Where no step above a length goes, nearly all steps have that length.
    #[test]
    fn longer_steps_that_fail_are_tried_less_often() {
        let (mut pace, mut failures, mut way) = (Pace::new(), 0_u32, 0.0);
        while way < 1.0 {
            if pace.step > 1e-4 {
                assert!(pace.failed().is_some());
                failures += 1;
            } else {
                way += pace.step;
                pace.went();
            }
        }
        let steps = 2_u32.pow(14);
        assert!(failures <= steps / MOST_PATIENCE + 32, "{failures}");
    }

    #[test]
    fn the_shortest_step_is_the_last() {
        let mut pace = Pace::new();
        let tries = std::iter::from_fn(|| pace.failed()).count();
        assert_eq!(tries, 39);
        assert!(pace.step < SHORTEST_STEP && pace.step * 2.0 >= SHORTEST_STEP);
    }
}
