//! States of the window to be shown.

mod drawers;

use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use steerloft::app::Steerloft;
use steerloft::state::{Change, Cursor, CurveKind, Overlay};
use steerloft::theme::ThemeChoice;
use steerloft::ui::messages::Message;
use steerloft_setup::setup::{Chosen, Rods};
use steerloft_setup::supplied::SUPPLIED;

/// The window.
pub(crate) type App = Harness<'static, Steerloft>;

/// Brings the window into a state.
pub(crate) type Arrange = fn(&mut App);

/// A state of the window to be shown.
#[derive(Debug, Clone)]
pub(crate) struct Scene {
    /// Name of the picture's file.
    pub(crate) name: String,
    /// Place of the car in the list of supplied ones.
    pub(crate) car: usize,
    /// Size of the window, points.
    pub(crate) size: Vec2,
    /// Light or dark.
    pub(crate) theme: ThemeChoice,
    /// Brings the window into the state.
    pub(crate) arrange: Arrange,
}

const SMALL: Vec2 = vec2(1024.0, 700.0);
const MIDDLE: Vec2 = vec2(1280.0, 800.0);
const LARGE: Vec2 = vec2(1920.0, 1080.0);
const LIGHT: ThemeChoice = ThemeChoice::Light;
const DARK: ThemeChoice = ThemeChoice::Dark;

/// States of the first supplied car.
const SCENES: &[(&str, Vec2, ThemeChoice, Arrange)] = &[
    ("bench-light-1280", MIDDLE, LIGHT, steer),
    ("bench-dark-1280", MIDDLE, DARK, steer),
    ("bench-light-1920", LARGE, LIGHT, steer),
    ("bench-dark-1920", LARGE, DARK, steer),
    ("figures-light-1280", MIDDLE, LIGHT, figures),
    ("figures-dark-1920", LARGE, DARK, figures),
    ("curves-light-1280", MIDDLE, LIGHT, all_curves),
    ("curves-light-1920", LARGE, LIGHT, all_curves),
    ("other-curves-light-1920", LARGE, LIGHT, other_curves),
    ("choose-curves-light-1280", MIDDLE, LIGHT, choose_curves),
    ("at-rest-light-1280", MIDDLE, LIGHT, |_| {}),
    ("dragging-light-1280", MIDDLE, LIGHT, drag),
    ("dragging-dark-1280", MIDDLE, DARK, drag),
    ("pivot-light-1280", MIDDLE, LIGHT, hover),
    ("side-view-light-1920", LARGE, LIGHT, side_view),
    ("side-view-dark-1280", MIDDLE, DARK, side_view),
    (
        "not-assembled-light-1280",
        MIDDLE,
        LIGHT,
        cannot_be_assembled,
    ),
    ("not-assembled-dark-1280", MIDDLE, DARK, cannot_be_assembled),
    ("unsaved-light-1280", MIDDLE, LIGHT, unsaved),
    ("menu-dark-1280", MIDDLE, DARK, menu),
    ("about-light-1280", MIDDLE, LIGHT, about),
    ("hint-light-1280", MIDDLE, LIGHT, hint),
    ("message-light-1280", MIDDLE, LIGHT, message),
    ("runs-light-1280", MIDDLE, LIGHT, runs),
    ("small-light-1024", SMALL, LIGHT, steer),
    ("measuring-light-1280", MIDDLE, LIGHT, measure),
    ("search-light-1280", MIDDLE, LIGHT, drawers::search),
    ("search-dark-1280", MIDDLE, DARK, drawers::search),
    ("search-light-1024", SMALL, LIGHT, drawers::search),
    ("effects-light-1280", MIDDLE, LIGHT, drawers::effects),
    ("effects-light-1024", SMALL, LIGHT, drawers::effects),
    ("effects-dark-1920", LARGE, DARK, drawers::effects),
    ("tolerance-light-1280", MIDDLE, LIGHT, drawers::tolerance),
    ("tolerance-dark-1280", MIDDLE, DARK, drawers::tolerance),
    ("sides-light-1280", MIDDLE, LIGHT, drawers::sides),
    ("fit-light-1280", MIDDLE, LIGHT, drawers::fit),
    ("fit-dark-1280", MIDDLE, DARK, drawers::fit),
    ("servo-light-1280", MIDDLE, LIGHT, drawers::servo),
    ("servo-dark-1280", MIDDLE, DARK, drawers::servo),
    ("binding-light-1280", MIDDLE, LIGHT, drawers::binding),
    ("binding-dark-1280", MIDDLE, DARK, drawers::binding),
    ("pit-table-light-1280", MIDDLE, LIGHT, drawers::pit_table),
    ("pit-table-dark-1280", MIDDLE, DARK, drawers::pit_table),
    ("turn-centre-light-1280", MIDDLE, LIGHT, turn_centre),
    ("turn-centre-dark-1280", MIDDLE, DARK, turn_centre),
    ("spacer-buttons-light-1280", MIDDLE, LIGHT, spacer_buttons),
    ("reference-light-1280", MIDDLE, LIGHT, compare),
    ("reference-dark-1280", MIDDLE, DARK, compare),
    ("history-light-1280", MIDDLE, LIGHT, history),
    ("inches-light-1280", MIDDLE, LIGHT, inches),
    ("describing-light-1280", MIDDLE, LIGHT, describe),
    ("describing-dark-1280", MIDDLE, DARK, describe),
    ("new-car-light-1280", MIDDLE, LIGHT, new_car),
    ("printing-light-1280", MIDDLE, LIGHT, print),
    ("finding-commands-light-1280", MIDDLE, LIGHT, find_commands),
];

