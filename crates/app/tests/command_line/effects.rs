//! What each step does, asked for from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_setup::file::write;
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, refused};

const CAR: &str = SUPPLIED[0].file_name;

#[test]
fn the_text_has_every_step_and_marks_the_strongest_of_each_figure() {
    let folder = folder_of_cars();
    for car in SUPPLIED {
        let text = good(folder.path(), &["effects", car.file_name]);
        assert!(text.is_ascii(), "{text}");
        for adjustment in &car.setup().car.adjustments {
            assert!(text.contains(&adjustment.name), "{text}");
        }
        assert!(text.contains("Lock left"), "{text}");
        assert!(text.lines().any(|line| line.contains('*')), "{text}");
    }
}

#[test]
fn json_has_a_change_for_each_figure_of_each_step() {
    let folder = folder_of_cars();
    let answer = good(folder.path(), &["effects", CAR, "--steer", "12", "--json"]);
    let answer: Value = serde_json::from_str(&answer).unwrap();
    assert_eq!(answer["inner_deg"], 12.0);
    let figures = answer["figures"].as_array().unwrap();
    let names: Vec<&str> = figures
        .iter()
        .map(|figure| figure["name"].as_str().unwrap())
        .collect();
    for name in ["bump-steer", "toe-at-bump", "ackermann", "camber", "caster"] {
        assert!(names.contains(&name), "{name}");
    }
    for step in answer["steps"].as_array().unwrap() {
        let changes = step["changes"].as_array().unwrap();
        assert_eq!(changes.len(), figures.len());
    }
    let strongest = figures[0]["strongest"].as_u64().unwrap();
    assert!(strongest < answer["steps"].as_array().unwrap().len() as u64);
}

#[test]
fn the_servo_torque_needs_the_loads_and_says_so() {
    let folder = folder_of_cars();
    let text = good(folder.path(), &["effects", CAR]);
    assert!(text.contains("Servo torque"), "{text}");
    assert!(text.contains("N mm") && !text.contains("No servo torque"));
    let mut setup = SUPPLIED[0].setup();
    setup.car.loads = None;
    write(&folder.path().join("unloaded.ron"), &setup).unwrap();
    let text = good(folder.path(), &["effects", "unloaded.ron"]);
    let said =
        "No servo torque: this car does not say how its front wheels are loaded; give `loads`.";
    assert!(text.contains(said), "{text}");
    let json = good(folder.path(), &["effects", "unloaded.ron", "--json"]);
    let answer: Value = serde_json::from_str(&json).unwrap();
    assert_eq!(answer["missing"], said);
}

#[test]
fn an_angle_that_no_wheel_has_is_refused() {
    let folder = folder_of_cars();
    let problem = refused(folder.path(), &["effects", CAR, "--steer", "200"], 2);
    assert!(problem.contains("80"), "{problem}");
}
