//! What the wheels do when the chassis rolls with both tyres kept on the road: true derivatives.

use crate::frame::{Road, RoadAxes, Vector};
use crate::pose::CornerPose;

use super::road_contact::tyre_height_rate;
use super::toe::leftward_axis;

/// Rates per rad of chassis roll (right side down positive), pitch and steering input held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RollGradient {
    /// Rate of the steer angle, rad/rad, positive when roll to the right steers the wheel to the left.
    pub steer: f64,
    /// Rate of camber, rad/rad.
    pub camber: f64,
    /// Rate of wheel travel, mm/rad.
    pub travel: f64,
}

/// The rates at a pose whose tyre stands on the road, or nothing where the suspension has no travel.
///
/// Derived here: the travel follows from the tyre's height staying zero while the road normal turns; the angles
/// then change by the knuckle's motion and by the turn of the road-levelled axes they are measured in.
#[must_use]
pub fn roll_gradient(pose: &CornerPose, road: &Road) -> Option<RollGradient> {
    let by_travel = pose.per_travel?;
    let axes = road.axes();
    let turning = axes_by_roll(road, &axes);
    let height = height_by_roll(pose, road, &axes.up, &turning.up);
    let travel = -height / tyre_height_rate(pose, &by_travel, &axes.up);
    let angular = by_travel.angular * travel;
    Some(RollGradient {
        steer: steer_rate_in_turning_axes(pose, &angular, &axes, &turning),
        camber: camber_rate_in_turning_axes(pose, &angular, &axes, &turning),
        travel,
    })
}

/// Derivatives of the road-levelled axes by roll.
fn axes_by_roll(road: &Road, axes: &RoadAxes) -> RoadAxes {
    let (sin_roll, cos_roll) = road.roll.sin_cos();
    let cos_pitch = road.pitch.cos();
    let up = Vector::new(0.0, cos_pitch * cos_roll, -cos_pitch * sin_roll);
    let level = Vector::x() - axes.up * axes.up.x;
    let level_rate = -(up * axes.up.x + axes.up * up.x);
    let forward = (level_rate - axes.forward * axes.forward.dot(&level_rate)) / level.norm();
    RoadAxes {
        forward,
        leftward: up.cross(&axes.forward) + axes.up.cross(&forward),
        up,
    }
}

/// Rate of the contact centre's height by roll with the knuckle held.
fn height_by_roll(pose: &CornerPose, road: &Road, up: &Vector, up_rate: &Vector) -> f64 {
    let above_foot = pose.wheel_centre.coords + Vector::new(0.0, 0.0, road.ride_height);
    let sine = pose.spin_axis.dot(up);
    above_foot.dot(up_rate)
        + pose.tyre_radius * sine * pose.spin_axis.dot(up_rate) / (1.0 - sine * sine).sqrt()
}

fn steer_rate_in_turning_axes(
    pose: &CornerPose,
    angular: &Vector,
    axes: &RoadAxes,
    turning: &RoadAxes,
) -> f64 {
    let leftward = leftward_axis(pose);
    let heading = leftward.cross(&axes.up);
    let rate = angular.cross(&leftward).cross(&axes.up) + leftward.cross(&turning.up);
    let (x, y) = (heading.dot(&axes.forward), heading.dot(&axes.leftward));
    let x_rate = rate.dot(&axes.forward) + heading.dot(&turning.forward);
    let y_rate = rate.dot(&axes.leftward) + heading.dot(&turning.leftward);
    (x * y_rate - y * x_rate) / (x * x + y * y)
}

fn camber_rate_in_turning_axes(
    pose: &CornerPose,
    angular: &Vector,
    axes: &RoadAxes,
    turning: &RoadAxes,
) -> f64 {
    let sine = pose.spin_axis.dot(&axes.up);
    let rate = angular.cross(&pose.spin_axis).dot(&axes.up) + pose.spin_axis.dot(&turning.up);
    -rate / (1.0 - sine * sine).sqrt()
}
