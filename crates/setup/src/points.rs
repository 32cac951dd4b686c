//! The named points and directions of a laid-out axle, to read and to move.

use solver::axle::FrontAxle;
use solver::drive::{Drive, SwingArm};
use solver::frame::{Point, Side, Vector};
use solver::suspension::Suspension;
use steerloft_solver as solver;

use crate::adjustment::PointName;

/// What is done to points and directions.
pub(crate) trait Motion {
    /// Where a point goes.
    fn point(&self, point: &Point) -> Point;
    /// How a direction turns.
    fn direction(&self, direction: &Vector) -> Vector;
}

/// The named point as drawn, or nothing if the car has no such point or the name is a direction's.
///
/// The upper kingpin point of a swinging arm is the arm's ball, which lengthening the arm moves. The drive's
/// axis belongs to both sides.
pub(crate) fn point_of(axle: &FrontAxle, name: PointName, side: Side) -> Option<Point> {
    let corner = axle.corners.get(side);
    let knuckle = &corner.knuckle;
    match name {
        PointName::WheelCentre => Some(knuckle.wheel_centre),
        PointName::KingpinLower => Some(knuckle.kingpin_lower),
        PointName::KingpinUpper => Some(match &corner.suspension {
            Suspension::SwingingUpperArm(arm) => arm.ball,
            _ => knuckle.kingpin_upper,
        }),
        PointName::SteeringArm => Some(knuckle.steering_arm),
        PointName::RodInner => Some(*swing_arm(&axle.drive)?.rod_inner.get(side)),
        PointName::DriveAxis => Some(swing_arm(&axle.drive)?.axis_point),
        PointName::UpperHingeFront => upper_hinge(&corner.suspension, 0),
        PointName::UpperHingeRear => upper_hinge(&corner.suspension, 1),
        PointName::SpinAxis | PointName::DriveDirection => None,
    }
}

/// Moves the named point or direction; a car without it stays as it is.
///
/// The upper kingpin point of a swinging arm moves in the knuckle and in the arm alike.
pub(crate) fn move_point(axle: &mut FrontAxle, name: PointName, side: Side, motion: &impl Motion) {
    let corner = axle.corners.get_mut(side);
    let knuckle = &mut corner.knuckle;
    let shift = |point: &mut Point| *point = motion.point(point);
    match name {
        PointName::WheelCentre => shift(&mut knuckle.wheel_centre),
        PointName::SpinAxis => knuckle.spin_axis = motion.direction(&knuckle.spin_axis),
        PointName::KingpinLower => shift(&mut knuckle.kingpin_lower),
        PointName::KingpinUpper => {
            shift(&mut knuckle.kingpin_upper);
            if let Suspension::SwingingUpperArm(arm) = &mut corner.suspension {
                shift(&mut arm.ball);
            }
        }
        PointName::SteeringArm => shift(&mut knuckle.steering_arm),
        PointName::RodInner | PointName::DriveAxis | PointName::DriveDirection => {
            move_drive(&mut axle.drive, name, side, motion);
        }
        PointName::UpperHingeFront => move_upper_hinge(&mut corner.suspension, 0, shift),
        PointName::UpperHingeRear => move_upper_hinge(&mut corner.suspension, 1, shift),
    }
}

fn move_drive(drive: &mut Drive, name: PointName, side: Side, motion: &impl Motion) {
    let Drive::SwingArm(arm) = drive else {
        return;
    };
    match name {
        PointName::RodInner => {
            let ball = arm.rod_inner.get_mut(side);
            *ball = motion.point(ball);
        }
        PointName::DriveAxis => arm.axis_point = motion.point(&arm.axis_point),
        PointName::DriveDirection => arm.axis_direction = motion.direction(&arm.axis_direction),
        _ => {}
    }
}

fn swing_arm(drive: &Drive) -> Option<&SwingArm> {
    match drive {
        Drive::SwingArm(arm) => Some(arm),
        Drive::TwinCrank(_) | Drive::Slider(_) => None,
    }
}

fn upper_hinge(suspension: &Suspension, end: usize) -> Option<Point> {
    match suspension {
        Suspension::SwingingUpperArm(arm) => Some(arm.hinge[end]),
        _ => None,
    }
}

fn move_upper_hinge(suspension: &mut Suspension, end: usize, shift: impl Fn(&mut Point)) {
    if let Suspension::SwingingUpperArm(arm) = suspension {
        shift(&mut arm.hinge[end]);
    }
}
