//! The panel on the right: toe against travel, outer against inner angle.

mod inner_outer;
mod panel;
mod toe_travel;

use eframe::egui::{Ui, vec2};

use super::{Intents, ViewState};
use crate::state::Bench;
use crate::theme::{Metrics, Tokens};

/// Draws both curve panels, one above the other.
pub fn show(ui: &mut Ui, bench: &Bench, view: &ViewState, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let Some(shown) = bench.derived().shown() else {
        ui.colored_label(tokens.text_weak, "No curves: the car cannot be assembled.");
        return;
    };
    let height = (ui.available_height() - Metrics::GAP) / 2.0;
    let width = ui.available_width();
    for draw in [toe_travel::show, inner_outer::show] {
        ui.allocate_ui(vec2(width, height), |ui| {
            ui.set_min_height(height);
            draw(ui, bench, shown, view, intents);
        });
    }
}
