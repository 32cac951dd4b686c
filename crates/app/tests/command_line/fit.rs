//! Gauge readings fitted from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_setup::file::read;
use steerloft_setup::setup::Rods;
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, refused};

const CAR: &str = SUPPLIED[0].file_name;

/// Made up: both wheels toe in by half a degree more than the file says, one reading by far too much.
const READINGS: &str = include_str!("../readings/toe.readings");

#[test]
fn a_fit_tells_what_it_found_and_saves_the_car() {
    let folder = folder_of_cars();
    std::fs::write(folder.path().join("gauges.readings"), READINGS).unwrap();
    let arguments = ["fit", CAR, "gauges.readings", "-o", "fitted.ron"];
    let text = good(folder.path(), &arguments);
    assert!(text.is_ascii(), "{text}");
    for part in [
        "left tie-rod length",
        "wheelbase: no reading depends on it",
        "Take the right toe at 0 mm of travel again first",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let setup = read(&folder.path().join("fitted.ron")).unwrap();
    assert!(matches!(setup.rods, Rods::FixedLengths { .. }));
    let again = refused(folder.path(), &arguments, 1);
    assert!(again.contains("--force"), "{again}");
    let report = good(folder.path(), &["report", "fitted.ron", "--json"]);
    let report: Value = serde_json::from_str(&report).unwrap();
    let figures = report[0]["figures"].as_array().unwrap();
    let toe = figures.iter().find(|one| one["name"] == "toe").unwrap();
    assert!((toe["left"].as_f64().unwrap() - 0.5).abs() < 1e-6);
}

#[test]
fn json_has_everything_as_numbers() {
    let folder = folder_of_cars();
    std::fs::write(folder.path().join("gauges.readings"), READINGS).unwrap();
    let answer = good(folder.path(), &["fit", CAR, "gauges.readings", "--json"]);
    let answer: Value = serde_json::from_str(&answer).unwrap();
    assert_eq!(answer["found"].as_array().unwrap().len(), 2);
    assert_eq!(answer["left_open"][0]["dimension"], "wheelbase");
    assert_eq!(answer["residuals"][5]["is_outlier"], true);
    // A toe of 0.1 deg taken three times: 0.1 / sqrt(3) of the wheel, in mm of its rod.
    let left = answer["found"][0]["uncertainty"].as_f64().unwrap();
    assert!(left > 0.0 && left < 0.05, "{left}");
}

#[test]
fn readings_that_are_wrong_are_refused_with_their_place() {
    let folder = folder_of_cars();
    let wrong = READINGS.replacen("Some(0.5)", "Some(0,5)", 1);
    std::fs::write(folder.path().join("gauges.readings"), wrong).unwrap();
    let problem = refused(folder.path(), &["fit", CAR, "gauges.readings"], 1);
    assert!(problem.contains("gauges.readings:4:"), "{problem}");
}
