//! What the document says of servo, thread, joints, stock and build errors, held against hand-computed values.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_abs_diff_eq;
use common::{base_car, car, cars, choose, choose_option, index_of};
use steerloft_setup::adjustment::{Kind, PointName};
use steerloft_setup::car::{
    BallJoints, BuildErrors, Drive, Hands, PointError, Position, Spline, Thread, TieRodParts,
};
use steerloft_setup::car::{Servo, ServoClass};
use steerloft_setup::check::check;
use steerloft_setup::layout::{assemble, layout};
use steerloft_setup::servo::{ServoBody, ServoError, ServoPart};
use steerloft_setup::setup::Chosen;
use steerloft_setup::stock::{Supply, supply};
use steerloft_solver::sweep::{LockKind, SweepRange, steer_sweep};
use steerloft_solver::{Side, Sides, Vector};

const SPLINE: Spline = Spline {
    teeth: 25,
    tooth: 2,
    stands_at: -1.0,
    trim: 0.5,
};

/// 360/N: 24 teeth step 15 degrees, 25 step 14.4, 23 step 15.6522 (arithmetic).
#[test]
fn a_spline_steps_by_its_teeth() {
    for (teeth, step) in [(23, 15.6522), (24, 15.0), (25, 14.4)] {
        assert_abs_diff_eq!(Spline { teeth, ..SPLINE }.step(), step, epsilon = 1e-4);
    }
    assert_abs_diff_eq!(SPLINE.centre_input(), -1.0 + 28.8 + 0.5, epsilon = 1e-12);
}

#[test]
fn a_servo_speaks_in_microseconds_and_seconds() {
    let action = base_car().car.servo.unwrap().action.unwrap();
    assert_abs_diff_eq!(action.microseconds_per_degree(), 450.0 / 50.0);
    assert_abs_diff_eq!(action.degrees_per_second(), 60.0 / 0.08);
}

#[test]
fn threads_count_turns_and_engagement() {
    let parts = TieRodParts {
        cup_length: 7.0,
        shortest: 36.0,
        longest: 45.0,
        thread: Some(Thread {
            pitch: 0.5,
            rod_length: 36.0,
            thread_length: 7.0,
            least_engagement: 2.5,
            hands: Hands::Opposite,
        }),
    };
    assert_abs_diff_eq!(parts.gap(42.0), 28.0);
    assert_abs_diff_eq!(parts.engagement(42.0).unwrap(), 4.0);
    // Opposite threads of 0.5 mm pitch: one millimetre a turn (common practice, no source).
    assert_abs_diff_eq!(parts.turns(42.0, 40.5).unwrap(), -1.5);
    let same = TieRodParts {
        thread: parts.thread.map(|thread| Thread {
            hands: Hands::Same,
            ..thread
        }),
        ..parts
    };
    assert_abs_diff_eq!(same.turns(42.0, 40.5).unwrap(), -3.0);
}

#[test]
fn supplied_cars_reach_their_whole_range_within_their_joints() {
    for setup in cars() {
        let assembly = assemble(&setup).unwrap();
        assert!(assembly.joint_limits().is_some(), "{}", setup.car.name);
        let (from, to) = setup.car.ranges.input;
        let unit = |input: f64| match setup.car.drive {
            Drive::Slider { .. } => input,
            Drive::SwingArm { .. } | Drive::TwinCrank { .. } => input.to_radians(),
        };
        let range = SweepRange {
            from: unit(from),
            to: unit(to),
            count: 21,
        };
        let sweep = steer_sweep(&assembly, range, Sides::both(0.0));
        assert_eq!(sweep.locks().count(), 0, "{}", setup.car.name);
    }
}

#[test]
fn a_sweep_stops_at_the_joint_that_the_car_gives() {
    let mut setup = base_car();
    let joints = setup.car.joints.as_mut().unwrap();
    joints.most = 12.0;
    let range = SweepRange {
        from: -0.4,
        to: 0.4,
        count: 41,
    };
    let sweep = steer_sweep(&assemble(&setup).unwrap(), range, Sides::both(0.0));
    assert!(sweep.locks().any(|lock| lock.kind == LockKind::JointLimit));
}

