//! The application in a window without a screen, and the hands that work it.

#![allow(
    dead_code,
    unreachable_pub,
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "shared by several tests"
)]

use std::time::Duration;

use eframe::egui::accesskit::Role;
use eframe::egui::{Event, Key, Modifiers, PointerButton, Pos2, Theme, Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::app::Steerloft;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::state::Document;
use steerloft::theme::ThemeChoice;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;

/// The application under test.
pub type App = Harness<'static, Steerloft>;

/// How long to wait between looks at what is worked out.
const PATIENCE: Duration = Duration::from_millis(5);

/// Size of the window in most tests.
pub const SIZE: Vec2 = vec2(1280.0, 800.0);

/// The setup that the window opens with when no file is given.
pub fn pan_car() -> Setup {
    SUPPLIED[0].setup()
}

/// A window on the supplied pan car, and the script its file dialogs follow.
pub fn window() -> (App, ScriptedAnswers) {
    window_on(Document::unnamed(pan_car()), SIZE)
}

/// A window of some size on a document.
pub fn window_on(document: Document, size: Vec2) -> (App, ScriptedAnswers) {
    let script = ScriptedAnswers::default();
    let dialogs = Box::new(ScriptedDialogs::new(script.clone()));
    let mut harness = Harness::builder()
        .with_size(size)
        .with_theme(Theme::Light)
        .with_max_steps(12)
        .build_eframe(move |context| {
            Steerloft::new(&context.egui_ctx, document, dialogs, ThemeChoice::Light)
        });
    harness.run();
    (harness, script)
}

/// The setup on the bench.
pub fn setup(app: &App) -> &Setup {
    app.state().bench().setup()
}

/// Place of an adjustment in the car's list.
pub fn adjustment(app: &App, name: &str) -> usize {
    let all = &setup(app).car.adjustments;
    all.iter()
        .position(|adjustment| adjustment.name == name)
        .expect("the supplied car has it")
}

/// The value of an adjustment.
pub fn value(app: &App, name: &str) -> Chosen {
    setup(app).value(adjustment(app, name))
}

/// Moves a slider as a person does who uses the keyboard or a screen reader.
pub fn set_slider(app: &mut App, name: &str, value: f64) {
    app.get_by_role_and_label(Role::Slider, name)
        .set_value_accesskit(value);
    app.run();
}

/// Clicks the button of this name.
pub fn click(app: &mut App, name: &str) {
    app.get_by_role_and_label(Role::Button, name).click();
    app.run();
}

/// Presses a key with the platform's command modifier.
pub fn command_key(app: &mut App, key: eframe::egui::Key) {
    app.key_press_modifiers(Modifiers::COMMAND, key);
    app.run();
}

/// The middle of the handle of this name.
pub fn handle(app: &App, name: &str) -> Pos2 {
    app.get_by_label(name).rect().center()
}

/// Presses the pointer at a place and moves it in small steps, without releasing it.
pub fn drag(app: &mut App, from: Pos2, by: Vec2) {
    app.hover_at(from);
    app.run();
    app.drag_at(from);
    app.run();
    for step in 1_u8..=8 {
        app.hover_at(from + by * (f32::from(step) / 8.0));
        app.run();
    }
}

/// Releases the pointer.
pub fn release(app: &mut App, at: Pos2) {
    app.drop_at(at);
    app.run();
}

/// Drags and releases.
pub fn drag_and_drop(app: &mut App, from: Pos2, by: Vec2) {
    drag(app, from, by);
    release(app, from + by);
}

/// Clicks a place twice within one frame, as quick as a double click.
pub fn double_click(app: &mut App, at: Pos2) {
    app.hover_at(at);
    app.run();
    let click = |pressed| Event::PointerButton {
        pos: at,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    };
    app.input_mut()
        .events
        .extend([true, false, true, false].map(click));
    app.run();
}

/// Writes into a field in the place of what stands there, without leaving it.
pub fn write(app: &mut App, name: &str, text: &str) {
    app.get_by_role_and_label(Role::TextInput, name).focus();
    app.run();
    app.key_press_modifiers(Modifiers::COMMAND, Key::A);
    app.run();
    app.event(Event::Text(text.to_owned()));
    app.run();
}

/// Writes into a field and leaves it.
pub fn enter(app: &mut App, name: &str, text: &str) {
    write(app, name, text);
    app.key_press(Key::Enter);
    app.run();
}

/// Waits for an answer that is worked out away from the window.
pub fn wait_while(app: &mut App, is_working: impl Fn(&Steerloft) -> bool) {
    app.run();
    while is_working(app.state()) {
        std::thread::sleep(PATIENCE);
        app.step();
    }
    app.run();
}

/// Types a number into a field that can be dragged, wherever it has scrolled to, and leaves it.
pub fn type_number(app: &mut App, name: &str, text: &str) {
    app.get_by_role_and_label(Role::SpinButton, name)
        .scroll_to_me();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, name).click();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, name)
        .type_text(text);
    app.run();
    app.key_press(Key::Enter);
    app.run();
}

/// What stands on every label in sight.
pub fn words(app: &App) -> Vec<String> {
    let labels = app.query_all_by_role(Role::Label);
    labels
        .filter_map(|node| node.accesskit_node().value())
        .collect()
}

/// Clicks a button wherever it is, as a screen reader does.
pub fn press(app: &mut App, name: &str) {
    app.get_by_role_and_label(Role::Button, name)
        .click_accesskit();
    app.run();
}
