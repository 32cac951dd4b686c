//! The drawer of the servo.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{
    App, SIZE, click, command_key, pan_car, setup, type_number, wait_while, window, window_on,
};
use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use steerloft::state::Document;
use steerloft_setup::car::ServoClass;
use steerloft_setup::supplied::SUPPLIED;

fn wait(app: &mut App) {
    wait_while(app, |app| app.view().drawers.servo.is_working());
}

/// A window with the drawer open.
fn opened() -> App {
    let (mut app, _) = window();
    click(&mut app, "Drawer: Servo");
    wait(&mut app);
    app
}

fn choose_class(app: &mut App, class: &str) {
    app.get_by_role_and_label(Role::ComboBox, "Class").click();
    app.run();
    app.get_by_role_and_label(Role::Button, class).click();
    app.run();
    wait(app);
}

#[test]
fn every_number_of_the_servo_can_be_typed_and_undone_by_its_name() {
    let mut app = opened();
    type_number(&mut app, "Torque", "1200");
    let torque = |app: &App| setup(app).car.servo.unwrap().action.unwrap().torque;
    assert!((torque(&app) - 1200.0).abs() < 1e-9);
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Torque: 900 to 1200 N mm")
    );
    command_key(&mut app, Key::Z);
    assert!((torque(&app) - 900.0).abs() < 1e-9);
    type_number(&mut app, "Spline teeth", "23");
    assert_eq!(setup(&app).car.servo.unwrap().spline.unwrap().teeth, 23);
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Spline teeth: 25 to 23")
    );
    type_number(&mut app, "Saver breakaway", "300");
    assert!((setup(&app).car.saver.unwrap().breakaway - 300.0).abs() < 1e-9);
    type_number(&mut app, "Friction", "1,1");
    assert!((setup(&app).car.loads.unwrap().friction - 1.1).abs() < 1e-9);
}

#[test]
fn another_class_moves_the_arm_and_is_one_step() {
    let mut app = opened();
    let before = setup(&app).clone();
    choose_class(&mut app, "standard");
    let after = setup(&app);
    assert_eq!(after.car.servo.unwrap().class, ServoClass::Standard);
    assert_ne!(after.car.drive, before.car.drive);
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Servo: small to standard")
    );
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), before);
}

#[test]
fn a_measured_body_moves_the_arm_and_keeps_the_tooth() {
    let mut app = opened();
    type_number(&mut app, "Servo trim", "2");
    let before = setup(&app).car.drive.clone();
    type_number(&mut app, "Arm over case", "8");
    assert_ne!(setup(&app).car.drive, before);
    let spline = setup(&app).car.servo.unwrap().spline.unwrap();
    assert!((spline.trim - 2.0).abs() < 1e-9);
    let label = app.state().bench().undo_label().unwrap();
    assert!(label.starts_with("Arm over case: "), "{label}");
}

#[test]
fn a_tooth_is_taken_with_its_trim() {
    let mut app = opened();
    type_number(&mut app, "Arm wanted at", "12");
    wait(&mut app);
    let nearest = app
        .state()
        .view()
        .drawers
        .servo
        .survey()
        .unwrap()
        .centring
        .teeth[0]
        .tooth;
    assert_eq!(nearest.tooth, 1);
    click(&mut app, "Take tooth 1 with its trim");
    let spline = setup(&app).car.servo.unwrap().spline.unwrap();
    assert_eq!(spline.tooth, 1);
    assert!((spline.centre_input() - 12.0).abs() < 1e-9);
    assert_eq!(app.state().bench().undo_label(), Some("Tooth: 0 to 1"));
}

#[test]
fn end_points_are_for_equal_circles_or_for_a_lock() {
    let mut app = opened();
    let lock = "End points for: this lock";
    app.get_by_role_and_label(Role::RadioButton, lock)
        .scroll_to_me();
    app.run();
    app.get_by_role_and_label(Role::RadioButton, lock).click();
    app.run();
    type_number(&mut app, "Lock wanted", "15");
    wait(&mut app);
    let ends = app.state().view().drawers.servo.survey().unwrap().ends;
    assert!((ends.left.unwrap().lock - 15.0).abs() < 1e-6);
    assert!((ends.right.unwrap().lock - 15.0).abs() < 1e-6);
}

#[test]
fn a_servo_that_stalls_is_cautioned_of() {
    let mut app = opened();
    assert!(app.query_by_label_contains("the servo stalls").is_none());
    type_number(&mut app, "Torque", "20");
    wait(&mut app);
    app.get_by_label_contains("the servo stalls");
}

#[test]
fn a_car_without_a_servo_is_given_one_unless_it_has_a_rack() {
    let opened_on = |setup| {
        let (mut app, _) = window_on(Document::unnamed(setup), SIZE);
        click(&mut app, "Drawer: Servo");
        wait(&mut app);
        app
    };
    let mut bare = pan_car();
    bare.car.servo = None;
    let mut app = opened_on(bare);
    click(&mut app, "Give the servo");
    assert!(setup(&app).car.servo.is_some());
    assert_eq!(app.state().bench().undo_label(), Some("Servo given"));
    let mut cars = SUPPLIED.iter();
    let rack = cars.find(|car| car.file_name == "formula-corner.ron");
    let app = opened_on(rack.unwrap().setup());
    assert!(app.query_by_label("Give the servo").is_none());
    app.get_by_label_contains("A rack has no servo arm");
}
