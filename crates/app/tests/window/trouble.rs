//! Setups and poses that cannot be assembled.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{SIZE, command_key, set_slider, setup, window, window_on};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, vec2};
use egui_kittest::kittest::Queryable;
use steerloft::state::{Change, Document, Trouble};
use steerloft_setup::setup::Rods;

#[test]
fn what_cannot_be_assembled_keeps_the_last_pose_and_says_why() {
    let (mut app, _) = window();
    let before = app.state().bench().derived().shown().unwrap().pose;
    app.state_mut()
        .bench_mut()
        .apply(Change::Rods(Rods::FixedLength(30.0)));
    app.run();
    let derived = app.state().bench().derived();
    assert_eq!(derived.shown().unwrap().pose, before);
    let Some(Trouble::Setup(reason)) = derived.trouble() else {
        panic!("{:?}", derived.trouble())
    };
    assert!(
        reason.contains("tie rod") && reason.contains("mm too short"),
        "{reason}"
    );
    app.get_by_label("Cannot be assembled");
    app.get_by_label_contains("mm too short");
    command_key(&mut app, Key::Z);
    assert!(app.state().bench().derived().trouble().is_none());
    assert!(app.query_by_label("Cannot be assembled").is_none());
}

#[test]
fn the_views_stand_still_when_the_message_comes() {
    let (mut app, _) = window();
    let name = "Steering drive axis (top view)";
    let before = crate::common::handle(&app, name);
    app.state_mut()
        .bench_mut()
        .apply(Change::Rods(Rods::FixedLength(30.0)));
    app.run();
    assert_eq!(crate::common::handle(&app, name), before);
}

#[test]
fn a_setup_that_never_could_be_assembled_is_shown_before_its_adjustments() {
    let mut broken = crate::common::pan_car();
    broken.rods = Rods::FixedLength(30.0);
    let (app, _) = window_on(Document::unnamed(broken), SIZE);
    assert!(app.state().bench().derived().shown().is_some());
    app.get_by_label("Cannot be assembled");
    assert_eq!(setup(&app).rods, Rods::FixedLength(30.0));
}

#[test]
fn a_pose_beyond_a_lock_keeps_the_last_one_that_was_reached() {
    let mut wide = crate::common::pan_car();
    wide.car.ranges.input = (-80.0, 80.0);
    let (mut app, _) = window_on(Document::unnamed(wide), SIZE);
    set_slider(&mut app, "Steering input", 10.0);
    let reached = app.state().bench().derived().shown().unwrap().pose;
    set_slider(&mut app, "Steering input", 80.0);
    let derived = app.state().bench().derived();
    assert!(
        matches!(derived.trouble(), Some(Trouble::Pose(_))),
        "{:?}",
        derived.trouble()
    );
    assert_eq!(derived.shown().unwrap().pose, reached);
    app.get_by_label("Out of reach");
    set_slider(&mut app, "Steering input", 12.0);
    assert!(app.state().bench().derived().trouble().is_none());
}

#[test]
fn what_lies_outside_the_limits_of_a_control_is_shown_and_kept() {
    let mut short = crate::common::pan_car();
    short.rods = Rods::FixedLength(25.0);
    assert!(short.car.tie_rod.shortest > 25.0);
    let (mut app, _) = window_on(Document::unnamed(short.clone()), SIZE);
    let field = app.get_by_role_and_label(Role::SpinButton, "Length of both rods");
    field.scroll_to_me();
    app.run();
    assert_eq!(*setup(&app), short);
    assert!(!app.state().bench().document().is_changed());
}

#[test]
fn the_window_works_at_its_least_size() {
    let (mut app, _) = window_on(
        Document::unnamed(crate::common::pan_car()),
        vec2(900.0, 600.0),
    );
    set_slider(&mut app, "Servo station", 1.0);
    app.state_mut()
        .bench_mut()
        .apply(Change::Rods(Rods::FixedLength(30.0)));
    app.run();
}
