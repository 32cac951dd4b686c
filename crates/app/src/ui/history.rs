//! Everything that was done, to go back or forth to any of it.

use eframe::egui::{Align, Button, Layout, RichText, ScrollArea, Ui, WidgetInfo, vec2};

use super::{Intent, Intents, units_of};
use crate::state::{Bench, HistoryStep};
use crate::theme::{Metrics, Tokens};

/// Draws the list: how the setup was opened, then each step; those that were undone are weaker.
pub fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let steps = bench.steps(units_of(ui.ctx()));
    let place = bench.place();
    let tokens = Tokens::of(ui.ctx());
    ui.colored_label(
        tokens.text_weak,
        "Click a step to have the setup as that step left it. Saving does not end the list.",
    );
    ui.add_space(Metrics::GAP_SMALL);
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show_rows(ui, Metrics::CONTROL_HEIGHT, steps.len() + 1, |ui, rows| {
            for row in rows {
                let step = row.checked_sub(1).and_then(|index| steps.get(index));
                if entry(ui, row, step, place) {
                    intents.push(Intent::Jump(row));
                }
            }
        });
}

/// One row; whether it was asked for.
fn entry(ui: &mut Ui, row: usize, step: Option<&HistoryStep>, place: usize) -> bool {
    let tokens = Tokens::of(ui.ctx());
    let (text, saved) = step.map_or(("As it was before the steps below", false), |step| {
        (step.name.as_str(), step.saved)
    });
    let here = row == place;
    let ink = match row.cmp(&place) {
        std::cmp::Ordering::Greater => tokens.text_weak,
        std::cmp::Ordering::Equal => tokens.text_strong,
        std::cmp::Ordering::Less => tokens.text,
    };
    let mut content = RichText::new(format!("{row}   {text}")).color(ink);
    if row > place {
        content = content.italics();
    }
    let size = vec2(ui.available_width(), Metrics::CONTROL_HEIGHT);
    ui.allocate_ui_with_layout(size, Layout::right_to_left(Align::Center), |ui| {
        if saved {
            ui.colored_label(tokens.accent, "saved")
                .on_hover_text("The file holds the setup as this step left it");
        }
        ui.with_layout(
            Layout::left_to_right(Align::Center).with_main_justify(true),
            |ui| {
                // What stands at the end of a button pushes the rest to its start.
                let button = Button::selectable(here, content).truncate().right_text("");
                let response = ui.add(button);
                let name = format!("Step {row}: {text}");
                response.widget_info(|| {
                    WidgetInfo::selected(eframe::egui::Role::Button, true, here, &name)
                });
                response.clicked() && !here
            },
        )
        .inner
    })
    .inner
}
