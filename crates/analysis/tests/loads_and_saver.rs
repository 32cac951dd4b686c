//! Static moments, load over the throw, and the servo saver.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::{assert_abs_diff_eq, assert_relative_eq};
use common::{car, cars, pan_car};
use steerloft_analysis::loads::{LoadError, load_curve, static_moment};
use steerloft_analysis::saver::{SaverError, opening};
use steerloft_setup::layout::assemble;
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::{Side, Sides};

/// Gough's relation by hand: mu 0.8, W 1000 N, b 200 mm, e 50 mm:
/// 800 sqrt(5000 + 2500) = 800 x 86.60254 = 69282.03 N mm.
#[test]
fn the_static_moment_follows_goughs_relation() {
    assert_abs_diff_eq!(
        static_moment(0.8, 1000.0, 200.0, 50.0),
        69_282.032_3,
        epsilon = 1e-3
    );
    assert_abs_diff_eq!(
        static_moment(1.0, 10.0, 8.0, 0.0),
        10.0 * 8_f64.sqrt(),
        epsilon = 1e-9
    );
}

#[test]
fn every_supplied_car_has_a_load_curve_and_models_have_torque_to_spare() {
    for setup in cars() {
        let curve = load_curve(&setup, 21).unwrap();
        assert_eq!(curve.points.len(), 21, "{}", setup.car.name);
        assert!(
            curve
                .points
                .iter()
                .all(|point| point.effort > 0.0 && point.advantage.is_finite())
        );
        assert_eq!(curve.least_margin().is_some(), setup.car.servo.is_some());
        assert!(!curve.is_overloaded(), "{}", setup.car.name);
    }
}

/// What the arm turns by a small step, times its effort, is what the wheels turn against their moments.
#[test]
fn work_at_the_arm_is_work_at_the_wheels() {
    let setup = pan_car();
    let curve = load_curve(&setup, 23).unwrap();
    let assembly = assemble(&setup).unwrap();
    let point = curve.points[16];
    let step = 1e-5;
    let turned = |input: f64| {
        let pose = assembly.pose(input.to_radians(), Sides::both(0.0)).unwrap();
        Side::BOTH.map(|side| {
            let corner = pose.corners.get(side);
            let axis = corner.knuckle.rotation.scaled_axis();
            axis.dot(&corner.kingpin_axis())
        })
    };
    let (before, after) = (turned(point.input - step), turned(point.input + step));
    let work: f64 = [point.moments.left, point.moments.right]
        .iter()
        .zip(before.iter().zip(after))
        .map(|(moment, (before, after))| moment * (after - before))
        .sum();
    let arm = point.effort * (2.0 * step).to_radians();
    assert_relative_eq!(work.abs(), arm, max_relative = 1e-3);
}

#[test]
fn a_weak_servo_stalls_and_a_strong_one_is_as_quick_as_without_load() {
    let mut setup = pan_car();
    let free = load_curve(&setup, 41).unwrap();
    // 44 degrees of range at 0.08 s for 60.
    assert_abs_diff_eq!(
        free.unloaded_time.unwrap(),
        44.0 / 60.0 * 0.08,
        epsilon = 1e-9
    );
    assert!(free.loaded_time.unwrap() > free.unloaded_time.unwrap());
    setup
        .car
        .servo
        .as_mut()
        .unwrap()
        .action
        .as_mut()
        .unwrap()
        .torque = 1e6;
    let strong = load_curve(&setup, 41).unwrap();
    assert_relative_eq!(
        strong.loaded_time.unwrap(),
        strong.unloaded_time.unwrap(),
        max_relative = 1e-3
    );
    setup
        .car
        .servo
        .as_mut()
        .unwrap()
        .action
        .as_mut()
        .unwrap()
        .torque = 1.0;
    let weak = load_curve(&setup, 41).unwrap();
    assert!(weak.is_overloaded());
    assert_eq!(weak.loaded_time, None);
    setup.car.loads = None;
    assert_eq!(load_curve(&setup, 41), Err(LoadError::NoLoads));
}

#[test]
fn a_saver_holds_up_to_its_breakaway() {
    let setup = pan_car();
    let assembly = assemble(&setup).unwrap();
    let at_arm = holding_effort(assembly.static_pose(), &Sides::new(1.0, 0.0)).abs();
    let holds = opening(&setup, 0.0, Side::Left, 10.0).unwrap();
    assert_relative_eq!(holds.opens_at, 250.0 / at_arm, max_relative = 1e-9);
    assert_abs_diff_eq!(holds.arm, 0.0);
    assert_abs_diff_eq!(holds.wheels.left, 0.0, epsilon = 1e-9);
}

#[test]
fn an_opened_saver_balances_the_blow() {
    let setup = pan_car();
    let quiet = opening(&setup, 0.0, Side::Left, 1.0).unwrap();
    let moment = 1.2 * quiet.opens_at;
    for sign in [1.0, -1.0] {
        let opened = opening(&setup, 0.0, Side::Left, sign * moment).unwrap();
        assert!(!opened.at_lock && opened.arm > 0.5, "{opened:?}");
        // The struck wheel gives way in the direction of the moment, and takes the other one along.
        assert!(opened.wheels.left * sign > 0.5 && opened.wheels.right * sign > 0.5);
        let assembly = assemble(&setup).unwrap();
        let found = [1.0, -1.0].into_iter().any(|direction: f64| {
            let pose = assembly
                .pose((direction * opened.arm).to_radians(), Sides::both(0.0))
                .unwrap();
            let asked = holding_effort(&pose, &Sides::new(moment, 0.0)).abs();
            (asked - (250.0 + 25.0 * opened.arm)).abs() < 1e-6 * asked
        });
        assert!(found, "{opened:?}");
    }
    assert_eq!(
        opening(&car("kart.ron"), 0.0, Side::Left, 1.0),
        Err(SaverError::NoSaver)
    );
}
