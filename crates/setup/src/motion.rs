//! What can be done to points and directions: moving, turning, reflecting.

use nalgebra::{Rotation3, Unit};
use steerloft_solver::frame::{Point, Vector};

/// Shortest direction that has one, so that a division by its length stays finite.
pub(crate) const LEAST_DIRECTION: f64 = 1e-9;

/// What is done to points and directions.
pub(crate) trait Motion {
    /// Where a point goes.
    fn point(&self, point: &Point) -> Point;
    /// How a direction turns.
    fn direction(&self, direction: &Vector) -> Vector;
}

/// A displacement.
pub(crate) struct Translation(pub(crate) Vector);

impl Motion for Translation {
    fn point(&self, point: &Point) -> Point {
        point + self.0
    }

    fn direction(&self, direction: &Vector) -> Vector {
        *direction
    }
}

/// A turn about an axis through a point.
pub(crate) struct Rotation {
    through: Point,
    turn: Rotation3<f64>,
}

impl Rotation {
    /// Right-handed about `about`, angle in rad; nothing if the axis has no direction.
    pub(crate) fn new(through: Point, about: Vector, angle: f64) -> Option<Self> {
        let axis = Unit::try_new(about, LEAST_DIRECTION)?;
        Some(Self {
            through,
            turn: Rotation3::from_axis_angle(&axis, angle),
        })
    }
}

impl Motion for Rotation {
    fn point(&self, point: &Point) -> Point {
        self.through + self.turn * (point - self.through)
    }

    fn direction(&self, direction: &Vector) -> Vector {
        self.turn * direction
    }
}

/// A reflection in a plane through a point.
pub(crate) struct Reflection {
    through: Point,
    normal: Unit<Vector>,
}

impl Reflection {
    /// Nothing if the normal has no direction.
    pub(crate) fn new(through: Point, normal: Vector) -> Option<Self> {
        let normal = Unit::try_new(normal, LEAST_DIRECTION)?;
        Some(Self { through, normal })
    }
}

impl Motion for Reflection {
    fn point(&self, point: &Point) -> Point {
        let height = self.normal.dot(&(point - self.through));
        point - self.normal.into_inner() * (2.0 * height)
    }

    fn direction(&self, direction: &Vector) -> Vector {
        direction - self.normal.into_inner() * (2.0 * self.normal.dot(direction))
    }
}
