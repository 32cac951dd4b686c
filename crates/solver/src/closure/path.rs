//! Leading Newton's iteration along a path of demands, without leaving the branch.

use super::corner::{CornerClosure, Placed};
use super::newton::{Demand, Steering};
use crate::frame::Vector;
use crate::pace::{AMPLE, Pace};
use crate::pose::Coordinates;

/// Where a path ended early.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stall {
    /// Share of the path that was followed, 0 to 1.
    pub(crate) reached: f64,
    /// The last coordinates on it.
    pub(crate) at: Coordinates,
    pub(crate) why: StallCause,
}

/// What ended a path early.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum StallCause {
    /// The corner cannot go on.
    Corner,
    /// The end that was set is reached.
    End,
    /// As many steps were tried as are allowed.
    Steps,
}

/// How far a path is followed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bounds {
    /// Share of the path at which it ends.
    pub(crate) end: f64,
    /// Most steps that are tried.
    pub(crate) steps: usize,
}

impl Bounds {
    /// The whole path, and as many steps as a pose may cost. A path along the edge of what can be reached may ask for very many tiny
    /// ones: random axles of the property tests, some of them absurd, ask for all of these and lock where they should nevertheless.
    pub(crate) const WHOLE: Self = Self {
        end: 1.0,
        steps: 20_000,
    };
}

/// A point of a path: what the corner must meet there, and how fast the rod's end moves against it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Waypoint {
    pub(crate) demand: Demand,
    /// How far the distance of the rod's balls may change per share of the path with the knuckle unturned, mm.
    pub(crate) speed: f64,
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
            rate: DemandRate::NONE,
        }
    }
}

/// How far a pose on a path is good for.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Trust {
    speed: f64,
    /// The rod's reserve, mm.
    reserve: f64,
    /// The suspension coordinate, and its change over which the suspension stays together.
    suspension: f64,
    suspension_stay: f64,
}

impl Trust {
    /// Whether two poses of a path that lie some share of it apart cover together what moves between them, so many times over.
    fn covers(&self, ahead: &Self, share: f64, times: f64) -> bool {
        let way = self.speed.max(ahead.speed) * share;
        let swing = (ahead.suspension - self.suspension).abs();
        way * times <= self.reserve + ahead.reserve
            && swing * times <= self.suspension_stay + ahead.suspension_stay
    }
}

impl CornerClosure {
    /// Follows the waypoints from share 0 (met by `start`) to share 1 of a path, or to the end set for it. There is no
    /// waypoint where the drive cannot be put together.
    ///
    /// Tries the whole rest first and halves the step whenever a run fails; so an easy path costs one run, and
    /// a path that ends at a lock is followed to within [`SHORTEST_STEP`] of it. A step counts only if the reserves of rod
    /// and links at its two ends cover what their joints may move on the way, so that it cannot jump over a stretch
    /// where one does not reach.
    ///
    /// [`SHORTEST_STEP`]: crate::pace::SHORTEST_STEP
    pub(crate) fn follow(
        &self,
        start: &Coordinates,
        waypoint: impl Fn(f64) -> Option<Waypoint>,
        bounds: Bounds,
    ) -> Result<Coordinates, Stall> {
        if waypoint(1.0).is_some_and(|to| self.is_there(start, &to.demand)) {
            return Ok(*start);
        }
        let mut at = *start;
        let mut reached = 0.0;
        let mut pace = Pace::new();
        let mut why = StallCause::Steps;
        let mut behind = waypoint(0.0).and_then(|from| self.trust(&at, &from));
        for _ in 0..bounds.steps {
            let goal = f64::min(reached + pace.step, bounds.end);
            let share = goal - reached;
            let next = waypoint(goal).and_then(|to| {
                let next = self.close(&to.demand, &at)?;
                Some((next, self.trust(&next, &to)?))
            });
            let covers = |ahead: &Trust, times| {
                behind.is_none_or(|behind| behind.covers(ahead, share, times))
            };
            if let Some((next, ahead)) = next.filter(|(_, ahead)| covers(ahead, 1.0)) {
                let amply = covers(&ahead, AMPLE);
                at = next;
                behind = Some(ahead);
                reached = goal;
                if reached >= 1.0 {
                    return Ok(at);
                }
                if reached >= bounds.end {
                    why = StallCause::End;
                    break;
                }
                pace.went(amply);
            } else if pace.failed().is_none() {
                why = StallCause::Corner;
                break;
            }
        }
        Err(Stall { reached, at, why })
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
            reserve: self.reserve(&conditions, &demand.steering),
            suspension: at.suspension,
            suspension_stay: self.suspension_stay(&conditions, &placed),
        })
    }
}
