//! Fitting the car to gauge readings: the table of readings, what is uncertain, what was found, and what is left.

mod outcome;
mod readings;
mod residuals;
mod uncertain;

use eframe::egui::Ui;

use super::columns;
use crate::state::Bench;
use crate::state::fitting::Fitting;
use crate::ui::{Intents, units_of};

/// Shares of the drawer's width.
const SHARES: [f32; 4] = [0.37, 0.19, 0.25, 0.19];

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, fitting: &mut Fitting, intents: &mut Intents) {
    fitting.take();
    let units = units_of(ui.ctx());
    columns(ui, "fit", SHARES, |ui, column| match column {
        0 => readings::show(ui, bench, fitting, units, intents),
        1 => uncertain::show(ui, bench, fitting),
        2 => {
            outcome::start(ui, bench, fitting, units);
            outcome::show(ui, bench, fitting, units, intents);
        }
        _ => residuals::show(ui, fitting),
    });
}
