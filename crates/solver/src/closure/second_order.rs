//! How a corner's motion along the steering input changes: second derivatives of the closure.
//!
//! Derived here by differentiating both conditions twice along the input with the travel held. Each body point's
//! acceleration is the usual rigid-body one, a + dw x r + w x (w x r).

use super::corner::{CornerClosure, Placed};
use super::corner_pose::RodAt;
use crate::frame::{Point, Vector};
use crate::pose::Coordinates;
use crate::suspension::Bend;

/// First and second derivative of the knuckle's rotation by the input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rotation {
    /// rad per unit of input.
    pub(crate) angular: Vector,
    /// rad per unit of input squared.
    pub(crate) angular_rate: Vector,
}

/// Rigid-body motion with its change, about a point of the body.
struct Accelerating {
    origin: Point,
    origin_bend: Vector,
    angular: Vector,
    angular_rate: Vector,
}

impl Accelerating {
    fn of(&self, point: &Point) -> Vector {
        let arm = point - self.origin;
        self.origin_bend
            + self.angular_rate.cross(&arm)
            + self.angular.cross(&self.angular.cross(&arm))
    }
}

impl Placed {
    /// The knuckle's motion when both coordinates go on at constant rates.
    ///
    /// `in_knuckle_bend` is how the steering axis's turn in the knuckle changes, in chassis axes.
    fn at_constant_rates(
        &self,
        rates: &Coordinates,
        bend: &Bend,
        in_knuckle_bend: &Vector,
    ) -> Accelerating {
        let by_suspension = self.by_suspension.angular * rates.suspension;
        let by_steering = self.by_steering().angular * rates.steering;
        let angular = by_suspension + by_steering;
        let axis_turn = self.axis_turn * rates.suspension;
        let square = rates.suspension * rates.suspension;
        let axis_rate = self.axis_rate * rates.suspension;
        Accelerating {
            origin: self.frame.origin,
            origin_bend: bend.origin * square,
            angular,
            angular_rate: (bend.angular - in_knuckle_bend) * square - angular.cross(&axis_turn)
                + axis_rate * rates.steering,
        }
    }
}

impl CornerClosure {
    /// Derivatives of the knuckle's rotation by the input at a closed pose, travel held; `inner_bend` is the inner
    /// ball's acceleration. Nothing where the members cannot be put together.
    pub(crate) fn rotation_by_input(
        &self,
        at: &Coordinates,
        rod: &RodAt,
        inner_bend: &Vector,
        travel: f64,
    ) -> Option<Rotation> {
        let placed = self.place(at)?;
        let bend = self.kinematics.bend(at.suspension)?;
        let conditions = self.conditions(at, &placed, &rod.demand(travel));
        let link = placed.steering_arm - rod.inner;
        let along = link.normalize();
        let rates = conditions.solve(0.0, along.dot(&rod.inner_rate));
        let motion = placed.motion(&rates);
        let in_knuckle_bend = self.direction(at, &placed, &bend.in_knuckle);
        let constant = placed.at_constant_rates(&rates, &bend, &in_knuckle_bend);
        let height = if self.has_travel {
            -constant.of(&placed.wheel_centre).z
        } else {
            0.0
        };
        let apart = motion.velocity_of(&placed.steering_arm) - rod.inner_rate;
        let stretch = apart.norm_squared() / link.norm()
            + along.dot(&(constant.of(&placed.steering_arm) - inner_bend));
        let bends = conditions.solve(height, -stretch);
        Some(Rotation {
            angular: motion.angular,
            angular_rate: constant.angular_rate + placed.motion(&bends).angular,
        })
    }
}
