//! How far from a pose a corner's rod can be trusted to reach.
//!
//! On a stretch of a path a rod may fail to reach although it reaches at both ends. What the distance of its balls can
//! still grow or shrink at an end is its reserve there. It wanes by no more than the balls move, so a stretch is safe if
//! the reserves at its two ends together cover what they move on it.

use super::circle::reserve;
use super::corner::{CornerClosure, Placed};
use super::newton::{Conditions, Steering};

/// Share of a reserve that is counted on where the steering axis moves. Tuned, not proven: with greater shares a few of the
/// random axles that the property tests sweep in coarse and in fine steps were carried over a lock, with this one none is.
const MOVING_AXIS: f64 = 0.25;

impl CornerClosure {
    /// How much the distance of the rod's balls can still grow or shrink by turning the knuckle, mm, at the least;
    /// without end where the steering is not held by a rod.
    pub(crate) fn reserve(&self, conditions: &Conditions, steering: &Steering) -> f64 {
        match steering {
            Steering::Rod { .. } => {
                let slope = conditions.determinant() / conditions.height.by_suspension;
                let reserve = reserve(self.lever, slope);
                if self.fixed_axis.is_some() {
                    reserve
                } else {
                    // A moving axis may take the ball away faster than the knuckle turns it.
                    MOVING_AXIS * reserve
                }
            }
            Steering::Heading { .. } | Steering::Turn(_) => f64::MAX,
        }
    }
    /// Change of the suspension coordinate over which the suspension neither comes apart nor turns back, at the least.
    ///
    /// Derived here: while an arm swings and the rod keeps its length, the wheel centre's path turns about as much as
    /// the arm. It turns back where the path runs level, so the sine of its climb is the turn left until then; a share of it is
    /// counted on, since the knuckle may turn faster than the arm.
    pub(crate) fn suspension_stay(&self, conditions: &Conditions, placed: &Placed) -> f64 {
        if self.fixed_axis.is_some() {
            return placed.stay;
        }
        let way = placed.by_suspension.velocity_of(&placed.wheel_centre)
            * conditions.steering.by_steering
            - placed.by_steering().velocity_of(&placed.wheel_centre)
                * conditions.steering.by_suspension;
        placed
            .stay
            .min(MOVING_AXIS * conditions.determinant().abs() / way.norm())
    }
}
