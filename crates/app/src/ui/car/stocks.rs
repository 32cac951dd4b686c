//! Spacers at hand that several stacks share.

use eframe::egui::Ui;

use super::{field, removable};
use crate::state::{Bench, CarEditing, Field, TextField, stocks};
use crate::theme::Metrics;
use crate::ui::{Intents, car_change, units_of, widgets};

/// Draws the list.
pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    widgets::group_heading(ui, "Spacers at hand");
    let car = &bench.setup().car;
    if car.stock.is_empty() {
        ui.weak("None yet. Stacks that take from one box of spacers are not given a spacer twice.");
    }
    for index in 0..car.stock.len() {
        ui.push_id(("stock", index), |ui| {
            one(ui, bench, editing, intents, index);
        });
    }
    ui.add_space(Metrics::GAP_SMALL);
    if ui.button("Add a box of spacers").clicked() {
        intents.apply(car_change(stocks::added(car)));
    }
}

fn one(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents, index: usize) {
    let car = &bench.setup().car;
    let Some(stock) = car.stock.get(index) else {
        return;
    };
    let owner = format!("Box {}", index + 1);
    let takers: Vec<&str> = stocks::takers(car, &stock.name).collect();
    ui.add_space(Metrics::GAP_SMALL);
    let name = format!("{owner} name");
    let text = TextField::StockName(index);
    let in_use = "Stacks take from it: write them without it first.";
    let removed = removable(ui, (takers.is_empty(), &owner, in_use), |ui| {
        field::show_text(ui, bench, &mut editing.entries, intents, (text, &name));
    });
    if removed {
        editing.entries.reset_lists();
        intents.apply(car_change(stocks::without(car, index)));
    }
    field::error(ui, &editing.entries, Field::Text(text), &name);
    let name = format!("{owner} spacers");
    let text = TextField::StockSpacers(index);
    ui.horizontal(|ui| {
        let unit = units_of(ui.ctx()).sign();
        ui.label(unit)
            .on_hover_text("How many of which thickness, for the whole car: 4 x 0.5, 2 x 1");
        field::show_text(ui, bench, &mut editing.entries, intents, (text, &name));
    });
    field::error(ui, &editing.entries, Field::Text(text), &name);
    if takers.is_empty() {
        ui.weak("No stack takes from it: an adjustment that is a stack says so.");
    } else {
        ui.weak(format!("For {}", takers.join(", ")));
    }
}
