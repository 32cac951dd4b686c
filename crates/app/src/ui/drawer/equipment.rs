//! Fields for the numbers of the servo, its saver, the loads and the sizes of parts.

use crate::state::{Bench, Equipment};
use crate::theme::Metrics;
use crate::ui::widgets::NumberField;
use crate::ui::{Intents, units_of};
use eframe::egui::{Grid, RichText, Ui};

/// Least width of the names, so that the fields of all groups stand under one another, points.
const NAMES: f32 = 124.0;

/// Draws a field for each number that the car gives.
pub(super) fn fields(ui: &mut Ui, bench: &Bench, numbers: &[Equipment], intents: &mut Intents) {
    let car = &bench.setup().car;
    let units = units_of(ui.ctx());
    let given = numbers
        .iter()
        .filter_map(|number| Some((*number, number.value(car)?)));
    let salt = numbers.first().map_or("", |number| number.title());
    Grid::new(("equipment", salt))
        .num_columns(2)
        .min_col_width(NAMES)
        .spacing([Metrics::GAP, 2.0])
        .show(ui, |ui| {
            for (number, held) in given {
                let unit = units.unit(number.unit(), 0).sign;
                ui.label(number.title())
                    .on_hover_text(format!("{} {unit}", number.meaning()));
                let mut value = held;
                let field = NumberField {
                    name: number.title(),
                    unit: number.unit(),
                    range: number.range(),
                    speed: number.speed(),
                    decimals: number.decimals(),
                };
                let response = field.show(ui, &mut value);
                if let Some(change) = number.change(car, value) {
                    intents.follow(&response, || change);
                }
                ui.end_row();
            }
        });
}

/// A small heading.
pub(super) fn heading(ui: &mut Ui, text: &str) {
    ui.add_space(Metrics::GAP_SMALL);
    ui.label(RichText::new(text).strong());
}
