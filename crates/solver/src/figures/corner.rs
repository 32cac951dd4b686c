//! The figures of one corner together.

use super::camber::camber_of;
use super::contact::contact_centre;
use super::steering_axis::{axis_at_height_of, caster_of, inclination_of, wheel_axes};
use super::toe::{leftward_axis, steer_of, toe_of};
use crate::frame::{Point, Road};
use crate::pose::CornerPose;

/// The figures of one corner: angles in rad, lengths in mm, points in chassis axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CornerFigures {
    /// Steer angle, positive to the left.
    pub steer: f64,
    /// Toe, toe-in positive.
    pub toe: f64,
    /// Camber, positive with the top outboard.
    pub camber: f64,
    /// Caster, positive with the steering axis leaning back.
    pub caster: f64,
    /// Kingpin inclination, positive with the steering axis leaning inboard.
    pub inclination: f64,
    /// Contact centre of the tyre.
    pub contact_centre: Point,
    /// Where the steering axis meets the plane parallel to the road through the contact centre.
    pub ground_point: Point,
    /// From ground point to contact centre along the wheel's lateral direction, outboard positive.
    pub scrub_radius: f64,
    /// Mechanical trail: from contact centre to ground point along the heading, positive with the contact
    /// centre behind.
    pub trail: f64,
    /// As the scrub radius, at the height of the wheel centre.
    pub axis_offset: f64,
    /// As the trail, at the height of the wheel centre.
    pub castor_offset: f64,
}

/// The figures of a posed corner against the road.
#[must_use]
pub fn corner_figures(pose: &CornerPose, road: &Road) -> CornerFigures {
    let road = road.axes();
    let axis = pose.kingpin_axis();
    let wheel = wheel_axes(pose, &road.up);
    let steer = steer_of(&leftward_axis(pose), &road);
    let contact_centre = contact_centre(pose, &road.up);
    let ground_point = axis_at_height_of(pose, &contact_centre, &road.up);
    let at_hub = axis_at_height_of(pose, &pose.wheel_centre, &road.up);
    CornerFigures {
        steer,
        toe: toe_of(pose.side, steer),
        camber: camber_of(&pose.spin_axis, &road.up),
        caster: caster_of(&axis, &road),
        inclination: inclination_of(pose.side, &axis, &road),
        contact_centre,
        ground_point,
        scrub_radius: (contact_centre - ground_point).dot(&wheel.outboard),
        trail: (ground_point - contact_centre).dot(&wheel.heading),
        axis_offset: (pose.wheel_centre - at_hub).dot(&wheel.outboard),
        castor_offset: (at_hub - pose.wheel_centre).dot(&wheel.heading),
    }
}
