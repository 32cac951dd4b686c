//! Left against right: which figures differ, and what single change would explain it.

use eframe::egui::{Grid, RichText, Ui};
use steerloft_analysis::InputUnit;
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::symmetry::{Difference, Symmetry};

use super::{columns, value};
use crate::state::Bench;
use crate::state::sides::{Sides, explained};
use crate::theme::{Metrics, Tokens};
use crate::ui::{names, units_of};
use crate::units::Units;

/// Shares of the drawer's width: what is found, and the table.
const SHARES: [f32; 2] = [0.46, 0.54];

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, sides: &mut Sides) {
    let ctx = ui.ctx().clone();
    sides.follow(bench, move || ctx.request_repaint());
    let tokens = Tokens::of(ui.ctx());
    let units = units_of(ui.ctx());
    let symmetry = match sides.last() {
        None => {
            ui.colored_label(tokens.text_weak, "Working it out\u{2026}");
            return;
        }
        Some(Err(reason)) => {
            super::cannot_be_assembled(ui, reason);
            return;
        }
        Some(Ok(symmetry)) => symmetry,
    };
    let input = InputUnit::of(&bench.setup().car);
    columns(ui, "sides", SHARES, |ui, column| match column {
        0 => finding(ui, symmetry, units),
        _ => table(ui, symmetry, input, units),
    });
}

fn finding(ui: &mut Ui, symmetry: &Symmetry, units: Units) {
    let Some(finding) = symmetry.finding() else {
        ui.label("The sides are alike: no difference is one that a builder notices.");
        return;
    };
    let finding = format!("{}.", names::sentence(&units.sentence(&finding)));
    ui.label(RichText::new(finding).strong());
    if symmetry.explanations.len() > 1 {
        ui.add_space(Metrics::GAP_SMALL);
        ui.label("Single changes that would explain it as well:");
    }
    for explanation in symmetry.explanations.iter().skip(1) {
        ui.label(names::sentence(&units.sentence(&explained(explanation))));
    }
    ui.add_space(Metrics::GAP_SMALL);
    ui.weak("From the sides alone nobody can say whether one is too much or the other too little. Measure before you change it.");
}

fn table(ui: &mut Ui, symmetry: &Symmetry, input: InputUnit, units: Units) {
    ui.weak("* a builder notices this difference");
    Grid::new("sides")
        .num_columns(4)
        .striped(true)
        .show(ui, |ui| {
            for heading in ["", "left", "right", "difference"] {
                ui.label(RichText::new(heading).strong());
            }
            ui.end_row();
            for difference in &symmetry.differences {
                row(ui, difference, input, units);
            }
        });
}

fn row(ui: &mut Ui, difference: &Difference, input: InputUnit, units: Units) {
    let tokens = Tokens::of(ui.ctx());
    let kind = difference.measure.figure();
    ui.label(difference.title())
        .on_hover_text(kind.map_or("", |kind: FigureKind| kind.facts().meaning));
    for side in [difference.left, difference.right] {
        ui.label(value(&difference.measure, side, input, units));
    }
    let text = value(&difference.measure, difference.difference(), input, units);
    if difference.is_noticeable() {
        ui.label(
            RichText::new(format!("{text} *"))
                .color(tokens.accent)
                .strong(),
        );
    } else {
        ui.label(text);
    }
    ui.end_row();
}
