//! Gauge readings typed or read from a file, fitted, and the fitted car adopted.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, command_key, press, setup, wait_while, window, words};
use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft_setup::file::read_readings;
use steerloft_setup::setup::Rods;

/// Made up: both wheels toe in by half a degree more than the file says, one reading by far too much.
const READINGS: &str = include_str!("../readings/toe.readings");

/// Starts the fit and waits for its end.
fn fit(app: &mut App) {
    press(app, "Start the fit");
    wait_while(app, |app| app.view().drawers.fitting.is_working());
}

fn says(app: &App, start: &str) -> bool {
    words(app).iter().any(|text| text.starts_with(start))
}

fn type_into(app: &mut App, field: &str, text: &str) {
    app.get_by_role_and_label(Role::TextInput, field).focus();
    app.run();
    app.get_by_role_and_label(Role::TextInput, field)
        .type_text(text);
    app.run();
}

#[test]
fn readings_of_a_file_are_fitted_and_the_car_is_adopted_as_one_step() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("gauges.readings");
    std::fs::write(&path, READINGS).unwrap();
    let (mut app, script) = window();
    app.key_press(Key::F7);
    app.run();
    script.push(Some(path));
    press(&mut app, "Read from a file\u{2026}");
    app.run();
    assert_eq!(app.state().view().drawers.fitting.rows.len(), 3);
    let before = setup(&app).clone();
    fit(&mut app);
    for start in [
        "Left tie-rod length: ",
        "Wheelbase is left open, and as the file says: no reading depends on it.",
        "The right toe at 0 mm of travel does not go with the others",
    ] {
        assert!(says(&app, start), "{start}: {:?}", words(&app));
    }
    let left = "What is left: left toe at 0 mm of travel ";
    assert!(app.query_by_label_contains(left).is_some());
    press(&mut app, "Adopt the fitted car");
    assert!(matches!(setup(&app).rods, Rods::FixedLengths { .. }));
    let toe = app.state().bench().derived().shown().unwrap().static_toe();
    assert!((toe.left - 0.5).abs() < 1e-6, "{toe:?}");
    assert_eq!(app.state().bench().undo_label(), Some("Fit to 6 readings"));
    let adopt = app.get_by_role_and_label(Role::Button, "Adopt the fitted car");
    assert!(adopt.accesskit_node().is_disabled(), "of the setup before");
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), before);
}

#[test]
fn readings_are_typed_and_saved_and_faults_are_told_with_their_line() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("typed.readings");
    let (mut app, script) = window();
    app.key_press(Key::F7);
    app.run();
    press(&mut app, "Start the fit");
    assert!(says(
        &app,
        "Line 1, give the left or the right wheel's value."
    ));
    type_into(&mut app, "Reading 1: left", "0,5");
    press(&mut app, "Reading 2: take away");
    type_into(&mut app, "Part of a dimension's name", "tie-rod length");
    app.get_by_role_and_label(Role::CheckBox, "Uncertain: left tie-rod length")
        .click_accesskit();
    app.run();
    script.push(Some(path.clone()));
    press(&mut app, "Save readings\u{2026}");
    app.run();
    let written = read_readings(&path).unwrap();
    assert_eq!(written.toe[0].left, Some(0.5));
    assert_eq!(written.uncertain.len(), 1);
    fit(&mut app);
    assert!(says(&app, "Left tie-rod length: "), "{:?}", words(&app));
    type_into(&mut app, "Reading 1: right", "half");
    press(&mut app, "Start the fit");
    assert!(says(&app, "Line 1, right: "), "{:?}", words(&app));
    click(&mut app, "Shut the drawer");
}
