//! A lower and an upper arm, each swinging about its own hinge. The suspension coordinate is the lower arm's
//! swing, rad, right-handed about its hinge from front to rear point.
//!
//! The upper ball lies where its circle meets the sphere about the lower ball whose radius is the kingpin's
//! length: a closed form.

use super::arm::{Arm, Swing};
use super::axis_frame::AxisFrame;
use super::{Along, Bend, Carriage, is_upright, stays_upright};
use crate::axle::Knuckle;
use crate::closure::circle::reserve;
use crate::error::Fault;
use crate::frame::{Point, Vector};
use crate::twist::Twist;

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DoubleWishbone {
    hint: Vector,
    lower: Swing,
    upper: Swing,
    kingpin_length: f64,
    branch: f64,
}

impl DoubleWishbone {
    pub(super) fn new(knuckle: &Knuckle, lower: &Arm, upper: &Arm) -> Result<Self, Fault> {
        let upper = upper.swing()?;
        let branch = upper.circle().branch(&lower.ball).signum();
        Ok(Self {
            hint: AxisFrame::hint(),
            lower: lower.swing()?,
            upper,
            kingpin_length: (knuckle.kingpin_upper - knuckle.kingpin_lower).norm(),
            branch,
        })
    }

    /// Lower and upper ball with their velocities per rad of their own arms.
    #[inline]
    fn balls(&self, swing: f64) -> Option<[(Point, Vector); 2]> {
        let lower = self.lower.ball(swing);
        let circle = self.upper.circle();
        let (cos, sin) = circle.meet(&lower.0, self.kingpin_length, self.branch)?;
        Some([lower, circle.at(cos, sin)])
    }

    #[inline]
    pub(super) fn carriage(&self, swing: f64) -> Option<Carriage> {
        let [(lower, lower_rate), (upper, upper_by_own)] = self.balls(swing)?;
        let axis = (upper - lower) / self.kingpin_length;
        if !is_upright(&axis) {
            return None;
        }
        // The kingpin keeps its length: both balls move alike along it.
        let upper_rate = upper_by_own * (axis.dot(&lower_rate) / axis.dot(&upper_by_own));
        let reserve = reserve(self.upper.circle().radius(), axis.dot(&upper_by_own));
        let reaches = (reserve / lower_rate.norm()).min(f64::MAX);
        let frame = AxisFrame::on_axis(upper, axis, &self.hint);
        let axis_rate = (upper_rate - lower_rate) / self.kingpin_length;
        Some(Carriage {
            motion: frame.motion(&self.hint, upper_rate, axis_rate),
            frame,
            stay: stays_upright(&axis, &axis_rate).min(reaches),
            axis_rate,
        })
    }

    /// The steering axis where the upper arm lines up with the kingpin: its circle just touches the sphere. The motion
    /// has no bound there and is left out.
    pub(super) fn lined_up(&self, swing: f64) -> Option<Carriage> {
        let lower = self.lower.ball(swing).0;
        let circle = self.upper.circle();
        let (cos, sin) = circle.touch(&lower, self.kingpin_length)?;
        let upper = circle.at(cos, sin).0;
        let axis = (upper - lower).try_normalize(f64::MIN_POSITIVE)?;
        Some(Carriage {
            frame: AxisFrame::on_axis(upper, axis, &self.hint),
            motion: Twist {
                angular: Vector::zeros(),
                linear: Vector::zeros(),
                at: upper,
            },
            axis_rate: Vector::zeros(),
            stay: 0.0,
        })
    }

    pub(super) fn bend(&self, swing: f64) -> Option<Bend> {
        let carriage = self.carriage(swing)?;
        let (lower, lower_rate) = self.lower.ball(swing);
        let circle = self.upper.circle();
        let (cos, sin) = circle.meet(&lower, self.kingpin_length, self.branch)?;
        let (upper, by_own) = circle.at(cos, sin);
        let kingpin = upper - lower;
        let own_rate = kingpin.dot(&lower_rate) / kingpin.dot(&by_own);
        let upper_rate = by_own * own_rate;
        let lower_bend = self.lower.bend(swing);
        let toward_centre = circle.bend(cos, sin) * (own_rate * own_rate);
        // The kingpin keeps its length in second order too.
        let apart = upper_rate - lower_rate;
        let own_bend = -(apart.norm_squared() + kingpin.dot(&(toward_centre - lower_bend)))
            / kingpin.dot(&by_own);
        let upper_bend = toward_centre + by_own * own_bend;
        let axis = Along::of(&kingpin, &apart, &(upper_bend - lower_bend));
        Some(Bend {
            origin: upper_bend,
            angular: carriage
                .frame
                .angular_bend(&self.hint, &axis.rate, &axis.bend),
            ..Bend::NONE
        })
    }

    pub(super) fn kingpin(&self, swing: f64) -> Option<(Point, Point)> {
        let [lower, upper] = self.balls(swing)?;
        Some((lower.0, upper.0))
    }
}
