//! The reference: keeping a moment, opening a file as it, swapping, differences.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, adjustment, click, command_key, set_slider, setup, value, window};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use steerloft::state::{Bench, Cursor, Document, Reference, Shown};
use steerloft_setup::setup::{Chosen, Rods};
use steerloft_setup::supplied::SUPPLIED;

fn reference(app: &App) -> &Reference {
    app.state().bench().reference().expect("a reference")
}

fn command_shift(app: &mut App, key: Key) {
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), key);
    app.run();
}

fn station(value: f64) -> Chosen {
    Chosen::Slide(value)
}

/// Makes an open setup the reference, or none, by its button in the line.
fn toggle_reference(app: &mut App, name: &str) {
    app.get_by_role_and_label(Role::CheckBox, &format!("Reference: {name}"))
        .click();
    app.run();
}

#[test]
fn a_moment_stays_as_it_was_and_is_posed_with_the_current_setup() {
    let (mut app, _) = window();
    assert!(app.state().bench().reference().is_none());
    set_slider(&mut app, "Servo station", 1.0);
    let kept = setup(&app).clone();
    click(&mut app, "Keep as reference");
    set_slider(&mut app, "Servo station", 3.0);
    app.get_by_role_and_label(Role::Slider, "Steering input")
        .set_value_accesskit(10.0);
    app.run();
    assert_eq!(*reference(&app).setup(), kept);

    // Posed by a bench of its own, the kept moment stands just there.
    let mut own = Bench::new(Document::unnamed(kept));
    own.set_cursor(app.state().bench().cursor());
    let pose = |shown: Option<&Shown>| shown.unwrap().pose;
    let there = pose(reference(&app).shown());
    let expected = pose(own.derived().shown());
    let ball = |pose: &steerloft_solver::pose::AxlePose| pose.corners.left.wheel_centre;
    assert!((ball(&there) - ball(&expected)).norm() < 1e-6);
    assert_ne!(pose(app.state().bench().derived().shown()), there);
}

#[test]
fn differences_of_adjustments_and_rods_are_marked_and_can_be_taken_over() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 1.0);
    command_key(&mut app, Key::M);
    app.get_by_label("No adjustment differs from the reference");
    set_slider(&mut app, "Servo station", 3.0);
    app.get_by_label("1 adjustment differs from the reference");
    click(&mut app, "Outer rod spacers: less");
    app.get_by_label("2 adjustments differ from the reference");
    click(&mut app, "Servo station: reference 1 mm");
    assert_eq!(value(&app, "Servo station"), station(1.0));
    assert!(
        app.query_by_label("Servo station: reference 1 mm")
            .is_none()
    );
    app.get_by_label("1 adjustment differs from the reference");

    let index = adjustment(&app, "Servo station");
    assert_eq!(reference(&app).setup().value(index), station(1.0));
    app.get_by_role_and_label(Role::RadioButton, "Rods: Length")
        .click_accesskit();
    app.run();
    assert!(matches!(setup(&app).rods, Rods::FixedLength(_)));
    let held = reference(&app).setup().rods;
    let name = format!(
        "Rods: reference {}",
        steerloft::state::rods_in_words(&held, steerloft::units::Units::Millimetres)
    );
    app.get_by_role_and_label(Role::Button, &name)
        .click_accesskit();
    app.run();
    assert_eq!(setup(&app).rods, held);
}

#[test]
fn swapping_with_a_kept_moment_is_a_step_that_can_be_undone() {
    let (mut app, _) = window();
    click(&mut app, "Keep as reference");
    set_slider(&mut app, "Servo station", 3.0);
    let worked_on = setup(&app).clone();
    click(&mut app, "Swap with reference");
    assert_eq!(value(&app, "Servo station"), station(0.0));
    assert_eq!(*reference(&app).setup(), worked_on);
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Swap with reference")
    );
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), worked_on);
    command_key(&mut app, Key::Y);
    command_shift(&mut app, Key::M);
    assert_eq!(*setup(&app), worked_on, "swapping twice leads back");
    assert_eq!(app.state().bench().open_setups().len(), 1);
}

