//! The dimensions that a car has.

use steerloft_solver::frame::Side;

use super::{Axis, Dimension, Whose};
use crate::adjustment::PointName;
use crate::car::{Car, Drive, InnerBallsOn};
use crate::setup::{Rods, Setup};

/// Every dimension of a setup's car, each side by itself, as far as it has an effect of its own: what both sides share
/// once, rods where their lengths are fixed, links where their lengths are given.
#[must_use]
pub fn dimensions(setup: &Setup) -> Vec<Dimension> {
    let car = &setup.car;
    let mut all: Vec<Dimension> = PointName::ALL
        .into_iter()
        .flat_map(|point| of_point(car, point))
        .collect();
    for side in [Whose::Left, Whose::Right] {
        all.extend([Dimension::Camber { side }, Dimension::TyreRadius { side }]);
        if !matches!(setup.rods, Rods::HoldToe(_)) {
            all.push(Dimension::Rod { side });
        }
    }
    all.push(Dimension::Centre);
    if let Drive::TwinCrank {
        drag_length,
        cross_length,
        ..
    } = &car.drive
    {
        all.extend(drag_length.map(|_| Dimension::DragLink));
        all.extend(cross_length.map(|_| Dimension::CrossLink));
    }
    all.extend([
        Dimension::Wheelbase,
        Dimension::RideHeight,
        Dimension::Pitch,
        Dimension::Roll,
    ]);
    all
}

fn of_point(car: &Car, point: PointName) -> Vec<Dimension> {
    let sides: &[Whose] = if point.is_shared() {
        &[Whose::Both]
    } else {
        &[Whose::Left, Whose::Right]
    };
    let given = sides.iter().filter(|side| {
        let mut sides = side.sides();
        sides.any(|side: Side| car.point(point, side).is_some())
    });
    // Inner balls on a cross link have their place along it, and the link lies across the car.
    let is_on_link = point == PointName::RodInner
        && matches!(
            car.drive,
            Drive::TwinCrank {
                inner_on: InnerBallsOn::CrossLink,
                ..
            }
        );
    let axes = Axis::ALL.into_iter();
    let axes: Vec<Axis> = axes
        .filter(|axis| !is_on_link || *axis == Axis::Y)
        .collect();
    given
        .flat_map(|&side| {
            axes.iter().map(move |&axis| {
                if point.is_direction() {
                    Dimension::Direction { point, side, axis }
                } else {
                    Dimension::Point { point, side, axis }
                }
            })
        })
        .collect()
}
