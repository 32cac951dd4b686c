//! The named points and directions of a laid-out axle, to read and to move.

use solver::axle::FrontAxle;
use solver::drive::{Crank, Drive, TwinCrank};
use solver::frame::{Point, Side, Sides};
use solver::suspension::{Arm, Suspension};
use steerloft_solver as solver;

use crate::adjustment::PointName;
use crate::motion::Motion;

/// The named point as drawn, or nothing if the car has no such point or the name is a direction's.
///
/// A kingpin point that an arm carries is the arm's ball, which lengthening the arm moves. The servo arm's axis
/// and the drag link's balls belong to both sides.
pub(crate) fn point_of(axle: &FrontAxle, name: PointName, side: Side) -> Option<Point> {
    let corner = axle.corners.get(side);
    let knuckle = &corner.knuckle;
    let [lower, upper] = arms(&corner.suspension);
    let cranks = twin_crank(&axle.drive);
    match name {
        PointName::WheelCentre => Some(knuckle.wheel_centre),
        PointName::KingpinLower => Some(lower.map_or(knuckle.kingpin_lower, |arm| arm.ball)),
        PointName::KingpinUpper => Some(upper.map_or(knuckle.kingpin_upper, |arm| arm.ball)),
        PointName::SteeringArm => Some(knuckle.steering_arm),
        PointName::RodInner => Some(*rod_inner(&axle.drive).get(side)),
        PointName::DriveAxis => match &axle.drive {
            Drive::SwingArm(arm) => Some(arm.axis_point),
            Drive::TwinCrank(drive) => Some(drive.servo.axis_point),
            Drive::Slider(_) => None,
        },
        PointName::UpperHingeFront => Some(upper?.hinge[0]),
        PointName::UpperHingeRear => Some(upper?.hinge[1]),
        PointName::LowerHingeFront => Some(lower?.hinge[0]),
        PointName::LowerHingeRear => Some(lower?.hinge[1]),
        PointName::CrankAxis => Some(cranks?.cranks.get(side).axis_point),
        PointName::CrossBall => Some(*cranks?.cross_balls.get(side)),
        PointName::DragServo => Some(cranks?.drag_servo),
        PointName::DragCrank => Some(cranks?.drag_crank),
        PointName::SpinAxis
        | PointName::DriveDirection
        | PointName::SlideDirection
        | PointName::CrankDirection => None,
    }
}

