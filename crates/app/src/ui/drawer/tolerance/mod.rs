//! What build errors do: how far figures spread, which dimensions matter, and how far they may be off.

mod errors;
mod figures;
mod matters;

use eframe::egui::{RichText, Ui};
use steerloft_analysis::curves::CurveKind;

use super::columns;
use crate::state::Bench;
use crate::state::tolerance::{BuildErrorsAnswer, Tolerances};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intents, units_of};

/// Shares of the drawer's width: figures, dimensions that matter, build errors.
const SHARES: [f32; 3] = [0.49, 0.29, 0.22];

/// Draws the drawer; the bands stand in the curves that are shown.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    tolerances: &mut Tolerances,
    curves: &[CurveKind],
    intents: &mut Intents,
) {
    let ctx = ui.ctx().clone();
    tolerances.follow(bench, curves, move || ctx.request_repaint());
    columns(ui, "tolerance", SHARES, |ui, column| {
        match (column, tolerances.last()) {
            (0, None) => {
                let ink = Tokens::of(ui.ctx()).text_weak;
                ui.colored_label(ink, "Drawing cars\u{2026}");
            }
            (0, Some(Err(reason))) => super::cannot_be_assembled(ui, reason),
            (0, Some(Ok(answer))) => {
                count(ui, answer, tolerances.is_working());
                figures::show(ui, answer, units_of(ui.ctx()));
            }
            (1, Some(Ok(answer))) => {
                matters::show(ui, answer, units_of(ui.ctx()));
                hidden(ui, answer);
            }
            (2, _) => errors::show(ui, bench, intents),
            _ => {}
        }
    });
}

/// How many cars were drawn.
fn count(ui: &mut Ui, answer: &BuildErrorsAnswer, is_working: bool) {
    let tolerance = &answer.tolerance;
    let working = if is_working {
        "; drawing anew\u{2026}"
    } else {
        ""
    };
    ui.weak(format!(
        "{} cars drawn within the build errors; {} cannot be assembled{working}",
        tolerance.samples, tolerance.apart
    ));
}

/// Steps of adjustments that are within the car's own play.
fn hidden(ui: &mut Ui, answer: &BuildErrorsAnswer) {
    let units = units_of(ui.ctx());
    ui.add_space(Metrics::GAP);
    ui.label(RichText::new("Within the car's own play").strong());
    let hidden = answer.tolerance.hidden(&answer.effects);
    if hidden.is_empty() {
        ui.label(
            "Every step of an adjustment changes some figure by more than the build errors do.",
        );
    }
    for row in hidden
        .into_iter()
        .filter_map(|row| answer.effects.rows.get(row))
    {
        let words = crate::state::effects::step_in_words(&row.step);
        ui.label(units.sentence(&words));
    }
}
