//! The panel on the left: every adjustment of the car by place, how the rods are set, and the record.

mod choice;
pub(super) mod difference;
mod hint;
mod slide;
mod stack;

use eframe::egui::{Button, Id, Label, Rect, RichText, ScrollArea, Sense, Ui, vec2};
use steerloft_setup::adjustment::{Adjustment, Kind, Place};
use steerloft_setup::setup::{Chosen, Setup};

use super::{Intents, ViewState, names, note, record, rods, units_of, widgets};
use crate::state::{Bench, Change};
use crate::theme::{Metrics, Tokens};

/// Draws the panel.
pub fn show(ui: &mut Ui, bench: &Bench, view: &mut ViewState, intents: &mut Intents) {
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            let car = &bench.setup().car;
            note(ui.label(RichText::new(&car.name).strong()), &car.notes);
            difference::summary(ui, bench);
            for place in names::PLACES {
                group(ui, bench, view, intents, place);
            }
            rods::show(ui, bench, intents);
            record::show(ui, bench, view, intents);
            ui.add_space(Metrics::GAP);
        });
}

fn group(ui: &mut Ui, bench: &Bench, view: &mut ViewState, intents: &mut Intents, place: Place) {
    let adjustments = || {
        let all = bench.setup().car.adjustments.iter().enumerate();
        all.filter(|(_, adjustment)| adjustment.place == place)
    };
    if adjustments().next().is_none() {
        return;
    }
    widgets::group_heading(ui, names::place(place));
    for (index, adjustment) in adjustments() {
        let height_id = ui.scope_id().with(("height", index));
        if view.views.is_dragging() && is_left_out(ui, height_id) {
            ui.add_space(Metrics::GAP_SMALL);
            continue;
        }
        let mut row = Row {
            setup: bench.setup(),
            index,
            adjustment,
            value: bench.setup().value(index),
            touched: false,
        };
        let drawn = ui.push_id(&adjustment.name, |ui| {
            row.show(ui, intents);
            difference::show(ui, bench, &mut row, intents);
        });
        let height = drawn.response.rect.height();
        ui.data_mut(|data| data.insert_temp(height_id, height));
        if row.touched {
            view.last_adjustment = Some(index);
        }
        ui.add_space(Metrics::GAP_SMALL);
    }
}

/// Leaves room for a row that is out of sight, as high as it was drawn last; whether it is.
///
/// Only while a pivot is dragged, when nobody can turn to the row: most of what a row costs is laying it out, seen or not.
fn is_left_out(ui: &mut Ui, height_id: Id) -> bool {
    let Some(height) = ui.data(|data| data.get_temp::<f32>(height_id)) else {
        return false;
    };
    let size = vec2(ui.available_width(), height);
    let is_seen = ui.is_rect_visible(Rect::from_min_size(ui.cursor().min, size));
    if !is_seen {
        ui.allocate_exact_size(size, Sense::hover());
    }
    !is_seen
}

/// One adjustment in the panel.
struct Row<'a> {
    setup: &'a Setup,
    index: usize,
    adjustment: &'a Adjustment,
    value: Chosen,
    touched: bool,
}

impl Row<'_> {
    fn show(&mut self, ui: &mut Ui, intents: &mut Intents) {
        self.title(ui, intents);
        match &self.adjustment.kind {
            Kind::Slide { .. } => slide::show(ui, self, intents),
            Kind::Stack { .. } => stack::show(ui, self, intents),
            Kind::Choice { .. } => choice::show(ui, self, intents),
        }
    }

    /// The name, and a button back to base while the value is another one.
    fn title(&mut self, ui: &mut Ui, intents: &mut Intents) {
        let base = self.adjustment.base();
        let moved = base != self.value;
        let tokens = Tokens::of(ui.ctx());
        let back = widgets::name_row(
            ui,
            |ui| {
                let ink = match (self.is_buildable(), moved) {
                    (false, _) => tokens.warning,
                    (true, true) => tokens.text_strong,
                    (true, false) => tokens.text,
                };
                let name = RichText::new(&self.adjustment.name).color(ink);
                ui.add(Label::new(name).truncate())
                    .on_hover_ui(|ui| hint::show(ui, self));
            },
            |ui| {
                let name = format!("{}: back to base", self.adjustment.name);
                let button = Button::new(RichText::new("Base").small());
                moved
                    && widgets::named_button(ui, true, button, &name)
                        .on_hover_text(format!(
                            "Back to base: {}",
                            units_of(ui.ctx()).value(self.adjustment, &base)
                        ))
                        .clicked()
            },
        );
        if back {
            self.apply(base, intents);
        }
    }

    /// Whether the parts allow the value as it is.
    fn is_buildable(&self) -> bool {
        self.adjustment.is_buildable(&self.value)
    }

    fn change(&self, value: Chosen) -> Change {
        Change::Adjust {
            adjustment: self.index,
            value,
        }
    }

    fn apply(&mut self, value: Chosen, intents: &mut Intents) {
        self.touched = true;
        intents.apply(self.change(value));
    }
}
