//! Parts that give what is wanted, asked for from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;

use serde_json::Value;
use steerloft_analysis::Study;
use steerloft_analysis::figures::{FigureKind, Values};
use steerloft_setup::file::{read, write};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, refused};

const CAR: &str = SUPPLIED[0].file_name;

fn with(name: &str, value: Chosen) -> Setup {
    let mut setup = SUPPLIED[0].setup();
    let all = &setup.car.adjustments;
    let place = all.iter().position(|one| one.name == name).unwrap();
    setup.set(place, value).unwrap();
    setup
}

fn json(folder: &Path, arguments: &[&str]) -> Value {
    serde_json::from_str(&good(folder, &[arguments, &["--json"]].concat())).unwrap()
}

#[test]
fn a_saved_finding_is_a_setup_with_the_figures_that_were_told() {
    let folder = folder_of_cars();
    let arguments = [
        "find",
        CAR,
        "--want",
        "bump-steer=0",
        "--want",
        "toe-at-bump=0",
        "--save",
        "found.ron",
    ];
    let answer = json(folder.path(), &arguments);
    assert_eq!(answer["is_complete"], true);
    let told = answer["findings"][0]["wants"][0]["values"][0]
        .as_f64()
        .unwrap();
    let setup = read(&folder.path().join("found.ron")).unwrap();
    let study = Study::new(&setup).unwrap();
    let Values::Sides(sides) = study.figures(study.rest()).values(FigureKind::BumpSteer) else {
        panic!("bump steer is of the wheels")
    };
    assert!((sides.left.unwrap() - told).abs() < 1e-9);
    let now = Study::new(&SUPPLIED[0].setup()).unwrap();
    let Values::Sides(before) = now.figures(now.rest()).values(FigureKind::BumpSteer) else {
        panic!("bump steer is of the wheels")
    };
    assert!(told.abs() < before.left.unwrap().abs());
    let again = refused(folder.path(), &arguments, 1);
    assert!(again.contains("--force"), "{again}");
}

#[test]
fn the_text_ranks_findings_and_tells_the_trade_off() {
    let folder = folder_of_cars();
    let text = good(
        folder.path(),
        &["find", CAR, "--want", "bump-steer=0", "--keep", "3"],
    );
    assert!(text.is_ascii(), "{text}");
    assert!(text.contains("\n1. off by"), "{text}");
    assert!(
        text.contains("\n3. off by") && !text.contains("\n4. off by"),
        "{text}"
    );
    assert!(text.contains("Closest with so many changes"), "{text}");
}

#[test]
fn a_want_out_of_reach_names_what_stands_in_the_way() {
    let folder = folder_of_cars();
    let text = good(
        folder.path(),
        &[
            "find",
            CAR,
            "--want",
            "ackermann@15=500",
            "--free",
            "Servo station",
        ],
    );
    assert!(text.contains("Ackermann share cannot be met"), "{text}");
    assert!(text.contains("Servo station ends at"), "{text}");
}

/// Common practice, no source: for a front axle moved by 2 mm the servo is moved by 2 mm the same way.
#[test]
fn a_moved_front_axle_takes_the_servo_along() {
    let folder = folder_of_cars();
    for (hole, station) in [("long", 2.0), ("short", -2.0)] {
        let moved = with("Front wheelbase", Chosen::Choice(hole.to_owned()));
        write(&folder.path().join("moved.ron"), &moved).unwrap();
        good(
            folder.path(),
            &[
                "match",
                "moved.ron",
                "--like",
                CAR,
                "--free",
                "Servo station",
                "--save",
                "back.ron",
                "--force",
            ],
        );
        let back = read(&folder.path().join("back.ron")).unwrap();
        assert_eq!(
            back.chosen["Servo station"],
            Chosen::Slide(station),
            "{hole}"
        );
    }
}

/// Common practice, no source: for a servo arm that sits 1 mm lower the outer ball takes 1 mm less of spacers.
#[test]
fn a_lower_servo_takes_a_spacer_away() {
    let folder = folder_of_cars();
    let lower = with("Servo height packing", Chosen::Stack(0.0));
    write(&folder.path().join("lower.ron"), &lower).unwrap();
    let answer = json(
        folder.path(),
        &[
            "match",
            "lower.ron",
            "--like",
            CAR,
            "--free",
            "Outer rod spacers",
        ],
    );
    let words = answer["findings"][0]["changes"][0].as_str().unwrap();
    assert!(
        words.contains("3 mm to 4 mm") || words.contains("3 mm to 2 mm"),
        "{words}"
    );
}

#[test]
fn what_makes_no_sense_is_refused() {
    let folder = folder_of_cars();
    for (arguments, word) in [
        (&["find", CAR, "--want", "grip=1"][..], "cannot be wanted"),
        (&["find", CAR, "--want", "bump-steer"], "no ="),
        (
            &["find", CAR, "--want", "bump-steer=0", "--free", "Wings"],
            "Outer rod spacers",
        ),
    ] {
        let errors = refused(folder.path(), arguments, 2);
        assert!(errors.contains(word), "{errors}");
    }
}
