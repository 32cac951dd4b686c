//! The numbers of the car that are no points.

use eframe::egui::{Align, Label, Layout, RichText, Ui, vec2};

use super::field;
use crate::state::{Bench, CarEditing, CarNumber, Field, NumberGroup, number_groups};
use crate::theme::Metrics;
use crate::ui::{Intents, part, units_of, widgets};

/// Width of a field.
const WIDTH: f32 = 64.0;

/// What every car has.
pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    for group in number_groups(&bench.setup().car) {
        widgets::group_heading(ui, group.heading);
        for number in group.numbers {
            row(ui, bench, editing, intents, number);
        }
    }
}

/// A group with its heading, which may be of a part that the car leaves out; whether it has it.
pub(super) fn group(
    ui: &mut Ui,
    bench: &Bench,
    editing: &mut CarEditing,
    intents: &mut Intents,
    group: &NumberGroup,
) -> bool {
    widgets::group_heading(ui, group.heading);
    for number in &group.numbers {
        row(ui, bench, editing, intents, *number);
    }
    group
        .part
        .is_none_or(|of| part::give_or_leave_out(ui, bench, of, intents))
}

/// The name of a number, its field and unit, and what is wrong below; nothing where the car has no such number.
pub(super) fn row(
    ui: &mut Ui,
    bench: &Bench,
    editing: &mut CarEditing,
    intents: &mut Intents,
    number: CarNumber,
) {
    let car = &bench.setup().car;
    let place = Field::Number(number);
    if place.value(car).is_none() {
        return;
    }
    let name = number.title();
    ui.horizontal(|ui| {
        let room = ui.available_width() - WIDTH - 46.0;
        let size = vec2(room, Metrics::CONTROL_HEIGHT);
        ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_width(room);
            ui.add(Label::new(name).truncate())
                .on_hover_text(number.meaning());
        });
        field::show(
            ui,
            bench,
            &mut editing.entries,
            intents,
            (place, name, WIDTH),
        );
        let unit = field::unit(place, car, units_of(ui.ctx()));
        ui.label(RichText::new(unit).small().weak());
    });
    field::error(ui, &editing.entries, place, name);
}
