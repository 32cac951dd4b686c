//! Changing a dimension.

use nalgebra::Rotation3;
use steerloft_solver::SolveError;
use steerloft_solver::frame::{Point, Side, Sides, Vector};

use super::{Axis, Dimension, Whose};
use crate::adjustment::PointName;
use crate::car::{Car, CornerPoints, Drive, InnerBallsOn, Position, RightCorner};
use crate::edit::{is_mirrored, place_of, separate};
use crate::layout::assemble;
use crate::setup::{Rods, Setup};

/// A dimension that a setup does not have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum DimensionError {
    /// There is no such point or link.
    #[error("this car has no {0}; its suspension and drive tell which dimensions it has")]
    Absent(Dimension),
    /// The rods are set by toe.
    #[error("the tie rods are set by toe and their lengths follow; fix the lengths to change one")]
    RodsHoldToe,
}

impl Dimension {
    /// Adds to the dimension, mm or degrees, along chassis axes; on the right side of both as the mirror image. Nothing else
    /// is checked. A one-sided dimension of a mirrored corner gives the right corner by itself from then on. Inner balls on a
    /// cross link stay on its line.
    pub fn add(&self, setup: &mut Setup, by: f64) -> Result<(), DimensionError> {
        let car = &mut setup.car;
        match *self {
            Self::Point { point, side, axis } => {
                return self.on_places(car, point, side, |place, mirrors| {
                    let mirrors = mirrors && axis == Axis::Y;
                    *coordinate(place, axis) += if mirrors { -by } else { by };
                });
            }
            Self::Direction { point, side, axis } => {
                return self.on_places(car, point, side, |place, mirrors| {
                    // Mirrored in the plane of x and z, a turn about y stays and one about x or z goes the other way.
                    let mirrors = mirrors && axis != Axis::Y;
                    let turned = turn(axis, if mirrors { -by } else { by }) * place.vector();
                    *place = Position(turned.x, turned.y, turned.z);
                });
            }
            Self::Camber { side } => on_corners(car, side, |corner| corner.camber += by),
            Self::TyreRadius { side } => on_corners(car, side, |corner| corner.tyre_radius += by),
            Self::Rod { side } => return add_to_rod(&mut setup.rods, side, by),
            Self::Centre => add_to_centre(&mut car.drive, by),
            Self::DragLink | Self::CrossLink => return self.add_to_link(&mut car.drive, by),
            Self::Wheelbase => car.wheelbase += by,
            Self::RideHeight => car.ride_height += by,
            Self::Pitch => car.pitch += by,
            Self::Roll => car.roll += by,
        }
        Ok(())
    }

    /// Changes the places where a car keeps a point, each told whether it takes the mirror image.
    fn on_places(
        self,
        car: &mut Car,
        point: PointName,
        whose: Whose,
        mut change: impl FnMut(&mut Position, bool),
    ) -> Result<(), DimensionError> {
        if whose != Whose::Both && !point.is_shared() {
            separate(car);
        }
        for side in whose.sides() {
            let is_kept_elsewhere = side == Side::Right
                && whose == Whose::Both
                && (point.is_shared() || is_mirrored(car, point, side));
            if is_kept_elsewhere {
                continue;
            }
            let place = place_of(car, point, side).ok_or(DimensionError::Absent(self))?;
            change(place, whose == Whose::Both && side == Side::Right);
        }
        if matches!(point, PointName::CrossBall | PointName::RodInner) {
            keep_on_cross_link(&mut car.drive);
        }
        Ok(())
    }

    fn add_to_link(self, drive: &mut Drive, by: f64) -> Result<(), DimensionError> {
        let length = match (self, drive) {
            (Self::DragLink, Drive::TwinCrank { drag_length, .. }) => drag_length.as_mut(),
            (_, Drive::TwinCrank { cross_length, .. }) => cross_length.as_mut(),
            _ => None,
        };
        *length.ok_or(DimensionError::Absent(self))? += by;
        Ok(())
    }
}

/// Puts inner balls that a cross link carries back on the line between its own two balls, nearest to where they are.
pub(crate) fn keep_on_cross_link(drive: &mut Drive) {
    let Drive::TwinCrank {
        inner_on: InnerBallsOn::CrossLink,
        cross_left,
        cross_right,
        rod_inner_left,
        rod_inner_right,
        ..
    } = drive
    else {
        return;
    };
    let from = cross_left.point();
    let link = cross_right.point() - from;
    for ball in [rod_inner_left, rod_inner_right] {
        let along = (ball.point() - from).dot(&link) / link.norm_squared().max(f64::MIN_POSITIVE);
        let on = from + link * along;
        *ball = Position(on.x, on.y, on.z);
    }
}

