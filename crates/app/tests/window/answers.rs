//! Build errors and left against right, read off in their drawers.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{adjustment, command_key, setup, wait_while, window, words};
use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use steerloft::state::{Change, CurveKind};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::setup::Chosen;

#[test]
fn build_errors_give_bands_spreads_and_what_matters_and_follow_their_fields() {
    let (mut app, _) = window();
    app.state_mut().view_mut().drawers.tolerances.samples = 60;
    app.key_press(Key::F5);
    wait_while(&mut app, |app| app.view().drawers.tolerances.is_working());
    let state = app.state();
    let tolerances = &state.view().drawers.tolerances;
    let wide = |state: &steerloft::app::Steerloft| {
        let band = state
            .view()
            .drawers
            .tolerances
            .band(state.bench(), CurveKind::ToeTravel);
        let band = band.expect("of a curve that is shown");
        band.lines[0].points[0].quantiles.width()
    };
    assert!(
        tolerances
            .band(state.bench(), CurveKind::RollSteer)
            .is_none()
    );
    let before = wide(state);
    assert!(before > 0.0);
    let answer = tolerances.last().unwrap().as_ref().unwrap();
    let most = steerloft::ui::names::sentence(&answer.tolerance.matters[0].source.to_string());
    assert!(words(&app).contains(&most), "{most}");
    let was = setup(&app).clone();
    let field = app.get_by_role_and_label(Role::SpinButton, "Build error: angles");
    field.set_value_accesskit(1.0);
    wait_while(&mut app, |app| {
        let tolerances = &app.view().drawers.tolerances;
        tolerances.band(app.bench(), CurveKind::ToeTravel).is_none()
    });
    assert!((setup(&app).car.build_errors.angles - 1.0).abs() < 1e-9);
    assert!(wide(app.state()) > before, "wider errors, wider band");
    let undo = app.state().bench().undo_label().unwrap_or_default();
    assert!(
        undo.starts_with("Build error of angles: ") && undo.ends_with(" to 1\u{b0}"),
        "{undo}"
    );
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), was);
}

#[test]
fn a_point_gets_an_error_of_its_own_and_loses_it() {
    let (mut app, _) = window();
    app.state_mut().view_mut().drawers.tolerances.samples = 20;
    app.key_press(Key::F5);
    wait_while(&mut app, |app| app.view().drawers.tolerances.is_working());
    let own = setup(&app).car.build_errors.own.len();
    app.get_by_label("Give a point an error of its own")
        .click_accesskit();
    app.run();
    app.get_all_by_label("Wheel centre")
        .last()
        .unwrap()
        .click_accesskit();
    app.run();
    let errors = &setup(&app).car.build_errors;
    assert_eq!(errors.own.len(), own + 1);
    assert_eq!(errors.own[own].point, PointName::WheelCentre);
    let name = "Build error of its own: Wheel centre";
    let field = app.get_by_role_and_label(Role::SpinButton, name);
    field.set_value_accesskit(0.4);
    app.run();
    assert!((setup(&app).car.build_errors.own[own].error - 0.4).abs() < 1e-9);
    let undo = app.state().bench().undo_label().unwrap_or_default();
    assert!(undo.starts_with("Build error of wheel centre: "), "{undo}");
    crate::common::press(&mut app, "No error of its own: Wheel centre");
    assert_eq!(setup(&app).car.build_errors.own.len(), own);
}

#[test]
fn a_difference_of_the_sides_is_named_with_what_explains_it() {
    let (mut app, _) = window();
    app.key_press(Key::F6);
    wait_while(&mut app, |app| app.view().drawers.sides.is_working());
    assert!(
        words(&app)
            .iter()
            .any(|text| text.starts_with("The sides are alike"))
    );
    let adjustment = adjustment(&app, "Servo sideways");
    let value = Chosen::Slide(2.0);
    let change = Change::Adjust { adjustment, value };
    app.state_mut().bench_mut().apply(change);
    wait_while(&mut app, |app| {
        let last = app.view().drawers.sides.last();
        last.is_none_or(|last| last.as_ref().unwrap().finding().is_none())
    });
    let last = app.state().view().drawers.sides.last().unwrap();
    let finding = format!("{}.", last.as_ref().unwrap().finding().unwrap());
    assert!(words(&app).contains(&finding), "{finding}");
    assert!(
        words(&app).iter().any(|text| text.ends_with(" *")),
        "marked without colour"
    );
}
