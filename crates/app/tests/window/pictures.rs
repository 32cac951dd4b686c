//! Pictures of whole screens, compared with those kept beside this test.
//!
//! Drawing them takes a graphics adapter; a software one does. Where there is none the test says so and passes, unless
//! `STEERLOFT_REQUIRE_RENDER=1` asks for pictures at all events. `UPDATE_SNAPSHOTS=1` keeps new ones.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stderr)]

mod states;

use std::panic::catch_unwind;

use crate::common::{App, SIZE, adjustment, pan_car, wait_while};
use eframe::egui::{Context, Key, Modifiers, Theme, Vec2, vec2};
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use steerloft::app::Steerloft;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::state::{Change, Cursor, Document};
use steerloft::theme::ThemeChoice;
use steerloft::ui::{Column, Drawer};
use steerloft_setup::setup::{Chosen, Rods, Setup};
use steerloft_setup::supplied::SUPPLIED;

/// Pixels that may differ: rasterisers disagree about the edges of thin lines.
const MOST_FAILED_PIXELS: usize = 400;

/// The smallest window in which everything has to find its place, points.
const SMALL: Vec2 = vec2(1024.0, 700.0);

/// Most frames until a window stands still.
const MOST_STEPS: u64 = 20;

/// Whether anything can be drawn on this machine.
fn can_draw() -> bool {
    let drawn = catch_unwind(|| {
        let mut probe = Harness::builder()
            .with_size(vec2(16.0, 16.0))
            .wgpu()
            .build_ui(|_| {});
        probe.render().is_ok()
    });
    let can = drawn.unwrap_or(false);
    let required = std::env::var_os("STEERLOFT_REQUIRE_RENDER").is_some_and(|value| value == "1");
    assert!(
        can || !required,
        "no graphics adapter draws on this machine"
    );
    if !can {
        eprintln!("No graphics adapter: pictures are not compared.");
    }
    can
}

fn picture(name: &str, theme: ThemeChoice, arrange: impl FnOnce(&mut Steerloft)) {
    let mut results = SnapshotResults::new();
    picture_of(&mut results, pan_car(), name, (theme, SIZE), |app| {
        arrange(app.state_mut());
    });
}

/// Both shades, with what they are called in names of pictures.
const SHADES: [(ThemeChoice, &str); 2] =
    [(ThemeChoice::Light, "light"), (ThemeChoice::Dark, "dark")];

/// Both shades of a state of the pan car, in the smallest window that has to do.
fn small_pictures(name: &str, arrange: impl Fn(&mut App)) {
    let mut results = SnapshotResults::new();
    for (theme, shade) in SHADES {
        let name = format!("{name}-{shade}");
        picture_of(&mut results, pan_car(), &name, (theme, SMALL), &arrange);
    }
}

fn picture_of(
    results: &mut SnapshotResults,
    setup: Setup,
    name: &str,
    (theme, size): (ThemeChoice, Vec2),
    arrange: impl FnOnce(&mut App),
) {
    let look = Look {
        theme,
        size,
        scale: 1.0,
    };
    let make = move |ctx: &Context| {
        let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
        Steerloft::new(ctx, Document::unnamed(setup), dialogs, theme)
    };
    picture_as(results, name, look, make, arrange);
}

/// How a window looks before anything is done in it.
#[derive(Debug, Clone, Copy)]
struct Look {
    theme: ThemeChoice,
    /// Its size, points.
    size: Vec2,
    /// Pixels of the screen for a point.
    scale: f32,
}

fn picture_as(
    results: &mut SnapshotResults,
    name: &str,
    look: Look,
    make: impl FnOnce(&Context) -> Steerloft,
    arrange: impl FnOnce(&mut App),
) {
    if !can_draw() {
        return;
    }
    let shade = if look.theme == ThemeChoice::Dark {
        Theme::Dark
    } else {
        Theme::Light
    };
    let options = SnapshotOptions::new().max_failed_pixels(MOST_FAILED_PIXELS);
    let mut app = Harness::builder()
        .with_size(look.size)
        .with_pixels_per_point(look.scale)
        .with_theme(shade)
        .with_max_steps(MOST_STEPS)
        .with_render_cursor(false)
        .with_options(options)
        .wgpu()
        .build_eframe(|context| make(&context.egui_ctx));
    app.run();
    arrange(&mut app);
    app.run();
    app.snapshot(name);
    results.extend_harness(&mut app);
}