/// Moves the named point or direction; a car without it stays as it is.
///
/// A kingpin point that an arm carries moves in the knuckle and in the arm alike.
pub(crate) fn move_point(axle: &mut FrontAxle, name: PointName, side: Side, motion: &impl Motion) {
    let corner = axle.corners.get_mut(side);
    let knuckle = &mut corner.knuckle;
    let [lower, upper] = arms_mut(&mut corner.suspension);
    let shift = |point: &mut Point| *point = motion.point(point);
    match name {
        PointName::WheelCentre => shift(&mut knuckle.wheel_centre),
        PointName::SpinAxis => knuckle.spin_axis = motion.direction(&knuckle.spin_axis),
        PointName::KingpinLower => {
            shift(&mut knuckle.kingpin_lower);
            change(lower, |arm| shift(&mut arm.ball));
        }
        PointName::KingpinUpper => {
            shift(&mut knuckle.kingpin_upper);
            change(upper, |arm| shift(&mut arm.ball));
        }
        PointName::SteeringArm => shift(&mut knuckle.steering_arm),
        PointName::UpperHingeFront => change(upper, |arm| shift(&mut arm.hinge[0])),
        PointName::UpperHingeRear => change(upper, |arm| shift(&mut arm.hinge[1])),
        PointName::LowerHingeFront => change(lower, |arm| shift(&mut arm.hinge[0])),
        PointName::LowerHingeRear => change(lower, |arm| shift(&mut arm.hinge[1])),
        PointName::SlideDirection => {
            if let Suspension::Strut {
                slide_direction, ..
            } = &mut corner.suspension
            {
                *slide_direction = motion.direction(slide_direction);
            }
        }
        PointName::RodInner => shift(rod_inner_mut(&mut axle.drive).get_mut(side)),
        PointName::DriveAxis => match &mut axle.drive {
            Drive::SwingArm(arm) => shift(&mut arm.axis_point),
            Drive::TwinCrank(drive) => shift(&mut drive.servo.axis_point),
            Drive::Slider(_) => {}
        },
        PointName::DriveDirection => {
            let direction = match &mut axle.drive {
                Drive::SwingArm(arm) => &mut arm.axis_direction,
                Drive::TwinCrank(drive) => &mut drive.servo.axis_direction,
                Drive::Slider(rack) => &mut rack.direction,
            };
            *direction = motion.direction(direction);
        }
        PointName::CrankAxis => change(crank_mut(&mut axle.drive, side), |crank| {
            shift(&mut crank.axis_point);
        }),
        PointName::CrankDirection => change(crank_mut(&mut axle.drive, side), |crank| {
            crank.axis_direction = motion.direction(&crank.axis_direction);
        }),
        PointName::CrossBall => change(twin_crank_mut(&mut axle.drive), |drive| {
            shift(drive.cross_balls.get_mut(side));
        }),
        PointName::DragServo => change(twin_crank_mut(&mut axle.drive), |drive| {
            shift(&mut drive.drag_servo);
        }),
        PointName::DragCrank => change(twin_crank_mut(&mut axle.drive), |drive| {
            shift(&mut drive.drag_crank);
        }),
    }
}

/// Lower and upper arm of a suspension, where it has them.
pub(crate) fn arms_mut(suspension: &mut Suspension) -> [Option<&mut Arm>; 2] {
    match suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => [None, None],
        Suspension::SwingingUpperArm(upper) => [None, Some(upper)],
        Suspension::DoubleWishbone { lower, upper } => [Some(lower), Some(upper)],
        Suspension::Strut { lower, .. } => [Some(lower), None],
    }
}

fn arms(suspension: &Suspension) -> [Option<&Arm>; 2] {
    match suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => [None, None],
        Suspension::SwingingUpperArm(upper) => [None, Some(upper)],
        Suspension::DoubleWishbone { lower, upper } => [Some(lower), Some(upper)],
        Suspension::Strut { lower, .. } => [Some(lower), None],
    }
}

/// Changes what is there.
fn change<T>(part: Option<&mut T>, how: impl FnOnce(&mut T)) {
    if let Some(part) = part {
        how(part);
    }
}

fn rod_inner(drive: &Drive) -> &Sides<Point> {
    match drive {
        Drive::SwingArm(arm) => &arm.rod_inner,
        Drive::TwinCrank(drive) => &drive.rod_inner,
        Drive::Slider(rack) => &rack.rod_inner,
    }
}

fn rod_inner_mut(drive: &mut Drive) -> &mut Sides<Point> {
    match drive {
        Drive::SwingArm(arm) => &mut arm.rod_inner,
        Drive::TwinCrank(drive) => &mut drive.rod_inner,
        Drive::Slider(rack) => &mut rack.rod_inner,
    }
}

fn twin_crank(drive: &Drive) -> Option<&TwinCrank> {
    match drive {
        Drive::TwinCrank(drive) => Some(drive),
        Drive::SwingArm(_) | Drive::Slider(_) => None,
    }
}

fn twin_crank_mut(drive: &mut Drive) -> Option<&mut TwinCrank> {
    match drive {
        Drive::TwinCrank(drive) => Some(drive),
        Drive::SwingArm(_) | Drive::Slider(_) => None,
    }
}

fn crank_mut(drive: &mut Drive, side: Side) -> Option<&mut Crank> {
    twin_crank_mut(drive).map(|drive| drive.cranks.get_mut(side))
}
