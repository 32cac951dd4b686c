//! Fields for the numbers of the servo, its saver, the loads and the sizes of parts.

use eframe::egui::{Grid, RichText, Ui};
use steerloft_setup::edit::CarEdit;

use crate::state::{Bench, Change, Equipment, Part};
use crate::theme::Metrics;
use crate::ui::widgets::NumberField;
use crate::ui::{Intents, units_of};

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

/// A heading, and where the car does not give the part a button that gives it; whether it is given.
pub(super) fn part(
    ui: &mut Ui,
    bench: &Bench,
    part: Part,
    is_given: bool,
    intents: &mut Intents,
) -> bool {
    if is_given {
        return true;
    }
    let Some(edit) = part.given(&bench.setup().car) else {
        return false;
    };
    let title = part.title();
    let button = ui.button(format!("Give the {title}"));
    let hint = "With round values to start from: put in those of your own.";
    if button.on_hover_text(hint).clicked() {
        intents.apply(change(edit));
    }
    false
}

/// An edit of the car as a change.
pub(super) fn change(edit: CarEdit) -> Change {
    Change::Car(Box::new(edit))
}

/// A small heading.
pub(super) fn heading(ui: &mut Ui, text: &str) {
    ui.add_space(Metrics::GAP_SMALL);
    ui.label(RichText::new(text).strong());
}
