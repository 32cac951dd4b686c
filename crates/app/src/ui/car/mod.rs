//! The panel that describes the car itself: its name and kind, points and numbers, its sides, its adjustments, and what may be
//! left out.

mod adjustment_form;
mod adjustments;
mod effect_form;
mod field;
mod further;
mod header;
mod links;
mod numbers;
mod obstacles;
mod points;
mod stocks;
mod vector;

pub mod kinds;
pub mod new_car;

use eframe::egui::{ScrollArea, Ui};

use super::{Intents, ViewState};
use crate::state::{Bench, CarEditing};
use crate::theme::Metrics;

/// Draws the panel.
pub fn show(ui: &mut Ui, bench: &Bench, view: &mut ViewState, intents: &mut Intents) {
    let Some(editing) = &mut view.car_editing else {
        return;
    };
    ScrollArea::vertical()
        .id_salt("car")
        .auto_shrink([false, false])
        .show(ui, |ui| sections(ui, bench, editing, intents));
}

fn sections(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    header::show(ui, bench, intents);
    points::show(ui, bench, editing, intents);
    links::show(ui, bench, editing, intents);
    numbers::show(ui, bench, editing, intents);
    adjustments::show(ui, bench, editing, intents);
    stocks::show(ui, bench, editing, intents);
    further::show(ui, bench, editing, intents);
    obstacles::show(ui, bench, editing, intents);
    ui.add_space(Metrics::GAP_LARGE);
}
