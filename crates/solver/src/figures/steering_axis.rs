//! The steering axis against road and wheel: caster, kingpin inclination, scrub radius, trails and offsets.
//!
//! Signs as in SAE J670: caster positive when the axis leans rearward going up, inclination positive when it
//! leans inboard, scrub radius positive when the contact centre lies outboard of the axis.

use crate::frame::{Point, RoadAxes, Side, Vector};
use crate::pose::CornerPose;

/// Caster of a steering axis pointing up, rad.
#[must_use]
pub fn caster_of(axis: &Vector, road: &RoadAxes) -> f64 {
    (-axis.dot(&road.forward)).atan2(axis.dot(&road.up))
}

/// Kingpin inclination of a steering axis pointing up, rad.
#[must_use]
pub fn inclination_of(side: Side, axis: &Vector, road: &RoadAxes) -> f64 {
    (-side.sign() * axis.dot(&road.leftward)).atan2(axis.dot(&road.up))
}

/// Rate of caster when the unit axis changes at `axis_rate`. Derived here from tan(caster) = -kx / kz.
#[must_use]
pub fn caster_rate(axis: &Vector, axis_rate: &Vector, road: &RoadAxes) -> f64 {
    let (x, z) = (axis.dot(&road.forward), axis.dot(&road.up));
    (x * axis_rate.dot(&road.up) - z * axis_rate.dot(&road.forward)) / (x * x + z * z)
}

/// Rate of kingpin inclination when the unit axis changes at `axis_rate`. Derived here as for caster.
#[must_use]
pub fn inclination_rate(side: Side, axis: &Vector, axis_rate: &Vector, road: &RoadAxes) -> f64 {
    let (y, z) = (axis.dot(&road.leftward), axis.dot(&road.up));
    side.sign() * (y * axis_rate.dot(&road.up) - z * axis_rate.dot(&road.leftward))
        / (y * y + z * z)
}

/// Where the steering axis meets the plane parallel to the road through a point, chassis axes, mm.
#[must_use]
pub fn axis_at_height_of(pose: &CornerPose, level: &Point, up: &Vector) -> Point {
    axis_meets_plane(&pose.kingpin_lower, &pose.kingpin_axis(), level, up)
}

/// Where a line meets the plane through `level` with normal `up`. The solver keeps steering axes well off the
/// road plane, so the two are never parallel.
pub(crate) fn axis_meets_plane(point: &Point, axis: &Vector, level: &Point, up: &Vector) -> Point {
    point + axis * ((level - point).dot(up) / axis.dot(up))
}

/// Outboard and forward unit directions of a wheel, level with the road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WheelAxes {
    /// Along the spin axis, level, outboard.
    pub outboard: Vector,
    /// The wheel's heading, level.
    pub heading: Vector,
}

/// The wheel's level directions.
#[must_use]
pub fn wheel_axes(pose: &CornerPose, up: &Vector) -> WheelAxes {
    let level = pose.spin_axis - up * pose.spin_axis.dot(up);
    let outboard = level / level.norm();
    WheelAxes {
        outboard,
        heading: (outboard * pose.side.sign()).cross(up),
    }
}
