//! Typing numbers into fields: sums, units, what is wrong, and inches over the whole window.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, command_key, set_slider, value, window};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::ui::Column;
use steerloft::units::Units;
use steerloft_setup::setup::Chosen;

const FIELD: &str = "Servo sideways";

/// Clicks the field and types, without leaving it.
fn type_into(app: &mut App, field: &str, text: &str) {
    app.get_by_role_and_label(Role::SpinButton, field).click();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, field)
        .type_text(text);
    app.run();
}

fn enter(app: &mut App, field: &str, text: &str) {
    type_into(app, field, text);
    app.key_press(Key::Enter);
    app.run();
}

fn show_inches(app: &mut App) {
    app.key_press_modifiers(Modifiers::ALT.plus(Modifiers::SHIFT), Key::I);
    app.run();
}

#[test]
fn a_sum_is_taken_and_its_result_shown_while_it_is_typed() {
    let (mut app, _) = window();
    type_into(&mut app, FIELD, "0,5 + 2*0.5");
    app.get_by_label("= 1.5 mm");
    assert_eq!(value(&app, FIELD), Chosen::Slide(0.0), "not taken yet");
    app.key_press(Key::Enter);
    app.run();
    assert_eq!(value(&app, FIELD), Chosen::Slide(1.5));
    assert!(app.query_by_label("= 1.5 mm").is_none());
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Servo sideways: 0 to 1.5 mm")
    );
}

#[test]
fn what_cannot_be_read_is_said_beside_the_field_and_changes_nothing() {
    let (mut app, _) = window();
    enter(&mut app, FIELD, "1 + ");
    app.get_by_label("A number is missing after \u{201c}+\u{201d}");
    assert_eq!(value(&app, FIELD), Chosen::Slide(0.0));
    assert_eq!(app.state().bench().undo_label(), None);
    enter(&mut app, FIELD, "1 deg");
    app.get_by_label_contains("measures something else");
    enter(&mut app, FIELD, "400");
    app.get_by_label_contains("400 mm is out of range");
    assert_eq!(value(&app, FIELD), Chosen::Slide(0.0));
    app.key_press(Key::Tab);
    app.run();
    assert!(app.query_by_label_contains("out of range").is_none());
}

#[test]
fn escape_leaves_the_value_as_it_was() {
    let (mut app, _) = window();
    type_into(&mut app, FIELD, "1.5");
    app.key_press(Key::Escape);
    app.run();
    assert_eq!(value(&app, FIELD), Chosen::Slide(0.0));
    assert_eq!(app.state().bench().undo_label(), None);
}

#[test]
fn a_field_that_is_only_visited_changes_nothing() {
    let (mut app, _) = window();
    app.state_mut()
        .bench_mut()
        .apply(steerloft::state::Change::Rods(
            steerloft_setup::setup::Rods::HoldToe(0.123_456_7),
        ));
    app.run();
    let before = crate::common::setup(&app).clone();
    let field = app.get_by_role_and_label(Role::SpinButton, "Toe of each wheel");
    field.scroll_to_me();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, "Toe of each wheel")
        .click();
    app.run();
    app.key_press(Key::Enter);
    app.run();
    assert_eq!(*crate::common::setup(&app), before);
}

#[test]
fn inches_are_shown_and_taken_over_the_whole_window() {
    let (mut app, _) = window();
    show_inches(&mut app);
    assert_eq!(app.state().view().preferences.units, Units::Inches);
    enter(&mut app, FIELD, "0.02 in");
    assert_eq!(value(&app, FIELD), Chosen::Slide(0.5), "the nearest hole");
    enter(&mut app, FIELD, "1 mm");
    assert_eq!(value(&app, FIELD), Chosen::Slide(1.0));
    let name = app.state().bench().undo_name(Units::Inches);
    assert_eq!(
        name.as_deref(),
        Some("Servo sideways: 0.01969 to 0.03937 in")
    );
    let field = app.get_by_role_and_label(Role::SpinButton, FIELD);
    assert_eq!(
        field.accesskit_node().value().as_deref(),
        Some("0.03937 in")
    );
    set_slider(&mut app, "Wheel travel", 1.0);
    app.key_press_modifiers(Modifiers::ALT.plus(Modifiers::SHIFT), Key::M);
    app.run();
    let field = app.get_by_role_and_label(Role::SpinButton, FIELD);
    assert_eq!(field.accesskit_node().value().as_deref(), Some("1 mm"));
}

