//! What to change on the car to come from the reference to this setup.

use eframe::egui::{Grid, RichText, ScrollArea, Ui};
use steerloft_setup::compare::{Comparison, DataDifference, OnlyInOne, RodsDifference, compare};
use steerloft_solver::frame::Side;

use crate::format;
use crate::state::{Bench, rods_in_words};
use crate::theme::{Metrics, Tokens};
use crate::ui::units_of;
use crate::units::Units;

/// Draws the list of parts to change; says so where there is nothing to compare with or nothing to change.
pub(super) fn show(ui: &mut Ui, bench: &Bench) {
    let tokens = Tokens::of(ui.ctx());
    let Some(reference) = bench.reference() else {
        let hint = "There is no other setup to compare with. Keep this one as the reference and change it, or open another one as the reference.";
        ui.colored_label(tokens.text_weak, hint);
        return;
    };
    let comparison = compare(reference.setup(), bench.setup());
    let name = reference.name();
    if comparison.is_empty() {
        ui.label(format!(
            "Nothing to change: {name} has the same parts, settings and car."
        ));
        return;
    }
    ui.label(format!("To come from {name} to this setup, change"));
    ui.add_space(Metrics::GAP_SMALL);
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            Grid::new("changes")
                .num_columns(2)
                .striped(true)
                .show(ui, |ui| {
                    for (what, how) in rows(&comparison, units_of(ui.ctx())) {
                        ui.label(RichText::new(what).strong());
                        ui.label(how);
                        ui.end_row();
                    }
                });
        });
}

/// What is to be changed, and how.
fn rows(comparison: &Comparison, units: Units) -> Vec<(String, String)> {
    let mut rows: Vec<(String, String)> = Vec::new();
    for difference in &comparison.adjustments {
        let how = units.sentence(&difference.to_string());
        rows.push((difference.name.clone(), how));
    }
    if let Some(rods) = &comparison.rods {
        rows.extend(rod_rows(rods, units));
    }
    rows.extend(
        comparison
            .only_in_one
            .iter()
            .map(|only| only_row(only, units)),
    );
    rows.extend(comparison.data.iter().map(|data| data_row(data, units)));
    rows
}

/// How the rods are set and come out.
fn rod_rows(rods: &RodsDifference, units: Units) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    if rods.from != rods.to {
        let set = |rods| rods_in_words(rods, units);
        let how = format!("{} instead of {}", set(&rods.to), set(&rods.from));
        rows.push(("Rods".to_owned(), how));
    }
    let Some(lengths) = &rods.lengths else {
        return rows;
    };
    rows.extend(Side::BOTH.map(|side| {
        let rod = lengths.get(side);
        let (from, to) = (units.length(rod.from, 2), units.length(rod.to, 2));
        let gap = units.length(rod.gap, 2);
        let turns = rod.turns.map_or(String::new(), |turns| {
            format!(", {} turns", format::signed(turns, 2))
        });
        let how = format!("from {from} to {to}{turns}; gap between the cups {gap}");
        (format!("Rod, {side}"), how)
    }));
    rows
}

fn only_row(only: &OnlyInOne, units: Units) -> (String, String) {
    let whose = if only.in_first {
        "the reference"
    } else {
        "this setup"
    };
    let value = units.sentence(&only.value);
    (only.name.clone(), format!("{value}; only {whose} has it"))
}

fn data_row(data: &DataDifference, units: Units) -> (String, String) {
    let value = |value: &Option<String>| {
        let text = value.as_deref().unwrap_or("not given");
        units.sentence(text)
    };
    let how = format!("from {} to {}", value(&data.from), value(&data.to));
    (format!("Of the car, {}", data.at), how)
}
