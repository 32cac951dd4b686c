//! Parts that give what is wanted, asked for from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;

use serde_json::Value;
use steerloft_analysis::Study;
use steerloft_analysis::curves::CurveKind;
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
fn a_whole_curve_is_wanted_by_points() {
    let folder = folder_of_cars();
    // What the car does with one spacer less is typed as points, and found again.
    let other = with("Outer rod spacers", Chosen::Stack(2.0));
    let study = Study::new(&other).unwrap();
    let curve = study.curve(CurveKind::ToeTravel);
    let line = &curve.series[0].points;
    let points: Vec<String> = [0, line.len() / 2, line.len() - 1]
        .map(|place| format!("{}:{}", line[place][0], line[place][1]))
        .to_vec();
    let want = format!("toe-travel.left={}", points.join(" "));
    let arguments = ["find", CAR, "--want", &want, "--free", "Outer rod spacers"];
    let answer = json(folder.path(), &arguments);
    let best = &answer["findings"][0];
    assert!(best["off"].as_f64().unwrap() < 1e-6, "{best}");
    let words = best["changes"][0].as_str().unwrap();
    assert!(words.contains("3 mm to 2 mm"), "{words}");
    let within = format!("{want} +-5");
    let arguments = [
        "find",
        CAR,
        "--want",
        &within,
        "--free",
        "Outer rod spacers",
    ];
    let answer = json(folder.path(), &arguments);
    assert_eq!(answer["findings"][0]["off"], 0.0);
    assert_eq!(
        answer["findings"][0]["changes"].as_array().unwrap().len(),
        0,
        "what is good enough stays"
    );
}

#[test]
fn a_single_adjustment_is_kept_within_a_range() {
    let folder = folder_of_cars();
    let arguments = [
        "find",
        CAR,
        "--want",
        "bump-steer=0",
        "--free",
        "Outer rod spacers=1..2",
        "--keep",
        "20",
    ];
    let answer = json(folder.path(), &arguments);
    // 1, 1.5 and 2 mm; the present 3 mm is none of them.
    assert_eq!(answer["evaluated"], 3);
    for finding in answer["findings"].as_array().unwrap() {
        let words = finding["changes"][0].as_str().unwrap();
        let kept = ["3 mm to 1 mm", "3 mm to 1.5 mm", "3 mm to 2 mm"];
        assert!(kept.iter().any(|kept| words.contains(kept)), "{words}");
    }
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
        (
            &[
                "find",
                CAR,
                "--want",
                "bump-steer=0",
                "--free",
                "Outer rod spacers=7..9",
            ],
            "\"Outer rod spacers\" can take no value from 7 to 9; it can be from 0 mm to 5 mm",
        ),
        (
            &[
                "find",
                CAR,
                "--want",
                "bump-steer=0",
                "--free",
                "Outer rod spacers=3..1",
            ],
            "\"Outer rod spacers\" cannot be kept from 3 to 1",
        ),
        (
            &[
                "find",
                CAR,
                "--want",
                "bump-steer=0",
                "--free",
                "Servo-arm hole=1..2",
            ],
            "is a choice and has no range",
        ),
        (
            &[
                "find",
                CAR,
                "--want",
                "bump-steer=0",
                "--free",
                "Outer rod spacers=few",
            ],
            "write NAME=LEAST..MOST",
        ),
        (&["find", CAR, "--want", "toe-travel=0"], "no AT:VALUE"),
    ] {
        let errors = refused(folder.path(), arguments, 2);
        assert!(errors.contains(word), "{errors}");
    }
}
