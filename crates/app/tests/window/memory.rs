//! What is remembered from one start to the next. Dropping a window without closing it stands for the end of its process.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;
use std::time::Duration;

use crate::common::{App, SIZE, click, command_key, pan_car, set_slider, setup, value};
use eframe::egui::{Key, Modifiers, Theme};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use steerloft::app::Steerloft;
use steerloft::commands::Command;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::memory::{Memory, Places};
use steerloft::state::{CurveKind, Document, Overlay};
use steerloft::theme::ThemeChoice;
use steerloft::ui::Column;
use steerloft::units::Units;
use steerloft_setup::file;
use steerloft_setup::setup::Chosen;
use steerloft_setup::supplied::SUPPLIED;

/// A window that remembers in a folder.
fn start(folder: &Path) -> (App, ScriptedAnswers) {
    let script = ScriptedAnswers::default();
    let dialogs = Box::new(ScriptedDialogs::new(script.clone()));
    let memory = Memory::at(Places::within(folder));
    let mut app = Harness::builder()
        .with_size(SIZE)
        .with_theme(Theme::Light)
        .with_max_steps(12)
        .build_eframe(move |context| {
            let ctx = &context.egui_ctx;
            let document = Document::unnamed(pan_car());
            Steerloft::new(ctx, document, dialogs, ThemeChoice::Light).remember(
                memory,
                Duration::ZERO,
                ctx,
            )
        });
    app.run();
    (app, script)
}

/// Ends the process of a window without warning, all that it was about to write being written.
fn crash(app: App) {
    drop(app);
}

fn command(app: &mut App, command: Command) {
    let ctx = app.ctx.clone();
    let window = eframe::Frame::_new_kittest();
    app.state_mut().command(command, &ctx, &window);
    app.run();
}

fn left(app: &App) -> usize {
    let runs = app.state().left_behind().iter();
    runs.map(|run| run.works.len()).sum()
}

#[test]
fn unsaved_work_comes_back_after_a_crash() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, _) = start(folder.path());
    assert_eq!(left(&app), 0);
    set_slider(&mut app, "Servo station", 2.0);
    command_key(&mut app, Key::N);
    set_slider(&mut app, "Servo station", 3.0);
    let worked_on = setup(&app).clone();
    crash(app);

    let (mut app, _) = start(folder.path());
    app.get_by_label("Unsaved work was left");
    assert_eq!(left(&app), 2);
    assert_eq!(*setup(&app), pan_car(), "nothing comes back unasked");
    let second = app
        .get_all_by_label("Open what was left of Base setup")
        .nth(1)
        .unwrap();
    second.click();
    app.run();
    assert_eq!(*setup(&app), worked_on);
    assert!(app.state().bench().document().is_changed());
    assert_eq!(left(&app), 1);
    crash(app);

    // What was taken back is kept by the new run; what was not is still there.
    let (mut app, _) = start(folder.path());
    assert_eq!(left(&app), 2);
    click(&mut app, "Later");
    assert_eq!(left(&app), 0);
    crash(app);
    let (mut app, _) = start(folder.path());
    assert_eq!(left(&app), 2);
    for _ in 0..2 {
        app.get_all_by_label("Discard what was left of Base setup")
            .next()
            .unwrap()
            .click();
        app.run();
    }
    crash(app);
    let (app, _) = start(folder.path());
    assert_eq!(left(&app), 0);
}

#[test]
fn work_that_is_saved_undone_or_let_go_is_not_offered() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("car.ron");
    let (mut app, script) = start(folder.path());
    set_slider(&mut app, "Servo station", 2.0);
    script.push(Some(path.clone()));
    command_key(&mut app, Key::S);
    assert!(path.exists());
    set_slider(&mut app, "Servo station", 4.0);
    command_key(&mut app, Key::Z);
    command_key(&mut app, Key::N);
    set_slider(&mut app, "Servo station", 3.0);
    command_key(&mut app, Key::W);
    click(&mut app, "Discard");
    crash(app);
    let (mut app, _) = start(folder.path());
    assert_eq!(left(&app), 0);

    set_slider(&mut app, "Servo station", 1.0);
    command_key(&mut app, Key::Q);
    click(&mut app, "Discard");
    drop(app);
    let (app, _) = start(folder.path());
    assert_eq!(left(&app), 0, "the user closed the window and let it go");
}

