//! The drawer with the binding map.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, SIZE, click, setup, type_number, wait_while, window, window_on};
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use steerloft::state::{Cursor, Document};
use steerloft_analysis::binding::Concern;
use steerloft_setup::supplied::SUPPLIED;

fn wait(app: &mut App) {
    wait_while(app, |app| app.view().drawers.binding.is_working());
}

fn opened() -> App {
    let (mut app, _) = window();
    click(&mut app, "Drawer: Binding");
    wait(&mut app);
    app
}

#[test]
fn the_worst_point_poses_the_car_there() {
    let mut app = opened();
    for (name, concern) in [
        ("Worst point: Ball joints", Concern::BallJoint),
        ("Worst point: Dead centre", Concern::DeadCentre),
    ] {
        let map = app.state().view().drawers.binding.map().unwrap();
        let worst = map.worst(concern).unwrap();
        click(&mut app, name);
        let posed = Cursor {
            input: worst.input,
            travel: worst.travel,
        };
        assert_eq!(app.state().bench().cursor(), posed);
        assert_eq!(app.state().view().drawers.binding.concern, concern);
    }
}

#[test]
fn a_click_in_the_map_poses_the_car() {
    let mut app = opened();
    let map = app.get_by_label("Binding map").rect();
    app.hover_at(map.center());
    app.run();
    app.drag_at(map.center());
    app.run();
    app.drop_at(map.center());
    app.run();
    let cursor = app.state().bench().cursor();
    assert!(
        cursor.input.abs() > 1e-6 && cursor.input.abs() < 5.0,
        "{cursor:?}"
    );
    assert!(cursor.travel > -1.0 && cursor.travel < 2.0);
}

#[test]
fn a_tighter_joint_binds_and_the_map_follows() {
    let mut app = opened();
    app.get_by_label_contains("Nothing binds");
    type_number(&mut app, "Ball joint limit", "13.5");
    wait(&mut app);
    assert!((setup(&app).car.joints.unwrap().most - 13.5).abs() < 1e-9);
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Ball joint limit: 25 to 13.5\u{b0}")
    );
    let map = app.state().view().drawers.binding.map().unwrap();
    assert!(!map.limit_line(Concern::BallJoint).is_empty());
    app.get_by_label_contains("Something binds");
}

#[test]
fn another_concern_is_shown() {
    let mut app = opened();
    app.get_by_role_and_label(Role::RadioButton, "Map of: Chassis")
        .click();
    app.run();
    assert_eq!(app.state().view().drawers.binding.concern, Concern::Chassis);
}

#[test]
fn every_supplied_car_has_a_map() {
    for car in SUPPLIED {
        let (mut app, _) = window_on(Document::unnamed(car.setup()), SIZE);
        click(&mut app, "Drawer: Binding");
        wait(&mut app);
        assert!(
            app.state().view().drawers.binding.map().is_some(),
            "{}",
            car.file_name
        );
        app.get_by_label("Binding map");
    }
}
