//! Where a sweep ends before the car's range does.

use steerloft_solver::error::SolveError;
use steerloft_solver::sweep::{Lock, LockKind};

use crate::text::signed;

/// What was swept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Swept {
    /// The steering input.
    Steering,
    /// The wheel travel.
    Travel,
}

/// Where a sweep ends before the car's range does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct End {
    /// What was swept.
    pub swept: Swept,
    /// The swept value there, in the unit in which people give it: degrees or mm.
    pub at: f64,
    /// That unit in words: "deg" or "mm".
    pub unit: &'static str,
    /// In which way it locks.
    pub kind: LockKind,
    /// What locks, and by how much it would miss a little farther on.
    pub cause: SolveError,
}

impl End {
    pub(super) fn of(lock: &Lock, swept: Swept, at: f64, unit: &'static str) -> Self {
        Self {
            swept,
            at,
            unit,
            kind: lock.kind,
            cause: lock.cause,
        }
    }

    /// The end as a sentence.
    #[must_use]
    pub fn sentence(&self) -> String {
        let what = match self.swept {
            Swept::Steering => "Steering",
            Swept::Travel => "Travel",
        };
        let (at, unit) = (signed(self.at, 1), self.unit);
        format!("{what} ends at {at} {unit}: {}.", self.cause)
    }
}