/// Every scene: the states of the first car, and every supplied car steered.
pub(crate) fn all() -> Vec<Scene> {
    let states = SCENES.iter().map(|&(name, size, theme, arrange)| Scene {
        name: name.to_owned(),
        car: 0,
        size,
        theme,
        arrange,
    });
    let cars = SUPPLIED.iter().enumerate().map(|(car, supplied)| Scene {
        name: format!("car-{}", supplied.file_name.trim_end_matches(".ron")),
        car,
        size: MIDDLE,
        theme: LIGHT,
        arrange: part_of_lock,
    });
    let overlays = SUPPLIED.iter().enumerate().flat_map(|(car, supplied)| {
        [(LIGHT, "light"), (DARK, "dark")].map(|(theme, word)| Scene {
            name: format!(
                "views-{word}-{}",
                supplied.file_name.trim_end_matches(".ron")
            ),
            car,
            size: SMALL,
            theme,
            arrange: everything_in_views,
        })
    });
    states.chain(cars).chain(overlays).collect()
}

/// Steers most of the way and pushes the wheels up a little, whatever the car.
fn part_of_lock(app: &mut App) {
    let ranges = app.state().bench().setup().car.ranges;
    app.state_mut().bench_mut().set_cursor(Cursor {
        input: ranges.input.1 * 0.7,
        travel: ranges.travel.1 * 0.4,
    });
}

/// All that the views can show beside the car.
fn everything_in_views(app: &mut App) {
    part_of_lock(app);
    let views = &mut app.state_mut().view_mut().views;
    views.toggle_side();
    for overlay in Overlay::ALL {
        if !views.switches().has(overlay) {
            views.toggle(overlay);
        }
    }
}

fn turn_centre(app: &mut App) {
    steer(app);
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::T);
}

fn measure(app: &mut App) {
    app.key_press_modifiers(Modifiers::COMMAND, Key::D);
    app.run();
    for place in ["Inner tie-rod ball, left", "Outer tie-rod ball, left"] {
        let name = format!("Measure at {place} (top view)");
        app.get_by_label(&name).click_accesskit();
        app.run();
    }
}

fn spacer_buttons(app: &mut App) {
    let at = app
        .get_by_label("Outer rod spacers, left: one more (front view)")
        .rect()
        .center();
    app.hover_at(at);
    app.run_steps(8);
}

fn figures(app: &mut App) {
    steer(app);
    app.key_press_modifiers(Modifiers::COMMAND, Key::Num2);
}

fn all_curves(app: &mut App) {
    steer(app);
    for kind in CurveKind::ALL {
        if !app.state().view().curves.has(kind) {
            app.state_mut().view_mut().curves.toggle(kind);
        }
    }
}

