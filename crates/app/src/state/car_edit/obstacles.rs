//! The list of what stands in the way.

use steerloft_setup::car::{Car, Obstacle, Position, Shape};
use steerloft_setup::edit::CarEdit;

/// The edit that changes one of them; none where there is none at this place.
#[must_use]
pub fn changed(car: &Car, index: usize, change: impl FnOnce(&mut Obstacle)) -> Option<CarEdit> {
    let mut obstacles = car.obstacles.clone();
    change(obstacles.get_mut(index)?);
    Some(CarEdit::Obstacles(obstacles))
}

/// The edit that adds one with a name of its own: a box between the wheels, to be measured.
#[must_use]
pub fn added(car: &Car) -> CarEdit {
    let names: Vec<&str> = car.obstacles.iter().map(|one| one.name.as_str()).collect();
    let mut obstacles = car.obstacles.clone();
    obstacles.push(Obstacle {
        name: super::fresh_name("Obstacle", &names),
        shape: Shape::Box {
            centre: Position(-60.0, 0.0, 10.0),
            size: Position(20.0, 20.0, 20.0),
        },
        mirrored: false,
    });
    CarEdit::Obstacles(obstacles)
}

/// The edit that takes one away.
#[must_use]
pub fn without(car: &Car, index: usize) -> CarEdit {
    let mut obstacles = car.obstacles.clone();
    if index < obstacles.len() {
        obstacles.remove(index);
    }
    CarEdit::Obstacles(obstacles)
}

/// The edit that makes one a box or a plane, at the place where it is.
#[must_use]
pub fn reshaped(car: &Car, index: usize, to_plane: bool) -> Option<CarEdit> {
    changed(car, index, |obstacle| {
        obstacle.shape = match (obstacle.shape, to_plane) {
            (Shape::Box { centre, .. }, true) => Shape::Plane {
                point: centre,
                free: Position(1.0, 0.0, 0.0),
            },
            (Shape::Plane { point, .. }, false) => Shape::Box {
                centre: point,
                size: Position(20.0, 20.0, 20.0),
            },
            (same, _) => same,
        };
    })
}
