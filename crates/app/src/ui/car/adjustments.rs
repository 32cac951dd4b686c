//! The adjustments of the car: in their order, to be written, moved and removed.

use eframe::egui::{Align, Button, Label, Layout, Ui};
use steerloft_setup::edit::CarEdit;

use super::adjustment_form;
use crate::state::{AdjustmentDraft, Bench, CarEditing, Change};
use crate::theme::Metrics;
use crate::ui::{Intents, units_of, widgets};

pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    widgets::group_heading(ui, "Adjustments");
    let adjustments = &bench.setup().car.adjustments;
    if adjustments.is_empty() {
        ui.weak("None yet. An adjustment is whatever can be changed on the car: a slot, a row of holes, a stack of spacers.");
    }
    for (index, adjustment) in adjustments.iter().enumerate() {
        let written = editing
            .draft
            .as_ref()
            .is_some_and(|draft| draft.index == Some(index));
        if written {
            adjustment_form::show(ui, bench, editing, intents);
        } else {
            ui.push_id(&adjustment.name, |ui| {
                row(ui, bench, editing, intents, index);
            });
        }
    }
    match &editing.draft {
        Some(draft) if draft.index.is_none() => adjustment_form::show(ui, bench, editing, intents),
        _ => {
            ui.add_space(Metrics::GAP_SMALL);
            if ui.button("Add an adjustment").clicked() {
                editing.draft = Some(AdjustmentDraft::new(units_of(ui.ctx())));
            }
        }
    }
}

fn row(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents, index: usize) {
    let adjustments = &bench.setup().car.adjustments;
    let Some(adjustment) = adjustments.get(index) else {
        return;
    };
    let name = &adjustment.name;
    let last = adjustments.len() - 1;
    let units = units_of(ui.ctx());
    ui.horizontal(|ui| {
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.spacing_mut().item_spacing.x = 2.0;
            let mut button = |text: &str, enabled: bool, word: &str| {
                let name = format!("{word} {name}");
                let button = Button::new(text).small();
                widgets::named_button(ui, enabled, button, &name)
                    .on_hover_text(&name)
                    .clicked()
            };
            let edit = if button("\u{d7}", true, "Remove") {
                Some(CarEdit::RemoveAdjustment { index })
            } else if button("later", index < last, "Apply later:") {
                let to = index + 1;
                Some(CarEdit::MoveAdjustment { from: index, to })
            } else if button("earlier", index > 0, "Apply earlier:") {
                let to = index.saturating_sub(1);
                Some(CarEdit::MoveAdjustment { from: index, to })
            } else {
                if button("edit", true, "Edit") {
                    editing.draft = Some(AdjustmentDraft::of(index, adjustment, units));
                }
                None
            };
            if let Some(edit) = edit {
                editing.draft = None;
                intents.apply(Change::Car(Box::new(edit)));
            }
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                ui.add(Label::new(name).truncate());
            });
        });
    });
}
