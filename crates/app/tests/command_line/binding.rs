//! Where a linkage binds, asked for from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_setup::file::write;
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, steerloft_in, text};

const CAR: &str = SUPPLIED[0].file_name;

#[test]
fn a_free_car_ends_well_and_one_that_binds_with_the_place() {
    let folder = folder_of_cars();
    for car in SUPPLIED {
        let answer = good(folder.path(), &["binding", car.file_name]);
        assert!(answer.is_ascii(), "{answer}");
        assert!(!answer.contains("BINDS"), "{answer}");
    }
    let mut tight = SUPPLIED[0].setup();
    tight.car.joints.as_mut().unwrap().most = 10.0;
    write(&folder.path().join("tight.ron"), &tight).unwrap();
    let output = steerloft_in(folder.path(), &["binding", "tight.ron"]);
    assert_eq!(output.status.code(), Some(1));
    let answer = text(&output.stdout);
    assert!(answer.contains("BINDS"), "{answer}");
    let field: Vec<&str> = answer
        .lines()
        .filter(|line| line.trim_end().ends_with(['.', 'J']) && line.contains("  "))
        .collect();
    assert!(field.iter().any(|line| line.contains('J')), "{answer}");
    assert!(text(&output.stderr).contains("binds"));
}

#[test]
fn the_table_has_every_pose() {
    let folder = folder_of_cars();
    let table = good(
        folder.path(),
        &["binding", CAR, "--columns", "5", "--rows", "3", "--csv"],
    );
    let mut lines = table.lines();
    assert!(lines.next().unwrap().starts_with("input_deg,travel_mm,"));
    let rows: Vec<&str> = lines.collect();
    assert_eq!(rows.len(), 15);
    assert!(rows[0].starts_with("-22,-1,"), "{}", rows[0]);
    let answer = good(
        folder.path(),
        &["binding", CAR, "--columns", "5", "--rows", "3", "--json"],
    );
    let answer: Value = serde_json::from_str(&answer).unwrap();
    assert_eq!(answer["is_free"], true);
    assert_eq!(answer["cells"].as_array().unwrap().len(), 15);
    let worst = &answer["worst"][0];
    assert_eq!(worst["concern"], "ball joint");
    let limit = worst["value"].as_f64().unwrap() + worst["margin"].as_f64().unwrap();
    assert!((limit - answer["joint_limit_deg"].as_f64().unwrap()).abs() < 1e-9);
}

#[test]
fn rods_are_told_with_their_thread() {
    let folder = folder_of_cars();
    let answer = good(folder.path(), &["binding", CAR]);
    assert!(answer.contains("thread in each cup"), "{answer}");
    let mut long = SUPPLIED[0].setup();
    long.car.tie_rod.longest = 37.0;
    write(&folder.path().join("long.ron"), &long).unwrap();
    let output = steerloft_in(folder.path(), &["binding", "long.ron"]);
    assert_eq!(output.status.code(), Some(1));
    assert!(text(&output.stdout).contains("LONGER than its parts make"));
}