#[test]
fn any_open_setup_can_be_the_reference_and_is_followed() {
    let (mut app, _) = window();
    set_slider(&mut app, "Servo station", 2.0);
    let first = app.state().bench().document().name();
    command_key(&mut app, Key::N);
    app.get_all_by_role_and_label(Role::CheckBox, &format!("Reference: {first}"))
        .next()
        .unwrap()
        .click();
    app.run();
    let index = adjustment(&app, "Servo station");
    assert_eq!(reference(&app).setup().value(index), station(2.0));

    // While it is worked on itself, there is nothing to compare with.
    command_key(&mut app, Key::PageUp);
    assert!(app.state().bench().reference().is_none());
    assert!(app.state().bench().has_reference());
    set_slider(&mut app, "Servo station", 4.0);
    command_key(&mut app, Key::PageDown);
    assert_eq!(reference(&app).setup().value(index), station(4.0));

    click(&mut app, "Swap with reference");
    assert_eq!(value(&app, "Servo station"), station(4.0));
    assert_eq!(reference(&app).setup().value(index), station(0.0));
    click(&mut app, "Clear reference");
    assert!(!app.state().bench().has_reference());
}

#[test]
fn a_file_can_be_opened_as_the_reference() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("other.ron");
    std::fs::write(&path, SUPPLIED[1].text).unwrap();
    let (mut app, script) = window();
    script.push(Some(path));
    command_shift(&mut app, Key::O);
    assert_eq!(app.state().message(), None);
    assert_eq!(*setup(&app), SUPPLIED[0].setup(), "the current one stays");
    assert_eq!(*reference(&app).setup(), SUPPLIED[1].setup());
    assert_eq!(reference(&app).name(), "other.ron");
    toggle_reference(&mut app, "other.ron");
    assert!(app.state().bench().reference().is_none());
    toggle_reference(&mut app, "other.ron");

    click(&mut app, "Close other.ron");
    assert_eq!(
        *reference(&app).setup(),
        SUPPLIED[1].setup(),
        "its last state is kept"
    );
    click(&mut app, "Swap with reference");
    assert_eq!(*setup(&app), SUPPLIED[1].setup());
    assert_eq!(app.state().bench().document().path(), None);
    assert_eq!(*reference(&app).setup(), SUPPLIED[0].setup());
}

#[test]
fn a_damaged_file_is_not_taken_as_the_reference() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("other.ron");
    std::fs::write(&path, "Setup(").unwrap();
    let (mut app, script) = window();
    click(&mut app, "Keep as reference");
    script.push(Some(path));
    command_shift(&mut app, Key::O);
    app.get_by_label("The file was not opened");
    assert_eq!(*reference(&app).setup(), SUPPLIED[0].setup());
}

#[test]
fn a_reference_steered_in_another_unit_stands_straight_ahead() {
    let rack = SUPPLIED
        .iter()
        .position(|car| {
            let unit = |setup: &steerloft_setup::setup::Setup| setup.car.drive.input_unit();
            unit(&car.setup()) != unit(&SUPPLIED[0].setup())
        })
        .expect("a car with a rack is supplied");
    let mut bench = Bench::new(Document::unnamed(SUPPLIED[0].setup()));
    let id = bench.add(Document::unnamed(SUPPLIED[rack].setup()));
    bench.set_reference(id);
    bench.set_cursor(Cursor {
        input: 10.0,
        travel: 0.0,
    });
    let pose = |bench: &Bench| bench.reference().unwrap().shown().unwrap().pose;
    let ahead = pose(&bench);
    bench.set_cursor(Cursor::STATIC);
    assert_eq!(
        pose(&bench),
        ahead,
        "the steering moves the current car only"
    );
    assert!(ahead.input.abs() < f64::EPSILON);
}

#[test]
fn every_pair_of_supplied_cars_can_be_compared_over_the_whole_steering() {
    for car in SUPPLIED {
        let mut bench = Bench::new(Document::unnamed(SUPPLIED[0].setup()));
        let id = bench.add(Document::unnamed(car.setup()));
        bench.set_reference(id);
        let ranges = bench.setup().car.ranges;
        for input in [ranges.input.0, 0.0, ranges.input.1] {
            for travel in [ranges.travel.0, 0.0, ranges.travel.1] {
                bench.set_cursor(Cursor { input, travel });
                let reference = bench.reference().unwrap();
                let shown = reference.shown().expect("supplied cars can be drawn");
                let centre = shown.pose.corners.left.wheel_centre;
                assert!(centre.iter().all(|part| part.is_finite()), "{}", car.title);
            }
        }
    }
}
