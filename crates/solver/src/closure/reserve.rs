//! How far from a pose a corner's rod can be trusted to reach.
//!
//! On a stretch of a path a rod may fail to reach although it reaches at both ends. What the distance of its balls can
//! still grow or shrink at an end is its reserve there. It wanes by no more than the balls move, so a stretch is safe if
//! the reserves at its two ends together cover what they move on it.

use super::circle::reserve;
use super::corner::CornerClosure;
use super::newton::{Conditions, Steering};

impl CornerClosure {
    /// How much the distance of the rod's balls can still grow or shrink by turning the knuckle, mm, at the least;
    /// without end where the steering is not held by a rod.
    pub(crate) fn reserve(&self, conditions: &Conditions, steering: &Steering) -> f64 {
        match steering {
            Steering::Rod { .. } => {
                let slope = conditions.determinant() / conditions.height.by_suspension;
                reserve(self.lever, slope)
            }
            Steering::Heading { .. } | Steering::Turn(_) => f64::MAX,
        }
    }
}