#[test]
fn studs_turn_with_what_carries_them() {
    let mut setup = base_car();
    let before = layout(&setup).joints.unwrap();
    assert_eq!(before.inner_studs.right, Vector::new(1.0, 0.0, 0.0));
    choose_option(&mut setup, "Kingpin inclination insert", "1 degree more");
    choose_option(&mut setup, "Ball studs", "rear face");
    let after = layout(&setup).joints.unwrap();
    // About x through the lower kingpin point, right-handed on the left: the stud's top goes to the right.
    let (sin, cos) = 1.0_f64.to_radians().sin_cos();
    let expected = Vector::new(0.0, -sin, cos);
    assert!((after.outer_studs.left - expected).norm() < 1e-12);
    let mirrored = Vector::new(0.0, sin, cos);
    assert!((after.outer_studs.right - mirrored).norm() < 1e-12);
    for side in Side::BOTH {
        assert!((after.inner_studs.get(side) + before.inner_studs.get(side)).norm() < 1e-12);
    }
}

#[test]
fn studs_may_differ_from_side_to_side() {
    let mut setup = base_car();
    setup.car.joints = Some(BallJoints {
        outer_stud: Position(0.1, 0.2, 1.0),
        outer_stud_right: None,
        inner_stud: Position(1.0, 0.0, 0.0),
        inner_stud_right: Some(Position(1.0, 0.1, 0.0)),
        most: 20.0,
    });
    let joints = layout(&setup).joints.unwrap();
    assert_eq!(joints.outer_studs.right, Vector::new(0.1, -0.2, 1.0));
    assert_eq!(joints.inner_studs.right, Vector::new(1.0, 0.1, 0.0));
}

/// The body of the supplied pan car's servo, read off its file: case from x -37 to -11, y -24 to 10, arm in x = -6.
#[test]
fn a_servos_body_follows_from_its_place_in_the_car() {
    let setup = base_car();
    let body = ServoBody::of(&setup.car.servo.unwrap(), &setup.car.drive).unwrap();
    assert_eq!(
        body,
        ServoBody {
            length: 34.0,
            width: 12.5,
            height: 26.0,
            axis_from_end: 10.0,
            lug_height: 16.0,
            arm_over_case: 5.0,
        }
    );
}

#[test]
fn the_same_servo_again_changes_nothing() {
    for setup in cars() {
        let Some(servo) = setup.car.servo else {
            continue;
        };
        let part = ServoPart {
            class: servo.class,
            body: ServoBody::of(&servo, &setup.car.drive).unwrap(),
            teeth: Some(25),
            action: servo.action,
        };
        let (same, shift) = setup.car.with_servo(&part).unwrap();
        assert_eq!(same, setup.car);
        assert!(shift.norm() < 1e-9);
    }
}

#[test]
fn another_servo_takes_the_arm_where_it_would_sit() {
    let setup = base_car();
    // 2 mm narrower: it lies on its side, so its axis comes 1 mm down. 4 mm less high under the lugs and 3 mm over
    // them, and an arm 1 mm nearer to the case: the arm goes 4 mm back. Its axis is 2 mm nearer to the end, which the
    // mounts follow.
    let body = ServoBody {
        length: 30.0,
        width: 10.5,
        height: 19.0,
        axis_from_end: 8.0,
        lug_height: 12.0,
        arm_over_case: 4.0,
    };
    let (car, shift) = setup
        .car
        .with_servo(&ServoPart::of_body(ServoClass::Small, body))
        .unwrap();
    assert!(
        (shift - Vector::new(-4.0, 0.0, -1.0)).norm() < 1e-9,
        "{shift}"
    );
    let Drive::SwingArm {
        axis_point,
        rod_inner_right,
        ..
    } = car.drive
    else {
        panic!("the drive's kind stays");
    };
    assert_eq!(axis_point, Position(-10.0, 0.0, 6.5));
    assert_eq!(rod_inner_right, Position(-6.0, -9.4, 21.5));
    let case = car.servo.unwrap().case;
    // The lugs' seat stays at x = -37 + 16 = -21; the bottom lies 12 behind it.
    assert_abs_diff_eq!(case.centre.0, -21.0 - 12.0 + 9.5, epsilon = 1e-9);
    // The end at the arm lies 8 mm left of the axis, and the side on the plate stays at 1.25.
    assert_abs_diff_eq!(case.centre.1, 8.0 - 15.0, epsilon = 1e-9);
    assert_abs_diff_eq!(case.centre.2, 1.25 + 5.25, epsilon = 1e-9);
    let again = ServoBody::of(&car.servo.unwrap(), &car.drive).unwrap();
    assert_abs_diff_eq!(again.axis_from_end, 8.0, epsilon = 1e-9);
    assert_abs_diff_eq!(again.arm_over_case, 4.0, epsilon = 1e-9);
    let mut setup = setup;
    setup.car = car;
    assert_eq!(check(&setup), Ok(()));
}

