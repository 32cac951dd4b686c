//! What build errors do, from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, refused};

const CAR: &str = SUPPLIED[0].file_name;

#[test]
fn the_text_has_spreads_dimensions_and_bands() {
    let folder = folder_of_cars();
    let text = good(folder.path(), &["tolerance", CAR, "--samples", "100"]);
    assert!(text.is_ascii(), "{text}");
    for part in [
        "100 cars within the build errors drawn; 0 cannot be assembled",
        "common practice, no source",
        "Bump steer, left wheel",
        "left outer tie-rod ball, height",
        "Toe against travel",
        "Outer against inner angle",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
}

#[test]
fn json_is_the_same_each_time_and_has_the_curve_asked_for() {
    let folder = folder_of_cars();
    let arguments = [
        "tolerance",
        CAR,
        "--samples",
        "64",
        "--curve",
        "camber-travel",
        "--json",
    ];
    let text = good(folder.path(), &arguments);
    assert_eq!(text, good(folder.path(), &arguments));
    let answer: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(answer["samples"], 64);
    let bands = answer["bands"].as_array().unwrap();
    assert_eq!(bands.len(), 1);
    assert_eq!(bands[0]["curve"], "camber-travel");
    let point = &bands[0]["lines"][0]["points"][0];
    let value = |name: &str| point[name].as_f64().unwrap();
    assert!(value("low_5") < value("exact") && value("exact") < value("high_95"));
}

#[test]
fn what_cannot_be_drawn_is_refused_with_what_would_be_right() {
    let folder = folder_of_cars();
    let problem = refused(folder.path(), &["tolerance", CAR, "--samples", "3"], 2);
    assert!(problem.contains("from 10"), "{problem}");
    let problem = refused(folder.path(), &["tolerance", CAR, "--curve", "speed"], 2);
    assert!(problem.contains("toe-travel"), "{problem}");
}
