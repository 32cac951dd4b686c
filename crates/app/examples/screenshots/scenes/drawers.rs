//! The drawers, with what they worked out.

use std::time::Duration;

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use steerloft::state::Change;
use steerloft::state::fitting::{ReadingKind, ReadingRow};
use steerloft::ui::Drawers;
use steerloft_setup::dimension::{Dimension, Whose};
use steerloft_setup::setup::Chosen;

use super::App;

/// How long to wait between looks at what is worked out.
const PATIENCE: Duration = Duration::from_millis(5);

/// The drawer of the search with what it found.
pub(super) fn search(app: &mut App) {
    app.key_press(Key::F3);
    app.run();
    app.get_by_role_and_label(Role::RadioButton, "Changes at most: 1")
        .click_accesskit();
    app.run();
    app.get_by_role_and_label(Role::Button, "Start the search")
        .click_accesskit();
    app.run();
    wait_while(app, |drawers| drawers.searching.progress().is_some());
}

/// The drawer of the effects, worked out.
pub(super) fn effects(app: &mut App) {
    app.key_press(Key::F4);
    app.run();
    wait_while(app, |drawers| drawers.effects.is_working());
}

/// The drawer of build errors, with the bands in the curves.
pub(super) fn tolerance(app: &mut App) {
    app.key_press(Key::F5);
    app.run();
    wait_while(app, |drawers| drawers.tolerances.is_working());
}

/// The drawer of the sides, of a car whose servo sits off its middle.
pub(super) fn sides(app: &mut App) {
    let cars = &app.state().bench().setup().car;
    let mut names = cars.adjustments.iter();
    let Some(adjustment) = names.position(|one| one.name == "Servo sideways") else {
        return;
    };
    let value = Chosen::Slide(1.0);
    let change = Change::Adjust { adjustment, value };
    app.state_mut().bench_mut().apply(change);
    app.key_press(Key::F6);
    app.run();
    wait_while(app, |drawers| drawers.sides.is_working());
}

/// The drawer of gauge readings, made up, with one that does not go with the others.
pub(super) fn fit(app: &mut App) {
    let fitting = &mut app.state_mut().view_mut().drawers.fitting;
    let toes = [
        ("-1", "0.35", "0.4"),
        ("0", "0.5", "0.55"),
        ("0", "0.55", "1.9"),
        ("2", "0.7", "0.8"),
    ];
    fitting.rows = toes
        .map(|(at, left, right)| ReadingRow {
            at: at.to_owned(),
            left: left.to_owned(),
            right: right.to_owned(),
            ..ReadingRow::new(ReadingKind::Toe)
        })
        .into();
    let rods = [Whose::Left, Whose::Right].map(|side| Dimension::Rod { side });
    fitting.uncertain = rods.into_iter().chain([Dimension::Wheelbase]).collect();
    app.key_press(Key::F7);
    app.run();
    app.get_by_role_and_label(Role::Button, "Start the fit")
        .click_accesskit();
    app.run();
    wait_while(app, |drawers| drawers.fitting.is_working());
}

/// The drawer of the servo, with its curves.
pub(super) fn servo(app: &mut App) {
    app.key_press_modifiers(Modifiers::SHIFT, Key::F3);
    app.run();
    wait_while(app, |drawers| drawers.servo.is_working());
}

/// The binding map.
pub(super) fn binding(app: &mut App) {
    app.key_press_modifiers(Modifiers::SHIFT, Key::F4);
    app.run();
    wait_while(app, |drawers| drawers.binding.is_working());
}

/// The pit table.
pub(super) fn pit_table(app: &mut App) {
    app.key_press_modifiers(Modifiers::SHIFT, Key::F5);
    app.run();
    wait_while(app, |drawers| drawers.pit_table.is_working());
}

/// Lets the drawers work out what they show.
fn wait_while(app: &mut App, is_working: fn(&Drawers) -> bool) {
    while is_working(&app.state().view().drawers) {
        std::thread::sleep(PATIENCE);
        app.step();
    }
}