#[test]
fn the_users_file_is_not_touched_by_what_comes_back() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("car.ron");
    std::fs::write(&path, SUPPLIED[0].text).unwrap();
    let (mut app, script) = start(folder.path());
    script.push(Some(path.clone()));
    command_key(&mut app, Key::O);
    set_slider(&mut app, "Servo station", 2.0);
    let worked_on = setup(&app).clone();
    crash(app);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), SUPPLIED[0].text);

    let (mut app, _) = start(folder.path());
    click(&mut app, "Open what was left of car.ron");
    assert_eq!(*setup(&app), worked_on);
    assert_eq!(app.state().bench().document().path(), Some(path.as_path()));
    assert_eq!(std::fs::read_to_string(&path).unwrap(), SUPPLIED[0].text);
    command_key(&mut app, Key::S);
    assert_eq!(file::read(&path).unwrap(), worked_on);
    assert!(!app.state().bench().document().is_changed());
}

#[test]
fn work_comes_back_in_the_place_of_its_file_unless_something_was_done_there() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("car.ron");
    std::fs::write(&path, SUPPLIED[0].text).unwrap();
    let open_file = |app: &mut App, script: &ScriptedAnswers| {
        script.push(Some(path.clone()));
        command_key(app, Key::O);
    };
    let (mut app, script) = start(folder.path());
    open_file(&mut app, &script);
    set_slider(&mut app, "Servo station", 2.0);
    let worked_on = setup(&app).clone();
    crash(app);

    let (mut app, script) = start(folder.path());
    open_file(&mut app, &script);
    assert_eq!(*setup(&app), pan_car());
    click(&mut app, "Open what was left of car.ron");
    assert_eq!(*setup(&app), worked_on);
    assert_eq!(app.state().bench().open_setups().len(), 1);
    crash(app);

    let (mut app, script) = start(folder.path());
    open_file(&mut app, &script);
    set_slider(&mut app, "Servo station", 3.0);
    click(&mut app, "Open what was left of car.ron");
    assert_eq!(*setup(&app), worked_on);
    let open = app.state().bench().open_setups().len();
    assert_eq!(open, 2, "both were worked on");
}

#[test]
fn work_comes_back_although_its_file_is_gone() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("car.ron");
    std::fs::write(&path, SUPPLIED[0].text).unwrap();
    let (mut app, script) = start(folder.path());
    script.push(Some(path.clone()));
    command_key(&mut app, Key::O);
    set_slider(&mut app, "Servo station", 2.0);
    crash(app);
    std::fs::remove_file(&path).unwrap();
    let (mut app, _) = start(folder.path());
    click(&mut app, "Open what was left of car.ron");
    assert!(app.state().bench().document().is_changed());
    command_key(&mut app, Key::S);
    assert_eq!(file::read(&path).unwrap(), *setup(&app));
}

#[test]
fn damaged_work_is_told_and_stays() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, _) = start(folder.path());
    set_slider(&mut app, "Servo station", 2.0);
    crash(app);
    let (app, _) = start(folder.path());
    let path = app.state().left_behind()[0].works[0].path.clone();
    drop(app);
    std::fs::write(&path, "Setup(format: 1, car").unwrap();
    let (app, _) = start(folder.path());
    app.get_by_label_contains("cannot be read");
    assert!(path.exists());
}

#[test]
fn two_windows_at_a_time_leave_each_others_work_alone() {
    let folder = tempfile::tempdir().unwrap();
    let (mut one, _) = start(folder.path());
    set_slider(&mut one, "Servo station", 2.0);
    let (mut other, _) = start(folder.path());
    assert_eq!(left(&other), 0, "the first one is still there");
    set_slider(&mut other, "Servo station", 3.0);
    crash(one);
    crash(other);
    let (app, _) = start(folder.path());
    assert_eq!(left(&app), 2);
}

