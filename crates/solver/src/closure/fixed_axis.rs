//! Closing a corner whose steering axis is fixed in the chassis: one equation in the turn alone.
//!
//! With the axis fixed, the outer ball of a held wheel height runs on an ellipse: on a circle about the axis, plus the
//! slide along it that holds the height, which is itself a cosine and a sine of the turn. Its squared distance from
//! the inner ball is then a trigonometric polynomial of second degree (derived here):
//!
//! |m + p cos t + q sin t|^2 = l^2
//!
//! Without slide p and q are square and alike, the second degree drops out, and the circle's closed form answers.

use super::circle::meet;
use super::newton::{FARTHEST_TURN, MOST_STEPS};
use crate::frame::{Point, Vector};
use crate::pose::Coordinates;
use crate::suspension::axis_frame::AxisFrame;

/// A corner with a fixed steering axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FixedAxis {
    /// The outer ball's path at the reference height: middle, and what cosine and sine of the turn multiply.
    middle: Point,
    by_cos: Vector,
    by_sin: Vector,
    /// How the knuckle slides, where it does.
    slide: Option<Slide>,
}

/// The slide that holds the wheel's height.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Slide {
    /// Slide per mm of height, along the axis: one over its z.
    per_height: f64,
    /// The axis over its z: the ball's displacement per mm of height.
    along: Vector,
    /// Wheel-centre height without slide: what cosine and sine of the turn multiply. The rest is zero at turn 0.
    height_by_cos: f64,
    height_by_sin: f64,
}

impl FixedAxis {
    /// From the axis frame as drawn and the coordinates of wheel centre and outer ball in it.
    pub(crate) fn new(
        frame: &AxisFrame,
        wheel_centre: &Vector,
        steering_arm: &Vector,
        slides: bool,
    ) -> Self {
        let circle = |local: &Vector| {
            (
                frame.across * local.x + frame.beside * local.y,
                frame.beside * local.x - frame.across * local.y,
            )
        };
        let (mut by_cos, mut by_sin) = circle(steering_arm);
        let mut middle = frame.origin + frame.axis * steering_arm.z;
        let slide = slides.then(|| {
            let (height_by_cos, height_by_sin) = {
                let (cos, sin) = circle(wheel_centre);
                (cos.z, sin.z)
            };
            let along = frame.axis / frame.axis.z;
            // Held height: the slide takes back what the turn adds to the wheel centre's z.
            middle += along * height_by_cos;
            by_cos -= along * height_by_cos;
            by_sin -= along * height_by_sin;
            Slide {
                per_height: 1.0 / frame.axis.z,
                along,
                height_by_cos,
                height_by_sin,
            }
        });
        Self {
            middle,
            by_cos,
            by_sin,
            slide,
        }
    }

    /// Coordinates at which the rod closes at a wheel travel, near `start` and on the branch of the given sign; or
    /// nothing if they are too far away to be sure of the branch, or there are none.
    #[inline]
    pub(crate) fn close(
        &self,
        rod: (&Point, f64),
        travel: f64,
        start: &Coordinates,
        (branch, tolerance): (f64, f64),
    ) -> Option<Coordinates> {
        let (inner, length) = rod;
        let Some(slide) = &self.slide else {
            let offset = self.middle - inner;
            let square = length * length - offset.norm_squared() - self.by_cos.norm_squared();
            let (cos, sin) = meet(
                offset.dot(&self.by_cos),
                offset.dot(&self.by_sin),
                0.5 * square,
                branch,
            )?;
            let steering = nearest_turn(sin.atan2(cos), start.steering);
            let near = (steering - start.steering).abs() <= FARTHEST_TURN;
            return near.then_some(Coordinates {
                suspension: 0.0,
                steering,
            });
        };
        let offset = self.middle + slide.along * travel - inner;
        let steering = self.ellipse_turn(&offset, length, start.steering, branch, tolerance)?;
        let (sin, cos) = steering.sin_cos();
        let rise = slide.height_by_cos * (cos - 1.0) + slide.height_by_sin * sin;
        Some(Coordinates {
            suspension: (travel - rise) * slide.per_height,
            steering,
        })
    }

    /// Halley's iteration on the polynomial, under the rules of the general one: the residual must at least halve
    /// and the slope keep the sign of the branch. The method cubes the error; a last step whose error cubed is below
    /// rounding is not evaluated here, since whoever takes the turn for a pose evaluates it anyway.
    #[inline]
    fn ellipse_turn(
        &self,
        offset: &Vector,
        length: f64,
        start: f64,
        branch: f64,
        tolerance: f64,
    ) -> Option<f64> {
        let (p, q) = (&self.by_cos, &self.by_sin);
        // Half the squared distance less that of the rod: constant + c1 cos + s1 sin + c2 cos^2 + s2 sin cos.
        let c1 = offset.dot(p);
        let s1 = offset.dot(q);
        let c2 = 0.5 * (p.norm_squared() - q.norm_squared());
        let s2 = p.dot(q);
        let constant = 0.5 * (offset.norm_squared() + q.norm_squared() - length * length);
        let mut turn = start;
        let mut residual = f64::INFINITY;
        for _ in 0..MOST_STEPS {
            let (sin, cos) = turn.sin_cos();
            let first = c1 * cos + s1 * sin;
            let second = c2 * cos + s2 * sin;
            let value = constant + first + second * cos;
            let slope = s1 * cos - c1 * sin + s2 * (cos * cos - sin * sin) - 2.0 * c2 * sin * cos;
            let bend = -first - 4.0 * second * cos + 2.0 * c2;
            // Every comparison is put so that not-a-number fails it.
            let on_branch = slope * branch > 0.0;
            if !on_branch {
                return None;
            }
            let left = value.abs() / length;
            if left <= tolerance {
                return Some(turn);
            }
            let halved = left <= 0.5 * residual;
            if !halved {
                return (left <= 64.0 * tolerance).then_some(turn);
            }
            residual = left;
            let newton = value / slope;
            let ratio = bend / slope;
            turn -= newton / (1.0 - 0.5 * newton * ratio);
            let near = (turn - start).abs() <= FARTHEST_TURN;
            if !near {
                return None;
            }
            let cubed = (newton * newton * newton).abs() * (1.0 + ratio * ratio);
            if cubed * slope.abs() <= tolerance * length {
                return Some(turn);
            }
        }
        None
    }
}

/// The turn that differs from `turn` by whole turns and lies nearest to `start`.
fn nearest_turn(turn: f64, start: f64) -> f64 {
    use std::f64::consts::TAU;
    turn + ((start - turn) / TAU).round() * TAU
}

#[cfg(test)]
mod tests {
    use super::nearest_turn;
    use std::f64::consts::TAU;

    #[test]
    fn whole_turns_are_added_until_it_is_nearest() {
        let turns = [
            (0.1, 0.2, 0.1),
            (0.1, 6.3, 0.1 + TAU),
            (3.1, -3.1, 3.1 - TAU),
            (-3.0, 16.0, -3.0 + 3.0 * TAU),
        ];
        for (turn, start, nearest) in turns {
            let found = nearest_turn(turn, start);
            assert!(
                (found - nearest).abs() < 1e-12,
                "{turn} near {start}: {found}"
            );
        }
    }
}
