//! How the tie rods are set, and what comes of it.

use eframe::egui::{Grid, Ui};
use steerloft_setup::setup::Rods;
use steerloft_solver::frame::{Side, Sides};

use super::adjustments::difference;
use super::widgets::{self, NumberField};
use super::{Intents, names, units_of};
use crate::format;
use crate::state::{Bench, Change, RodMode, rod_mode, with_mode};
use crate::theme::{Metrics, Tokens};

/// The ways in which rods can be set, with what each is called.
const MODES: [(RodMode, &str); 3] = [
    (RodMode::HoldToe, "Hold toe"),
    (RodMode::OneLength, "Length"),
    (RodMode::TwoLengths, "Left / right"),
];

/// Widest toe that can be held, degrees.
const TOE_RANGE: f64 = 10.0;

/// Draws the section.
pub fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    widgets::group_heading(ui, "Tie rods");
    let rods = bench.setup().rods;
    let at = MODES.iter().position(|(mode, _)| *mode == rod_mode(&rods));
    let titles = MODES.iter().map(|(_, title)| *title);
    if let Some(mode) = widgets::segments(ui, "Rods", titles, at).and_then(|index| MODES.get(index))
    {
        intents.apply(Change::Rods(in_mode(bench, mode.0)));
    }
    ui.add_space(Metrics::GAP_SMALL);
    Grid::new("rod values")
        .num_columns(2)
        .show(ui, |ui| values(ui, bench, rods, intents));
    difference::rods(ui, bench, intents);
    ui.add_space(Metrics::GAP_SMALL);
    results(ui, bench);
}

/// The rods set in another way, as near to what they are as that way allows.
fn in_mode(bench: &Bench, mode: RodMode) -> Rods {
    let tie_rod = &bench.setup().car.tie_rod;
    let unknown = f64::midpoint(tie_rod.shortest, tie_rod.longest);
    match bench.derived().shown() {
        Some(shown) => with_mode(mode, shown.assembly().rod_lengths(), shown.static_toe()),
        None => with_mode(mode, Sides::both(unknown), Sides::both(0.0)),
    }
}

fn values(ui: &mut Ui, bench: &Bench, rods: Rods, intents: &mut Intents) {
    match rods {
        Rods::HoldToe(mut toe) => {
            ui.label("Toe of each wheel")
                .on_hover_text("At rest, steering straight ahead; toe-in positive");
            let field = NumberField {
                name: "Toe of each wheel",
                unit: "\u{b0}",
                range: -TOE_RANGE..=TOE_RANGE,
                speed: 0.02,
                decimals: 2,
            };
            let response = field.show(ui, &mut toe);
            intents.follow(&response, || Change::Rods(Rods::HoldToe(toe)));
            ui.end_row();
        }
        Rods::FixedLength(mut length) => {
            let response = length_row(ui, bench, "Length of both rods", &mut length);
            intents.follow(&response, || Change::Rods(Rods::FixedLength(length)));
        }
        Rods::FixedLengths {
            mut left,
            mut right,
        } => {
            let response = length_row(ui, bench, "Length of the left rod", &mut left);
            intents.follow(&response, || {
                Change::Rods(Rods::FixedLengths { left, right })
            });
            let response = length_row(ui, bench, "Length of the right rod", &mut right);
            intents.follow(&response, || {
                Change::Rods(Rods::FixedLengths { left, right })
            });
        }
    }
}

fn length_row(ui: &mut Ui, bench: &Bench, name: &str, length: &mut f64) -> eframe::egui::Response {
    let tie_rod = &bench.setup().car.tie_rod;
    ui.label(name)
        .on_hover_text("From ball centre to ball centre");
    let field = NumberField {
        name,
        unit: "mm",
        range: tie_rod.shortest..=tie_rod.longest,
        speed: 0.02,
        decimals: 2,
    };
    let response = field.show(ui, length);
    ui.end_row();
    response
}

/// Rod lengths, cup gaps and toe as they come out.
fn results(ui: &mut Ui, bench: &Bench) {
    let Some(shown) = bench.derived().shown() else {
        return;
    };
    let (tokens, units) = (Tokens::of(ui.ctx()), units_of(ui.ctx()));
    let toe = shown.static_toe();
    Grid::new("rod results")
        .num_columns(4)
        .min_col_width(48.0)
        .show(ui, |ui| {
            for heading in ["", "length", "cup gap", "toe"] {
                ui.weak(heading);
            }
            ui.end_row();
            for side in Side::BOTH {
                let rods = shown.study.tie_rods();
                let rod = rods.get(side);
                ui.colored_label(tokens.side(side), names::sentence(&side.to_string()));
                let length = units.length(rod.length, 2);
                if rod.is_buildable() {
                    ui.label(length)
                        .on_hover_text("Ball centre to ball centre: what to dial in");
                } else {
                    ui.colored_label(tokens.warning, length)
                        .on_hover_text("The rod's parts cannot be screwed to this length");
                }
                ui.label(units.length(rod.gap, 2))
                    .on_hover_text("Between the open ends of the cups, as callipers measure it");
                ui.label(format!("{}\u{b0}", format::signed(*toe.get(side), 2)))
                    .on_hover_text("At rest, steering straight ahead; toe-in positive");
                ui.end_row();
            }
        });
}
