//! Pictures of whole screens, compared with those kept beside this test.
//!
//! Drawing them takes a graphics adapter; a software one does. Where there is none the test says so and passes, unless
//! `STEERLOFT_REQUIRE_RENDER=1` asks for pictures at all events. `UPDATE_SNAPSHOTS=1` keeps new ones.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stderr)]

use std::panic::catch_unwind;

use crate::common::{SIZE, pan_car};
use eframe::egui::{Theme, vec2};
use egui_kittest::{Harness, SnapshotOptions};
use steerloft::app::Steerloft;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::state::{Change, Cursor, Document};
use steerloft::theme::ThemeChoice;
use steerloft::ui::Column;
use steerloft_setup::setup::{Rods, Setup};
use steerloft_setup::supplied::SUPPLIED;

/// Pixels that may differ: rasterisers disagree about the edges of thin lines.
const MOST_FAILED_PIXELS: usize = 400;

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
    picture_of(pan_car(), name, theme, arrange);
}

fn picture_of(setup: Setup, name: &str, theme: ThemeChoice, arrange: impl FnOnce(&mut Steerloft)) {
    if !can_draw() {
        return;
    }
    let shade = if theme == ThemeChoice::Dark {
        Theme::Dark
    } else {
        Theme::Light
    };
    let options = SnapshotOptions::new().max_failed_pixels(MOST_FAILED_PIXELS);
    let mut app = Harness::builder()
        .with_size(SIZE)
        .with_theme(shade)
        .with_max_steps(20)
        .with_render_cursor(false)
        .with_options(options)
        .wgpu()
        .build_eframe(move |context| {
            let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
            Steerloft::new(&context.egui_ctx, Document::unnamed(setup), dialogs, theme)
        });
    app.run();
    arrange(app.state_mut());
    app.run();
    app.snapshot(name);
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
    picture_of(setup, name, ThemeChoice::Light, |app| {
        app.bench_mut().set_cursor(Cursor {
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
