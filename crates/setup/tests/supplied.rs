//! The supplied cars: they read, are written canonically, have the sizes of their class, and can be assembled.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::axle::{angles_at, assembled, bump_steer, pose_at, steer};
use common::{choose, choose_option};
use steerloft_setup::adjustment::{Kind, PointName};
use steerloft_setup::check::check;
use steerloft_setup::file::{read_text, to_text};
use steerloft_setup::handles::handles;
use steerloft_setup::layout::layout;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;
use steerloft_solver::figures::corner_figures;
use steerloft_solver::sweep::{SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Point, Side, Sides};

fn cars() -> impl Iterator<Item = Setup> {
    SUPPLIED
        .iter()
        .map(|supplied| match read_text(supplied.text) {
            Ok(setup) => setup,
            Err(error) => panic!("{}:{error}", supplied.file_name),
        })
}

/// The setup with each value that one adjustment can take, both ends of what has no steps included.
fn one_change_each(setup: &Setup) -> Vec<(String, Setup)> {
    let mut changed = Vec::new();
    for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
        let values = match (&adjustment.kind, adjustment.values()) {
            (_, Some(values)) => values,
            (Kind::Slide { range, .. }, None) => {
                vec![Chosen::Slide(range.0), Chosen::Slide(range.1)]
            }
            (_, None) => panic!("only a slide has no list of values"),
        };
        for value in values {
            let mut setup = setup.clone();
            let label = format!("{}: {}", adjustment.name, adjustment.label_of(&value));
            setup.set(index, value).unwrap();
            changed.push((label, setup));
        }
    }
    changed
}

#[test]
fn titles_are_the_cars_names() {
    for supplied in SUPPLIED {
        let setup = supplied.setup();
        assert_eq!(setup.car.name, supplied.title);
        assert_eq!(check(&setup), Ok(()));
        assert!(setup.chosen.is_empty(), "a supplied car stands at base");
    }
}

#[test]
fn what_is_written_is_canonical() {
    for supplied in SUPPLIED {
        let setup = supplied.setup();
        let text = to_text(&setup);
        let again = read_text(&text).unwrap();
        assert_eq!(again, setup);
        assert_eq!(to_text(&again), text);
        insta::assert_snapshot!(supplied.file_name, text);
    }
}

#[test]
fn a_worked_on_setup_is_written_readably() {
    let mut setup = SUPPLIED[0].setup();
    choose(&mut setup, "Servo station", Chosen::Slide(-2.0));
    choose(&mut setup, "Outer rod spacers", Chosen::Stack(3.5));
    choose_option(&mut setup, "Ball studs", "rear face");
    setup.record.event = "Club race, \"winter\" cup".to_owned();
    setup.record.notes = "First line.\nSecond line.".to_owned();
    let text = to_text(&setup);
    insta::assert_snapshot!(
        "chosen-and-record",
        &text[text.find("    chosen").unwrap()..]
    );
}

/// Common practice, no source: usual sizes of 1:12 pan cars.
#[test]
fn sizes_are_those_of_the_class() {
    let within = |what: &str, value: f64, least: f64, greatest: f64| {
        assert!(
            (least..=greatest).contains(&value),
            "{what}: {value} is not from {least} to {greatest}"
        );
    };
    for setup in cars() {
        let car = &setup.car;
        let left = &car.left;
        let assembly = assembled(&setup);
        let figures = corner_figures(&assembly.static_pose().corners.left, &assembly.axle().road);
        within("wheelbase", car.wheelbase, 195.0, 206.0);
        within(
            "width",
            2.0 * left.wheel_centre.1 + left.tyre_width,
            165.0,
            172.0,
        );
        let (lower, upper) = (left.kingpin_lower, left.kingpin_upper);
        let share = (left.wheel_centre.2 - lower.2) / (upper.2 - lower.2);
        within(
            "kingpin to kingpin",
            2.0 * (lower.1 + share * (upper.1 - lower.1)),
            105.0,
            125.0,
        );
        within("tyre diameter", 2.0 * left.tyre_radius, 40.0, 46.0);
        within("tyre width", left.tyre_width, 20.0, 26.0);
        within("ride height", car.ride_height, 3.0, 5.0);
        within("inclination", figures.inclination.to_degrees(), 0.0, 10.0);
        within("caster", figures.caster.to_degrees(), 0.0, 10.0);
        within("camber", figures.camber.to_degrees(), -2.5, -0.5);
        let road_gap = figures.contact_centre.z + car.ride_height;
        within("tyre over road", road_gap, -0.05, 0.05);
        for hole in ["forward hole", "rearward hole"] {
            let mut setup = setup.clone();
            choose_option(&mut setup, "Steering-arm hole", hole);
            let knuckle = layout(&setup).axle.corners.left.knuckle;
            let axis = (knuckle.kingpin_upper - knuckle.kingpin_lower).normalize();
            let lever = (knuckle.steering_arm - knuckle.kingpin_lower)
                .cross(&axis)
                .norm();
            within("steering arm", lever, 9.0, 16.0);
            within("tie rod", assembled(&setup).rod_lengths().left, 30.0, 42.0);
        }
        let inner = angles_at(&assembly, car.ranges.input.1);
        within("inner lock", inner.inner.to_degrees(), 25.0, 35.0);
        within(
            "Ackermann share",
            inner.ackermann_share.unwrap(),
            20.0,
            120.0,
        );
        within("bump steer", bump_steer(&setup), -0.6, 0.6);
    }
}

