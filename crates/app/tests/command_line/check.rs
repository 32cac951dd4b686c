//! Checks of setups, for people and for programs.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;

use crate::common::{folder_of_cars, good, refused, steerloft_in, text};
use serde_json::Value;
use steerloft_setup::car::Drive;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;

/// The first supplied car in a file, with one part of its text replaced.
fn file(folder: &Path, name: &str, from: &str, to: &str) {
    let car = SUPPLIED[0].text;
    assert!(car.contains(from), "{from}");
    std::fs::write(folder.join(name), car.replacen(from, to, 1)).unwrap();
}

/// A kart whose spacers do not suffice and whose rods are too short for their parts, in a file.
fn faulty_kart(folder: &Path) {
    let kart = SUPPLIED.iter().find(|car| car.file_name == "kart.ron");
    let mut setup = kart.unwrap().setup();
    setup.car.stock[0].parts[0].count = 1;
    setup.car.stock[0].parts[1].count = 1;
    setup.car.tie_rod.shortest = setup.car.tie_rod.longest - 0.01;
    setup.car.tie_rod.thread = None;
    write(folder, "faulty.ron", &setup);
}

fn write(folder: &Path, name: &str, setup: &Setup) {
    steerloft_setup::file::write(&folder.join(name), setup).unwrap();
}

#[test]
fn every_supplied_car_is_ok() {
    let folder = folder_of_cars();
    let mut arguments = vec!["check"];
    arguments.extend(SUPPLIED.iter().map(|car| car.file_name));
    let answer = good(folder.path(), &arguments);
    assert_eq!(answer.lines().count(), SUPPLIED.len());
    assert!(answer.lines().all(|line| line.ends_with(": ok")));
}

#[test]
fn the_place_of_a_fault_is_named() {
    let folder = tempfile::tempdir().unwrap();
    file(folder.path(), "car.ron", "wheelbase: ", "wheelbase: about ");
    let errors = refused(folder.path(), &["check", "car.ron"], 1);
    let mut lines = SUPPLIED[0].text.lines();
    let line = lines.position(|line| line.contains("wheelbase: ")).unwrap() + 1;
    assert!(errors.starts_with(&format!("car.ron:{line}:")), "{errors}");
    assert!(errors.trim_end().ends_with("[file]"), "{errors}");
}

#[test]
fn the_member_that_cannot_reach_is_named() {
    let folder = tempfile::tempdir().unwrap();
    file(
        folder.path(),
        "car.ron",
        "HoldToe(0.0)",
        "FixedLength(31.0)",
    );
    let errors = refused(folder.path(), &["check", "car.ron"], 1);
    for words in ["tie rod", "mm too short", "[assembly]", "Open it with"] {
        assert!(errors.contains(words), "{words} in {errors}");
    }
}

#[test]
fn a_bad_file_does_not_keep_the_others_from_being_checked() {
    let folder = folder_of_cars();
    let output = steerloft_in(folder.path(), &["check", "no-such-file.ron", "kart.ron"]);
    assert_eq!(output.status.code(), Some(1));
    assert!(text(&output.stderr).contains("no-such-file.ron"));
    assert_eq!(text(&output.stdout), "kart.ron: ok\n");
}

#[test]
fn the_lock_of_a_rack_is_told_in_millimetres() {
    let folder = tempfile::tempdir().unwrap();
    let rack = SUPPLIED
        .iter()
        .find(|car| matches!(car.setup().car.drive, Drive::Slider { .. }))
        .unwrap();
    let mut setup = rack.setup();
    let most = setup.car.ranges.input.1;
    setup.car.ranges.input = (-4.0 * most, 4.0 * most);
    write(folder.path(), "wide.ron", &setup);
    let errors = refused(folder.path(), &["check", "wide.ron"], 1);
    let at = |sign: char| {
        let (_, after) = errors
            .split_once(&format!("steering locks at {sign}"))
            .unwrap();
        let (number, _) = after.split_once(" mm of input").unwrap();
        number.parse::<f64>().unwrap()
    };
    for lock in [at('+'), at('-')] {
        assert!(lock > most && lock < 4.0 * most, "{lock} in\n{errors}");
    }
}

#[test]
fn each_finding_is_a_line_that_ends_in_its_kind() {
    let folder = tempfile::tempdir().unwrap();
    faulty_kart(folder.path());
    let errors = refused(folder.path(), &["check", "faulty.ron"], 1);
    let kinds: Vec<&str> = errors
        .lines()
        .filter_map(|line| line.strip_suffix(']')?.rsplit('[').next())
        .collect();
    assert_eq!(kinds, ["rod-length", "rod-length", "spacers"], "{errors}");
    assert!(errors.is_ascii(), "{errors}");
}

#[test]
fn programs_get_the_same_findings_with_their_numbers() {
    let folder = folder_of_cars();
    faulty_kart(folder.path());
    file(
        folder.path(),
        "broken.ron",
        "wheelbase: ",
        "wheelbase: about ",
    );
    let arguments = ["check", "--json", "kart.ron", "faulty.ron", "broken.ron"];
    let output = steerloft_in(folder.path(), &arguments);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(text(&output.stderr), "");
    let json: Value = serde_json::from_slice(&output.stdout).unwrap();
    let sound = [0, 1, 2].map(|at| json[at]["sound"].as_bool().unwrap());
    assert_eq!(sound, [true, false, false], "{json}");
    let rod = &json[1]["findings"][0];
    assert_eq!(rod["kind"], "rod-length");
    assert_eq!(rod["side"], "left");
    assert_eq!(rod["unit"], "mm");
    assert!(rod["value"].as_f64() < rod["limit"].as_f64(), "{rod}");
    let fault = &json[2]["findings"][0];
    assert_eq!(fault["kind"], "file");
    assert!(fault["line"].as_u64() > Some(1), "{fault}");
    good(folder.path(), &["check", "--json", "kart.ron"]);
}
