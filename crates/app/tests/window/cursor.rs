//! Posing the car, and doing nothing while nothing happens.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::time::Duration;

use crate::common::{SIZE, click, command_key, drag_and_drop, set_slider, window, window_on};
use eframe::egui::{Key, ViewportId, vec2};
use egui_kittest::kittest::Queryable;
use steerloft::state::{Cursor, Document};
use steerloft_setup::supplied::SUPPLIED;

#[test]
fn the_sliders_pose_the_car() {
    let (mut app, _) = window();
    set_slider(&mut app, "Steering input", 15.0);
    set_slider(&mut app, "Wheel travel", 1.0);
    let shown = app.state().bench().derived().shown().unwrap();
    assert!((shown.pose.input - 15_f64.to_radians()).abs() < 1e-9);
    assert!((shown.pose.travel.left - 1.0).abs() < 1e-9);
    assert!(shown.turn().is_some());
    assert!(
        !app.state().bench().document().is_changed(),
        "a pose is no change of the setup"
    );
    click(&mut app, "Straight ahead at rest");
    assert_eq!(app.state().bench().cursor(), Cursor::STATIC);
}

#[test]
fn the_cursor_is_dragged_in_the_toe_curve() {
    let (mut app, _) = window();
    let plot = app
        .get_by_role_and_label(eframe::egui::accesskit::Role::Image, "Toe against travel")
        .rect();
    drag_and_drop(&mut app, plot.center(), vec2(plot.width() * 0.25, 0.0));
    let travel = app.state().bench().cursor().travel;
    assert!((0.8..2.0).contains(&travel), "{travel}");
}

#[test]
fn the_cursor_is_dragged_in_the_curve_of_wheel_angles() {
    let (mut app, _) = window();
    let plot = app
        .get_by_role_and_label(
            eframe::egui::accesskit::Role::Image,
            "Outer against inner angle",
        )
        .rect();
    drag_and_drop(&mut app, plot.center(), vec2(-plot.width() * 0.25, 0.0));
    let turn = app
        .state()
        .bench()
        .derived()
        .shown()
        .unwrap()
        .turn()
        .expect("it turns");
    let inner = turn.inner.to_degrees();
    assert!((8.0..13.0).contains(&inner), "{inner}");
}

#[test]
fn a_car_comes_with_its_cursor_at_rest() {
    let (mut app, _) = window();
    set_slider(&mut app, "Steering input", 15.0);
    command_key(&mut app, Key::N);
    assert_eq!(app.state().bench().cursor(), Cursor::STATIC);
}

#[test]
fn nothing_is_repainted_while_nothing_happens() {
    for car in SUPPLIED {
        let (mut app, _) = window_on(Document::unnamed(car.setup()), SIZE);
        set_slider(&mut app, "Steering input", 10.0);
        for _ in 0..5 {
            app.step();
        }
        let delay = app.output().viewport_output[&ViewportId::ROOT].repaint_delay;
        assert!(
            delay > Duration::from_hours(1),
            "{}: repaint after {delay:?}",
            car.title
        );
    }
}

#[test]
fn what_follows_is_not_computed_again_while_nothing_changes() {
    let (mut app, _) = window();
    let curves = |app: &crate::common::App| {
        let shown = app.state().bench().derived().shown().unwrap();
        shown.study.sweeps().steer().poses.as_ptr()
    };
    let before = curves(&app);
    set_slider(&mut app, "Steering input", 10.0);
    app.run_steps(3);
    assert_eq!(
        curves(&app),
        before,
        "steering moves along the curve and leaves it as it is"
    );
    set_slider(&mut app, "Servo station", 1.0);
    let shown = app.state().bench().derived().shown().unwrap();
    assert!(!shown.study.sweeps().steer().poses.is_empty());
}
