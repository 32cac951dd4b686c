//! A stack of spacers: one more, one less, exact entry, and which spacers make it up.

use eframe::egui::{Button, Ui};
use steerloft_setup::adjustment::Kind;
use steerloft_setup::setup::Chosen;

use super::Row;
use crate::theme::style_square;
use crate::ui::widgets::{self, NumberField};
use crate::ui::{Intents, units_of};

pub(super) fn show(ui: &mut Ui, row: &mut Row<'_>, intents: &mut Intents) {
    let (Kind::Stack { most, .. }, Chosen::Stack(total)) = (&row.adjustment.kind, &row.value)
    else {
        return;
    };
    let (most, total) = (*most, *total);
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        step_button(ui, row, "\u{2212}", "less", -1, intents);
        let mut wanted = total;
        let field = NumberField {
            name: &row.adjustment.name,
            unit: "mm",
            range: 0.0..=most,
            speed: 0.02,
            decimals: 3,
        };
        let entry = field.show(ui, &mut wanted);
        row.touched |= entry.changed();
        intents.follow(&entry, || {
            row.change(row.adjustment.nearest(&Chosen::Stack(wanted)))
        });
        step_button(ui, row, "+", "more", 1, intents);
        ui.add_space(4.0);
        let pieces = row.adjustment.spacers_for(total);
        ui.weak(widgets::spacers(pieces.as_deref(), units_of(ui.ctx())));
    });
}

fn step_button(
    ui: &mut Ui,
    row: &mut Row<'_>,
    text: &str,
    word: &str,
    steps: i32,
    intents: &mut Intents,
) {
    let next = row.adjustment.step_from(&row.value, steps);
    let name = format!("{}: {word}", row.adjustment.name);
    let button = Button::new(text).min_size(style_square());
    let response = widgets::named_button(ui, next != row.value, button, &name).on_hover_text(
        format!("To {}", units_of(ui.ctx()).value(row.adjustment, &next)),
    );
    if response.clicked() {
        row.apply(next, intents);
    }
}
