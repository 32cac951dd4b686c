//! Leading Newton's iteration along a path of demands, without leaving the branch.

use super::corner::{CornerClosure, Placed};
use super::newton::{Demand, Steering};
use crate::frame::Vector;
use crate::pose::Coordinates;

/// Where a path ended early.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stall {
    /// Share of the path that was followed, 0 to 1.
    pub(crate) reached: f64,
    /// The last coordinates on it.
    pub(crate) at: Coordinates,
    /// Whether it is the drive that cannot go on, rather than the corner.
    pub(crate) by_drive: bool,
}

/// Shortest step that is tried, as a share of the path. A path stalls this close to a lock.
pub(crate) const SHORTEST_STEP: f64 = 1e-12;

/// A point of a path: what the corner must meet there, and how fast the rod's end moves against it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Waypoint {
    pub(crate) demand: Demand,
    /// How far the distance of the rod's balls may change per share of the path with the knuckle unturned, mm.
    pub(crate) speed: f64,
    /// Share of the path over which the drive stays together, at the least.
    pub(crate) stay: f64,
    /// How fast the demand changes.
    pub(crate) rate: DemandRate,
}

/// How fast a demand changes along a path.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DemandRate {
    /// Wheel travel, mm per share.
    pub(crate) travel: f64,
    /// The rod's inner ball, mm per share.
    pub(crate) inner: Vector,
}

impl DemandRate {
    pub(crate) const NONE: Self = Self {
        travel: 0.0,
        inner: Vector::new(0.0, 0.0, 0.0),
    };
}

impl Waypoint {
    /// A waypoint at which no joint of the rod moves with the path.
    pub(crate) fn still(demand: Demand) -> Self {
        Self {
            demand,
            speed: 0.0,
            stay: f64::MAX,
            rate: DemandRate::NONE,
        }
    }
}

/// How far a pose on a path is good for.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Trust {
    speed: f64,
    stay: f64,
    /// The rod's reserve, mm.
    reserve: f64,
    /// The suspension coordinate, and its change over which the suspension stays together.
    suspension: f64,
    suspension_stay: f64,
}

/// Most steps of a path. A path along the edge of what can be reached may ask for very many tiny ones: with a fifth of this a lock
/// of a plausible axle is told at another member.
const MOST_STEPS: usize = 100_000;

impl CornerClosure {
    /// Follows the waypoints from share 0 (met by `start`) to share 1 of a path. There is no waypoint where the
    /// drive cannot be put together.
    ///
    /// Tries the whole rest first and halves the step whenever a run fails; so an easy path costs one run, and
    /// a path that ends at a lock is followed to within [`SHORTEST_STEP`] of it. A step counts only if the reserves of rod
    /// and links at its two ends cover what their joints may move on the way, so that it cannot jump over a stretch
    /// where one does not reach.
    pub(crate) fn follow(
        &self,
        start: &Coordinates,
        waypoint: impl Fn(f64) -> Option<Waypoint>,
    ) -> Result<Coordinates, Stall> {
        if waypoint(1.0).is_some_and(|to| self.is_there(start, &to.demand)) {
            return Ok(*start);
        }
        let mut at = *start;
        let mut reached = 0.0;
        let mut step = 1.0;
        let mut by_drive = false;
        let mut behind = waypoint(0.0).and_then(|from| self.trust(&at, &from));
        for _ in 0..MOST_STEPS {
            let goal = f64::min(reached + step, 1.0);
            let to = waypoint(goal);
            let next = to.and_then(|to| {
                let next = self.close(&to.demand, &at)?;
                Some((next, self.trust(&next, &to)?))
            });
            let share = goal - reached;
            let together = to.is_some_and(|to| behind.is_none_or(|b| share <= b.stay + to.stay));
            let next = next.filter(|(_, ahead)| {
                let covered = |behind: Trust| {
                    let way = behind.speed.max(ahead.speed) * share;
                    let swing = (ahead.suspension - behind.suspension).abs();
                    way <= behind.reserve + ahead.reserve
                        && swing <= behind.suspension_stay + ahead.suspension_stay
                };
                together && behind.is_none_or(covered)
            });
            by_drive = !together;
            if let Some((next, ahead)) = next {
                at = next;
                behind = Some(ahead);
                reached = goal;
                if reached >= 1.0 {
                    return Ok(at);
                }
                step *= 2.0;
            } else {
                step *= 0.5;
                if step < SHORTEST_STEP {
                    break;
                }
            }
        }
        Err(Stall {
            reached,
            at,
            by_drive,
        })
    }

    /// Whether a demand that no rod makes is met without a step.
    fn is_there(&self, start: &Coordinates, demand: &Demand) -> bool {
        let by_rod = matches!(demand.steering, Steering::Rod { .. });
        let residual = |placed: &Placed| self.conditions(start, placed, demand).residual();
        let met = |placed| residual(&placed) <= self.tolerance;
        !by_rod && self.place(start).is_some_and(met)
    }

    fn trust(&self, at: &Coordinates, waypoint: &Waypoint) -> Option<Trust> {
        let demand = &waypoint.demand;
        let placed = self.place(at)?;
        let conditions = self.conditions(at, &placed, demand);
        Some(Trust {
            speed: waypoint.speed,
            stay: waypoint.stay,
            reserve: self.reserve(&conditions, &demand.steering),
            suspension: at.suspension,
            suspension_stay: self.suspension_stay(&conditions, &placed),
        })
    }
}
