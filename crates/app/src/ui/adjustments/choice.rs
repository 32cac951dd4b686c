//! A choice: a row of buttons while the names fit, else a list that drops down.

use eframe::egui::{ComboBox, TextStyle, Ui};
use steerloft_setup::adjustment::{ChoiceOption, Kind};
use steerloft_setup::setup::Chosen;

use super::Row;
use crate::ui::Intents;
use crate::ui::widgets;

/// Options beyond this number go into a list.
const MOST_SEGMENTS: usize = 4;

pub(super) fn show(ui: &mut Ui, row: &mut Row<'_>, intents: &mut Intents) {
    let (Kind::Choice { options, .. }, Chosen::Choice(chosen)) = (&row.adjustment.kind, &row.value)
    else {
        return;
    };
    let at = options.iter().position(|option| option.name == *chosen);
    let clicked = if fits(ui, options) {
        widgets::segments(
            ui,
            &row.adjustment.name,
            options.iter().map(|option| option.name.as_str()),
            at,
        )
    } else {
        drop_down(ui, row, options, at)
    };
    if let Some(option) = clicked.and_then(|index| options.get(index)) {
        row.apply(Chosen::Choice(option.name.clone()), intents);
    }
}

/// Whether the options' names fit side by side.
fn fits(ui: &Ui, options: &[ChoiceOption]) -> bool {
    let font = TextStyle::Button.resolve(ui.style());
    let padding = 2.0 * ui.spacing().button_padding.x + 2.0;
    let width: f32 = options
        .iter()
        .map(|option| {
            let color = ui.visuals().text_color();
            let text = ui
                .painter()
                .layout_no_wrap(option.name.clone(), font.clone(), color);
            text.size().x + padding
        })
        .sum();
    options.len() <= MOST_SEGMENTS && width <= ui.available_width()
}

fn drop_down(
    ui: &mut Ui,
    row: &Row<'_>,
    options: &[ChoiceOption],
    at: Option<usize>,
) -> Option<usize> {
    let mut clicked = None;
    let shown = at
        .and_then(|index| options.get(index))
        .map_or("", |option| option.name.as_str());
    let combo = ComboBox::from_id_salt("choice")
        .selected_text(shown)
        .width(ui.available_width())
        .truncate()
        .show_ui(ui, |ui| {
            for (index, option) in options.iter().enumerate() {
                if ui
                    .selectable_label(at == Some(index), &option.name)
                    .clicked()
                    && at != Some(index)
                {
                    clicked = Some(index);
                }
            }
        });
    combo.response.accessible_name(&row.adjustment.name);
    clicked
}
