//! What is usually tried, asked for from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_analysis::pit_table::{PitFigure, Symptom};
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{folder_of_cars, good, refused};

const CAR: &str = SUPPLIED[0].file_name;

#[test]
fn advice_says_that_it_is_a_tendency_and_geometry_no_promise() {
    let folder = folder_of_cars();
    let answer = good(folder.path(), &["pit-table", CAR, "pushes-at-entry"]);
    assert!(answer.is_ascii(), "{answer}");
    for expected in [
        "pushes wide turning in",
        "1. more bump steer",
        "used at lower grip",
        "geometry is no promise",
    ] {
        assert!(answer.contains(expected), "{expected} in {answer}");
    }
}

#[test]
fn every_symptom_is_told_without_a_choice_and_named_where_it_is_wrong() {
    let folder = folder_of_cars();
    let answer = good(folder.path(), &["pit-table", CAR]);
    for symptom in Symptom::ALL {
        assert!(answer.contains(symptom.label()), "{}", symptom.name());
    }
    let wrong = refused(folder.path(), &["pit-table", CAR, "rattles"], 2);
    assert!(wrong.contains("lifts-over"), "{wrong}");
}

/// The effect that is told is the difference of the figure once the step is taken.
#[test]
fn the_effect_is_what_the_step_does_on_this_car() {
    let folder = folder_of_cars();
    let answer = good(folder.path(), &["pit-table", CAR, "lifts-over", "--json"]);
    let answer: Value = serde_json::from_str(&answer).unwrap();
    let advice = &answer["symptoms"][0]["advice"][0];
    assert_eq!(advice["figure"], "Ackermann share");
    let step = &advice["tries"][0];
    let setup: Setup = SUPPLIED[0].setup();
    let index = setup
        .car
        .adjustments
        .iter()
        .position(|one| one.name == step["adjustment"].as_str().unwrap())
        .unwrap();
    let now = PitFigure::AckermannShare.of(&setup).unwrap().unwrap();
    let effects = [1, -1].map(|direction| {
        let mut stepped = setup.clone();
        let to = setup.car.adjustments[index].step_from(&setup.value(index), direction);
        stepped.set(index, to).unwrap();
        PitFigure::AckermannShare.of(&stepped).unwrap().unwrap() - now
    });
    let told = step["effect"].as_f64().unwrap();
    assert!(
        effects.iter().any(|effect| (effect - told).abs() < 1e-9),
        "{told} of {effects:?}"
    );
    assert!(told > 0.0);
}
