//! What may change: adjustments, how many at a time, and the spacers that stacks share.

use eframe::egui::{DragValue, RichText, Ui};
use steerloft_setup::adjustment::{Adjustment, Kind};

use super::ranges;
use crate::state::Bench;
use crate::state::search::SearchForm;
use crate::theme::Metrics;
use crate::ui::{units_of, widgets};
use crate::units::Units;

/// Most spacers of a kind that can be said to be at hand.
const MOST_SPACERS: u32 = 99;

/// How many adjustments may change.
const MOST_CHANGES: [(&str, Option<usize>); 5] = [
    ("1", Some(1)),
    ("2", Some(2)),
    ("3", Some(3)),
    ("4", Some(4)),
    ("any", None),
];

/// Draws the column.
pub(super) fn show(ui: &mut Ui, bench: &Bench, form: &mut SearchForm) {
    let adjustments = &bench.setup().car.adjustments;
    let units = units_of(ui.ctx());
    ui.label(RichText::new("Changes at most").strong());
    let chosen = MOST_CHANGES
        .iter()
        .position(|(_, most)| *most == form.most_changes);
    let texts = MOST_CHANGES.iter().map(|(text, _)| *text);
    let clicked = widgets::segments(ui, "Changes at most", texts, chosen);
    if let Some((_, most)) = clicked.and_then(|index| MOST_CHANGES.get(index)) {
        form.most_changes = *most;
    }
    ui.add_space(Metrics::GAP_SMALL);
    ui.horizontal(|ui| {
        ui.label(RichText::new("May change").strong());
        if ui.small_button("all").clicked() {
            form.held.clear();
        }
        if ui.small_button("none").clicked() {
            let names = adjustments.iter().map(|adjustment| adjustment.name.clone());
            form.held = names.collect();
        }
    });
    for adjustment in adjustments {
        ui.horizontal(|ui| {
            tick(ui, adjustment, form, units);
            if !form.held.contains(&adjustment.name) {
                ranges::button(ui, adjustment, form);
            }
        });
        if !form.held.contains(&adjustment.name) {
            ranges::show(ui, adjustment, form);
        }
    }
    stocks(ui, bench, form, units);
}

/// Whether an adjustment may change.
fn tick(ui: &mut Ui, adjustment: &Adjustment, form: &mut SearchForm, units: Units) {
    let mut free = !form.held.contains(&adjustment.name);
    let tick = widgets::tick(ui, &mut free, &adjustment.name);
    tick.widget_info(|| {
        let name = format!("May change: {}", adjustment.name);
        eframe::egui::WidgetInfo::selected(eframe::egui::Role::CheckBox, true, free, name)
    });
    let tick = tick.on_hover_text(values_in_words(adjustment, units));
    if tick.changed() {
        if free {
            form.held.remove(&adjustment.name);
        } else {
            form.held.insert(adjustment.name.clone());
        }
    }
}

/// What an adjustment can be.
fn values_in_words(adjustment: &Adjustment, units: Units) -> String {
    match &adjustment.kind {
        Kind::Slide {
            range, step, unit, ..
        } => {
            let sign = match unit {
                steerloft_setup::adjustment::Unit::Millimetres => "mm",
                steerloft_setup::adjustment::Unit::Degrees => "\u{b0}",
            };
            let amount = |value| units.amount(value, sign, 3);
            let steps = step.map_or("any value".to_owned(), |step| {
                format!("in steps of {}", amount(step))
            });
            format!("{} to {}, {steps}", amount(range.0), amount(range.1))
        }
        Kind::Stack { parts, .. } => {
            let parts: Vec<String> = parts
                .iter()
                .map(|part| {
                    format!(
                        "{} of {}",
                        part.count,
                        units.short_length(part.thickness, 3)
                    )
                })
                .collect();
            format!("spacers for one place: {}", parts.join(", "))
        }
        Kind::Choice { options, .. } => {
            let names: Vec<&str> = options.iter().map(|option| option.name.as_str()).collect();
            names.join(", ")
        }
    }
}

/// How many spacers there are of each that several stacks share.
fn stocks(ui: &mut Ui, bench: &Bench, form: &mut SearchForm, units: Units) {
    for stock in &bench.setup().car.stock {
        ui.add_space(Metrics::GAP_SMALL);
        ui.label(RichText::new(format!("At hand: {}", stock.name)).strong());
        for (place, part) in stock.parts.iter().enumerate() {
            let key = (stock.name.clone(), place);
            let mut count = form.counts.get(&key).copied().unwrap_or(part.count);
            let thickness = units.short_length(part.thickness, 3);
            ui.horizontal(|ui| {
                let field = DragValue::new(&mut count)
                    .range(0..=MOST_SPACERS)
                    .speed(0.1);
                let name = format!("{}: how many of {thickness}", stock.name);
                let response = ui.add(field).accessible_name(name);
                ui.label(format!("of {thickness}"));
                if response.changed() {
                    form.counts.insert(key, count);
                }
            });
        }
    }
}
