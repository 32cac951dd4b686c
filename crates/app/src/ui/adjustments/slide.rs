//! A slide: slider and exact entry.

use eframe::egui::Ui;
use steerloft_setup::adjustment::{Kind, Unit};
use steerloft_setup::setup::Chosen;

use super::Row;
use crate::theme::Metrics;
use crate::ui::Intents;
use crate::ui::widgets::{self, NumberField};

/// Step of a slide that has none, in its unit.
const FREE_STEP: f64 = 0.1;

/// Decimals shown of a value.
const DECIMALS: usize = 3;

pub(super) fn show(ui: &mut Ui, row: &mut Row<'_>, intents: &mut Intents) {
    let (
        Kind::Slide {
            unit, range, step, ..
        },
        Chosen::Slide(value),
    ) = (&row.adjustment.kind, &row.value)
    else {
        return;
    };
    let mut shown = *value;
    let range = range.0..=range.1;
    let unit = match unit {
        Unit::Millimetres => "mm",
        Unit::Degrees => "\u{b0}",
    };
    ui.horizontal(|ui| {
        let width = (ui.available_width() - Metrics::FIELD_WIDTH - Metrics::GAP).max(0.0);
        let slider = widgets::slider(ui, &row.adjustment.name, &mut shown, range.clone(), width);
        let field = NumberField {
            name: &row.adjustment.name,
            unit,
            range,
            speed: step.unwrap_or(FREE_STEP) * 0.25,
            decimals: DECIMALS,
        };
        let entry = field.show(ui, &mut shown);
        row.touched |= slider.changed() || entry.changed();
        let wanted = row.adjustment.nearest(&Chosen::Slide(shown));
        intents.follow(&slider, || row.change(wanted.clone()));
        intents.follow(&entry, || row.change(wanted.clone()));
    });
}
