//! A row of three fields for a place or a direction.

use eframe::egui::{RichText, Ui, vec2};

use super::field;
use crate::state::{Axis, Bench, CarEditing, Field};
use crate::theme::Metrics;
use crate::ui::Intents;

/// Width of the word before the fields.
const WORD_WIDTH: f32 = 34.0;

/// Draws a word and a field for each axis, with what is wrong below; whether one of them has the focus.
pub(super) fn row(
    ui: &mut Ui,
    bench: &Bench,
    editing: &mut CarEditing,
    intents: &mut Intents,
    (word, name): (&str, &str),
    field_of: impl Fn(Axis) -> Field,
) -> bool {
    let fields = Axis::ALL.map(|axis| (field_of(axis), format!("{name} {}", axis.letter())));
    let mut focused = false;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.allocate_ui(vec2(WORD_WIDTH, Metrics::CONTROL_HEIGHT), |ui| {
            ui.set_min_width(WORD_WIDTH);
            ui.label(RichText::new(word).small().weak());
        });
        let room = ui.available_width() - 3.0 * 18.0 - 16.0;
        for ((field, name), axis) in fields.iter().zip(Axis::ALL) {
            ui.label(RichText::new(axis.letter()).small().weak());
            let entries = &mut editing.entries;
            let place = (*field, name.as_str(), (room / 3.0).clamp(36.0, 90.0));
            focused |= field::show(ui, bench, entries, intents, place);
        }
    });
    for (field, name) in &fields {
        field::error(ui, &editing.entries, *field, name);
    }
    focused
}
