//! Contact centre: the lowest point of the wheel circle, taken as a thin disc.

use crate::frame::{Point, Vector};
use crate::pose::CornerPose;

/// Unit vector in the wheel plane that points straight down to the road.
#[must_use]
pub fn down_in_wheel_plane(pose: &CornerPose, up: &Vector) -> Vector {
    let along = pose.spin_axis * pose.spin_axis.dot(up) - up;
    along / along.norm()
}

/// Lowest point of the wheel circle, chassis axes, mm.
#[must_use]
pub fn contact_centre(pose: &CornerPose, up: &Vector) -> Point {
    pose.wheel_centre + down_in_wheel_plane(pose, up) * pose.tyre_radius
}
