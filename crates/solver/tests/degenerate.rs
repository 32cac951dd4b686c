//! Geometry that is no mechanism: each fault by itself is named, with its place, on every kind that can have it.
#![allow(clippy::unwrap_used, clippy::panic)]

mod common;

use common::{front_axle, table};
use steerloft_solver::axle::{FrontAxle, Rod};
use steerloft_solver::drive::{Drive, TwinCrank};
use steerloft_solver::error::Fault;
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::{Assembly, Point, Side, SolveError, Vector};

/// One car of each suspension, the five drives' kinds among them.
const CARS: [&str; 6] = [
    "kart_rack.json",
    "sliding_kingpin_twin_crank.json",
    "swinging_arm_skewed_hinge.json",
    "double_wishbone_skewed_hinges.json",
    "strut_inclined_slide.json",
    "kart_inclined_column.json",
];

fn car(name: &str) -> FrontAxle {
    front_axle(&table("tables", name))
}

/// A sound car with something done to it has this fault.
#[track_caller]
fn has(name: &str, side: Option<Side>, fault: Fault, harm: impl Fn(&mut FrontAxle)) {
    let mut axle = car(name);
    assert!(Assembly::new(&axle).is_ok(), "{name} is sound");
    harm(&mut axle);
    let error = Assembly::new(&axle).unwrap_err();
    assert_eq!(error, SolveError::Degenerate { side, fault }, "{name}");
    let place = match side {
        Some(Side::Left) => "left corner: ",
        Some(Side::Right) => "right corner: ",
        None => "steering drive: ",
    };
    let said = error.to_string();
    assert_eq!(said, format!("{place}{fault}"));
}

/// Every kind of suspension with something done to its knuckle, on either side.
#[track_caller]
fn each_knuckle_has(fault: Fault, harm: impl Fn(&mut steerloft_solver::axle::Knuckle)) {
    for name in CARS {
        for side in Side::BOTH {
            has(name, Some(side), fault, |axle| {
                harm(&mut axle.corners.get_mut(side).knuckle);
            });
        }
    }
}

#[test]
fn a_knuckle_without_a_steering_axis() {
    each_knuckle_has(Fault::KingpinPointsCoincide, |knuckle| {
        knuckle.kingpin_upper = knuckle.kingpin_lower;
    });
    each_knuckle_has(Fault::KingpinTooLevel, |knuckle| {
        knuckle.kingpin_upper = knuckle.kingpin_lower + Vector::new(40.0, 0.0, 20.0);
    });
    each_knuckle_has(Fault::KingpinTooLevel, |knuckle| {
        std::mem::swap(&mut knuckle.kingpin_upper, &mut knuckle.kingpin_lower);
    });
}

#[test]
fn a_knuckle_whose_rod_or_wheel_has_no_hold() {
    each_knuckle_has(Fault::SpinAxisHasNoDirection, |knuckle| {
        knuckle.spin_axis = Vector::zeros();
    });
    each_knuckle_has(Fault::SteeringArmOnKingpin, |knuckle| {
        let axis = knuckle.kingpin_upper - knuckle.kingpin_lower;
        knuckle.steering_arm = knuckle.kingpin_lower + axis * 0.25;
    });
    each_knuckle_has(Fault::WheelLiesFlat, |knuckle| {
        knuckle.spin_axis = Vector::new(0.0, 0.3 * knuckle.spin_axis.y, 1.0);
    });
}

/// Each arm of a left corner.
fn arms(suspension: &mut Suspension) -> Vec<&mut Arm> {
    match suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => Vec::new(),
        Suspension::SwingingUpperArm(arm) | Suspension::Strut { lower: arm, .. } => vec![arm],
        Suspension::DoubleWishbone { lower, upper } => vec![lower, upper],
    }
}

#[test]
fn an_arm_without_an_axis_or_a_length() {
    let mut tried = 0;
    for name in CARS {
        let count = arms(&mut car(name).corners.left.suspension).len();
        for index in 0..count {
            has(name, Some(Side::Left), Fault::HingePointsCoincide, |axle| {
                let arm = &mut *arms(&mut axle.corners.left.suspension).remove(index);
                arm.hinge[1] = arm.hinge[0];
            });
            has(name, Some(Side::Left), Fault::BallOnHinge, |axle| {
                let arm = &mut *arms(&mut axle.corners.left.suspension).remove(index);
                arm.ball = arm.hinge[0] + (arm.hinge[1] - arm.hinge[0]) * 0.5;
            });
            tried += 1;
        }
    }
    assert_eq!(tried, 4);
}

