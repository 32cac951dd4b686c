//! What each step does, read off and taken in its drawer.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, command_key, setup, value, wait_while, window, words};
use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft_setup::setup::{Chosen, Rods};

/// Waits until the table is that of the setup as it stands.
fn worked_out(app: &mut App) {
    wait_while(app, |app| {
        let table = &app.view().drawers.effects;
        let last = table
            .last()
            .map(|last| last.expect("it can be assembled").0);
        last != Some(app.bench().setup()) || table.is_working()
    });
}

fn names(app: &App) -> Vec<String> {
    let buttons = app.query_all_by_role(Role::Button);
    buttons
        .filter_map(|node| node.accesskit_node().label())
        .collect()
}

#[test]
fn a_click_on_a_change_takes_its_step() {
    let (mut app, _) = window();
    app.key_press(Key::F4);
    worked_out(&mut app);
    let before = setup(&app).clone();
    let step = "Front wheelbase: middle to long; Bump steer, left wheel +";
    let cells = names(&app);
    let cell = cells.iter().find(|name| name.starts_with(step));
    let cell = cell.unwrap_or_else(|| panic!("{cells:?}")).clone();
    app.get_by_role_and_label(Role::Button, &cell)
        .click_accesskit();
    app.run();
    assert_eq!(
        value(&app, "Front wheelbase"),
        Chosen::Choice("long".to_owned())
    );
    worked_out(&mut app);
    assert!(
        names(&app)
            .iter()
            .any(|name| name.starts_with("Front wheelbase: long to middle; "))
    );
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), before);
}

#[test]
fn each_figure_has_one_strongest_step_and_pairs_that_are_alike_are_named() {
    let (mut app, _) = window();
    app.state_mut().view_mut().drawers.height = Some(900.0);
    app.set_size(eframe::egui::vec2(1900.0, 1800.0));
    app.key_press(Key::F4);
    worked_out(&mut app);
    let strongest: Vec<String> = names(&app)
        .into_iter()
        .filter(|name| name.ends_with(", strongest"))
        .collect();
    let table = &app.state().view().drawers.effects;
    let (_, effects) = table.last().unwrap().unwrap();
    let marked = effects
        .columns
        .iter()
        .filter(|column| column.strongest.is_some());
    assert_eq!(strongest.len(), marked.count());
    assert!(!effects.alike.is_empty());
    let labels = app.query_all_by_role(Role::Label);
    let told = labels.filter_map(|node| node.accesskit_node().value());
    assert!(told.into_iter().any(|text| text.contains("(likeness ")));
}

#[test]
fn what_cannot_be_assembled_is_said() {
    let (mut app, _) = window();
    let rods = steerloft::state::Change::Rods(Rods::FixedLength(30.0));
    app.state_mut().bench_mut().apply(rods);
    app.key_press(Key::F4);
    wait_while(&mut app, |app| app.view().drawers.effects.is_working());
    let told = words(&app);
    assert!(
        told.iter()
            .any(|text| text.starts_with("Cannot be assembled. "))
    );
}
