//! Angles of the tie rod and how well it transmits.

use crate::frame::{Point, Vector};
use crate::pose::{AxlePose, CornerPose};

/// Slopes of the rod going from inner to outer ball, chassis axes, rad.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RodAngles {
    /// In top view, positive when the outer ball lies ahead.
    pub top: f64,
    /// In front view, positive when the outer ball lies higher.
    pub front: f64,
}

/// The rod's slopes.
#[must_use]
pub fn rod_angles(pose: &CornerPose) -> RodAngles {
    let rod = pose.steering_arm - pose.rod_inner;
    let outboard = rod.y * pose.side.sign();
    RodAngles {
        top: rod.x.atan2(outboard),
        front: rod.z.atan2(outboard),
    }
}

/// How a joint passes on the rod's pull.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Transmission {
    /// Angle between rod and lever, rad: a right angle is best, near 0 or a half turn the linkage locks.
    pub angle: f64,
    /// |cos| between the rod and the ball's direction of motion: 1 is best, 0 locks.
    pub share: f64,
}

/// Transmission at a ball that turns about an axis, with the rod coming from its other ball.
#[must_use]
pub fn transmission(
    ball: &Point,
    other_ball: &Point,
    axis_point: &Point,
    axis: &Vector,
) -> Transmission {
    let rod = (ball - other_ball).normalize();
    let from_axis = ball - axis_point;
    let lever = (from_axis - axis * axis.dot(&from_axis)).normalize();
    Transmission {
        angle: lever.dot(&rod).clamp(-1.0, 1.0).acos(),
        share: axis.cross(&lever).dot(&rod).abs().min(1.0),
    }
}

/// Transmission at a corner's outer ball.
#[must_use]
pub fn outer_transmission(pose: &CornerPose) -> Transmission {
    transmission(
        &pose.steering_arm,
        &pose.rod_inner,
        &pose.kingpin_lower,
        &pose.kingpin_axis(),
    )
}

/// Effective share at a corner's inner ball: |cos| between the rod and the ball's direction of motion, or
/// nothing where the ball stands still.
#[must_use]
pub fn inner_share(pose: &AxlePose, corner: &CornerPose) -> Option<f64> {
    let motion = pose.drive.rod_inner_rate.get(corner.side);
    let direction = motion.try_normalize(f64::MIN_POSITIVE)?;
    let rod = (corner.steering_arm - corner.rod_inner).normalize();
    Some(rod.dot(&direction).abs().min(1.0))
}

/// Misalignment of a ball joint: angle between the rod and the plane square to the ball's stud, rad, zero or more.
///
/// `rod` and `stud` are directions of any length; a direction without length has no misalignment.
#[must_use]
pub fn ball_misalignment(rod: &Vector, stud: &Vector) -> f64 {
    let lengths = rod.norm() * stud.norm();
    if lengths > 0.0 {
        (rod.dot(stud).abs() / lengths).min(1.0).asin()
    } else {
        0.0
    }
}
