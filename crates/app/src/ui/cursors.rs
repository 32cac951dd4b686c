//! The steering input and the wheel travel that pose the car.

use eframe::egui::{Align, Button, Layout, Ui, vec2};

use super::widgets::{self, NumberField};
use super::{Intent, Intents};
use crate::commands::Command;
use crate::state::{Bench, Cursor, Turn};
use crate::theme::Metrics;

/// Width of the names at the start of the rows.
const NAME_WIDTH: f32 = 92.0;

/// Width of the button at their end.
const BUTTON_WIDTH: f32 = 64.0;

/// What a row with a slider shows.
struct Dial<'a> {
    name: &'a str,
    note: &'a str,
    unit: &'a str,
    range: (f64, f64),
    speed: f64,
}

/// Draws the two sliders and the button that puts both back.
pub fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    ui.horizontal(|ui| {
        ui.vertical(|ui| {
            ui.set_width(ui.available_width() - BUTTON_WIDTH - Metrics::GAP);
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
    let steering = Dial {
        name: "Steering input",
        note: steering_note(shown.and_then(|shown| shown.curves.steer.positive_input())),
        unit: "\u{b0}",
        range: ranges.input,
        speed: 0.5,
    };
    let mut input = cursor.input;
    if steering.show(ui, &mut input) {
        intents.push(Intent::Cursor(Cursor { input, ..cursor }));
    }
    let has_travel = shown.is_none_or(|shown| shown.assembly.has_travel());
    let travelling = Dial {
        name: "Wheel travel",
        note: "Both wheels against the chassis. Positive is bump: the wheels go up.",
        unit: "mm",
        range: ranges.travel,
        speed: 0.1,
    };
    ui.add_enabled_ui(has_travel, |ui| {
        let mut travel = cursor.travel;
        if travelling.show(ui, &mut travel) {
            intents.push(Intent::Cursor(Cursor { travel, ..cursor }));
        }
    });
}

fn steering_note(positive: Option<Turn>) -> &'static str {
    match positive {
        Some(Turn::Left) => "Angle of the servo arm. Positive turns the wheels to the left.",
        Some(Turn::Right) => "Angle of the servo arm. Positive turns the wheels to the right.",
        None => "Angle of the servo arm.",
    }
}

impl Dial<'_> {
    /// Draws name, slider and exact entry; whether the value changed.
    fn show(&self, ui: &mut Ui, value: &mut f64) -> bool {
        let range = self.range.0..=self.range.1;
        let row = ui.horizontal(|ui| {
            let room = vec2(NAME_WIDTH, Metrics::CONTROL_HEIGHT);
            ui.allocate_ui_with_layout(room, Layout::left_to_right(Align::Center), |ui| {
                ui.set_min_width(NAME_WIDTH);
                ui.label(self.name).on_hover_text(self.note);
            });
            let width = ui.available_width() - Metrics::FIELD_WIDTH - Metrics::GAP;
            let slider = widgets::slider(ui, self.name, value, range.clone(), width);
            let field = NumberField {
                name: self.name,
                unit: self.unit,
                range,
                speed: self.speed,
                decimals: 2,
            };
            let entry = field.show(ui, value);
            slider.changed() || entry.changed()
        });
        row.inner
    }
}
