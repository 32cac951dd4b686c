//! Where a wheel's axis meets the rear-axle line.

use super::contact::contact_centre;
use super::steering_axis::wheel_axes;
use crate::frame::{Road, Side, Sides};
use crate::pose::{AxlePose, CornerPose};

/// The point about which one wheel would roll.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TurnCentre {
    /// Where the wheel's axis meets the rear-axle line: lateral place in road-levelled axes, mm, left positive.
    pub lateral: f64,
    /// From there to the wheel's contact centre, mm.
    pub radius: f64,
}

/// The wheel's turn centre on the rear-axle line, or nothing while its axis is parallel to that line.
///
/// `rear_axle_behind` is the rear axle's distance behind the origin, mm: [`FrontAxle::rear_axle_behind`].
///
/// [`FrontAxle::rear_axle_behind`]: crate::axle::FrontAxle::rear_axle_behind
#[must_use]
pub fn turn_centre(pose: &CornerPose, road: &Road, rear_axle_behind: f64) -> Option<TurnCentre> {
    let axes = road.axes();
    let contact = contact_centre(pose, &axes.up).coords;
    let outboard = wheel_axes(pose, &axes.up).outboard;
    let (x, y) = (contact.dot(&axes.forward), contact.dot(&axes.leftward));
    let along = (-rear_axle_behind - x) / outboard.dot(&axes.forward);
    let lateral = y + along * outboard.dot(&axes.leftward);
    (along.is_finite() && lateral.is_finite()).then_some(TurnCentre {
        lateral,
        radius: along.abs(),
    })
}

/// How the whole axle turns: both wheels' centres on the rear-axle line, and the circle swept.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turning {
    /// Each wheel's turn centre.
    pub centres: Sides<TurnCentre>,
    /// Distance between the two, mm: zero for the ideal pair.
    pub spread: f64,
    /// Radius swept by the outer edge of the outer tyre about its own turn centre, mm: turning radius to the
    /// contact centre (SAE J695, clause 3) and half the tread width more.
    pub swept_radius: f64,
}

/// The turn of an axle, or nothing while a wheel's axis is parallel to the rear-axle line. `rear_axle_behind` as for
/// [`turn_centre`].
#[must_use]
pub fn turning(pose: &AxlePose, road: &Road, rear_axle_behind: f64) -> Option<Turning> {
    let centre = |side| turn_centre(pose.corners.get(side), road, rear_axle_behind);
    let centres = Sides::new(centre(Side::Left)?, centre(Side::Right)?);
    let swept = |side: Side| centres.get(side).radius + 0.5 * pose.corners.get(side).tyre_width;
    Some(Turning {
        centres,
        spread: (centres.left.lateral - centres.right.lateral).abs(),
        swept_radius: swept(Side::Left).max(swept(Side::Right)),
    })
}
