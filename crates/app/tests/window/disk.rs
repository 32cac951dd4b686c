//! Files that another program changes or takes away while they are open.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::PathBuf;

use crate::common::{App, click, command_key, set_slider, setup, value, window};
use eframe::egui::Key;
use egui_kittest::kittest::Queryable;
use steerloft::dialogs::ScriptedAnswers;
use steerloft_setup::file;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;

/// A window on a file of its own.
fn on_file() -> (App, ScriptedAnswers, tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("car.ron");
    std::fs::write(&path, SUPPLIED[0].text).unwrap();
    let (mut app, script) = window();
    script.push(Some(path.clone()));
    command_key(&mut app, Key::O);
    (app, script, folder, path)
}

/// What the other program writes.
fn theirs() -> Setup {
    let mut setup = SUPPLIED[0].setup();
    setup
        .chosen
        .insert("Servo station".to_owned(), Chosen::Slide(-1.0));
    setup
}

/// The user goes to another window and comes back.
fn away_and_back(app: &mut App) {
    app.input_mut().focused = false;
    app.run();
    app.input_mut().focused = true;
    app.run();
}

#[test]
fn a_changed_file_is_noticed_and_taken_over_as_a_step() {
    let (mut app, _, _folder, path) = on_file();
    set_slider(&mut app, "Servo station", 2.0);
    file::write(&path, &theirs()).unwrap();
    away_and_back(&mut app);
    app.get_by_label("car.ron was changed by another program");
    click(&mut app, "Take the file's");
    assert_eq!(*setup(&app), theirs());
    assert!(!app.state().bench().document().is_changed());
    assert!(
        app.query_by_label("car.ron was changed by another program")
            .is_none()
    );
    command_key(&mut app, Key::Z);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
    assert!(app.state().bench().document().is_changed());
    away_and_back(&mut app);
    assert!(
        app.query_by_label("car.ron was changed by another program")
            .is_none()
    );
}

#[test]
fn what_is_on_the_bench_can_be_kept_and_counts_as_unsaved() {
    let (mut app, _, _folder, path) = on_file();
    file::write(&path, &theirs()).unwrap();
    away_and_back(&mut app);
    click(&mut app, "Keep the bench's");
    assert_eq!(*setup(&app), SUPPLIED[0].setup());
    assert!(app.state().bench().document().is_changed());
    // It has been decided about, so saving asks nothing more.
    command_key(&mut app, Key::S);
    assert_eq!(file::read(&path).unwrap(), SUPPLIED[0].setup());
    assert!(!app.state().bench().document().is_changed());
}

#[test]
fn a_file_written_anew_with_the_same_contents_is_no_news() {
    let (mut app, _, _folder, path) = on_file();
    std::fs::write(&path, SUPPLIED[0].text).unwrap();
    away_and_back(&mut app);
    assert!(
        app.query_by_label("car.ron was changed by another program")
            .is_none()
    );
}

#[test]
fn a_save_asks_before_it_writes_over_what_another_program_has_written() {
    let (mut app, script, folder, path) = on_file();
    set_slider(&mut app, "Servo station", 2.0);
    file::write(&path, &theirs()).unwrap();
    command_key(&mut app, Key::S);
    app.get_by_label("The file was changed");
    click(&mut app, "Cancel");
    assert_eq!(file::read(&path).unwrap(), theirs());

    command_key(&mut app, Key::S);
    let elsewhere = folder.path().join("mine.ron");
    script.push(Some(elsewhere.clone()));
    click(&mut app, "Save as\u{2026}");
    assert_eq!(file::read(&elsewhere).unwrap(), *setup(&app));
    assert_eq!(file::read(&path).unwrap(), theirs());

    file::write(&elsewhere, &theirs()).unwrap();
    command_key(&mut app, Key::S);
    click(&mut app, "Write over it");
    assert_eq!(file::read(&elsewhere).unwrap(), *setup(&app));
    assert!(!app.state().bench().document().is_changed());
}

#[test]
fn a_file_that_is_gone_is_written_there_again() {
    let (mut app, _, _folder, path) = on_file();
    std::fs::remove_file(&path).unwrap();
    away_and_back(&mut app);
    app.get_by_label("car.ron is no longer in its place");
    click(&mut app, "Keep the bench's");
    assert!(app.state().bench().document().is_changed());
    command_key(&mut app, Key::S);
    assert_eq!(file::read(&path).unwrap(), *setup(&app));
}

#[test]
fn a_file_that_was_damaged_meanwhile_is_not_taken_over() {
    let (mut app, _, _folder, path) = on_file();
    set_slider(&mut app, "Servo station", 2.0);
    std::fs::write(&path, "Setup(").unwrap();
    away_and_back(&mut app);
    click(&mut app, "Take the file's");
    app.get_by_label("The file was not opened");
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
    assert!(app.state().bench().document().is_changed());
}