/// Puts every dimension back to what it is in another setup of the same car.
///
/// Cheaper than a copy of the whole setup, so that many changed cars can be made of one.
pub fn put_back(setup: &mut Setup, to: &Setup) {
    let car = &mut setup.car;
    car.left.clone_from(&to.car.left);
    car.right.clone_from(&to.car.right);
    car.drive.clone_from(&to.car.drive);
    car.wheelbase = to.car.wheelbase;
    car.ride_height = to.car.ride_height;
    car.pitch = to.car.pitch;
    car.roll = to.car.roll;
    setup.rods = to.rods;
}

/// The setup with the right corner given by itself, so that each side can be changed alone.
#[must_use]
pub fn with_sides_apart(setup: &Setup) -> Setup {
    let mut apart = setup.clone();
    separate(&mut apart.car);
    apart
}

/// The setup with its tie rods fixed at the lengths that the toe held asks for; as it is where they are fixed already.
///
/// # Errors
/// Why the setup cannot be assembled.
pub fn with_rods_fixed(setup: &Setup) -> Result<Setup, SolveError> {
    let mut fixed = setup.clone();
    if let Rods::HoldToe(_) = setup.rods {
        let Sides { left, right } = assemble(setup)?.rod_lengths();
        fixed.rods = Rods::FixedLengths { left, right };
    }
    Ok(fixed)
}

fn coordinate(place: &mut Position, axis: Axis) -> &mut f64 {
    match axis {
        Axis::X => &mut place.0,
        Axis::Y => &mut place.1,
        Axis::Z => &mut place.2,
    }
}

fn turn(axis: Axis, degrees: f64) -> Rotation3<f64> {
    let axis = match axis {
        Axis::X => Vector::x_axis(),
        Axis::Y => Vector::y_axis(),
        Axis::Z => Vector::z_axis(),
    };
    Rotation3::from_axis_angle(&axis, degrees.to_radians())
}

/// Changes the corners of the sides meant, each once.
fn on_corners(car: &mut Car, whose: Whose, change: impl Fn(&mut CornerPoints)) {
    if whose != Whose::Both {
        separate(car);
    }
    for side in whose.sides() {
        match (&mut car.right, side) {
            (RightCorner::Given(right), Side::Right) => change(right),
            (RightCorner::Mirrored, Side::Right) => {}
            (_, Side::Left) => change(&mut car.left),
        }
    }
}

fn add_to_rod(rods: &mut Rods, whose: Whose, by: f64) -> Result<(), DimensionError> {
    let (mut left, mut right) = match *rods {
        Rods::HoldToe(_) => return Err(DimensionError::RodsHoldToe),
        Rods::FixedLength(length) => (length, length),
        Rods::FixedLengths { left, right } => (left, right),
    };
    for side in whose.sides() {
        match side {
            Side::Left => left += by,
            Side::Right => right += by,
        }
    }
    *rods = Rods::FixedLengths { left, right };
    Ok(())
}

/// Turns what the servo carries about its axis, or shifts the rack.
fn add_to_centre(drive: &mut Drive, by: f64) {
    match drive {
        Drive::SwingArm {
            axis_point,
            axis_direction,
            rod_inner_left,
            rod_inner_right,
        } => {
            let turned = turned_about(*axis_point, *axis_direction, by);
            *rod_inner_left = turned(*rod_inner_left);
            *rod_inner_right = turned(*rod_inner_right);
        }
        Drive::TwinCrank {
            servo_arm,
            drag_servo,
            ..
        } => {
            let turned = turned_about(servo_arm.axis_point, servo_arm.axis_direction, by);
            *drag_servo = turned(*drag_servo);
        }
        Drive::Slider {
            direction,
            rod_inner_left,
            rod_inner_right,
        } => {
            let along = direction.vector();
            let shift = along * (by / along.norm().max(f64::MIN_POSITIVE));
            for ball in [rod_inner_left, rod_inner_right] {
                *ball = Position(ball.0 + shift.x, ball.1 + shift.y, ball.2 + shift.z);
            }
        }
    }
}

fn turned_about(
    axis_point: Position,
    axis_direction: Position,
    degrees: f64,
) -> impl Fn(Position) -> Position {
    let through: Point = axis_point.point();
    let axis = nalgebra::Unit::try_new(axis_direction.vector(), f64::MIN_POSITIVE);
    move |position| {
        let Some(axis) = axis else {
            return position;
        };
        let turned =
            Rotation3::from_axis_angle(&axis, degrees.to_radians()) * (position.point() - through);
        let point = through + turned;
        Position(point.x, point.y, point.z)
    }
}
