//! Steer angle and toe.
//!
//! Steer: ISO 8855 road-wheel steer angle, about the road normal, positive to the left. Toe: ISO 8855:2011,
//! 7.1.6, toe-in positive; so the left wheel's toe is minus its steer, the right wheel's plus.

use crate::frame::{RoadAxes, Side, Sides, Vector};
use crate::pose::CornerPose;

/// The spin axis pointing to the car's left.
#[must_use]
pub fn leftward_axis(pose: &CornerPose) -> Vector {
    pose.spin_axis * pose.side.sign()
}

/// Steer angle of a wheel whose spin axis, pointing left, is given: rad, positive to the left.
#[must_use]
pub fn steer_of(leftward: &Vector, road: &RoadAxes) -> f64 {
    let heading = leftward.cross(&road.up);
    heading
        .dot(&road.leftward)
        .atan2(heading.dot(&road.forward))
}

/// Rate of the steer angle of a wheel that turns at the given rate. Derived here: the heading h = a x n turns
/// about n at (h x dh) . n / |h|^2.
#[must_use]
pub fn steer_rate(leftward: &Vector, angular: &Vector, road: &RoadAxes) -> f64 {
    let heading = leftward.cross(&road.up);
    let rate = angular.cross(leftward).cross(&road.up);
    heading.cross(&rate).dot(&road.up) / heading.norm_squared()
}

/// Second derivative of the steer angle of a wheel whose rotation has the given first and second derivative.
/// Derived here by differentiating [`steer_rate`].
#[must_use]
pub fn steer_bend(
    leftward: &Vector,
    angular: &Vector,
    angular_rate: &Vector,
    road: &RoadAxes,
) -> f64 {
    let axis_rate = angular.cross(leftward);
    let axis_bend = angular_rate.cross(leftward) + angular.cross(&axis_rate);
    let heading = leftward.cross(&road.up);
    let rate = axis_rate.cross(&road.up);
    let bend = axis_bend.cross(&road.up);
    let square = heading.norm_squared();
    (heading.cross(&bend).dot(&road.up)
        - 2.0 * heading.dot(&rate) * heading.cross(&rate).dot(&road.up) / square)
        / square
}

/// Toe of a wheel steered at `steer`, rad, toe-in positive.
#[must_use]
pub fn toe_of(side: Side, steer: f64) -> f64 {
    -side.sign() * steer
}

/// Total toe as a length, mm: the gap between the rims behind less the gap in front, on rims of the given
/// diameter. Derived here: each rim's edge swings by half the diameter times the sine, at both ends.
#[must_use]
pub fn total_toe_length(toe: &Sides<f64>, diameter: f64) -> f64 {
    diameter * (toe.left.sin() + toe.right.sin())
}
