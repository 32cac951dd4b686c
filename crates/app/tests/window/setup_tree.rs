//! The drawer with the folder's setups as a tree.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{
    App, SIZE, click, command_key, pan_car, set_slider, setup, wait_while, window, window_on,
};
use eframe::egui::Key;
use egui_kittest::kittest::Queryable;
use steerloft::dialogs::ScriptedAnswers;
use steerloft::state::Document;
use steerloft_setup::file::write;
use steerloft_setup::setup::{Chosen, Felt, Run};

fn wait(app: &mut App) {
    wait_while(app, |app| app.view().drawers.setup_tree.is_working());
}

/// A window on the first of two setups of a folder, the second made from it.
fn opened(folder: &std::path::Path) -> (App, ScriptedAnswers) {
    let mut base = pan_car();
    "Base".clone_into(&mut base.record.name);
    base.give_id();
    let mut second = base.child("More spacers");
    let adjustments = &second.car.adjustments;
    let index = adjustments
        .iter()
        .position(|one| one.name == "Outer rod spacers");
    second.set(index.unwrap(), Chosen::Stack(4.0)).unwrap();
    second.record.runs.push(Run {
        felt: Felt {
            entry: "Pushes wide".to_owned(),
            ..Felt::default()
        },
        ..Run::default()
    });
    let path = folder.join("base.ron");
    write(&path, &base).unwrap();
    write(&folder.join("second.ron"), &second).unwrap();
    let (mut app, script) = window_on(Document::read(&path).unwrap(), SIZE);
    click(&mut app, "Drawer: Setup tree");
    wait(&mut app);
    (app, script)
}

#[test]
fn the_tree_tells_the_differences_and_opens_a_setup() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, _) = opened(folder.path());
    let rows = app.state().view().drawers.setup_tree.tree().unwrap().rows();
    let depths: Vec<usize> = rows.iter().map(|row| row.depth).collect();
    assert_eq!(depths, [0, 1]);
    app.get_by_label_contains("Outer rod spacers: from 3 mm to 4 mm");
    click(&mut app, "Open second.ron");
    assert_eq!(setup(&app).record.name, "More spacers");
    assert_eq!(app.state().bench().open_setups().len(), 2);
}

#[test]
fn a_search_shows_the_place_of_the_words() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, _) = opened(folder.path());
    app.get_by_label("Search the setups").click();
    app.run();
    app.get_by_label("Search the setups").type_text("pushes");
    app.run();
    app.get_by_label_contains("run 1, felt at entry: Pushes wide");
    assert!(app.query_by_label("Open base.ron").is_none());
}

#[test]
fn a_new_setup_remembers_the_one_it_was_made_from_and_stands_under_it() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, script) = opened(folder.path());
    let parent = setup(&app).record.id.clone();
    click(&mut app, "New setup from this one");
    assert_eq!(app.state().bench().open_setups().len(), 2);
    let record = &setup(&app).record;
    assert_eq!(record.name, "Base 2");
    assert_eq!(record.parent.as_ref().unwrap().id, parent);
    assert!(record.runs.is_empty());
    set_slider(&mut app, "Servo station", 2.0);
    script.push(Some(folder.path().join("third.ron")));
    command_key(&mut app, Key::S);
    wait(&mut app);
    let tree = app.state().view().drawers.setup_tree.tree().unwrap();
    let third = tree
        .rows()
        .iter()
        .find(|row| row.file_name() == "third.ron")
        .unwrap();
    assert_eq!(third.depth, 1);
    assert!(third.changes[0].starts_with("Servo station"), "{third:?}");
}

#[test]
fn a_setup_without_an_identity_is_given_one_as_a_step() {
    let (mut app, _) = window();
    click(&mut app, "Drawer: Setup tree");
    app.get_by_label_contains("This setup is in no file yet");
    click(&mut app, "New setup from this one");
    let parent = setup(&app).record.parent.clone().unwrap();
    command_key(&mut app, Key::PageUp);
    assert_eq!(setup(&app).record.id, parent.id);
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Record: identity given")
    );
}
