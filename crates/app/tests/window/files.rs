//! Opening and saving, and keeping unsaved work.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::common::{App, SIZE, click, command_key, set_slider, setup, value, window, window_on};
use eframe::egui::{self, Key, Modifiers};
use egui_kittest::kittest::Queryable;
use steerloft::dialogs::{FileRequest, ScriptedAnswers};
use steerloft::state::Document;
use steerloft_setup::setup::Chosen;
use steerloft_setup::supplied::SUPPLIED;

/// Saves the open setup as a new file through the dialog.
fn save_as(app: &mut App, script: &ScriptedAnswers, path: &Path) {
    script.push(Some(path.to_owned()));
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::S);
    app.run();
}

/// Opens a file through the dialog.
fn open(app: &mut App, script: &ScriptedAnswers, path: &Path) {
    script.push(Some(path.to_owned()));
    command_key(app, Key::O);
}

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().unwrap()
}

#[test]
fn what_is_saved_opens_again_the_same() {
    let folder = folder();
    let path = folder.path().join("carpet.ron");
    let (mut app, script) = window();
    set_slider(&mut app, "Servo station", 2.0);
    click(&mut app, "Outer rod spacers: less");
    save_as(&mut app, &script, &path);
    assert_eq!(app.state().message(), None);
    assert!(!app.state().bench().document().is_changed());
    assert_eq!(app.state().bench().document().path(), Some(path.as_path()));
    let saved = setup(&app).clone();

    let (mut other, script) = window();
    open(&mut other, &script, &path);
    assert_eq!(*setup(&other), saved);
    assert_eq!(
        other.state().bench().derived().shown().unwrap().figures,
        app.state().bench().derived().shown().unwrap().figures
    );
}

#[test]
fn save_goes_to_the_same_file_without_asking() {
    let folder = folder();
    let path = folder.path().join("carpet.ron");
    let (mut app, script) = window();
    save_as(&mut app, &script, &path);
    set_slider(&mut app, "Servo station", 1.0);
    command_key(&mut app, Key::S);
    assert_eq!(script.asked().len(), 1);
    let read = Document::read(&path).unwrap();
    assert_eq!(read.setup(), setup(&app));
}

#[test]
fn the_file_of_another_open_setup_is_not_written_over() {
    let folder = folder();
    let (first, second) = (
        folder.path().join("carpet.ron"),
        folder.path().join("wet.ron"),
    );
    let (mut app, script) = window();
    save_as(&mut app, &script, &first);
    let kept = std::fs::read(&first).unwrap();
    app.state_mut()
        .bench_mut()
        .open(Document::unnamed(SUPPLIED[1].setup()));
    save_as(&mut app, &script, &first);
    let message = app.state().message().unwrap();
    assert!(message.detail.contains("carpet.ron"), "{}", message.detail);
    assert_eq!(std::fs::read(&first).unwrap(), kept);
    assert_eq!(app.state().bench().document().path(), None);
    save_as(&mut app, &script, &second);
    assert_eq!(
        app.state().bench().document().path(),
        Some(second.as_path())
    );
    // Its own file may be chosen again.
    save_as(&mut app, &script, &second);
    assert_eq!(app.state().message(), None);
}

#[test]
fn the_dialog_suggests_a_name_and_the_folder_of_the_file() {
    let folder = folder();
    let path = folder.path().join("carpet.ron");
    let (mut app, script) = window();
    save_as(&mut app, &script, &path);
    command_key(&mut app, Key::O);
    let asked = script.asked();
    assert!(matches!(&asked[0], FileRequest::Save { name, .. } if name == "Base-setup.ron"));
    assert_eq!(
        asked[1],
        FileRequest::Open {
            folder: Some(folder.path().to_owned())
        }
    );
}

#[test]
fn a_closed_dialog_changes_nothing() {
    let (mut app, script) = window();
    set_slider(&mut app, "Servo station", 2.0);
    let before = setup(&app).clone();
    script.push(None);
    command_key(&mut app, Key::S);
    assert_eq!(*setup(&app), before);
    assert!(app.state().bench().document().is_changed());
}

#[test]
fn unsaved_changes_are_asked_about_before_a_setup_is_closed() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 2.0);
    command_key(&mut app, Key::W);
    assert!(app.state().is_asking_to_save());
    click(&mut app, "Cancel");
    assert_eq!(
        value(&app, "Servo station"),
        Chosen::Slide(2.0),
        "Cancel stays"
    );
    command_key(&mut app, Key::W);
    click(&mut app, "Discard");
    assert!(setup(&app).chosen.is_empty(), "Discard goes on");
    assert!(!app.state().is_asking_to_save());
}

#[test]
fn saving_in_answer_to_the_question_goes_on_afterwards() {
    let folder = folder();
    let path = folder.path().join("kept.ron");
    let (mut app, script) = window();
    set_slider(&mut app, "Servo station", 2.0);
    command_key(&mut app, Key::W);
    script.push(Some(path.clone()));
    click(&mut app, "Save");
    assert!(setup(&app).chosen.is_empty(), "it is off the bench");
    let kept = Document::read(&path).unwrap();
    assert_eq!(
        kept.setup().chosen.get("Servo station"),
        Some(&Chosen::Slide(2.0))
    );
}

#[test]
fn a_new_setup_comes_beside_the_others_and_nothing_is_asked() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 2.0);
    command_key(&mut app, Key::N);
    assert!(!app.state().is_asking_to_save());
    assert!(setup(&app).chosen.is_empty());
    command_key(&mut app, Key::PageUp);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
}

