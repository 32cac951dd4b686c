//! The dimensions that may differ from the car's file.

use eframe::egui::{RichText, Role, TextEdit, Ui, WidgetInfo};
use steerloft_setup::dimension::Dimension;

use crate::state::Bench;
use crate::state::fitting::Fitting;
use crate::ui::{names, widgets};

/// Draws the list, those ticked first.
pub(super) fn show(ui: &mut Ui, bench: &Bench, fitting: &mut Fitting) {
    ui.label(RichText::new("Uncertain").strong()).on_hover_text(
        "What the readings are to find; everything else is taken as the car's file says",
    );
    let filter = TextEdit::singleline(&mut fitting.filter)
        .hint_text("part of a name")
        .desired_width(f32::INFINITY);
    ui.add(filter).accessible_name("Part of a dimension's name");
    let wanted = fitting.filter.trim().to_lowercase();
    for dimension in fitting.dimensions(bench.setup()) {
        let is_ticked = fitting.uncertain.contains(&dimension);
        if is_ticked || dimension.to_string().to_lowercase().contains(&wanted) {
            tick(ui, fitting, dimension);
        }
    }
}

fn tick(ui: &mut Ui, fitting: &mut Fitting, dimension: Dimension) {
    let name = dimension.to_string();
    let mut is_uncertain = fitting.uncertain.contains(&dimension);
    let tick = widgets::tick(ui, &mut is_uncertain, names::sentence(&name));
    tick.widget_info(|| {
        let name = format!("Uncertain: {name}");
        WidgetInfo::selected(Role::CheckBox, true, is_uncertain, name)
    });
    if tick.changed() {
        fitting.uncertain.retain(|other| *other != dimension);
        if is_uncertain {
            fitting.uncertain.push(dimension);
        }
    }
}
