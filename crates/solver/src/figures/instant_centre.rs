//! Instant axis of a corner in travel, its front- and side-view instant centres, and the roll centre.
//!
//! The constructions are the classical ones for independent suspensions, as in Milliken and Milliken, Race Car
//! Vehicle Dynamics, chapter 17 (from memory): the wheel turns about the instant centre of the view, and the roll
//! centre lies where the lines from contact centres to instant centres meet. They are taken here from the
//! knuckle's true motion with the steering input held.

use super::contact::contact_centre;
use crate::frame::{Point, Road, Vector};
use crate::pose::{AxlePose, CornerPose};

/// The screw that a knuckle makes in travel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InstantAxis {
    /// The point of the axis nearest to the wheel centre, chassis axes, mm.
    pub point: Point,
    /// Unit direction.
    pub direction: Vector,
    /// Slide along the axis per rad of turn, mm.
    pub pitch: f64,
}

/// Rotation per mm of travel below which a knuckle counts as not turning, rad/mm: the axis is then farther away
/// than a hundred kilometres.
const NOT_TURNING: f64 = 1e-8;

/// The instant axis in travel, or nothing for a knuckle that does not turn or has no travel.
#[must_use]
pub fn instant_axis(pose: &CornerPose) -> Option<InstantAxis> {
    let motion = pose.per_travel?;
    let rate = motion.angular.norm();
    if rate < NOT_TURNING {
        return None;
    }
    let direction = motion.angular / rate;
    let velocity = motion.velocity_of(&pose.wheel_centre);
    Some(InstantAxis {
        point: pose.wheel_centre + direction.cross(&velocity) / rate,
        direction,
        pitch: direction.dot(&velocity) / rate,
    })
}

/// Front-view instant centre: in the road-levelled cross plane through the contact centre, the point of the
/// knuckle that does not move in that plane. Chassis axes, mm.
#[must_use]
pub fn front_view_instant_centre(pose: &CornerPose, road: &Road) -> Option<Point> {
    let axes = road.axes();
    instant_centre(pose, &contact_centre(pose, &axes.up), &axes.forward)
}

/// Side-view instant centre: likewise in the lengthwise plane through the contact centre.
#[must_use]
pub fn side_view_instant_centre(pose: &CornerPose, road: &Road) -> Option<Point> {
    let axes = road.axes();
    instant_centre(pose, &contact_centre(pose, &axes.up), &axes.leftward)
}

/// In a plane with unit `normal` through a point of the knuckle, the point whose velocity in the plane is zero.
/// Derived here: at r with w r = n x v, w the rotation about the normal.
fn instant_centre(pose: &CornerPose, from: &Point, normal: &Vector) -> Option<Point> {
    let motion = pose.per_travel?;
    let turning = motion.angular.dot(normal);
    if turning.abs() < NOT_TURNING {
        return None;
    }
    Some(from + normal.cross(&motion.velocity_of(from)) / turning)
}

/// Roll centre of the axle in road-levelled axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RollCentre {
    /// Height over the road plane, mm.
    pub height: f64,
    /// Lateral place, mm, left positive; zero for a mirror-symmetrical pose.
    pub lateral: f64,
}

/// Where the lines from each contact centre to its front-view instant centre meet, or nothing where they are
/// parallel or a corner has no travel. An instant centre at infinity is no exception: its line stands square to
/// the contact centre's motion, as every such line does.
#[must_use]
pub fn roll_centre(pose: &AxlePose, road: &Road) -> Option<RollCentre> {
    let axes = road.axes();
    let line = |corner: &CornerPose| {
        let contact = contact_centre(corner, &axes.up);
        let velocity = corner.per_travel?.velocity_of(&contact);
        let along = (velocity.dot(&axes.up), -velocity.dot(&axes.leftward));
        Some((
            contact.coords.dot(&axes.leftward),
            road.height_of(&contact),
            along,
        ))
    };
    let (y, z, (dy, dz)) = line(&pose.corners.left)?;
    let (other_y, other_z, (other_dy, other_dz)) = line(&pose.corners.right)?;
    let cross = dy * other_dz - dz * other_dy;
    let flat = cross.abs() <= 1e-12 * dy.hypot(dz) * other_dy.hypot(other_dz);
    if flat {
        // Both lines in one: level arms on a level road. Every point of it will do; the middle is meant.
        let level =
            dz.abs() <= 1e-9 * dy.abs() && (z - other_z).abs() <= 1e-9 * (y - other_y).abs();
        return level.then_some(RollCentre {
            height: 0.5 * (z + other_z),
            lateral: 0.5 * (y + other_y),
        });
    }
    let along = ((other_y - y) * other_dz - (other_z - z) * other_dy) / cross;
    Some(RollCentre {
        height: z + along * dz,
        lateral: y + along * dy,
    })
}
