//! Leading Newton's iteration along a path of demands, without leaving the branch.

use super::corner::CornerClosure;
use super::newton::{Conditions, Demand, Steering};
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

/// A point of a path: what the corner must meet there, and how fast the rod's end moves against it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Waypoint {
    pub(crate) demand: Demand,
    /// How far the distance of the rod's balls may change per share of the path with the knuckle unturned, mm.
    pub(crate) speed: f64,
}

impl CornerClosure {
    /// Follows the waypoints from share 0 (met by `start`) to share 1 of a path. There is no waypoint where the
    /// drive cannot be put together. No step is longer than `longest`.
    ///
    /// Tries the whole rest first and halves the step whenever a run fails; so an easy path costs one run, and
    /// a path that ends at a lock is followed to within [`SHORTEST_STEP`] of it. A step counts only if the rod's reserves
    /// at its two ends cover what the distance of its balls may change on the way, so that it cannot jump over a stretch
    /// where the rod does not reach.
    pub(crate) fn follow(
        &self,
        start: &Coordinates,
        longest: f64,
        waypoint: impl Fn(f64) -> Option<Waypoint>,
    ) -> Result<Coordinates, Stall> {
        let mut at = *start;
        let mut reached = 0.0;
        let mut step = longest.min(1.0);
        let mut behind = waypoint(0.0).map(|from| (from.speed, self.reserve_at(&at, &from.demand)));
        while step >= SHORTEST_STEP {
            let goal = f64::min(reached + step, 1.0);
            let next = waypoint(goal).and_then(|to| {
                let next = self.close(&to.demand, &at)?;
                let ahead = (to.speed, self.reserve_at(&next, &to.demand));
                let (speed, reserve) = behind.unwrap_or((0.0, f64::INFINITY));
                let way = speed.max(ahead.0) * (goal - reached);
                (way <= reserve + ahead.1).then_some((next, ahead))
            });
            if let Some((next, ahead)) = next {
                at = next;
                behind = Some(ahead);
                reached = goal;
                if reached >= 1.0 {
                    return Ok(at);
                }
                step = (step * 2.0).min(longest);
            } else {
                step *= 0.5;
            }
        }
        Err(Stall { reached, at })
    }

    /// The rod's reserve at closed coordinates, mm; without end where the steering is not held by a rod.
    fn reserve_at(&self, at: &Coordinates, demand: &Demand) -> f64 {
        match demand.steering {
            Steering::Rod { .. } => self.place(at).map_or(0.0, |placed| {
                self.reserve(&self.conditions(at, &placed, demand))
            }),
            Steering::Heading { .. } | Steering::Turn(_) => f64::INFINITY,
        }
    }

    /// How much the distance of the rod's balls can still grow or shrink by turning the knuckle, mm, at the least.
    ///
    /// Derived here: the distance is about A cos(t) over the knuckle's turn, with A at most the lever; from its slope
    /// s = A sin(t) follows A - sqrt(A^2 - s^2), which is least for the greatest A.
    pub(crate) fn reserve(&self, conditions: &Conditions) -> f64 {
        let slope = conditions.determinant() / conditions.height.by_suspension;
        let rest = self.lever * self.lever - slope * slope;
        self.lever - rest.max(0.0).sqrt()
    }
}
