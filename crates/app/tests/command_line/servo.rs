//! The servo of a setup, asked for from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;

use serde_json::Value;
use steerloft_setup::file::write;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, refused};

const CAR: &str = SUPPLIED[0].file_name;

fn json(folder: &Path, arguments: &[&str]) -> Value {
    serde_json::from_str(&good(folder, &[arguments, &["--json"]].concat())).unwrap()
}

fn near(value: &Value, expected: f64) {
    let value = value.as_f64().unwrap();
    assert!((value - expected).abs() < 1e-9, "{value} for {expected}");
}

/// 360 / 25 = 14.4 and 360 / 23 = 15.652... degrees from tooth to tooth; 450 us for 50 degrees are 9 us a degree.
#[test]
fn teeth_come_with_the_trim_that_takes_out_the_rest() {
    let folder = folder_of_cars();
    let answer = json(folder.path(), &["servo", CAR, "--arm", "12"]);
    let tooth = &answer["centre"]["teeth"][0];
    assert_eq!(tooth["tooth"], 1);
    near(&tooth["left_over_deg"], 2.4);
    near(&tooth["trim_deg"], -2.4);
    near(&tooth["trim_us"], -21.6);
    let other = json(
        folder.path(),
        &["servo", CAR, "--arm", "12", "--teeth", "23"],
    );
    near(&other["centre"]["teeth"][0]["stands_at_deg"], 360.0 / 23.0);
    assert_eq!(other["servo"]["spline"]["teeth"], 23);
    let alone = json(folder.path(), &["servo", CAR, "--next", "0"]);
    assert_eq!(alone["centre"]["teeth"].as_array().unwrap().len(), 1);
}

#[test]
fn what_is_left_over_makes_the_locks_uneven_and_trim_makes_them_even() {
    let folder = folder_of_cars();
    let answer = json(folder.path(), &["servo", CAR]);
    near(&answer["centre"]["trimmed"]["difference_deg"], 0.0);
    let next = &answer["centre"]["teeth"][1]["untrimmed"];
    if !next.is_null() {
        assert!(
            next["difference_deg"].as_f64().unwrap().abs() > 1.0,
            "{next}"
        );
    }
    near(&answer["centre"]["equal_locks_at"], 0.0);
}

#[test]
fn end_points_reach_the_lock_that_is_asked_for() {
    let folder = folder_of_cars();
    let answer = json(folder.path(), &["servo", CAR, "--lock", "15"]);
    for side in ["left", "right"] {
        let end = &answer["end_points"][side];
        assert!((end["lock_deg"].as_f64().unwrap() - 15.0).abs() < 1e-6);
        let throw = end["throw"].as_f64().unwrap();
        near(&end["share_of_throw_percent"], 2.0 * throw);
    }
}

#[test]
fn a_servo_that_stalls_and_one_that_does_not_fit_are_cautioned_of() {
    let folder = folder_of_cars();
    let text = good(folder.path(), &["servo", CAR]);
    assert!(!text.contains("CAUTION"), "{text}");
    assert!(text.is_ascii(), "{text}");
    let mut weak: Setup = SUPPLIED[0].setup();
    let servo = weak.car.servo.as_mut().unwrap();
    servo.action.as_mut().unwrap().torque = 1.0;
    servo.case.centre.0 -= 15.0;
    write(&folder.path().join("weak.ron"), &weak).unwrap();
    let text = good(folder.path(), &["servo", "weak.ron"]);
    assert!(text.contains("CAUTION: The torque is"), "{text}");
    assert!(text.contains("mm into battery"), "{text}");
    assert!(text.contains("it does not get there"), "{text}");
}

#[test]
fn a_blow_opens_the_saver_or_does_not() {
    let folder = folder_of_cars();
    let answer = json(folder.path(), &["servo", CAR]);
    let left = &answer["saver"]["struck"]["left"];
    assert!(left["arm_deg"].as_f64().unwrap() > 0.1, "{left}");
    assert!(left["left_wheel_deg"].as_f64().unwrap() > 0.1);
    let soft = json(folder.path(), &["servo", CAR, "--blow", "1"]);
    near(&soft["saver"]["struck"]["left"]["arm_deg"], 0.0);
}

#[test]
fn every_supplied_car_has_an_answer() {
    let folder = folder_of_cars();
    for car in SUPPLIED {
        let text = good(folder.path(), &["servo", car.file_name]);
        assert!(text.contains("End points"), "{text}");
        assert!(text.contains("a servo can trap fingers"));
        let has_servo = car.setup().car.servo.is_some();
        assert_eq!(text.contains("Fit of the body"), has_servo, "{text}");
        assert_eq!(text.contains("No servo is given"), !has_servo, "{text}");
    }
}

#[test]
fn wrong_use_is_refused() {
    let folder = folder_of_cars();
    refused(folder.path(), &["servo", CAR, "--teeth", "0"], 2);
    refused(folder.path(), &["servo", CAR, "--lock", "inf"], 2);
    refused(folder.path(), &["servo", "none.ron"], 1);
}
