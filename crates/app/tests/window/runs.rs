//! The drawer with the log of runs.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, setup, window};
use eframe::egui::Key;
use egui_kittest::kittest::Queryable;
use steerloft_setup::setup::Run;

fn opened() -> App {
    let (mut app, _) = window();
    click(&mut app, "Drawer: Runs");
    app
}

fn write(app: &mut App, field: &str, text: &str) {
    app.get_by_label(field).scroll_to_me();
    app.run();
    app.get_by_label(field).click();
    app.run();
    app.get_by_label(field).type_text(text);
    app.run();
    app.key_press(Key::Tab);
    app.run();
}

fn run(app: &App, index: usize) -> &Run {
    &setup(app).record.runs[index]
}

#[test]
fn everything_about_a_run_can_be_written_and_is_undone_by_its_name() {
    let mut app = opened();
    click(&mut app, "Add a run");
    for (field, text) in [
        ("Run 1: when", "Friday"),
        ("Run 1: surface", "carpet"),
        ("Run 1: grip", "high"),
        ("Run 1: tyres", "soft"),
        ("Run 1: turning in", "pushes"),
        ("Run 1: mid-corner", "even"),
        ("Run 1: coming out", "steady"),
        ("Run 1: found", "warm tyres"),
        ("Run 1: next idea", "more caster"),
        ("Run 1: temperature", "21,5"),
        ("Run 1: laps", "24"),
        ("Run 1: best lap", "12.345"),
        ("Run 1: mean lap", "12.9"),
    ] {
        write(&mut app, field, text);
    }
    let noted = run(&app, 0).clone();
    assert_eq!(noted.date, "Friday");
    assert_eq!(
        (noted.surface.as_str(), noted.grip.as_str()),
        ("carpet", "high")
    );
    assert_eq!(noted.tyres, "soft");
    assert_eq!(noted.felt.entry, "pushes");
    assert_eq!(noted.felt.middle, "even");
    assert_eq!(noted.felt.exit, "steady");
    assert_eq!(noted.notes, "warm tyres");
    assert_eq!(noted.next_idea, "more caster");
    assert_eq!(noted.temperature, Some(21.5));
    assert_eq!(noted.laps.count, Some(24));
    assert_eq!(noted.laps.best, Some(12.345));
    assert_eq!(noted.laps.mean, Some(12.9));
    assert_eq!(app.state().bench().undo_label(), Some("Run 1: laps"));
    click(&mut app, "Undo");
    assert_eq!(run(&app, 0).laps.mean, None);
}

#[test]
fn a_further_run_starts_with_the_same_conditions_and_can_be_removed() {
    let mut app = opened();
    click(&mut app, "Add a run");
    write(&mut app, "Run 1: surface", "carpet");
    write(&mut app, "Run 1: turning in", "pushes");
    click(&mut app, "Add a run");
    assert_eq!(run(&app, 1).surface, "carpet");
    assert_eq!(run(&app, 1).felt.entry, "");
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Record: run 2 added")
    );
    click(&mut app, "Remove run 2");
    assert_eq!(setup(&app).record.runs.len(), 1);
}

#[test]
fn what_a_file_could_not_hold_is_said_and_not_taken() {
    let mut app = opened();
    click(&mut app, "Add a run");
    write(&mut app, "Run 1: best lap", "12");
    app.get_by_label("Run 1: mean lap").click();
    app.run();
    app.get_by_label("Run 1: mean lap").type_text("9");
    app.run();
    app.get_by_label_contains("give the mean of all laps");
    assert_eq!(run(&app, 0).laps.mean, None);
    app.key_press(Key::Tab);
    app.run();
    app.get_by_label("Run 1: temperature").click();
    app.run();
    app.get_by_label("Run 1: temperature").type_text("warm");
    app.run();
    assert_eq!(run(&app, 0).temperature, None);
}

#[test]
fn the_record_leads_to_the_runs() {
    let (mut app, _) = window();
    app.get_by_label("Record").click_accesskit();
    app.run();
    app.get_by_label("Open the run notes").scroll_to_me();
    app.run();
    click(&mut app, "Open the run notes");
    app.get_by_label("Add a run");
}
