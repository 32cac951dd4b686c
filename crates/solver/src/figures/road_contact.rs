//! Height of a tyre over the road and how it changes with travel.

use super::contact::contact_centre;
use crate::frame::{Road, Vector};
use crate::pose::CornerPose;
use crate::twist::Twist;

/// Height of the contact centre over the road plane, mm.
#[must_use]
pub fn tyre_height(pose: &CornerPose, road: &Road) -> f64 {
    road.height_of(&contact_centre(pose, &road.normal()))
}

/// Rate of the contact centre's height over the road when the knuckle moves, mm per unit of the motion.
///
/// Derived here: the contact lies R (u (u . n) - n) / |..| from the wheel centre, whose height is
/// -R sqrt(1 - (u . n)^2).
#[must_use]
pub fn tyre_height_rate(pose: &CornerPose, motion: &Twist, up: &Vector) -> f64 {
    let sine = pose.spin_axis.dot(up);
    let sine_rate = motion.angular.cross(&pose.spin_axis).dot(up);
    motion.velocity_of(&pose.wheel_centre).dot(up)
        + pose.tyre_radius * sine * sine_rate / (1.0 - sine * sine).sqrt()
}
