//! The numbers of the car that are no points.

use eframe::egui::{RichText, Ui};

use super::field;
use crate::state::{Bench, CarEditing, Field, NUMBERS};
use crate::ui::{Intents, units_of, widgets};

/// Width of a field.
const WIDTH: f32 = 64.0;

pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    let units = units_of(ui.ctx());
    for (heading, numbers) in NUMBERS {
        widgets::group_heading(ui, heading);
        for number in numbers {
            let place = Field::Number(*number);
            let name = number.title();
            ui.horizontal(|ui| {
                let room = ui.available_width() - WIDTH - 46.0;
                ui.allocate_ui(eframe::egui::vec2(room, 0.0), |ui| {
                    ui.set_min_width(room);
                    ui.add(eframe::egui::Label::new(name).truncate())
                        .on_hover_text(number.meaning());
                });
                let entries = &mut editing.entries;
                field::show(ui, bench, entries, intents, (place, name, WIDTH));
                let unit = field::unit(place, &bench.setup().car, units);
                ui.label(RichText::new(unit).small().weak());
            });
            field::error(ui, &editing.entries, place, name);
        }
    }
}
