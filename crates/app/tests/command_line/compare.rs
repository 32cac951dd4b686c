//! Two setups side by side.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_setup::file::write;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, refused};

const CAR: &str = SUPPLIED[0].file_name;

fn changed() -> Setup {
    let mut setup = SUPPLIED[0].setup();
    for (name, value) in [
        ("Outer rod spacers", Chosen::Stack(2.0)),
        (
            "Steering-arm hole",
            Chosen::Choice("rearward hole".to_owned()),
        ),
        ("Servo station", Chosen::Slide(-2.0)),
    ] {
        let all = &setup.car.adjustments;
        let place = all.iter().position(|one| one.name == name).unwrap();
        setup.set(place, value).unwrap();
    }
    setup
}

#[test]
fn what_differs_is_told_in_parts_and_in_figures() {
    let folder = folder_of_cars();
    write(&folder.path().join("changed.ron"), &changed()).unwrap();
    let text = good(folder.path(), &["compare", CAR, "changed.ron"]);
    assert!(text.is_ascii(), "{text}");
    let line = |start: &str| {
        text.lines()
            .find(|line| line.starts_with(start))
            .unwrap_or_else(|| panic!("no {start} in {text}"))
            .to_owned()
    };
    assert!(
        line("Outer rod spacers").contains("take out 1 mm"),
        "{text}"
    );
    assert!(line("Servo station").contains("move by -2.00 mm"), "{text}");
    assert!(line("Steering-arm hole").contains("forward hole to rearward hole"));
    assert!(line("Tie rod, left").contains("gap between the cups"));
    assert!(text.contains("Figures that differ"), "{text}");
    assert!(line("Bump steer").split_whitespace().count() >= 6, "{text}");
}

#[test]
fn a_setup_does_not_differ_from_itself() {
    let folder = folder_of_cars();
    let text = good(folder.path(), &["compare", CAR, CAR]);
    assert!(text.contains("The setups have the same parts"), "{text}");
    assert!(text.contains("No figure differs"), "{text}");
}

#[test]
fn json_has_the_figures_of_both_reports() {
    let folder = folder_of_cars();
    write(&folder.path().join("changed.ron"), &changed()).unwrap();
    let read = |arguments: &[&str]| -> Value {
        serde_json::from_str(&good(folder.path(), arguments)).unwrap()
    };
    let compared = read(&["compare", CAR, "changed.ron", "--json"]);
    let reports = read(&["report", CAR, "changed.ron", "--json"]);
    for (index, side) in ["from", "to"].into_iter().enumerate() {
        let told = compared["figures"].as_array().unwrap();
        let own = reports[index]["figures"].as_array().unwrap();
        assert_eq!(told.len(), own.len());
        for (told, own) in told.iter().zip(own) {
            assert_eq!(told["name"], own["name"]);
            let first = if own.get("left").is_some() {
                "left"
            } else {
                "value"
            };
            assert_eq!(told[side][0], own[first], "{own}");
        }
    }
    let spacers = compared["adjustments"]
        .as_array()
        .unwrap()
        .iter()
        .find(|one| one["name"] == "Outer rod spacers")
        .unwrap();
    assert_eq!(spacers["work"], "spacers");
    assert_eq!(spacers["remove_mm"][0], 1.0);
}

#[test]
fn a_file_that_is_not_there_is_told() {
    let folder = folder_of_cars();
    let errors = refused(folder.path(), &["compare", CAR, "none.ron"], 1);
    assert!(errors.contains("none.ron"), "{errors}");
}
