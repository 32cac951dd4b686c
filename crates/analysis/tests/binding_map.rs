//! What binds over the field of steer and travel.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_abs_diff_eq;
use common::{car, cars, pan_car};
use steerloft_analysis::binding::{Concern, binding_map, thread_check};
use steerloft_setup::car::{Obstacle, Position, Rim, Shape};
use steerloft_setup::layout::assemble;
use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::{Side, Sides};

#[test]
fn supplied_cars_are_free_over_their_whole_field() {
    for setup in cars() {
        let map = binding_map(&setup, 9, 5).unwrap();
        let worst: Vec<_> = Concern::ALL
            .into_iter()
            .map(|concern| (concern, map.worst(concern)))
            .collect();
        assert!(
            map.is_free(),
            "{}: {worst:?} {:?}",
            setup.car.name,
            map.threads
        );
        assert!(map.worst(Concern::BallJoint).is_some());
        assert!(map.worst(Concern::DeadCentre).is_some());
    }
}

#[test]
fn the_field_is_laid_out_row_by_row() {
    let setup = pan_car();
    let map = binding_map(&setup, 5, 3).unwrap();
    assert_eq!(map.inputs, [-22.0, -11.0, 0.0, 11.0, 22.0]);
    assert_eq!(map.travels, [-1.0, 0.5, 2.0]);
    let assembly = assemble(&setup).unwrap();
    let pose = assembly
        .pose(11_f64.to_radians(), Sides::both(0.5))
        .unwrap();
    let cell = map.cell(3, 1).unwrap().as_ref().unwrap();
    let joints = assembly.joint_limits().unwrap().worst(&pose);
    assert_eq!(cell.joint, Some(joints));
    let outer = Side::BOTH.map(|side| outer_transmission(pose.corners.get(side)).share);
    assert!(cell.share <= outer[0].min(outer[1]) + 1e-12);
    assert_eq!(map.cell(5, 0), None);
    assert_eq!(binding_map(&car("kart.ron"), 5, 3).unwrap().travels, [0.0]);
}

#[test]
fn a_tight_joint_is_found_with_its_place() {
    let mut setup = pan_car();
    setup.car.joints.as_mut().unwrap().most = 10.0;
    let map = binding_map(&setup, 9, 5).unwrap();
    assert!(!map.is_free());
    let worst = map.worst(Concern::BallJoint).unwrap();
    assert!(worst.margin < 0.0);
    assert_abs_diff_eq!(worst.value + worst.margin, 10.0, epsilon = 1e-9);
    assert_eq!(map.joint_limit.map(f64::round), Some(10.0));
}

#[test]
fn the_limit_line_parts_what_binds_from_what_is_free() {
    let mut setup = pan_car();
    let wide = binding_map(&setup, 9, 5).unwrap();
    assert!(wide.limit_line(Concern::BallJoint).is_empty());
    let worst = wide.worst(Concern::BallJoint).unwrap().value;
    // The joints of this car swing nearly alike over the whole field: a limit just below the worst parts it.
    let limit = 0.97 * worst;
    setup.car.joints.as_mut().unwrap().most = limit;
    let map = binding_map(&setup, 41, 21).unwrap();
    let line = map.limit_line(Concern::BallJoint);
    assert!(!line.is_empty());
    let assembly = assemble(&setup).unwrap();
    let limits = assembly.joint_limits().unwrap();
    for [input, travel] in line.into_iter().flatten() {
        let pose = assembly
            .pose(input.to_radians(), Sides::both(travel))
            .unwrap();
        let swing = limits.worst(&pose).misalignment.to_degrees();
        assert_abs_diff_eq!(swing, limit, epsilon = 0.1);
    }
}

/// The pan car's outer ball lies 20.8 mm inboard of the wheel centre: a rim that reaches that far meets its rod.
#[test]
fn a_deep_rim_is_met_by_the_rod() {
    let mut setup = pan_car();
    assert_eq!(binding_map(&setup, 3, 3).unwrap().worst(Concern::Rim), None);
    setup.car.clearances.as_mut().unwrap().rim = Some(Rim {
        inner_radius: 16.0,
        inboard: 24.0,
        disc: 2.0,
    });
    let worst = binding_map(&setup, 9, 3)
        .unwrap()
        .worst(Concern::Rim)
        .unwrap();
    // At rest the ball stands hypot(11.8, 5.1) = 12.85 mm from the spin axis, the camber aside.
    assert!(worst.value < 16.0 - 12.85 - 2.5 + 0.5, "{worst:?}");
}

#[test]
fn a_post_beside_the_rod_is_found() {
    let mut setup = pan_car();
    let before = binding_map(&setup, 3, 1)
        .unwrap()
        .worst(Concern::Chassis)
        .unwrap();
    assert!(before.margin > 0.0);
    setup.car.obstacles.push(Obstacle {
        name: "post in the way".to_owned(),
        shape: Shape::Box {
            centre: Position(-7.0, 30.0, 22.0),
            size: Position(4.0, 4.0, 4.0),
        },
        mirrored: false,
    });
    let worst = binding_map(&setup, 3, 1)
        .unwrap()
        .worst(Concern::Chassis)
        .unwrap();
    assert!(worst.margin < 0.0, "{worst:?}");
}

#[test]
fn thread_runs_out_at_the_longest_rod() {
    let parts = pan_car().car.tie_rod;
    let good = thread_check(&parts, 42.0);
    assert!(good.holds());
    assert_abs_diff_eq!(good.engagement.unwrap(), 4.0, epsilon = 1e-9);
    assert_abs_diff_eq!(good.spare_engagement.unwrap(), 1.5, epsilon = 1e-9);
    let long = thread_check(&parts, 45.5);
    assert!(!long.holds());
    assert_abs_diff_eq!(long.to_longest, -0.5, epsilon = 1e-9);
    assert_abs_diff_eq!(long.spare_engagement.unwrap(), -0.25, epsilon = 1e-9);
    assert!(!thread_check(&parts, 35.0).holds());
}