#[test]
fn what_cannot_be_fitted_says_why() {
    let part = ServoPart::of_body(ServoClass::Small, ServoClass::Small.typical_body().unwrap());
    assert_eq!(
        car("kart.ron").car.with_servo(&part),
        Err(ServoError::NoServo)
    );
    let mut unknown = base_car().car;
    unknown.servo.as_mut().unwrap().lug_height = None;
    assert_eq!(unknown.with_servo(&part), Err(ServoError::NoLugs));
    let mut askew = base_car().car;
    if let Drive::SwingArm { axis_direction, .. } = &mut askew.drive {
        *axis_direction = Position(1.0, 0.1, 0.0);
    }
    assert_eq!(askew.with_servo(&part), Err(ServoError::CaseLiesAskew));
}

#[test]
fn stock_is_spent_once() {
    let mut setup = base_car();
    let stock = setup.car.stock[0].clone();
    // At base: three 1 mm under each outer ball, none inside.
    let outer = index_of(&setup, "Outer rod spacers");
    let inner = index_of(&setup, "Inner rod spacers");
    let Supply::Enough(piles) = supply(&setup, &stock) else {
        panic!("the base can be built");
    };
    assert!(piles.contains(&(outer, vec![1.0, 1.0, 1.0])));
    assert!(piles.contains(&(inner, Vec::new())));
    // Six of 1 mm left: two of them at each inner ball and three outside are ten, but five are eight and two halves.
    setup.car.stock[0].parts[1].count = 8;
    choose(&mut setup, "Inner rod spacers", Chosen::Stack(2.0));
    let stock = setup.car.stock[0].clone();
    let Supply::Enough(piles) = supply(&setup, &stock) else {
        panic!("halves help out");
    };
    assert!(
        piles.contains(&(outer, vec![1.0, 1.0, 0.5, 0.5])),
        "{piles:?}"
    );
    setup.car.stock[0].parts[0].count = 3;
    let stock = setup.car.stock[0].clone();
    assert_eq!(supply(&setup, &stock), Supply::Short(vec![inner, outer]));
}

#[test]
fn what_supplied_cars_take_at_base_is_in_stock() {
    for setup in cars() {
        for stock in &setup.car.stock {
            assert!(matches!(supply(&setup, stock), Supply::Enough(_)));
            let takes = setup.car.adjustments.iter().any(|adjustment| {
                matches!(&adjustment.kind, Kind::Stack { stock: Some(from), .. } if from.name == stock.name)
            });
            assert!(takes);
        }
    }
}

#[test]
fn build_errors_add_play_unless_a_point_has_its_own() {
    let errors = BuildErrors {
        points: 0.2,
        hole_play: 0.1,
        own: vec![PointError {
            point: PointName::SteeringArm,
            error: 0.02,
        }],
        ..BuildErrors::default()
    };
    assert_abs_diff_eq!(errors.of_point(PointName::RodInner), 0.3, epsilon = 1e-12);
    assert_abs_diff_eq!(errors.of_point(PointName::SteeringArm), 0.02);
}

#[test]
fn a_servo_to_start_from_lies_with_its_axis_at_the_arm_and_passes_the_checks() {
    for mut setup in cars() {
        for class in ServoClass::USUAL {
            let Some(servo) = Servo::typical(class, &setup.car.drive) else {
                continue;
            };
            // The arm stays: the body is put where its axis and its height fit it.
            let body = ServoBody::of(&servo, &setup.car.drive).unwrap();
            let usual = class.typical_body().unwrap();
            assert_abs_diff_eq!(body.axis_from_end, usual.axis_from_end, epsilon = 1e-6);
            assert_abs_diff_eq!(body.arm_over_case, usual.arm_over_case, epsilon = 1e-6);
            assert_abs_diff_eq!(body.height, usual.height, epsilon = 1e-9);
            setup.car.servo = Some(servo);
            check(&setup).unwrap();
        }
    }
    let rack = car("formula-corner.ron");
    assert_eq!(Servo::typical(ServoClass::Standard, &rack.car.drive), None);
    assert!(Servo::typical(ServoClass::Standard, &base_car().car.drive).is_some());
}