#[test]
fn a_positive_input_turns_the_wheels_left() {
    for setup in cars() {
        let assembly = assembled(&setup);
        let pose = pose_at(&assembly, 5.0);
        for side in Side::BOTH {
            assert!(
                steer(&assembly, &pose, side) > 2.0,
                "{} on the {side}",
                setup.car.name
            );
        }
    }
}

#[test]
fn every_single_change_leaves_a_car_that_steers_and_travels() {
    for setup in cars() {
        for (change, setup) in one_change_each(&setup) {
            let assembly = assembled(&setup);
            let ranges = setup.car.ranges;
            let input = SweepRange {
                from: ranges.input.0.to_radians(),
                to: ranges.input.1.to_radians(),
                count: 23,
            };
            let locks = steer_sweep(&assembly, input, Sides::both(0.0));
            assert_eq!(locks.locks().count(), 0, "{change}: steering locks");
            let travel = SweepRange {
                from: ranges.travel.0,
                to: ranges.travel.1,
                count: 7,
            };
            let locks = bump_sweep(&assembly, travel, 0.0).unwrap();
            assert_eq!(locks.locks().count(), 0, "{change}: travel locks");
            let lengths = assembly.rod_lengths();
            let parts = setup.car.tie_rod;
            for length in [lengths.left, lengths.right] {
                assert!(
                    (parts.shortest..=parts.longest).contains(&length),
                    "{change}: rod of {length} mm"
                );
            }
        }
    }
}

#[test]
fn the_rods_stay_clear_of_the_servo() {
    const CLEARANCE: f64 = 2.0;
    for setup in cars() {
        for (change, setup) in one_change_each(&setup) {
            let assembly = assembled(&setup);
            let servo = layout(&setup).servo.unwrap();
            let half = servo.size / 2.0;
            for input in [-22.0, -11.0, 0.0, 11.0, 22.0] {
                let pose = pose_at(&assembly, input);
                for side in Side::BOTH {
                    let corner = pose.corners.get(side);
                    let clear = (0..=50).map(|step| {
                        let along = f64::from(step) / 50.0;
                        let at: Point =
                            corner.rod_inner + (corner.steering_arm - corner.rod_inner) * along;
                        let outside = (at - servo.centre).abs() - half;
                        outside.map(|over| over.max(0.0)).norm()
                    });
                    let least = clear.fold(f64::INFINITY, f64::min);
                    assert!(
                        least > CLEARANCE,
                        "{change}: {least} mm on the {side} at {input} degrees"
                    );
                }
            }
        }
    }
}

#[test]
fn both_cars_can_change_what_a_builder_changes() {
    for setup in cars() {
        let names: Vec<&str> = setup
            .car
            .adjustments
            .iter()
            .map(|a| a.name.as_str())
            .collect();
        for name in [
            "Servo station",
            "Servo height packing",
            "Servo-arm hole",
            "Ball studs",
            "Inner rod spacers",
            "Outer rod spacers",
            "Steering-arm hole",
            "Front wheelbase",
            "Kingpin inclination insert",
            "Caster insert",
            "Ride height",
            "Tyre radius",
        ] {
            assert!(names.contains(&name), "{}: {name}", setup.car.name);
        }
        assert!(
            setup
                .car
                .adjustments
                .iter()
                .all(|adjustment| adjustment.notes.len() > 20)
        );
        let handles = handles(&setup);
        for point in [
            PointName::RodInner,
            PointName::SteeringArm,
            PointName::DriveAxis,
            PointName::WheelCentre,
        ] {
            assert!(
                handles.iter().any(|handle| handle.point == point),
                "{point:?}"
            );
        }
    }
}
