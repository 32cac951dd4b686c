//! A closed corner as a pose with its instantaneous motions.

use super::corner::{CornerClosure, Placed};
use super::newton::{Conditions, Demand, Steering};
use crate::error::{Fault, SolveError};
use crate::frame::{Point, Vector};
use crate::pose::{Coordinates, CornerPose, FLATTEST_WHEEL};
use crate::twist::Twist;

/// The rod at a pose: its inner ball, that ball's velocity per unit of input, and the length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct RodAt {
    pub(crate) inner: Point,
    pub(crate) inner_rate: Vector,
    pub(crate) length: f64,
}

impl RodAt {
    pub(crate) fn demand(&self, travel: f64) -> Demand {
        Demand {
            travel,
            steering: Steering::Rod {
                inner: self.inner,
                length: self.length,
            },
        }
    }
}

/// A knuckle placed where it closes, with what it meets there.
struct Polished {
    at: Coordinates,
    placed: Placed,
    conditions: Conditions,
}

impl CornerClosure {
    /// The error for members that cannot be put together where the closure says they can.
    pub(crate) fn apart(&self, travel: f64, input: f64) -> SolveError {
        SolveError::NotClosed {
            side: self.side,
            input,
            travel,
            residual: self.lever,
        }
    }

    /// The knuckle placed at coordinates that close it, with up to three more Newton steps where a last step that was not
    /// evaluated left a rest.
    fn polished(&self, at: &Coordinates, demand: &Demand) -> Option<Polished> {
        let mut at = *at;
        let mut steps_left = 3;
        loop {
            let placed = self.place(&at)?;
            let conditions = self.conditions(&at, &placed, demand);
            if conditions.residual() <= self.closed() || steps_left == 0 {
                return Some(Polished {
                    at,
                    placed,
                    conditions,
                });
            }
            at = at.plus(
                &conditions.solve(-conditions.height.residual, -conditions.steering.residual),
            );
            steps_left -= 1;
        }
    }

    /// The corner's pose at coordinates that close it.
    ///
    /// The motions follow from the implicit-function theorem: the rates of the two coordinates are those that
    /// keep both conditions met while the input, or the travel, goes on at one unit.
    pub(crate) fn pose(
        &self,
        at: &Coordinates,
        rod: &RodAt,
        travel: f64,
        input: f64,
    ) -> Result<CornerPose, SolveError> {
        let apart = self.apart(travel, input);
        let demand = rod.demand(travel);
        let Polished {
            at,
            placed,
            conditions,
        } = &self.polished(at, &demand).ok_or(apart)?;
        let (kingpin_lower, kingpin_upper) = self
            .kinematics
            .kingpin(at.suspension, &self.knuckle)
            .ok_or(apart)?;
        let spin_axis = self.spin_axis(at, placed);
        if spin_axis.z.abs() > FLATTEST_WHEEL {
            return Err(SolveError::Degenerate {
                side: Some(self.side),
                fault: Fault::WheelLiesFlat,
            });
        }
        let closed = conditions.residual() <= self.closed();
        if !closed {
            return Err(SolveError::NotClosed {
                side: self.side,
                input,
                travel,
                residual: conditions.residual(),
            });
        }
        let along = (placed.steering_arm - rod.inner).normalize();
        let by_input = conditions.solve(0.0, along.dot(&rod.inner_rate));
        let by_travel = if self.has_travel {
            conditions.solve(1.0, 0.0)
        } else {
            Coordinates::default()
        };
        Ok(CornerPose {
            side: self.side,
            knuckle: placed.frame.motion_from(&self.drawn_axis(at)),
            wheel_centre: placed.wheel_centre,
            spin_axis,
            tyre_radius: self.knuckle.tyre_radius,
            tyre_width: self.knuckle.tyre_width,
            kingpin_lower,
            kingpin_upper,
            steering_arm: placed.steering_arm,
            rod_inner: rod.inner,
            per_input: placed.motion(&by_input),
            per_travel: self.has_travel.then(|| placed.motion(&by_travel)),
            kingpin_per_travel: placed.axis_rate * by_travel.suspension,
            reserve: self.reserve(conditions, &demand.steering),
            suspension_stay: self.suspension_stay(conditions, placed),
            coordinates: *at,
            by_input,
            by_travel,
        })
    }
}

impl Placed {
    /// Motion of the knuckle at given rates of the two coordinates.
    pub(crate) fn motion(&self, rates: &Coordinates) -> Twist {
        self.by_suspension
            .scaled(rates.suspension)
            .plus(&self.by_steering().scaled(rates.steering))
    }
}
