//! The two sides held against each other, from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_setup::dimension::Dimension;
use steerloft_setup::file::write;
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good};

const CAR: &str = SUPPLIED[0].file_name;

#[test]
fn a_mirrored_car_is_alike() {
    let folder = folder_of_cars();
    let text = good(folder.path(), &["symmetry", CAR]);
    assert!(text.contains("The sides are alike"), "{text}");
    assert!(!text.contains('*'), "{text}");
}

#[test]
fn an_arm_off_centre_is_found() {
    let folder = folder_of_cars();
    let mut setup = SUPPLIED[0].setup();
    Dimension::Centre.add(&mut setup, -4.0).unwrap();
    write(&folder.path().join("off.ron"), &setup).unwrap();
    let text = good(folder.path(), &["symmetry", "off.ron"]);
    assert!(text.is_ascii(), "{text}");
    let finding = "deg earlier: servo arm off centre by -4.00 deg.";
    assert!(text.contains(finding), "{text}");
    let answer = good(folder.path(), &["symmetry", "off.ron", "--json"]);
    let answer: Value = serde_json::from_str(&answer).unwrap();
    let off = answer["explanations"][0]["off"].as_f64().unwrap();
    assert!((off + 4.0).abs() < 1e-3, "{off}");
    assert!(
        answer["finding"]
            .as_str()
            .unwrap()
            .starts_with("Left locks")
    );
}
