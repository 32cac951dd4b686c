//! Every number of an axle, so that any of them can be made a hostile one.

use steerloft_solver::axle::{Corner, FrontAxle, Rod};
use steerloft_solver::drive::{Crank, Drive};
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::{Point, Sides};

/// Every number of an axle, to change.
pub(crate) fn numbers(axle: &mut FrontAxle) -> Vec<&mut f64> {
    let mut numbers: Vec<&mut f64> = vec![
        &mut axle.wheelbase,
        &mut axle.road.ride_height,
        &mut axle.road.pitch,
        &mut axle.road.roll,
    ];
    for rod in [&mut axle.rods.left, &mut axle.rods.right] {
        numbers.push(match rod {
            Rod::HoldToe(toe) => toe,
            Rod::FixedLength(length) => length,
        });
    }
    for corner in [&mut axle.corners.left, &mut axle.corners.right] {
        of_corner(corner, &mut numbers);
    }
    of_drive(&mut axle.drive, &mut numbers);
    numbers
}

fn of_corner<'a>(corner: &'a mut Corner, numbers: &mut Vec<&'a mut f64>) {
    let knuckle = &mut corner.knuckle;
    for point in [
        &mut knuckle.wheel_centre,
        &mut knuckle.kingpin_lower,
        &mut knuckle.kingpin_upper,
        &mut knuckle.steering_arm,
    ] {
        numbers.extend(point.iter_mut());
    }
    numbers.extend(knuckle.spin_axis.iter_mut());
    numbers.push(&mut knuckle.tyre_radius);
    numbers.push(&mut knuckle.tyre_width);
    match &mut corner.suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => {}
        Suspension::SwingingUpperArm(arm) => of_arm(arm, numbers),
        Suspension::DoubleWishbone { lower, upper } => {
            of_arm(lower, numbers);
            of_arm(upper, numbers);
        }
        Suspension::Strut {
            lower,
            slide_direction,
        } => {
            of_arm(lower, numbers);
            numbers.extend(slide_direction.iter_mut());
        }
    }
}

fn of_arm<'a>(arm: &'a mut Arm, numbers: &mut Vec<&'a mut f64>) {
    for hinge in &mut arm.hinge {
        numbers.extend(hinge.iter_mut());
    }
    numbers.extend(arm.ball.iter_mut());
}

fn of_pair<'a>(points: &'a mut Sides<Point>, numbers: &mut Vec<&'a mut f64>) {
    numbers.extend(points.left.iter_mut());
    numbers.extend(points.right.iter_mut());
}

fn of_crank<'a>(crank: &'a mut Crank, numbers: &mut Vec<&'a mut f64>) {
    numbers.extend(crank.axis_point.iter_mut());
    numbers.extend(crank.axis_direction.iter_mut());
}

fn of_drive<'a>(drive: &'a mut Drive, numbers: &mut Vec<&'a mut f64>) {
    match drive {
        Drive::SwingArm(drive) => {
            numbers.extend(drive.axis_point.iter_mut());
            numbers.extend(drive.axis_direction.iter_mut());
            of_pair(&mut drive.rod_inner, numbers);
        }
        Drive::Slider(drive) => {
            numbers.extend(drive.direction.iter_mut());
            of_pair(&mut drive.rod_inner, numbers);
        }
        Drive::TwinCrank(drive) => {
            of_crank(&mut drive.cranks.left, numbers);
            of_crank(&mut drive.cranks.right, numbers);
            of_crank(&mut drive.servo, numbers);
            of_pair(&mut drive.cross_balls, numbers);
            of_pair(&mut drive.rod_inner, numbers);
            numbers.extend(drive.drag_servo.iter_mut());
            numbers.extend(drive.drag_crank.iter_mut());
            numbers.extend(drive.drag_length.iter_mut());
            numbers.extend(drive.cross_length.iter_mut());
        }
    }
}
