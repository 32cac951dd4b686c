//! The car's points, directions and numbers at base, by name.

use steerloft_solver::frame::Side;

use super::EditError;
use super::sides::mirrored;
use crate::adjustment::{PointName, Scalar};
use crate::car::{Car, CornerPoints, Drive, Position, RightCorner, Suspension};

impl Car {
    /// A point or direction as the car's file gives it, chassis axes, mm; the mirror image for the right side of a
    /// mirrored corner. Nothing where the car has no such point, and for the spin axis, which the camber gives.
    #[must_use]
    pub fn point(&self, point: PointName, side: Side) -> Option<Position> {
        let mut car = self.clone();
        let is_mirrored = is_mirrored(&car, point, side);
        let place = *place_of(&mut car, point, side)?;
        Some(if is_mirrored { mirrored(place) } else { place })
    }
}

/// Sets a point or direction.
pub(super) fn set(
    car: &mut Car,
    point: PointName,
    side: Side,
    to: Position,
) -> Result<(), EditError> {
    if point == PointName::SpinAxis {
        return Err(EditError::SpinAxisIsCamber);
    }
    let to = if is_mirrored(car, point, side) {
        mirrored(to)
    } else {
        to
    };
    // A strut without a slide line of its own gets one by being given one.
    if point == PointName::SlideDirection
        && let Suspension::Strut {
            slide_direction: slide_direction @ None,
            ..
        } = &mut corner_of(car, side).suspension
    {
        *slide_direction = Some(to);
        return Ok(());
    }
    let place = place_of(car, point, side).ok_or(EditError::NoSuchPoint { point })?;
    *place = to;
    Ok(())
}

/// Sets a number.
pub(super) fn set_number(car: &mut Car, scalar: Scalar, to: f64) -> Result<(), EditError> {
    match scalar {
        Scalar::Wheelbase => car.wheelbase = to,
        Scalar::RideHeight => car.ride_height = to,
        Scalar::Pitch => car.pitch = to,
        Scalar::Roll => car.roll = to,
        Scalar::TyreRadius => on_corners(car, |corner| corner.tyre_radius = to),
        Scalar::TyreWidth => on_corners(car, |corner| corner.tyre_width = to),
        Scalar::Camber => on_corners(car, |corner| corner.camber = to),
        Scalar::FrontStation => return Err(EditError::StationIsOrigin),
    }
    Ok(())
}

/// Sets a number of one wheel.
pub(super) fn set_wheel_number(
    car: &mut Car,
    scalar: Scalar,
    side: Side,
    to: f64,
) -> Result<(), EditError> {
    let corner = corner_of(car, side);
    match scalar {
        Scalar::TyreRadius => corner.tyre_radius = to,
        Scalar::TyreWidth => corner.tyre_width = to,
        Scalar::Camber => corner.camber = to,
        Scalar::Wheelbase
        | Scalar::FrontStation
        | Scalar::RideHeight
        | Scalar::Pitch
        | Scalar::Roll => return Err(EditError::NotOfOneWheel { scalar }),
    }
    Ok(())
}

fn on_corners(car: &mut Car, mut change: impl FnMut(&mut CornerPoints)) {
    change(&mut car.left);
    if let RightCorner::Given(right) = &mut car.right {
        change(right);
    }
}

/// Whether a point on a side is kept as the left one's mirror image.
pub(crate) fn is_mirrored(car: &Car, point: PointName, side: Side) -> bool {
    side == Side::Right && point.is_of_corner() && car.right == RightCorner::Mirrored
}

fn corner_of(car: &mut Car, side: Side) -> &mut CornerPoints {
    match (&mut car.right, side) {
        (RightCorner::Given(right), Side::Right) => right,
        _ => &mut car.left,
    }
}

