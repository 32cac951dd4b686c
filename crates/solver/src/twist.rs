//! Instantaneous motion of a rigid body.

use crate::frame::{Point, Vector};

/// Velocity field of a rigid body per unit of some input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Twist {
    /// Rotation rate, rad per unit.
    pub angular: Vector,
    /// Velocity of the body's point at [`Twist::at`], mm per unit.
    pub linear: Vector,
    /// The point to which `linear` belongs.
    pub at: Point,
}

impl Twist {
    /// Rotation at one radian per unit about an axis through a point.
    #[must_use]
    pub fn rotation(axis: Vector, at: Point) -> Self {
        Self {
            angular: axis,
            linear: Vector::zeros(),
            at,
        }
    }

    /// Velocity of a point of the body, mm per unit.
    #[must_use]
    pub fn velocity_of(&self, point: &Point) -> Vector {
        self.linear + self.angular.cross(&(point - self.at))
    }

    /// This motion times a rate.
    #[must_use]
    pub fn scaled(&self, rate: f64) -> Self {
        Self {
            angular: self.angular * rate,
            linear: self.linear * rate,
            at: self.at,
        }
    }

    /// This motion and another one of the same body together.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        Self {
            angular: self.angular + other.angular,
            linear: self.linear + other.velocity_of(&self.at),
            at: self.at,
        }
    }
}
