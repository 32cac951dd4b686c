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

use eframe::egui::{Align, Button, Layout, ScrollArea, Ui};

use super::{Intents, ViewState, widgets};
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

/// A row with a button at its end that takes away what an owner's name tells; whether it is pressed. `why_not` is told where it
/// cannot be.
fn removable(
    ui: &mut Ui,
    (enabled, owner, why_not): (bool, &str, &str),
    add: impl FnOnce(&mut Ui),
) -> bool {
    ui.horizontal(|ui| {
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let button = Button::new("\u{d7}").small();
            let remove = widgets::named_button(ui, enabled, button, &format!("Remove {owner}"))
                .on_hover_text("Take it away")
                .on_disabled_hover_text(why_not)
                .clicked();
            ui.with_layout(Layout::left_to_right(Align::Center), add);
            remove
        })
        .inner
    })
    .inner
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
