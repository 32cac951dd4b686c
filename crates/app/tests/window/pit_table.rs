//! The drawer with the pit table.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, command_key, setup, wait_while, window};
use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::Queryable;
use steerloft_analysis::pit_table::{PitFigure, Symptom};

fn wait(app: &mut App) {
    wait_while(app, |app| app.view().drawers.pit_table.is_working());
}

fn opened() -> App {
    let (mut app, _) = window();
    click(&mut app, "Drawer: Pit table");
    wait(&mut app);
    app
}

fn choose(app: &mut App, felt: &str) {
    app.get_by_role_and_label(Role::Button, felt).click();
    app.run();
    wait(app);
}

#[test]
fn advice_is_called_a_tendency_and_geometry_no_promise() {
    let app = opened();
    app.get_by_label_contains("geometry is no promise");
    app.get_by_label_contains("used at lower grip");
}

#[test]
fn one_click_applies_a_step_with_the_effect_that_was_told() {
    let mut app = opened();
    choose(&mut app, "Nervous turning in");
    assert_eq!(
        app.state().view().drawers.pit_table.symptom,
        Symptom::NervousAtEntry
    );
    let before = setup(&app).clone();
    let drawer = &app.state().view().drawers.pit_table;
    let advice = &drawer.advice().unwrap()[0];
    assert_eq!(advice.aim.figure, PitFigure::BumpSteer);
    let step = advice.tries[0].clone();
    let name = format!("Apply {}: {} to {}", step.name, step.from, step.to);
    let now = PitFigure::BumpSteer.of(&before).unwrap().unwrap();
    app.get_by_label(&name).scroll_to_me();
    app.run();
    click(&mut app, &name);
    assert_eq!(setup(&app).chosen, step.setup.chosen);
    let then = PitFigure::BumpSteer.of(setup(&app)).unwrap().unwrap();
    assert!((then - now - step.effect).abs() < 1e-12);
    let label = app.state().bench().undo_label().unwrap();
    assert!(label.starts_with(&step.name), "{label}");
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), before);
}

#[test]
fn every_symptom_has_advice() {
    let mut app = opened();
    for symptom in Symptom::ALL {
        let mut felt = symptom.label().to_owned();
        felt[..1].make_ascii_uppercase();
        app.get_by_role_and_label(Role::Button, &felt)
            .scroll_to_me();
        app.run();
        choose(&mut app, &felt);
        let advice = app.state().view().drawers.pit_table.advice().unwrap();
        assert_eq!(advice.len(), symptom.aims().len());
    }
}
