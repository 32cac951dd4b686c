//! Several setups open at a time.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, command_key, drag_and_drop, handle, set_slider, value, window};
use eframe::egui::accesskit::Role;
use eframe::egui::{self, Key, vec2};
use egui_kittest::kittest::Queryable;
use steerloft::state::{Cursor, OpenSetup};
use steerloft_setup::setup::Chosen;
use steerloft_setup::supplied::SUPPLIED;

/// Names in the line of open setups.
fn names(app: &App) -> Vec<String> {
    let open = app.state().bench().open_setups().iter();
    open.map(|open| open.document().name()).collect()
}

/// Clicks a setup in the line.
fn go_to(app: &mut App, name: &str) {
    app.get_by_role_and_label(Role::Tab, &format!("Setup: {name}"))
        .click();
    app.run();
}

/// A window with two supplied cars in files of their own, the second one in front.
fn two_files(folder: &std::path::Path) -> App {
    let (mut app, script) = window();
    for (car, name) in SUPPLIED.iter().zip(["one.ron", "two.ron"]) {
        let path = folder.join(name);
        std::fs::write(&path, car.text).unwrap();
        script.push(Some(path));
        command_key(&mut app, Key::O);
    }
    app
}

#[test]
fn the_setup_nobody_asked_for_makes_room_for_the_first_file() {
    let folder = tempfile::tempdir().unwrap();
    let app = two_files(folder.path());
    assert_eq!(names(&app), ["one.ron", "two.ron"]);
}

#[test]
fn a_setup_that_was_worked_on_stays_beside_the_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("one.ron");
    std::fs::write(&path, SUPPLIED[1].text).unwrap();
    let (mut app, script) = window();
    set_slider(&mut app, "Servo station", 2.0);
    script.push(Some(path));
    command_key(&mut app, Key::O);
    assert_eq!(app.state().bench().open_setups().len(), 2);
    assert!(!app.state().is_asking_to_save());
}

#[test]
fn each_setup_has_a_history_a_cursor_and_a_selection_of_its_own() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 2.0);
    let cursor = Cursor {
        input: 12.0,
        travel: 0.0,
    };
    app.state_mut().bench_mut().set_cursor(cursor);
    app.run();
    let at = handle(&app, "Steering drive axis (top view)");
    drag_and_drop(&mut app, at, vec2(0.0, -30.0));
    let (moved, selected) = (value(&app, "Servo station"), app.state().bench().selected());
    assert!(selected.is_some());
    assert_ne!(moved, Chosen::Slide(2.0));

    command_key(&mut app, Key::N);
    assert_eq!(app.state().bench().cursor(), Cursor::STATIC);
    assert_eq!(app.state().bench().selected(), None);
    assert_eq!(app.state().bench().undo_label(), None);
    command_key(&mut app, Key::Z);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(0.0));

    command_key(&mut app, Key::PageUp);
    assert_eq!(app.state().bench().cursor(), cursor);
    assert_eq!(app.state().bench().selected(), selected);
    assert_eq!(value(&app, "Servo station"), moved);
    command_key(&mut app, Key::Z);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
}

#[test]
fn the_line_switches_and_marks_what_is_changed() {
    let folder = tempfile::tempdir().unwrap();
    let mut app = two_files(folder.path());
    go_to(&mut app, "one.ron");
    assert_eq!(app.state().bench().document().name(), "one.ron");
    set_slider(&mut app, "Servo station", 1.0);
    let changed: Vec<bool> = app
        .state()
        .bench()
        .open_setups()
        .iter()
        .map(|open| open.document().is_changed())
        .collect();
    assert_eq!(changed, [true, false]);
    go_to(&mut app, "two.ron");
    assert_eq!(app.state().bench().document().name(), "two.ron");
    command_key(&mut app, Key::PageDown);
    assert_eq!(
        app.state().bench().document().name(),
        "one.ron",
        "round the end"
    );
}