#[test]
fn theme_and_layout_are_as_they_were() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, _) = start(folder.path());
    for one in [
        Command::Theme(ThemeChoice::Dark),
        Command::SideView,
        Command::Show(Overlay::Envelope),
        Command::Units(Units::Inches),
        Command::Larger,
        Command::Curve(CurveKind::ToeTravel),
        Command::FitCurves,
        Command::Column(Column::Figures),
    ] {
        command(&mut app, one);
    }
    let curves = app.state().view().curves.clone();
    let (preferences, switches) = {
        let view = app.state().view();
        (view.preferences, view.views.switches())
    };
    drop(app);
    let (app, _) = start(folder.path());
    assert_eq!(app.state().theme(), ThemeChoice::Dark);
    let view = app.state().view();
    assert_eq!(view.column, Column::Figures);
    assert_eq!(view.curves, curves);
    assert!(!view.curves.has(CurveKind::ToeTravel) && view.curves.fitted);
    assert!(view.views.has_side());
    assert_eq!(view.views.switches(), switches);
    assert_eq!(view.preferences, preferences);
    assert_eq!(preferences.units, Units::Inches);
}

#[test]
fn panels_are_as_wide_as_they_were() {
    let folder = tempfile::tempdir().unwrap();
    let settings = folder.path().join("settings.ron");
    let widths = "(layout: (adjustments_width: Some(350.0), results_width: Some(300.0)))";
    std::fs::write(&settings, widths).unwrap();
    for _ in 0..2 {
        let (app, _) = start(folder.path());
        let widths = app.state().view().widths;
        assert_eq!(widths.adjustments, Some(350.0));
        assert_eq!(widths.results, Some(300.0));
    }
    std::fs::write(&settings, "(layout: (adjustments_width: Some(NaN)))").unwrap();
    let (app, _) = start(folder.path());
    let width = app.state().view().widths.adjustments;
    assert!(width.is_some_and(f32::is_finite), "{width:?}");
}

#[test]
fn files_used_last_are_listed_and_open() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, script) = start(folder.path());
    for (name, car) in ["one.ron", "two.ron"].into_iter().zip(SUPPLIED) {
        let path = folder.path().join(name);
        std::fs::write(&path, car.text).unwrap();
        script.push(Some(path));
        command_key(&mut app, Key::O);
    }
    script.push(Some(folder.path().join("three.ron")));
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::S);
    app.run();
    drop(app);

    let (mut app, _) = start(folder.path());
    let names: Vec<_> = app
        .state()
        .recent_files()
        .iter()
        .map(|path| Path::new(path).file_name().unwrap().to_owned())
        .collect();
    assert_eq!(names, ["three.ron", "two.ron", "one.ron"]);
    app.get_by_label("File").click();
    app.run();
    app.get_by_label_contains("Open recent").click();
    app.run();
    app.get_by_label_contains("one.ron").click();
    app.run();
    assert_eq!(app.state().bench().document().name(), "one.ron");
    assert_eq!(*setup(&app), SUPPLIED[0].setup());
}

#[test]
fn damaged_settings_are_set_aside_and_said() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("settings.ron"), "(theme: Some(").unwrap();
    let (mut app, _) = start(folder.path());
    app.get_by_label("About what is remembered");
    assert!(folder.path().join("settings-damaged.ron").exists());
    click(&mut app, "Dismiss");
    drop(app);
    let (app, _) = start(folder.path());
    assert_eq!(app.state().message(), None);
}

#[test]
fn without_a_place_to_remember_the_window_works_and_says_so_once() {
    let folder = tempfile::tempdir().unwrap();
    let blocked = folder.path().join("a file");
    std::fs::write(&blocked, "").unwrap();
    let (mut app, script) = start(&blocked.join("under"));
    let message = app.state().message().expect("it says so");
    assert!(
        message.detail.contains("Nothing is remembered"),
        "{}",
        message.detail
    );
    click(&mut app, "Dismiss");
    set_slider(&mut app, "Servo station", 2.0);
    assert_eq!(app.state().message(), None, "once");
    let path = folder.path().join("car.ron");
    script.push(Some(path.clone()));
    command_key(&mut app, Key::S);
    assert_eq!(file::read(&path).unwrap(), *setup(&app));
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
}

#[test]
fn a_place_that_vanishes_is_said_and_the_work_stays_in_the_window() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("place");
    let (mut app, _) = start(&place);
    std::fs::remove_dir_all(&place).unwrap();
    set_slider(&mut app, "Servo station", 2.0);
    let ctx = app.ctx.clone();
    app.state_mut().flush_memory(&ctx);
    app.run();
    let message = app.state().message().expect("it says so");
    assert!(
        message.detail.contains("Unsaved work is not kept"),
        "{}",
        message.detail
    );
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
}