/// Only the curves that are off when the window opens.
fn other_curves(app: &mut App) {
    steer(app);
    for kind in CurveKind::ALL {
        app.state_mut().view_mut().curves.toggle(kind);
    }
}

fn choose_curves(app: &mut App) {
    steer(app);
    app.run();
    app.get_by_role_and_label(Role::Button, "Choose curves")
        .click();
}

fn steer(app: &mut App) {
    adjust(app, "Outer rod spacers", Chosen::Stack(2.0));
    app.state_mut().bench_mut().set_cursor(Cursor {
        input: 16.0,
        travel: 1.0,
    });
}

fn adjust(app: &mut App, name: &str, value: Chosen) {
    let all = &app.state().bench().setup().car.adjustments;
    if let Some(adjustment) = all.iter().position(|adjustment| adjustment.name == name) {
        let change = Change::Adjust { adjustment, value };
        app.state_mut().bench_mut().apply(change);
    }
}

fn drag(app: &mut App) {
    let from = app
        .get_by_label("Steering drive axis (top view)")
        .rect()
        .center();
    app.hover_at(from);
    app.run();
    app.drag_at(from);
    for step in 1_u8..=6 {
        app.hover_at(from - vec2(0.0, 2.5 * f32::from(step)));
    }
    app.run();
}

fn hover(app: &mut App) {
    let at = app
        .get_by_label("Outer tie-rod ball, left (front view)")
        .rect()
        .center();
    app.hover_at(at);
    app.run_steps(8);
}

fn side_view(app: &mut App) {
    steer(app);
    app.key_press_modifiers(Modifiers::COMMAND, Key::Num3);
}

fn cannot_be_assembled(app: &mut App) {
    steer(app);
    let shortest = app.state().bench().setup().car.tie_rod.shortest;
    let rods = Change::Rods(Rods::FixedLength(shortest));
    app.state_mut().bench_mut().apply(rods);
    // Rods as short as this lock before the servo's arm is at its end.
    app.state_mut().bench_mut().set_cursor(Cursor {
        input: 22.0,
        travel: 1.0,
    });
}

fn unsaved(app: &mut App) {
    steer(app);
    app.key_press_modifiers(Modifiers::COMMAND, Key::N);
}

fn menu(app: &mut App) {
    steer(app);
    app.run();
    app.get_by_label("File").click();
    app.run();
    app.get_by_label_contains("New from supplied car").click();
}

fn about(app: &mut App) {
    app.key_press(Key::F1);
}

fn hint(app: &mut App) {
    let name = app.get_all_by_label("Outer rod spacers").next();
    if let Some(name) = name {
        name.hover();
    }
    app.run_steps(8);
}

fn message(app: &mut App) {
    app.state_mut().set_message(Message {
        title: "The file was not opened".to_owned(),
        detail: "carpet.ron:12:7: expected a number, found \u{201c}about\u{201d}".to_owned(),
        consequence: "The setup on the bench and its changes are as they were.",
    });
}

fn runs(app: &mut App) {
    app.get_by_label("Record").click_accesskit();
    app.run();
    app.get_by_label("Open the run notes").scroll_to_me();
    app.run();
    app.get_by_label("Open the run notes").click();
    app.run();
    app.get_by_label("Add a run").click();
    app.run();
}

fn compare(app: &mut App) {
    app.key_press_modifiers(Modifiers::COMMAND, Key::M);
    app.run();
    steer(app);
}

fn history(app: &mut App) {
    compare(app);
    app.key_press_modifiers(Modifiers::COMMAND, Key::Num4);
}

fn inches(app: &mut App) {
    figures(app);
    app.key_press_modifiers(Modifiers::ALT.plus(Modifiers::SHIFT), Key::I);
}

fn describe(app: &mut App) {
    app.key_press_modifiers(Modifiers::COMMAND, Key::E);
}

fn new_car(app: &mut App) {
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::N);
}

fn print(app: &mut App) {
    app.key_press_modifiers(Modifiers::COMMAND, Key::P);
}

fn find_commands(app: &mut App) {
    app.key_press_modifiers(Modifiers::COMMAND, Key::F);
    app.run();
    let field = app.get_by_role(Role::TextInput);
    field.focus();
    app.event(eframe::egui::Event::Text("ref".to_owned()));
}
