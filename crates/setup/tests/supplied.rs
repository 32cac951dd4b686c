//! The supplied cars: they read, are written canonically, and work with every single change.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::axle::{assembled, pose_at, solver_input, steer};
use common::{cars, choose, choose_option, one_change_each};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::check::check;
use steerloft_setup::file::{read_text, to_text};
use steerloft_setup::handles::handles;
use steerloft_setup::layout::{ServoBox, layout};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;
use steerloft_solver::sweep::{SweepRange, steer_sweep};
use steerloft_solver::{Point, Side, Sides};

/// Values of the steering input over the car's range, in the drive's unit.
fn inputs(setup: &Setup) -> impl Iterator<Item = f64> {
    let (least, greatest) = setup.car.ranges.input;
    (0..=8).map(move |step| least + (greatest - least) * f64::from(step) / 8.0)
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

#[test]
fn a_positive_input_turns_the_wheels_left() {
    for setup in cars() {
        let assembly = assembled(&setup);
        let pose = pose_at(&assembly, 0.2 * setup.car.ranges.input.1);
        for side in Side::BOTH {
            assert!(
                steer(&assembly, &pose, side) > 1.5,
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
                from: solver_input(&assembly, ranges.input.0),
                to: solver_input(&assembly, ranges.input.1),
                count: 23,
            };
            for travel in [ranges.travel.0, 0.0, ranges.travel.1] {
                let sweep = steer_sweep(&assembly, input, Sides::both(travel));
                assert_eq!(
                    sweep.locks().count(),
                    0,
                    "{change}: locks at a travel of {travel} mm"
                );
            }
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

/// Rods and links are lines here; the clearance leaves room for their thickness.
#[test]
fn rods_and_links_stay_clear_of_the_servo() {
    const CLEARANCE: f64 = 2.0;
    for setup in cars().filter(|setup| setup.car.servo.is_some()) {
        for (change, setup) in one_change_each(&setup) {
            let assembly = assembled(&setup);
            let servo = layout(&setup).servo.unwrap();
            for input in inputs(&setup) {
                let pose = pose_at(&assembly, input);
                let rods = Side::BOTH.map(|side| {
                    let corner = pose.corners.get(side);
                    (corner.rod_inner, corner.steering_arm)
                });
                let links = assembly.axle().drive.links(&pose.drive);
                for (from, to) in rods
                    .into_iter()
                    .chain(links.map(|link| (link.from, link.to)))
                {
                    let least = gap(&servo, from, to);
                    assert!(least > CLEARANCE, "{change}: {least} mm at {input} degrees");
                }
            }
        }
    }
}

/// Least distance of a straight line between two points from the servo's case, mm.
fn gap(servo: &ServoBox, from: Point, to: Point) -> f64 {
    let points = (0..=50).map(|step| from + (to - from) * (f64::from(step) / 50.0));
    let gaps = points.map(|at| {
        let outside = (at - servo.centre).abs() - servo.size / 2.0;
        outside.map(|over| over.max(0.0)).norm()
    });
    gaps.fold(f64::INFINITY, f64::min)
}

#[test]
fn every_car_can_change_what_its_builder_changes() {
    let pan_car: &[&str] = &[
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
    ];
    let wanted: [&[&str]; 7] = [
        pan_car,
        pan_car,
        &[
            "Front wheelbase",
            "Servo-arm hole",
            "Drag link length",
            "Crank station",
            "Crank rod hole",
            "Cross-link hole",
            "Outer rod spacers",
            "Caster",
            "Lower ball packing",
            "Lower hinge packing, front",
            "Lower hinge packing, rear",
            "Upper arm mount hole",
            "Upper hinge packing",
            "Upper arm length",
        ],
        &[
            "Kick-up",
            "Caster block",
            "Axle",
            "Crank drag-link hole",
            "Cross-link rod hole",
            "Cross-link packing",
            "Lower hinge insert",
            "Upper arm length",
        ],
        &[
            "Column-lever hole",
            "Column packing",
            "Steering-arm hole",
            "Caster pill",
            "Camber pill",
            "Spindle washers",
            "Hub spacers",
        ],
        &[
            "Rack height packing",
            "Rack station",
            "Steering-arm hole",
            "Outer rod spacers",
            "Lower arm length",
            "Upper front pickup",
            "Upper arm shims",
        ],
        &[
            "Rack height packing",
            "Camber plate",
            "Caster plate",
            "Lower ball spacer",
            "Lower arm length",
        ],
    ];
    for (setup, wanted) in cars().zip(wanted) {
        let car = &setup.car;
        for name in wanted.iter().chain(&["Ride height", "Tyre radius"]) {
            assert!(
                car.adjustments.iter().any(|a| a.name == *name),
                "{}: {name}",
                car.name
            );
        }
        assert!(
            car.adjustments
                .iter()
                .all(|adjustment| adjustment.notes.len() > 20)
        );
        let handles = handles(&setup);
        for point in [
            PointName::RodInner,
            PointName::SteeringArm,
            PointName::WheelCentre,
        ] {
            assert!(
                handles.iter().any(|handle| handle.point == point),
                "{}: {point:?}",
                car.name
            );
        }
    }
}