fn steer(app: &mut Steerloft) {
    app.bench_mut().set_cursor(Cursor {
        input: 16.0,
        travel: 1.0,
    });
}

#[test]
fn bench_light() {
    picture("bench-light", ThemeChoice::Light, steer);
}

#[test]
fn bench_dark() {
    picture("bench-dark", ThemeChoice::Dark, steer);
}

/// A supplied car by the name of its file, steered and pushed up a little.
fn car(file_name: &str) {
    let car = SUPPLIED.iter().find(|car| car.file_name == file_name);
    let setup = car.expect("a supplied car").setup();
    let ranges = setup.car.ranges;
    let name = file_name.trim_end_matches(".ron");
    let mut results = SnapshotResults::new();
    let look = (ThemeChoice::Light, SIZE);
    picture_of(&mut results, setup, name, look, |app| {
        app.state_mut().bench_mut().set_cursor(Cursor {
            input: ranges.input.1 * 0.7,
            travel: ranges.travel.1 * 0.4,
        });
    });
}

#[test]
fn touring_car() {
    car("touring-car.ron");
}

#[test]
fn buggy() {
    car("buggy-front-end.ron");
}

#[test]
fn kart() {
    car("kart.ron");
}

#[test]
fn formula_car() {
    car("formula-corner.ron");
}

#[test]
fn strut_car() {
    car("strut-corner.ron");
}

#[test]
fn all_figures() {
    picture("figures", ThemeChoice::Light, |app| {
        steer(app);
        app.view_mut().column = Column::Figures;
    });
}

#[test]
fn not_assembled() {
    picture("not-assembled", ThemeChoice::Light, |app| {
        steer(app);
        app.bench_mut().apply(Change::Rods(Rods::FixedLength(30.0)));
    });
}

#[test]
fn the_car_described() {
    small_pictures("describing", |app| {
        app.key_press_modifiers(Modifiers::COMMAND, Key::E);
    });
}

#[test]
fn a_reference_behind() {
    small_pictures("reference", |app| {
        app.key_press_modifiers(Modifiers::COMMAND, Key::M);
        app.run();
        let change = Change::Adjust {
            adjustment: adjustment(app, "Outer rod spacers"),
            value: Chosen::Stack(1.0),
        };
        app.state_mut().bench_mut().apply(change);
        steer(app.state_mut());
    });
}

/// A drawer, with what it worked out.
fn drawer(drawer: Drawer, name: &str) {
    small_pictures(name, |app| {
        app.state_mut().view_mut().drawers.open = Some(drawer);
        wait_while(app, |app| {
            let drawers = &app.view().drawers;
            drawers.effects.is_working()
                || drawers.tolerances.is_working()
                || drawers.sides.is_working()
                || drawers.servo.is_working()
                || drawers.binding.is_working()
                || drawers.pit_table.is_working()
        });
    });
}

#[test]
fn drawer_of_the_search() {
    drawer(Drawer::Search, "search");
}

#[test]
fn drawer_of_effects() {
    drawer(Drawer::Effects, "effects");
}

#[test]
fn drawer_of_build_errors() {
    drawer(Drawer::Tolerance, "tolerance");
}

#[test]
fn drawer_of_the_sides() {
    drawer(Drawer::Sides, "sides");
}

#[test]
fn drawer_of_the_servo() {
    drawer(Drawer::Servo, "servo");
}

#[test]
fn drawer_of_binding() {
    drawer(Drawer::Binding, "binding");
}

#[test]
fn drawer_of_the_pit_table() {
    drawer(Drawer::PitTable, "pit-table");
}

#[test]
fn drawer_of_the_runs() {
    drawer(Drawer::Runs, "runs");
}
