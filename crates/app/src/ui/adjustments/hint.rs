//! What is said about an adjustment when the pointer rests on its name.

use eframe::egui::{RichText, Ui};

use super::Row;
use crate::format;
use crate::state::{InputUnit, step_effect};
use crate::theme::{Metrics, Tokens};
use crate::ui::units_of;

/// Widest a hint gets, points.
const WIDTH: f32 = 320.0;

/// Draws the hint: notes, whether it can be built, and what one step does.
pub(super) fn show(ui: &mut Ui, row: &Row<'_>) {
    let (tokens, units) = (Tokens::of(ui.ctx()), units_of(ui.ctx()));
    ui.set_max_width(WIDTH);
    ui.label(RichText::new(&row.adjustment.name).strong());
    if !row.adjustment.notes.is_empty() {
        ui.label(&row.adjustment.notes);
    }
    if !row.is_buildable() {
        ui.colored_label(
            tokens.warning,
            "This value lies between the steps of the parts: it can be tried here, but not built.",
        );
    }
    let Some(effect) = step_effect(row.setup, row.index) else {
        return;
    };
    ui.add_space(Metrics::GAP_SMALL);
    ui.weak(format!(
        "One step, to {}",
        units.value(row.adjustment, &effect.to)
    ));
    if let Some(bump_steer) = effect.bump_steer {
        let unit = units.unit("\u{b0}/mm", 3);
        let amount = format::signed(bump_steer.to_degrees() * unit.factor, unit.decimals);
        ui.colored_label(tokens.accent, format!("bump steer {amount}{}", unit.sign));
    }
    if let Some(share) = effect.ackermann_share {
        let amount = format::signed(share, 1);
        let input = units.amount(effect.input, InputUnit::of(&row.setup.car).sign(), 1);
        ui.colored_label(
            tokens.accent,
            format!("Ackermann share {amount} % at {input} of input"),
        );
    }
}