#[test]
fn without_changes_nothing_is_asked() {
    let (mut app, _) = window();
    command_key(&mut app, Key::N);
    assert!(!app.state().is_asking_to_save());
}

#[test]
fn another_supplied_car_comes_from_the_menu() {
    let (mut app, _) = window();
    app.get_by_label("File").click();
    app.run();
    app.get_by_label_contains("New from supplied car").click();
    app.run();
    app.get_by_label_contains(SUPPLIED[1].title).click();
    app.run();
    assert_eq!(*setup(&app), SUPPLIED[1].setup());
}

#[test]
fn closing_the_window_asks_about_unsaved_changes() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 2.0);
    let close = |app: &mut App| {
        let viewport = egui::ViewportId::ROOT;
        let info = app.input_mut().viewports.entry(viewport).or_default();
        info.events.push(egui::ViewportEvent::Close);
        app.step();
        let commands = &app.output().viewport_output[&viewport].commands;
        commands.contains(&egui::ViewportCommand::CancelClose)
    };
    assert!(close(&mut app), "the window stays");
    assert!(app.state().is_asking_to_save());
    app.run();
    click(&mut app, "Discard");
    assert!(!close(&mut app), "the window goes");
}

#[test]
fn a_damaged_file_leaves_the_open_setup_and_its_changes() {
    let folder = folder();
    let path = folder.path().join("damaged.ron");
    let text = SUPPLIED[0]
        .text
        .replacen("wheelbase: ", "wheelbase: about ", 1);
    std::fs::write(&path, text).unwrap();
    let (mut app, script) = window();
    set_slider(&mut app, "Servo station", 2.0);
    let before = setup(&app).clone();
    open(&mut app, &script, &path);
    assert_eq!(*setup(&app), before);
    assert!(app.state().bench().document().is_changed());
    let message = app.state().message().expect("it says why").clone();
    assert!(
        message.detail.contains("damaged.ron:"),
        "file and line are named: {}",
        message.detail
    );
    app.get_by_label("The file was not opened");
    click(&mut app, "Dismiss");
    assert_eq!(app.state().message(), None);
}

#[test]
fn a_save_that_fails_keeps_the_work_and_says_so() {
    let (mut app, script) = window();
    set_slider(&mut app, "Servo station", 2.0);
    let before = setup(&app).clone();
    let nowhere = PathBuf::from("/nonexistent-folder/carpet.ron");
    save_as(&mut app, &script, &nowhere);
    assert_eq!(*setup(&app), before);
    assert!(app.state().bench().document().is_changed());
    assert!(app.state().bench().document().path().is_none());
    app.get_by_label("The setup was not saved");
}

/// A file as the desktop hands it over when it is dropped on a window.
#[derive(Debug)]
struct Dropped(PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|error| error.to_string())
    }
}

#[test]
fn a_file_dropped_on_the_window_is_opened() {
    let folder = folder();
    let path = folder.path().join("sliding.ron");
    std::fs::write(&path, SUPPLIED[1].text).unwrap();
    let (mut app, _) = window();
    app.input_mut().hovered_files = vec![egui::HoveredFile {
        path: Some(path.clone()),
        ..egui::HoveredFile::default()
    }];
    app.run_steps(2);
    app.input_mut().hovered_files.clear();
    app.input_mut().dropped_files = vec![Arc::new(Dropped(path.clone()))];
    app.run();
    assert_eq!(app.state().bench().document().path(), Some(path.as_path()));
    assert_eq!(*setup(&app), SUPPLIED[1].setup());
}

#[test]
fn of_several_files_dropped_at_once_the_first_is_in_front_and_missing_ones_are_told() {
    let folder = folder();
    let paths = [0, 1, 2].map(|index| {
        let path = folder.path().join(SUPPLIED[index].file_name);
        std::fs::write(&path, SUPPLIED[index].text).unwrap();
        path
    });
    let (mut app, _) = window();
    let missing = ["gone.ron", "gone_too.ron"].map(|name| folder.path().join(name));
    let dropped = paths.iter().chain(&missing).cloned();
    app.input_mut().dropped_files = dropped.map(|path| Arc::new(Dropped(path)) as _).collect();
    app.run();
    let bench = app.state().bench();
    let open = |path: &PathBuf| bench.in_file(path).is_some();
    assert!(paths.iter().all(open));
    assert_eq!(bench.document().path(), Some(paths[0].as_path()));
    let message = app.state().message().unwrap();
    assert_eq!(message.title, "2 files were not opened");
    assert!(message.detail.contains("gone.ron"), "{message:?}");
    assert!(message.detail.contains("gone_too.ron"), "{message:?}");
}

#[test]
fn a_foreign_file_dropped_on_the_window_is_refused() {
    let folder = folder();
    let path = folder.path().join("picture.png");
    std::fs::write(&path, [0x89, b'P', b'N', b'G', 0xff, 0xfe]).unwrap();
    let (mut app, _) = window_on(Document::unnamed(crate::common::pan_car()), SIZE);
    app.input_mut().dropped_files = vec![Arc::new(Dropped(path))];
    app.run();
    assert!(
        app.state()
            .message()
            .is_some_and(|message| message.detail.contains("picture.png"))
    );
    assert_eq!(*setup(&app), crate::common::pan_car());
}
