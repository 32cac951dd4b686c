//! The kingpin slides through a ball fixed in the chassis; its upper ball is carried by a swinging arm. The
//! suspension coordinate is the arm's swing, rad, right-handed about its hinge from front to rear point.
//!
//! The knuckle's straight bore runs through both ball centres, so the steering axis is the line through them
//! and the knuckle keeps its place along it by the upper ball.

use super::arm::{Arm, Swing};
use super::axis_frame::AxisFrame;
use super::{Along, Bend, Carriage, is_upright, stays_upright};
use crate::axle::Knuckle;
use crate::error::Fault;
use crate::frame::{Point, Vector};

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SwingingUpperArm {
    hint: Vector,
    /// Centre of the ball fixed in the chassis.
    guide: Point,
    swing: Swing,
}

impl SwingingUpperArm {
    pub(super) fn new(knuckle: &Knuckle, arm: &Arm) -> Result<Self, Fault> {
        Ok(Self {
            hint: AxisFrame::hint(),
            guide: knuckle.kingpin_lower,
            swing: arm.swing()?,
        })
    }

    #[inline]
    pub(super) fn carriage(&self, swing: f64) -> Option<Carriage> {
        let (upper, upper_rate) = self.swing.ball(swing);
        let along = upper - self.guide;
        let length = along.norm();
        let axis = along / length;
        // Not-a-number, from a ball that has run into the guide, is not upright either.
        if !is_upright(&axis) {
            return None;
        }
        let frame = AxisFrame::on_axis(upper, axis, &self.hint);
        let axis_rate = (upper_rate - axis * axis.dot(&upper_rate)) / length;
        Some(Carriage {
            motion: frame.motion(&self.hint, upper_rate, axis_rate),
            frame,
            stay: stays_upright(&axis, &axis_rate),
            axis_rate,
        })
    }

    pub(super) fn bend(&self, swing: f64) -> Option<Bend> {
        let frame = self.carriage(swing)?.frame;
        let (upper, upper_rate) = self.swing.ball(swing);
        let upper_bend = self.swing.bend(swing);
        let axis = Along::of(&(upper - self.guide), &upper_rate, &upper_bend);
        Some(Bend {
            origin: upper_bend,
            angular: frame.angular_bend(&self.hint, &axis.rate, &axis.bend),
            ..Bend::NONE
        })
    }

    pub(super) fn kingpin(&self, swing: f64) -> (Point, Point) {
        (self.guide, self.swing.ball(swing).0)
    }
}
