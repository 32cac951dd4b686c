//! What one step of each adjustment does to each figure, and which adjustments are alike.

mod table;

use eframe::egui::{RichText, Ui};

use super::columns;
use crate::state::Bench;
use crate::state::effects::{EffectsTable, alike_in_words, missing_in_words};
use crate::theme::{Metrics, Tokens};
use crate::ui::widgets::NumberField;
use crate::ui::{Intents, units_of};

/// Shares of the drawer's width: the table, and what is said about it.
const SHARES: [f32; 2] = [0.78, 0.22];

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, effects: &mut EffectsTable, intents: &mut Intents) {
    let ctx = ui.ctx().clone();
    effects.follow(bench, move || ctx.request_repaint());
    columns(ui, "effects", SHARES, |ui, column| match column {
        0 => show_table(ui, bench, effects, intents),
        _ => show_words(ui, effects),
    });
}

fn show_table(ui: &mut Ui, bench: &Bench, effects: &EffectsTable, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    match effects.last() {
        None => {
            ui.colored_label(tokens.text_weak, "Working it out\u{2026}");
        }
        Some(Err(reason)) => {
            super::cannot_be_assembled(ui, reason);
        }
        Some(Ok((setup, effects))) => {
            // A step of a table that is being worked out anew would start from elsewhere.
            let is_current = setup == bench.setup();
            table::show(ui, setup, effects, is_current, intents);
        }
    }
}

fn show_words(ui: &mut Ui, effects: &mut EffectsTable) {
    let units = units_of(ui.ctx());
    ui.horizontal_wrapped(|ui| {
        ui.label("Ackermann share with the inner wheel at");
        let field = NumberField {
            name: "Effects: angle of the inner wheel",
            unit: "\u{b0}",
            range: 1.0..=60.0,
            speed: 0.25,
            decimals: 1,
        };
        field.show(ui, &mut effects.inner);
    });
    ui.weak("Each cell is the change by one step, solved anew. * marks the strongest step for a figure. Click a cell to take its step.");
    if effects.is_working() {
        ui.weak("Working it out\u{2026}");
    }
    let Some(Ok((setup, effects))) = effects.last() else {
        return;
    };
    if let Some(missing) = missing_in_words(setup) {
        ui.weak(missing);
    }
    ui.add_space(Metrics::GAP_SMALL);
    ui.label(RichText::new("Alike").strong());
    if effects.alike.is_empty() {
        ui.label("No two adjustments do nearly the same, or undo each other.");
    }
    for alike in &effects.alike {
        ui.label(units.sentence(&alike_in_words(alike, &effects.rows)));
        ui.add_space(Metrics::GAP_SMALL);
    }
}
