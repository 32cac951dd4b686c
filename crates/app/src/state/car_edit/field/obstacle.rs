//! The numbers of an obstacle.

use steerloft_setup::car::{Car, Position, Shape};
use steerloft_setup::edit::CarEdit;

use super::Axis;
use crate::state::car_edit::obstacles;

/// A number of an obstacle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ObstacleField {
    /// A coordinate of a box's centre or of a point of a plane.
    Place(Axis),
    /// A size of a box, or a part of the direction in which a plane leaves space.
    Extent(Axis),
}

impl ObstacleField {
    pub(super) fn value(self, car: &Car, index: usize) -> Option<f64> {
        let mut shape = car.obstacles.get(index)?.shape;
        let (axis, position) = self.position(&mut shape);
        Some(axis.of(*position))
    }

    pub(super) fn edit(self, car: &Car, index: usize, value: f64) -> Option<CarEdit> {
        obstacles::changed(car, index, |obstacle| {
            let (axis, position) = self.position(&mut obstacle.shape);
            *position = axis.with(*position, value);
        })
    }

    pub(super) fn unit(self, car: &Car, index: usize) -> &'static str {
        match (self, car.obstacles.get(index).map(|one| one.shape)) {
            (Self::Extent(_), Some(Shape::Plane { .. })) => "",
            _ => "mm",
        }
    }

    const fn position(self, shape: &mut Shape) -> (Axis, &mut Position) {
        match (self, shape) {
            (
                Self::Place(axis),
                Shape::Box { centre: place, .. } | Shape::Plane { point: place, .. },
            ) => (axis, place),
            (
                Self::Extent(axis),
                Shape::Box { size: extent, .. } | Shape::Plane { free: extent, .. },
            ) => (axis, extent),
        }
    }
}