#[test]
fn a_file_that_is_open_is_gone_to_not_opened_twice() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, script) = window();
    let path = folder.path().join("one.ron");
    std::fs::write(&path, SUPPLIED[0].text).unwrap();
    for _ in 0..2 {
        script.push(Some(path.clone()));
        command_key(&mut app, Key::O);
        command_key(&mut app, Key::N);
    }
    assert_eq!(
        names(&app).iter().filter(|name| *name == "one.ron").count(),
        1
    );
}

#[test]
fn a_file_is_known_however_its_path_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("one.ron");
    std::fs::write(&path, SUPPLIED[0].text).unwrap();
    let mut ways = vec![
        path.clone(),
        folder.path().join(".").join("one.ron"),
        path_from_here(&path),
    ];
    #[cfg(unix)]
    {
        let link = folder.path().join("link.ron");
        std::os::unix::fs::symlink(&path, &link).unwrap();
        ways.push(link);
    }
    let (mut app, script) = window();
    for way in ways {
        script.push(Some(way));
        command_key(&mut app, Key::O);
        assert_eq!(names(&app), ["one.ron"]);
    }
    std::fs::remove_file(&path).unwrap();
    let bench = app.state().bench();
    assert!(bench.in_file(&path).is_some(), "the file is gone");
    assert!(bench.in_file(&folder.path().join("two.ron")).is_none());
}

/// A path as it is told from the folder that the program runs in.
fn path_from_here(path: &std::path::Path) -> std::path::PathBuf {
    let here = std::env::current_dir().unwrap();
    let up = here.components().skip(1).map(|_| "..");
    let mut from_here: std::path::PathBuf = up.collect();
    from_here.extend(path.components().skip(1));
    from_here
}

#[test]
fn the_button_in_the_line_closes_and_the_last_setup_makes_way_for_a_supplied_car() {
    let folder = tempfile::tempdir().unwrap();
    let mut app = two_files(folder.path());
    click(&mut app, "Close one.ron");
    assert_eq!(names(&app), ["two.ron"]);
    command_key(&mut app, Key::W);
    assert_eq!(app.state().bench().open_setups().len(), 1);
    assert_eq!(*app.state().bench().setup(), SUPPLIED[0].setup());
}

#[test]
fn closing_the_window_asks_about_each_changed_setup() {
    let (mut app, _) = window();
    let close = |app: &mut App| {
        let viewport = egui::ViewportId::ROOT;
        let info = app.input_mut().viewports.entry(viewport).or_default();
        info.events.push(egui::ViewportEvent::Close);
        app.step();
        let commands = &app.output().viewport_output[&viewport].commands;
        let stays = commands.contains(&egui::ViewportCommand::CancelClose);
        app.run();
        stays
    };
    set_slider(&mut app, "Servo station", 2.0);
    command_key(&mut app, Key::N);
    set_slider(&mut app, "Servo station", 3.0);
    assert!(close(&mut app));
    assert_eq!(
        value(&app, "Servo station"),
        Chosen::Slide(2.0),
        "the first in the line"
    );
    click(&mut app, "Discard");
    assert!(
        app.state().is_asking_to_save(),
        "the other one is asked about too"
    );
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(3.0));
    click(&mut app, "Cancel");
    let changed = |open: &OpenSetup| open.document().is_changed();
    assert!(
        app.state().bench().open_setups().iter().all(changed),
        "nothing was let go"
    );
    assert!(close(&mut app), "after Cancel everything is asked again");
    click(&mut app, "Discard");
    click(&mut app, "Discard");
    assert!(!close(&mut app), "the window goes");
}

#[test]
fn the_bench_says_when_it_is_full() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 2.0);
    for _ in 0..40 {
        command_key(&mut app, Key::N);
    }
    assert_eq!(app.state().bench().open_setups().len(), 24);
    app.get_by_label("The bench is full");
}
