//! Newton's iteration on the two conditions of a corner, with exact derivatives.

use super::corner::{CornerClosure, Placed};
use crate::frame::{Point, RoadAxes};
use crate::pose::Coordinates;

/// What a corner is asked to meet: a height of the wheel centre and one condition on its steering.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Demand {
    /// Wheel travel, mm.
    pub(crate) travel: f64,
    /// The condition on the steering.
    pub(crate) steering: Steering,
}

/// A condition on a corner's steering.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Steering {
    /// The outer ball stands a rod length from the inner ball.
    Rod { inner: Point, length: f64 },
    /// The wheel heads at this steer angle, rad, positive to the left, against the road.
    Heading { steer: f64, road: RoadAxes },
    /// The knuckle stands at this turn about its axis, rad.
    Turn(f64),
}

/// A condition's residual in mm with its derivatives by the two coordinates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Row {
    pub(crate) residual: f64,
    pub(crate) by_suspension: f64,
    pub(crate) by_steering: f64,
}

/// Both conditions at a pose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Conditions {
    pub(crate) height: Row,
    pub(crate) steering: Row,
}

impl Conditions {
    /// Determinant of the two rows; its sign tells the branches apart, its zeros are the dead centres.
    pub(crate) fn determinant(&self) -> f64 {
        self.height.by_suspension * self.steering.by_steering
            - self.height.by_steering * self.steering.by_suspension
    }

    /// Coordinates' rates that change the two conditions at the given rates, by Cramer's rule.
    pub(crate) fn solve(&self, height: f64, steering: f64) -> Coordinates {
        let determinant = self.determinant();
        Coordinates {
            suspension: (height * self.steering.by_steering - self.height.by_steering * steering)
                / determinant,
            steering: (self.height.by_suspension * steering - height * self.steering.by_suspension)
                / determinant,
        }
    }

    /// The greater of the two residuals, mm.
    pub(crate) fn residual(&self) -> f64 {
        self.height.residual.abs().max(self.steering.residual.abs())
    }
}

/// Greatest change of the steering coordinate that one run may make, rad. Farther goals are approached in
/// several runs, so that none can land on another branch.
pub(crate) const FARTHEST_TURN: f64 = 0.6;

/// Margin by which an unevaluated last step must promise to close: the squaring is only an estimate.
const PROMISE: f64 = 1e-4;

/// How often a run is continued. Each step at least halves the residual and nearly all square it.
pub(crate) const MOST_STEPS: usize = 24;

impl CornerClosure {
    /// The height condition at a placed knuckle. A corner without travel keeps its suspension coordinate at 0.
    #[inline]
    pub(crate) fn height_row(&self, at: &Coordinates, placed: &Placed, travel: f64) -> Row {
        if self.has_travel {
            Row {
                residual: placed.wheel_centre.z - self.knuckle.wheel_centre.z - travel,
                by_suspension: placed.by_suspension.velocity_of(&placed.wheel_centre).z,
                by_steering: placed.by_steering().velocity_of(&placed.wheel_centre).z,
            }
        } else {
            Row {
                residual: at.suspension,
                by_suspension: 1.0,
                by_steering: 0.0,
            }
        }
    }

    #[inline]
    fn steering_row(&self, at: &Coordinates, placed: &Placed, steering: &Steering) -> Row {
        match steering {
            Steering::Rod { inner, length } => {
                let rod = placed.steering_arm - inner;
                let distance = rod.norm();
                let along = rod / distance;
                Row {
                    residual: distance - length,
                    by_suspension: along
                        .dot(&placed.by_suspension.velocity_of(&placed.steering_arm)),
                    by_steering: along.dot(&placed.by_steering().velocity_of(&placed.steering_arm)),
                }
            }
            Steering::Heading { steer, road } => self.heading_row(at, placed, *steer, road),
            Steering::Turn(turn) => Row {
                residual: (at.steering - turn) * self.lever,
                by_suspension: 0.0,
                by_steering: self.lever,
            },
        }
    }

    fn heading_row(&self, at: &Coordinates, placed: &Placed, steer: f64, road: &RoadAxes) -> Row {
        let leftward = self.spin_axis(at, placed) * self.side.sign();
        let off = crate::figures::toe::steer_of(&leftward, road) - steer;
        let rate = |angular| crate::figures::toe::steer_rate(&leftward, angular, road);
        Row {
            residual: off * self.lever,
            by_suspension: rate(&placed.by_suspension.angular) * self.lever,
            by_steering: rate(&placed.by_steering().angular) * self.lever,
        }
    }

    /// Both conditions at a placed knuckle.
    #[inline]
    pub(crate) fn conditions(
        &self,
        at: &Coordinates,
        placed: &Placed,
        demand: &Demand,
    ) -> Conditions {
        Conditions {
            height: self.height_row(at, placed, demand.travel),
            steering: self.steering_row(at, placed, &demand.steering),
        }
    }

    /// Coordinates that meet the demand on the same branch near `start`, or nothing if they are too far away to be
    /// sure of the branch, or there are none.
    #[inline]
    pub(crate) fn close(&self, demand: &Demand, start: &Coordinates) -> Option<Coordinates> {
        match (&self.fixed_axis, &demand.steering) {
            (Some(fixed), Steering::Rod { inner, length }) => fixed.close(
                (inner, *length),
                demand.travel,
                start,
                (self.branch, self.tolerance),
            ),
            _ => self.newton(demand, start),
        }
    }

    /// Coordinates that meet the demand on the same branch near `start`, or nothing if this run does not get
    /// there: because there are none, or because they are too far away to be sure of the branch.
    ///
    /// Every step must at least halve the residual (so the run is well inside the region where Newton's method
    /// converges to the root it started towards) and the determinant must keep the sign of the branch. The last
    /// step is not evaluated where the squaring of the residual from step to step promises that it closes;
    /// whoever takes the coordinates for a pose evaluates them anyway.
    #[inline]
    fn newton(&self, demand: &Demand, start: &Coordinates) -> Option<Coordinates> {
        let mut at = *start;
        let mut conditions = self.conditions(&at, &self.place(&at)?, demand);
        let sense = match demand.steering {
            Steering::Rod { .. } => self.branch,
            Steering::Heading { .. } | Steering::Turn(_) => conditions.determinant(),
        };
        let mut residual = conditions.residual();
        let mut promised = f64::INFINITY;
        for _ in 0..MOST_STEPS {
            if residual <= self.tolerance {
                return Some(at);
            }
            let step = conditions.solve(-conditions.height.residual, -conditions.steering.residual);
            let next = at.plus(&step);
            // Every comparison is put so that not-a-number fails it.
            let near = (next.steering - start.steering).abs() <= FARTHEST_TURN;
            if !near {
                return None;
            }
            if promised <= PROMISE * self.tolerance {
                return Some(next);
            }
            conditions = self.conditions(&next, &self.place(&next)?, demand);
            let on_branch = conditions.determinant() * sense > 0.0;
            if !on_branch {
                return None;
            }
            let left = conditions.residual();
            let halved = left <= 0.5 * residual;
            if !halved {
                // Rounding keeps the residual from shrinking: good enough if it is down there, hopeless if not.
                return (left.min(residual) <= self.closed()).then_some(if left < residual {
                    next
                } else {
                    at
                });
            }
            let shrinks = left / residual;
            promised = left * shrinks * shrinks;
            at = next;
            residual = left;
        }
        None
    }

    /// What the residual of a closed corner is below, mm.
    pub(crate) fn closed(&self) -> f64 {
        64.0 * self.tolerance
    }
}
