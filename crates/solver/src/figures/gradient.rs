//! True derivatives of a corner's figures along travel and input, from its instantaneous motion.

use super::camber::camber_rate;
use super::steering_axis::{caster_rate, inclination_rate};
use super::toe::{leftward_axis, steer_rate, toe_of};
use crate::frame::Road;
use crate::pose::{AxlePose, CornerPose};

/// Rates of a corner's angles per mm of wheel travel, steering input held: rad/mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TravelGradient {
    /// Bump steer: rate of toe, positive when bump toes the wheel in.
    pub toe: f64,
    /// Camber gain: rate of camber.
    pub camber: f64,
    /// Rate of caster.
    pub caster: f64,
    /// Rate of kingpin inclination.
    pub inclination: f64,
}

/// The rates at a pose, or nothing where the suspension has no travel.
#[must_use]
pub fn travel_gradient(pose: &CornerPose, road: &Road) -> Option<TravelGradient> {
    let motion = pose.per_travel?;
    let road = road.axes();
    let axis = pose.kingpin_axis();
    Some(TravelGradient {
        toe: toe_of(
            pose.side,
            steer_rate(&leftward_axis(pose), &motion.angular, &road),
        ),
        camber: camber_rate(&pose.spin_axis, &motion.angular, &road.up),
        caster: caster_rate(&axis, &pose.kingpin_per_travel, &road),
        inclination: inclination_rate(pose.side, &axis, &pose.kingpin_per_travel, &road),
    })
}

/// Rate of a wheel's steer angle per unit of steering input, travel held.
#[must_use]
pub fn steer_per_input(pose: &CornerPose, road: &Road) -> f64 {
    steer_rate(&leftward_axis(pose), &pose.per_input.angular, &road.axes())
}

/// Steering ratio: input per mean steer of the two wheels, or nothing where the mean does not move.
#[must_use]
pub fn steering_ratio(pose: &AxlePose, road: &Road) -> Option<f64> {
    let rates = pose.corners.map(|corner| steer_per_input(&corner, road));
    let ratio = 2.0 / (rates.left + rates.right);
    ratio.is_finite().then_some(ratio)
}
