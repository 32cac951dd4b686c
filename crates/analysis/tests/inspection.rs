//! What an inspection finds: nothing in what is sound, and each fault by its kind and its measure.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_abs_diff_eq;
use common::{car, cars, pan_car};
use steerloft_analysis::Study;
use steerloft_analysis::curves::CurveKind;
use steerloft_analysis::inspection::{Finding, FindingKind, inspect};
use steerloft_setup::car::{Obstacle, Position, Rim, Shape};
use steerloft_setup::setup::{Rods, Setup};
use steerloft_solver::Side;

/// What is found of one kind; there must be something.
fn found(setup: &Setup, kind: FindingKind) -> Vec<Finding> {
    let all = inspect(setup);
    let of_kind: Vec<Finding> = all
        .iter()
        .filter(|finding| finding.kind == kind)
        .cloned()
        .collect();
    assert!(!of_kind.is_empty(), "{kind:?} in {all:?}");
    of_kind
}

#[test]
fn supplied_cars_are_sound() {
    for setup in cars() {
        assert_eq!(inspect(&setup), [], "{}", setup.car.name);
    }
}

#[test]
fn names_of_kinds_are_one_word_each_and_differ() {
    let mut names = FindingKind::ALL.map(FindingKind::name).to_vec();
    let word = |name: &&str| name.chars().all(|c| c.is_ascii_lowercase() || c == '-');
    assert!(names.iter().all(word), "{names:?}");
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), FindingKind::ALL.len());
}

#[test]
fn a_rod_that_does_not_reach_is_named() {
    let mut setup = pan_car();
    setup.rods = Rods::FixedLength(31.0);
    let [finding] = &inspect(&setup)[..] else {
        panic!("one finding");
    };
    assert_eq!(finding.kind, FindingKind::Assembly);
    assert!(finding.text.contains("tie rod"), "{}", finding.text);
}

#[test]
fn locks_before_the_ends_of_the_ranges_are_found_where_they_are() {
    let mut setup = car("touring-car.ron");
    setup.car.joints = None;
    setup.car.ranges.input = (-110.0, 110.0);
    setup.car.ranges.travel = (-60.0, 60.0);
    let study = Study::new(&setup).unwrap();
    let steering: Vec<f64> = study
        .sweeps()
        .steering_ends()
        .iter()
        .map(|end| end.at)
        .collect();
    let reported = found(&setup, FindingKind::SteeringRange);
    let reported: Vec<f64> = reported.iter().map(|one| one.input.unwrap()).collect();
    assert_eq!(reported, steering);
    let travel: Vec<f64> = study
        .curve(CurveKind::ToeTravel)
        .ends
        .iter()
        .map(|end| end.at)
        .collect();
    let reported = found(&setup, FindingKind::TravelRange);
    let reported: Vec<f64> = reported.iter().map(|one| one.travel.unwrap()).collect();
    assert_eq!(reported, travel);
}

/// Just inside its locks at rest the pan car steers freely, but not with its wheels at full bump or droop as well.
#[test]
fn steering_and_travel_that_exclude_each_other_are_found() {
    let mut setup = pan_car();
    setup.car.joints = None;
    setup.car.ranges.input = (-170.0, 170.0);
    let ends = Study::new(&setup).unwrap().sweeps().steering_ends();
    let [lower, upper] = &ends[..] else {
        panic!("two locks: {ends:?}");
    };
    setup.car.ranges.input = (lower.at + 1e-3, upper.at - 1e-3);
    let findings = found(&setup, FindingKind::Field);
    assert!(findings[0].travel.unwrap().abs() > 0.0, "{findings:?}");
    // So near to its locks the rod hardly turns the wheel.
    let measure = found(&setup, FindingKind::DeadCentre)[0].measure.unwrap();
    assert!(measure.value < measure.limit);
}

#[test]
fn a_tight_ball_joint_is_found_with_its_limit() {
    let mut setup = pan_car();
    setup.car.joints.as_mut().unwrap().most = 10.0;
    let measure = found(&setup, FindingKind::BallJoint)[0].measure.unwrap();
    assert_abs_diff_eq!(measure.limit, 10.0, epsilon = 1e-9);
    assert!(measure.value > 10.0);
    assert_eq!(measure.unit, "deg");
}

#[test]
fn parts_that_touch_are_found() {
    let mut deep_rim = pan_car();
    deep_rim.car.clearances.as_mut().unwrap().rim = Some(Rim {
        inner_radius: 16.0,
        inboard: 24.0,
        disc: 2.0,
    });
    let mut post = pan_car();
    post.car.obstacles.push(Obstacle {
        name: "post in the way".to_owned(),
        shape: Shape::Box {
            centre: Position(-7.0, 30.0, 22.0),
            size: Position(4.0, 4.0, 4.0),
        },
        mirrored: false,
    });
    for (setup, kind) in [(deep_rim, FindingKind::Rim), (post, FindingKind::Chassis)] {
        let measure = found(&setup, kind)[0].measure.unwrap();
        assert!(measure.value < 0.0 && measure.limit == 0.0, "{measure:?}");
    }
}

#[test]
fn rods_are_held_against_their_parts_on_each_side() {
    let mut setup = pan_car();
    let length = Study::new(&setup).unwrap().tie_rods().left.length;
    setup.car.tie_rod.longest = length - 0.5;
    let findings = found(&setup, FindingKind::RodLength);
    let sides: Vec<_> = findings.iter().map(|finding| finding.side).collect();
    assert_eq!(sides, [Some(Side::Left), Some(Side::Right)]);
    let measure = findings[0].measure.unwrap();
    assert_abs_diff_eq!(measure.value - measure.limit, 0.5, epsilon = 1e-9);

    let mut setup = pan_car();
    let parts = &mut setup.car.tie_rod;
    // Half of what the rod is longer than the gap between the cups.
    let engagement = (36.0 - (length - 2.0 * parts.cup_length)) / 2.0;
    parts.thread.as_mut().unwrap().least_engagement = engagement + 0.25;
    let measure = found(&setup, FindingKind::RodThread)[0].measure.unwrap();
    assert_abs_diff_eq!(measure.value, engagement, epsilon = 1e-9);
    assert_abs_diff_eq!(measure.limit, engagement + 0.25, epsilon = 1e-9);
}

/// The pan car's steering goes to 22 degrees each way.
#[test]
fn a_servo_with_too_little_throw_is_found_at_each_end() {
    let mut setup = pan_car();
    let servo = setup.car.servo.as_mut().unwrap();
    servo.action.as_mut().unwrap().throw = 22.0;
    assert_eq!(inspect(&setup), []);
    let servo = setup.car.servo.as_mut().unwrap();
    servo.spline.as_mut().unwrap().trim = 1.5;
    let [finding] = &found(&setup, FindingKind::ServoThrow)[..] else {
        panic!("one end only");
    };
    assert_eq!(finding.input, Some(-22.0));
    assert_abs_diff_eq!(finding.measure.unwrap().value, 23.5, epsilon = 1e-9);
}

#[test]
fn a_box_that_is_too_small_for_all_its_stacks_is_found() {
    let mut setup = car("kart.ron");
    // The rods take a spacer of 5 mm on each side.
    setup.car.stock[0].parts[0].count = 1;
    setup.car.stock[0].parts[1].count = 1;
    let [finding] = &inspect(&setup)[..] else {
        panic!("one finding");
    };
    assert_eq!(finding.kind, FindingKind::Spacers);
    for name in ["M8 spacers", "Outer rod spacers"] {
        assert!(finding.text.contains(name), "{}", finding.text);
    }
}