#[test]
fn a_strut_without_a_slide() {
    let slide_along = |to: Vector| {
        move |axle: &mut FrontAxle| {
            let Suspension::Strut {
                slide_direction, ..
            } = &mut axle.corners.left.suspension
            else {
                panic!("a strut");
            };
            *slide_direction = to;
        }
    };
    let name = "strut_inclined_slide.json";
    let left = Some(Side::Left);
    has(
        name,
        left,
        Fault::SlideHasNoDirection,
        slide_along(Vector::zeros()),
    );
    has(
        name,
        left,
        Fault::SlideAcrossKingpin,
        slide_along(Vector::x()),
    );
}

#[test]
fn a_drive_without_an_axis() {
    let no_axis = |axle: &mut FrontAxle| match &mut axle.drive {
        Drive::SwingArm(drive) => drive.axis_direction = Vector::zeros(),
        Drive::Slider(drive) => drive.direction = Vector::zeros(),
        Drive::TwinCrank(drive) => drive.servo.axis_direction = Vector::zeros(),
    };
    for name in CARS {
        has(name, None, Fault::DriveAxisHasNoDirection, no_axis);
    }
    for side in Side::BOTH {
        with_cranks(Fault::DriveAxisHasNoDirection, |drive| {
            drive.cranks.get_mut(side).axis_direction = Vector::zeros();
        });
    }
}

/// Twin cranks, the left one driven, with something done to them.
#[track_caller]
fn with_cranks(fault: Fault, harm: impl Fn(&mut TwinCrank)) {
    has("kart_twin_crank.json", None, fault, |axle| {
        let Drive::TwinCrank(drive) = &mut axle.drive else {
            panic!("twin cranks");
        };
        harm(drive);
    });
}

#[test]
fn cranks_and_links_without_a_length_or_at_their_dead_centre() {
    with_cranks(Fault::CrankHasNoLength, |drive| {
        drive.drag_crank = drive.cranks.left.axis_point;
    });
    with_cranks(Fault::CrankHasNoLength, |drive| {
        drive.cross_balls.right = drive.cranks.right.axis_point;
    });
    with_cranks(Fault::LinkHasNoLength, |drive| {
        drive.drag_servo = drive.drag_crank;
    });
    with_cranks(Fault::LinkHasNoLength, |drive| {
        drive.cross_balls.left = drive.cross_balls.right;
    });
    // The drag link in one line with the crank that it should turn.
    with_cranks(Fault::LinkAtDeadCentre, |drive| {
        let crank = &mut drive.cranks.left;
        crank.axis_direction = Vector::z();
        drive.drag_crank = crank.axis_point + Vector::new(-10.0, 0.0, 0.0);
        drive.drag_servo = crank.axis_point + Vector::new(-300.0, 0.0, 50.0);
    });
    has(
        "twin_crank_cross_link_balls.json",
        None,
        Fault::InnerBallOffCrossLink,
        |axle| {
            let Drive::TwinCrank(drive) = &mut axle.drive else {
                panic!("twin cranks");
            };
            drive.rod_inner.left.z += 5.0;
        },
    );
}

/// The left inner ball, put somewhere.
fn inner_ball(axle: &mut FrontAxle) -> &mut Point {
    match &mut axle.drive {
        Drive::SwingArm(drive) => &mut drive.rod_inner.left,
        Drive::Slider(drive) => &mut drive.rod_inner.left,
        Drive::TwinCrank(drive) => &mut drive.rod_inner.left,
    }
}

#[test]
fn a_rod_without_a_length_or_at_its_dead_centre() {
    // Set by length, so that the pose it is measured in is the one drawn.
    for name in ["kart_rack.json", "sliding_kingpin_leaned.json"] {
        has(name, Some(Side::Left), Fault::RodHasNoLength, |axle| {
            axle.rods.left = Rod::FixedLength(10.0);
            *inner_ball(axle) = axle.corners.left.knuckle.steering_arm;
        });
        has(name, Some(Side::Left), Fault::RodAtDeadCentre, |axle| {
            axle.rods.left = Rod::FixedLength(10.0);
            let knuckle = &axle.corners.left.knuckle;
            let axis = (knuckle.kingpin_upper - knuckle.kingpin_lower).normalize();
            let arm = knuckle.steering_arm - knuckle.kingpin_lower;
            let lever = arm - axis * axis.dot(&arm);
            *inner_ball(axle) = axle.corners.left.knuckle.steering_arm + lever * 0.5;
        });
    }
}
