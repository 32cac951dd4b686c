//! Leading Newton's iteration along a path of demands, without leaving the branch.

use super::corner::CornerClosure;
use super::newton::Demand;
use crate::pose::Coordinates;

/// Where a path ended early.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stall {
    /// Share of the path that was followed, 0 to 1.
    pub(crate) reached: f64,
    /// The last coordinates on it.
    pub(crate) at: Coordinates,
}

/// Shortest step that is tried, as a share of the path. A path stalls this close to a lock.
pub(crate) const SHORTEST_STEP: f64 = 1e-12;

impl CornerClosure {
    /// Follows the demands from share 0 (met by `start`) to share 1 of a path. There is no demand where the drive
    /// cannot be put together.
    ///
    /// Tries the whole rest first and halves the step whenever a run fails; so an easy path costs one run, and
    /// a path that ends at a lock is followed to within [`SHORTEST_STEP`] of it.
    pub(crate) fn follow(
        &self,
        start: &Coordinates,
        demand: impl Fn(f64) -> Option<Demand>,
    ) -> Result<Coordinates, Stall> {
        let mut at = *start;
        let mut reached = 0.0;
        let mut step = 1.0;
        while step >= SHORTEST_STEP {
            let goal = f64::min(reached + step, 1.0);
            if let Some(next) = demand(goal).and_then(|demand| self.close(&demand, &at)) {
                at = next;
                reached = goal;
                if reached >= 1.0 {
                    return Ok(at);
                }
                step *= 2.0;
            } else {
                step *= 0.5;
            }
        }
        Err(Stall { reached, at })
    }
}
