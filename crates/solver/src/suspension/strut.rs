//! A lower arm swings; the steering axis runs from its ball to a top mount fixed in the chassis, and the knuckle
//! slides along the strut. The suspension coordinate is the arm's swing, rad, right-handed about its hinge from
//! front to rear point.
//!
//! The slide line is fixed in the knuckle and runs through the top mount. Where it is inclined to the steering
//! axis, that axis moves in the knuckle: its upper point is the place of the slide line that is as far from the
//! lower ball as the top mount is, which is a quadratic equation.

use super::arm::{Arm, Swing};
use super::axis_frame::AxisFrame;
use super::{Along, AxisInKnuckle, Bend, Carriage, is_upright, stays_upright};
use crate::axle::Knuckle;
use crate::error::Fault;
use crate::frame::{Point, Vector};

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Strut {
    hint: Vector,
    lower: Swing,
    top_mount: Point,
    /// Lower ball in the knuckle as drawn.
    drawn_lower: Point,
    /// From the lower ball to the top mount as drawn.
    drawn_along: Vector,
    /// Unit vector of the slide line in the knuckle as drawn, pointing up.
    slide: Vector,
    /// Component of `drawn_along` along `slide`; positive.
    slide_height: f64,
}

/// The steering axis and how it changes per rad of the arm's swing.
struct MovingAxis {
    axis: Vector,
    rate: Vector,
}

impl Strut {
    pub(super) fn new(
        knuckle: &Knuckle,
        lower: &Arm,
        slide_direction: &Vector,
    ) -> Result<Self, Fault> {
        let slide = slide_direction
            .try_normalize(f64::MIN_POSITIVE)
            .ok_or(Fault::SlideHasNoDirection)?;
        let drawn_along = knuckle.kingpin_upper - knuckle.kingpin_lower;
        let slide = slide * drawn_along.dot(&slide).signum();
        let slide_height = drawn_along.dot(&slide);
        if slide_height <= 0.1 * drawn_along.norm() {
            return Err(Fault::SlideAcrossKingpin);
        }
        Ok(Self {
            hint: AxisFrame::hint(),
            lower: lower.swing()?,
            top_mount: knuckle.kingpin_upper,
            drawn_lower: knuckle.kingpin_lower,
            drawn_along,
            slide,
            slide_height,
        })
    }

    /// The steering axis in the knuckle, when the lower ball is `length` from the top mount and that length
    /// grows at `length_rate`.
    fn moving_axis(&self, length: f64, length_rate: f64) -> Option<MovingAxis> {
        let height = self.slide_height;
        let square = height * height + length * length - self.drawn_along.norm_squared();
        // Not-a-number is no place either.
        let meets = square > 0.0;
        meets.then(|| {
            let root = square.sqrt();
            let axis = (self.drawn_along + self.slide * (root - height)) / length;
            let slide_rate = length * length_rate / root;
            MovingAxis {
                axis,
                rate: (self.slide * slide_rate - axis * length_rate) / length,
            }
        })
    }

    #[inline]
    pub(super) fn carriage(&self, swing: f64) -> Option<Carriage> {
        let (lower, lower_rate) = self.lower.ball(swing);
        let along = self.top_mount - lower;
        let length = along.norm();
        let axis = along / length;
        if !is_upright(&axis) {
            return None;
        }
        let axis_rate = (axis * axis.dot(&lower_rate) - lower_rate) / length;
        let frame = AxisFrame::on_axis(lower, axis, &self.hint);
        Some(Carriage {
            motion: frame.motion(&self.hint, lower_rate, axis_rate),
            frame,
            stay: stays_upright(&axis, &axis_rate),
            axis_rate,
        })
    }

    #[inline]
    pub(super) fn axis_in_knuckle(&self, swing: f64) -> Option<AxisInKnuckle> {
        let (lower, lower_rate) = self.lower.ball(swing);
        let along = self.top_mount - lower;
        let length = along.norm();
        let moving = self.moving_axis(length, -along.dot(&lower_rate) / length)?;
        if !is_upright(&moving.axis) {
            return None;
        }
        let frame = AxisFrame::on_axis(self.drawn_lower, moving.axis, &self.hint);
        Some(AxisInKnuckle {
            turn: frame
                .motion(&self.hint, Vector::zeros(), moving.rate)
                .angular,
            frame,
        })
    }

    pub(super) fn bend(&self, swing: f64) -> Option<Bend> {
        let carriage = self.carriage(swing)?;
        let drawn = self.axis_in_knuckle(swing)?.frame;
        let (lower, lower_rate) = self.lower.ball(swing);
        let lower_bend = self.lower.bend(swing);
        let along = self.top_mount - lower;
        let axis = Along::of(&along, &-lower_rate, &-lower_bend);
        // The squared length has the same second derivative as the squared root of the quadratic equation.
        let length = along.norm();
        let length_rate = -along.dot(&lower_rate) / length;
        let square_bend = lower_rate.norm_squared() - along.dot(&lower_bend);
        let height = self.slide_height;
        let root = (height * height + length * length - self.drawn_along.norm_squared()).sqrt();
        let root_rate = length * length_rate / root;
        let root_bend = (square_bend - root_rate * root_rate) / root;
        let in_knuckle = Along::of(
            &(self.drawn_along + self.slide * (root - height)),
            &(self.slide * root_rate),
            &(self.slide * root_bend),
        );
        Some(Bend {
            origin: lower_bend,
            angular: carriage
                .frame
                .angular_bend(&self.hint, &axis.rate, &axis.bend),
            in_knuckle: drawn.angular_bend(&self.hint, &in_knuckle.rate, &in_knuckle.bend),
        })
    }

    pub(super) fn kingpin(&self, swing: f64) -> (Point, Point) {
        (self.lower.ball(swing).0, self.top_mount)
    }
}
