//! Changing the car through the panel of adjustments, and taking changes back.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{click, command_key, set_slider, setup, value, window};
use eframe::egui::accesskit::Role;
use eframe::egui::{Event, Key, Modifiers};
use egui_kittest::kittest::Queryable;
use steerloft::state::CurveKind;
use steerloft_setup::setup::{Chosen, Rods};

#[test]
fn a_slider_moves_its_adjustment_and_the_car() {
    let (mut app, _) = window();
    let toe_before = app
        .state()
        .bench()
        .derived()
        .shown()
        .unwrap()
        .curve(CurveKind::ToeTravel)
        .clone();
    set_slider(&mut app, "Servo station", -3.0);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(-3.0));
    let toe_after = app
        .state()
        .bench()
        .derived()
        .shown()
        .unwrap()
        .curve(CurveKind::ToeTravel)
        .clone();
    assert_ne!(toe_before, toe_after, "the curves follow");
}

#[test]
fn a_slider_keeps_to_the_steps_of_the_parts() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 1.4);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(1.0));
}

#[test]
fn exact_entry_takes_a_decimal_comma() {
    let (mut app, _) = window();
    app.get_by_role_and_label(Role::SpinButton, "Servo sideways")
        .click();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, "Servo sideways")
        .type_text("1,5");
    app.run();
    app.key_press(Key::Enter);
    app.run();
    assert_eq!(value(&app, "Servo sideways"), Chosen::Slide(1.5));
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Servo sideways: 0 to 1.5 mm")
    );
}

#[test]
fn a_stack_is_changed_by_whole_spacers() {
    let (mut app, _) = window();
    click(&mut app, "Outer rod spacers: less");
    assert_eq!(value(&app, "Outer rod spacers"), Chosen::Stack(2.5));
    click(&mut app, "Outer rod spacers: more");
    assert_eq!(value(&app, "Outer rod spacers"), Chosen::Stack(3.0));
    assert!(
        setup(&app).chosen.is_empty(),
        "back at base, nothing is chosen"
    );
}

#[test]
fn a_choice_is_made_by_a_click() {
    let (mut app, _) = window();
    let before = app
        .state()
        .bench()
        .derived()
        .shown()
        .unwrap()
        .assembly()
        .rod_lengths();
    app.get_by_label("Ball studs: rear face").click();
    app.run();
    assert_eq!(
        value(&app, "Ball studs"),
        Chosen::Choice("rear face".to_owned())
    );
    let after = app
        .state()
        .bench()
        .derived()
        .shown()
        .unwrap()
        .assembly()
        .rod_lengths();
    assert_ne!(before, after);
}

#[test]
fn undo_and_redo_walk_over_every_step() {
    let (mut app, _) = window();
    let start = setup(&app).clone();
    set_slider(&mut app, "Servo station", 2.0);
    click(&mut app, "Outer rod spacers: less");
    let end = setup(&app).clone();
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Outer rod spacers: 3 to 2.5 mm")
    );
    command_key(&mut app, Key::Z);
    assert_eq!(value(&app, "Outer rod spacers"), Chosen::Stack(3.0));
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), start);
    assert!(!app.state().bench().document().is_changed());
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::Z);
    app.run();
    command_key(&mut app, Key::Y);
    assert_eq!(*setup(&app), end);
    assert_eq!(app.state().bench().redo_label(), None);
}

#[test]
fn each_press_of_a_key_undoes_a_step_though_several_come_in_a_frame() {
    let (mut app, _) = window();
    let start = setup(&app).clone();
    for value in [1.0, 2.0, 3.0] {
        set_slider(&mut app, "Servo station", value);
    }
    let press = |modifiers| Event::Key {
        key: Key::Z,
        physical_key: None,
        pressed: true,
        repeat: false,
        modifiers,
    };
    let undo = press(Modifiers::COMMAND);
    let redo = press(Modifiers::COMMAND.plus(Modifiers::SHIFT));
    app.input_mut().events.extend(vec![undo; 3]);
    app.run();
    assert_eq!(*setup(&app), start);
    app.input_mut().events.extend(vec![redo; 2]);
    app.run();
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
}

#[test]
fn undo_by_its_button() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 2.0);
    click(&mut app, "Undo");
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(0.0));
    click(&mut app, "Redo");
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
}

#[test]
fn back_to_base_is_offered_only_away_from_it() {
    let (mut app, _) = window();
    assert!(app.query_by_label("Servo station: back to base").is_none());
    set_slider(&mut app, "Servo station", 2.0);
    click(&mut app, "Servo station: back to base");
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(0.0));
    assert!(app.query_by_label("Servo station: back to base").is_none());
}

#[test]
fn a_slider_dragged_is_one_step() {
    let (mut app, _) = window();
    let rail = app
        .get_by_role_and_label(Role::Slider, "Servo station")
        .rect();
    crate::common::drag_and_drop(
        &mut app,
        rail.center(),
        eframe::egui::vec2(rail.width() * 0.3, 0.0),
    );
    let Chosen::Slide(station) = value(&app, "Servo station") else {
        panic!("a slide")
    };
    assert!(station >= 2.0, "{station}");
    assert!(app.state().bench().undo_label().is_some());
    command_key(&mut app, Key::Z);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(0.0));
    assert_eq!(app.state().bench().undo_label(), None);
}

#[test]
fn rods_change_their_way_without_moving_the_wheels() {
    let (mut app, _) = window();
    let toe =
        |app: &crate::common::App| app.state().bench().derived().shown().unwrap().static_toe();
    let before = toe(&app);
    scroll_to(&mut app, "Rods: Left / right");
    app.get_by_label("Rods: Left / right").click();
    app.run();
    assert!(
        matches!(setup(&app).rods, Rods::FixedLengths { .. }),
        "{:?}",
        setup(&app).rods
    );
    let after = toe(&app);
    // Lengths are rounded to 0.01 mm, which is well under 0.1 degrees at a steering arm of some 15 mm.
    assert!(
        (before.left - after.left).abs() < 0.1,
        "{before:?} {after:?}"
    );
    app.get_by_label("Rods: Hold toe").click();
    app.run();
    assert!(matches!(setup(&app).rods, Rods::HoldToe(toe) if toe.abs() < 0.1));
}

fn scroll_to(app: &mut crate::common::App, label: &str) {
    app.get_by_label(label).scroll_to_me();
    app.run();
}

#[test]
fn the_record_is_written_in_its_fields() {
    let (mut app, _) = window();
    scroll_to(&mut app, "Record");
    app.get_by_label("Record").click_accesskit();
    app.run();
    scroll_to(&mut app, "Surface");
    app.get_by_role_and_label(Role::TextInput, "Surface")
        .focus();
    app.run();
    app.get_by_role_and_label(Role::TextInput, "Surface")
        .type_text("grey carpet");
    app.run();
    assert!(setup(&app).record.surface.ends_with("grey carpet"));
    app.key_press(Key::Enter);
    app.run();
    assert_eq!(app.state().bench().undo_label(), Some("Record: surface"));
    assert_eq!(
        app.state().bench().document().revision(),
        0,
        "writing moves no point of the car"
    );
}