/// Where the car keeps a point; the left one's place for the right side of a mirrored corner.
pub(crate) fn place_of(car: &mut Car, point: PointName, side: Side) -> Option<&mut Position> {
    if point.is_of_corner() {
        place_in_corner(corner_of(car, side), point)
    } else {
        place_in_drive(&mut car.drive, point, side)
    }
}

fn place_in_corner(corner: &mut CornerPoints, point: PointName) -> Option<&mut Position> {
    match point {
        PointName::WheelCentre => return Some(&mut corner.wheel_centre),
        PointName::KingpinLower => return Some(&mut corner.kingpin_lower),
        PointName::KingpinUpper => return Some(&mut corner.kingpin_upper),
        PointName::SteeringArm => return Some(&mut corner.steering_arm),
        _ => {}
    }
    match (&mut corner.suspension, point) {
        (
            Suspension::SwingingUpperArm {
                upper_hinge_front, ..
            }
            | Suspension::DoubleWishbone {
                upper_hinge_front, ..
            },
            PointName::UpperHingeFront,
        ) => Some(upper_hinge_front),
        (
            Suspension::SwingingUpperArm {
                upper_hinge_rear, ..
            }
            | Suspension::DoubleWishbone {
                upper_hinge_rear, ..
            },
            PointName::UpperHingeRear,
        ) => Some(upper_hinge_rear),
        (
            Suspension::DoubleWishbone {
                lower_hinge_front, ..
            }
            | Suspension::Strut {
                lower_hinge_front, ..
            },
            PointName::LowerHingeFront,
        ) => Some(lower_hinge_front),
        (
            Suspension::DoubleWishbone {
                lower_hinge_rear, ..
            }
            | Suspension::Strut {
                lower_hinge_rear, ..
            },
            PointName::LowerHingeRear,
        ) => Some(lower_hinge_rear),
        (
            Suspension::Strut {
                slide_direction: Some(slide_direction),
                ..
            },
            PointName::SlideDirection,
        ) => Some(slide_direction),
        _ => None,
    }
}

fn place_in_drive(drive: &mut Drive, point: PointName, side: Side) -> Option<&mut Position> {
    if point == PointName::RodInner {
        let (left, right) = drive.rod_inner_mut();
        return Some(of_side(left, right, side));
    }
    match (drive, point) {
        (Drive::SwingArm { axis_point, .. }, PointName::DriveAxis) => Some(axis_point),
        (Drive::SwingArm { axis_direction, .. }, PointName::DriveDirection) => Some(axis_direction),
        (Drive::Slider { direction, .. }, PointName::DriveDirection) => Some(direction),
        (Drive::TwinCrank { servo_arm, .. }, PointName::DriveAxis) => {
            Some(&mut servo_arm.axis_point)
        }
        (Drive::TwinCrank { servo_arm, .. }, PointName::DriveDirection) => {
            Some(&mut servo_arm.axis_direction)
        }
        (
            Drive::TwinCrank {
                crank_left,
                crank_right,
                ..
            },
            PointName::CrankAxis,
        ) => Some(of_side(
            &mut crank_left.axis_point,
            &mut crank_right.axis_point,
            side,
        )),
        (
            Drive::TwinCrank {
                crank_left,
                crank_right,
                ..
            },
            PointName::CrankDirection,
        ) => Some(of_side(
            &mut crank_left.axis_direction,
            &mut crank_right.axis_direction,
            side,
        )),
        (
            Drive::TwinCrank {
                cross_left,
                cross_right,
                ..
            },
            PointName::CrossBall,
        ) => Some(of_side(cross_left, cross_right, side)),
        (Drive::TwinCrank { drag_servo, .. }, PointName::DragServo) => Some(drag_servo),
        (Drive::TwinCrank { drag_crank, .. }, PointName::DragCrank) => Some(drag_crank),
        _ => None,
    }
}

fn of_side<'a>(left: &'a mut Position, right: &'a mut Position, side: Side) -> &'a mut Position {
    match side {
        Side::Left => left,
        Side::Right => right,
    }
}
