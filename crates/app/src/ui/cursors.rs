//! The steering input and the wheel travel that pose the car.

use eframe::egui::{Align, Button, Label, Layout, Ui, vec2};
use steerloft_analysis::curves::Turn;
use steerloft_setup::car::{Car, Drive};

use super::widgets::{self, NumberField};
use super::{Intent, Intents};
use crate::commands::Command;
use crate::state::{Bench, Cursor, InputUnit};
use crate::theme::Metrics;

/// Width of the names at the start of the rows.
const NAME_WIDTH: f32 = 92.0;

/// Width of the button at their end.
const BUTTON_WIDTH: f32 = 64.0;

/// What a row with a slider shows.
struct Dial<'a> {
    name: &'a str,
    note: &'a str,
    unit: &'static str,
    range: (f64, f64),
    speed: f64,
    enabled: bool,
}

/// Draws the two sliders and the button that puts both back.
pub fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    ui.horizontal(|ui| {
        ui.vertical(|ui| {
            let width = ui.available_width() - BUTTON_WIDTH - Metrics::GAP;
            ui.set_width(width.max(0.0));
            dials(ui, bench, intents);
        });
        let command = Command::ResetCursor;
        let height = 2.0 * Metrics::CONTROL_HEIGHT + Metrics::GAP_SMALL;
        let button = Button::new("At rest").min_size(vec2(BUTTON_WIDTH, height));
        let moved = bench.cursor() != Cursor::STATIC;
        let response = widgets::named_button(ui, moved, button, command.text());
        if response.on_hover_text(command.tooltip()).clicked() {
            intents.push(Intent::Command(command));
        }
    });
}

fn dials(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let cursor = bench.cursor();
    let ranges = &bench.setup().car.ranges;
    let shown = bench.derived().shown();
    let positive = shown.map(|shown| shown.study.sweeps().positive_input());
    let steering = Dial {
        name: "Steering input",
        note: &steering_note(&bench.setup().car, positive),
        unit: InputUnit::of(&bench.setup().car).sign(),
        range: ranges.input,
        speed: drag_speed(ranges.input),
        enabled: true,
    };
    let mut input = cursor.input;
    if steering.show(ui, &mut input) {
        intents.push(Intent::Cursor(Cursor { input, ..cursor }));
    }
    let has_travel = shown.is_none_or(|shown| shown.assembly().has_travel());
    let travelling = Dial {
        name: "Wheel travel",
        note: if has_travel {
            "Both wheels against the chassis. Positive is bump: the wheels go up."
        } else {
            "The kingpins are fixed in the chassis, so the wheels have no travel against it."
        },
        unit: "mm",
        range: ranges.travel,
        speed: drag_speed(ranges.travel),
        enabled: has_travel,
    };
    let mut travel = cursor.travel;
    if travelling.show(ui, &mut travel) {
        intents.push(Intent::Cursor(Cursor { travel, ..cursor }));
    }
}

/// What the input is, and which way it turns the wheels.
fn steering_note(car: &Car, positive: Option<Turn>) -> String {
    let input = match (&car.drive, &car.servo) {
        (Drive::Slider { .. }, _) => "Displacement of the rack.",
        (Drive::TwinCrank { .. }, _) | (_, Some(_)) => "Angle of the servo arm.",
        (Drive::SwingArm { .. }, None) => "Angle of the steering lever.",
    };
    match positive {
        Some(Turn::Left) => format!("{input} Positive turns the wheels to the left."),
        Some(Turn::Right) => format!("{input} Positive turns the wheels to the right."),
        None => input.to_owned(),
    }
}

/// Change of a field for each point that the pointer drags it: a few hundred points for the whole range.
fn drag_speed(range: (f64, f64)) -> f64 {
    ((range.1 - range.0).abs() / 200.0).max(0.005)
}

impl Dial<'_> {
    /// Draws name, slider and exact entry; whether the value changed.
    fn show(&self, ui: &mut Ui, value: &mut f64) -> bool {
        let range = self.range.0..=self.range.1;
        let row = ui.horizontal(|ui| {
            let room = vec2(NAME_WIDTH, Metrics::CONTROL_HEIGHT);
            ui.allocate_ui_with_layout(room, Layout::left_to_right(Align::Center), |ui| {
                ui.set_min_width(NAME_WIDTH);
                ui.add_enabled(self.enabled, Label::new(self.name))
                    .on_hover_text(self.note)
                    .on_disabled_hover_text(self.note);
            });
            let width = (ui.available_width() - Metrics::FIELD_WIDTH - Metrics::GAP).max(0.0);
            if !self.enabled {
                ui.disable();
            }
            let slider = widgets::slider(ui, self.name, value, range.clone(), width)
                .on_disabled_hover_text(self.note);
            let field = NumberField {
                name: self.name,
                unit: self.unit,
                range,
                speed: self.speed,
                decimals: 2,
            };
            let entry = field.show(ui, value).on_disabled_hover_text(self.note);
            slider.changed() || entry.changed()
        });
        row.inner
    }
}
