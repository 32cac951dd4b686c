//! Between which values nine in ten cars lie, and what that is due to.

use eframe::egui::{Align, Grid, Label, Layout, RichText, Ui, vec2};
use steerloft_analysis::InputUnit;
use steerloft_analysis::tolerance::{Spread, Tolerance};

use super::super::value;
use crate::state::tolerance::BuildErrorsAnswer;
use crate::theme::Metrics;
use crate::units::Units;

/// Least width for what a spread is due to, points.
const LEAST_CAUSE: f32 = 60.0;

/// Draws the table.
pub(super) fn show(ui: &mut Ui, answer: &BuildErrorsAnswer, units: Units) {
    let input = InputUnit::of(&answer.setup.car);
    Grid::new("spreads")
        .num_columns(5)
        .striped(true)
        .show(ui, |ui| {
            for heading in ["Figure", "exact", "5 %", "95 %", "due to"] {
                ui.label(RichText::new(heading).strong());
            }
            ui.end_row();
            for spread in &answer.tolerance.spreads {
                row(ui, spread, &answer.tolerance, input, units);
            }
        });
}

fn row(ui: &mut Ui, spread: &Spread, tolerance: &Tolerance, input: InputUnit, units: Units) {
    ui.label(spread.measure.label());
    let [low, high] = [
        spread.quantiles.map(|quantiles| quantiles.low),
        spread.quantiles.map(|quantiles| quantiles.high),
    ];
    for number in [spread.exact, low, high] {
        ui.label(value(&spread.measure, number, input, units));
    }
    let causes: Vec<String> = spread
        .shares
        .iter()
        .filter_map(|share| {
            let matter = tolerance.matters.get(share.source)?;
            Some(format!("{} {:.0} %", matter.source, 100.0 * share.share))
        })
        .collect();
    let size = vec2(
        ui.available_width().max(LEAST_CAUSE),
        Metrics::CONTROL_HEIGHT,
    );
    ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        let text = RichText::new(causes.join("; ")).small();
        ui.add(Label::new(text).truncate())
            .on_hover_text(causes.join("\n"));
    });
    ui.end_row();
}
