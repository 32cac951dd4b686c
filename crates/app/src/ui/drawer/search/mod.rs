//! The search over the parts at hand: what is wanted, what may change, and what was found.

mod curves;
mod findings;
mod front;
mod ranges;
mod space;
mod wants;

use std::time::Duration;

use eframe::egui::{Button, ProgressBar, RichText, Ui};

use super::columns;
use crate::state::Bench;
use crate::state::search::Searching;
use crate::theme::Metrics;
use crate::ui::{Intents, widgets};

/// How often progress is shown.
const SHOW_EVERY: Duration = Duration::from_millis(100);

/// Shares of the drawer's width.
const SHARES: [f32; 4] = [0.27, 0.2, 0.34, 0.19];

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, searching: &mut Searching, intents: &mut Intents) {
    searching.take();
    let [wanted, free, found, trade] = SHARES;
    columns(
        ui,
        "search",
        [wanted, free, found, trade],
        |ui, column| match column {
            0 => wants::show(ui, bench, &mut searching.form),
            1 => space::show(ui, bench, &mut searching.form),
            2 => {
                start_and_stop(ui, bench, searching);
                findings::show(ui, bench, searching, intents);
            }
            _ => front::show(ui, searching),
        },
    );
}

/// The button that starts the search or stops it, and how far it is.
fn start_and_stop(ui: &mut Ui, bench: &Bench, searching: &mut Searching) {
    ui.horizontal(|ui| {
        let Some((done, all)) = searching.progress() else {
            let start = widgets::named_button(ui, true, Button::new("Search"), "Start the search");
            let hint = "Try every combination of what may change, and list what comes closest";
            if start.on_hover_text(hint).clicked() {
                let ctx = ui.ctx().clone();
                searching.start(bench, move || ctx.request_repaint());
                ui.ctx().request_repaint();
            }
            return;
        };
        let stop = widgets::named_button(ui, true, Button::new("Stop"), "Stop the search");
        if stop.on_hover_text("Stop and keep what was found").clicked() {
            searching.stop();
        }
        let bar = ProgressBar::new(share(done, all)).desired_width(90.0);
        ui.add(bar).accessible_name("Progress of the search");
        ui.label(RichText::new(format!("{} of {}", grouped(done), grouped(all))).small());
        ui.ctx().request_repaint_after(SHOW_EVERY);
    });
    ui.add_space(Metrics::GAP_SMALL);
}

#[allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "a share is shown to a few digits"
)]
fn share(done: u64, all: u64) -> f32 {
    (done as f64 / all.max(1) as f64) as f32
}

/// A count with its digits in groups of three.
fn grouped(count: u64) -> String {
    let digits = count.to_string();
    let first = digits.len() % 3;
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && index % 3 == first {
            text.push('\u{202f}');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::grouped;

    #[test]
    fn counts_are_told_in_groups_of_three_digits() {
        assert_eq!(grouped(7), "7");
        assert_eq!(grouped(1_234), "1\u{202f}234");
        assert_eq!(grouped(123_456_789), "123\u{202f}456\u{202f}789");
    }
}
