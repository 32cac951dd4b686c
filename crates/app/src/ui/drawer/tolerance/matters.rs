//! The dimensions that matter most.

use eframe::egui::{Grid, RichText, Ui};
use steerloft_setup::adjustment::Unit;

use crate::format;
use crate::state::tolerance::BuildErrorsAnswer;
use crate::units::Units;

/// Most dimensions that are listed.
const MOST: usize = 12;

/// Draws the list.
pub(super) fn show(ui: &mut Ui, answer: &BuildErrorsAnswer, units: Units) {
    ui.label(RichText::new("What matters most").strong())
        .on_hover_text(
            "What each dimension moves all figures by, in differences that a builder just notices",
        );
    let input = answer.setup.car.drive.input_unit();
    Grid::new("matters")
        .num_columns(3)
        .striped(true)
        .show(ui, |ui| {
            for matter in answer.tolerance.matters.iter().take(MOST) {
                let sign = match matter.source.unit(input) {
                    Unit::Degrees => "\u{b0}",
                    Unit::Millimetres => "mm",
                };
                ui.label(format::number(matter.effect, 2));
                ui.label(format!("\u{b1}{}", units.amount(matter.error, sign, 2)));
                ui.label(crate::ui::names::sentence(&matter.source.to_string()));
                ui.end_row();
            }
        });
}