#[test]
fn faults_are_told_in_inches_too() {
    let (mut app, _) = window();
    show_inches(&mut app);
    app.state_mut()
        .bench_mut()
        .apply(steerloft::state::Change::Rods(
            steerloft_setup::setup::Rods::FixedLength(30.0),
        ));
    app.run();
    app.get_by_label_contains(" in too short");
    assert!(app.query_by_label_contains("mm too short").is_none());
}

#[test]
fn the_history_is_jumped_in_also_across_a_save() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, script) = window();
    let start = crate::common::setup(&app).clone();
    set_slider(&mut app, "Servo station", 2.0);
    script.push(Some(folder.path().join("kept.ron")));
    command_key(&mut app, Key::S);
    assert!(!app.state().bench().document().is_changed());
    click(&mut app, "Outer rod spacers: less");
    let end = crate::common::setup(&app).clone();
    command_key(&mut app, Key::Num4);
    app.get_by_label("saved");
    app.get_by_label("Step 2: Outer rod spacers: 3 to 2.5 mm");
    app.get_by_label_contains("Step 0:").click();
    app.run();
    assert_eq!(*crate::common::setup(&app), start);
    assert_eq!(app.state().bench().place(), 0);
    app.get_by_label("Step 1: Servo station: 0 to 2 mm").click();
    app.run();
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
    assert!(
        !app.state().bench().document().is_changed(),
        "as it was saved"
    );
    app.get_by_label_contains("Step 2:").click();
    app.run();
    assert_eq!(*crate::common::setup(&app), end);
}

/// What strip and table say of a figure, which is the same.
fn figure(app: &App, name: &str) -> String {
    let start = format!("{name}: ");
    let says: Vec<String> = app
        .query_all_by_role(Role::Label)
        .filter_map(|node| node.accesskit_node().value())
        .filter(|label| label.starts_with(&start))
        .collect();
    assert!(says.windows(2).all(|pair| pair[0] == pair[1]), "{says:?}");
    says.into_iter().next().expect("the figure is shown")
}

/// The number after a word of what is said of a figure.
fn number(says: &str, word: &str) -> f64 {
    let rest = says.split_once(word).expect("has the word").1.trim();
    let digits = rest.split(' ').next().unwrap();
    digits.replace('\u{2212}', "-").parse().unwrap()
}

#[test]
fn figures_follow_the_choice_of_units() {
    let (mut app, _) = window();
    app.state_mut().view_mut().column = Column::Figures;
    app.run();
    let names = ["Rod length", "Bump steer", "Toe"];
    let metric = names.map(|name| figure(&app, name));
    app.state_mut().view_mut().preferences.units = Units::Inches;
    app.run();
    let inches = names.map(|name| figure(&app, name));
    assert!(metric[0].contains(" mm") && inches[0].contains(" in"));
    assert!(inches[1].contains("\u{b0}/in"), "{}", inches[1]);
    assert_eq!(metric[2], inches[2], "angles stay as they are");
    let [length, was] = [&inches[0], &metric[0]].map(|says| number(says, "left"));
    assert!((length * 25.4 - was).abs() < 0.006, "{length} in, {was} mm");
    let digits = inches[0].split('.').nth(1).unwrap();
    let digits = digits.split(' ').next().unwrap();
    assert!(digits.len() >= 3, "thousandths at least: {digits}");
    let [rate, was] = [&inches[1], &metric[1]].map(|says| number(says, "left"));
    assert!(
        (rate / 25.4 - was).abs() < 0.001,
        "{rate} per in, {was} per mm"
    );
}
