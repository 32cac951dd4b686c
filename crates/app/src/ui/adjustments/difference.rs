//! How a setup differs from the reference: what the reference has instead, to be seen and to be taken over.

use eframe::egui::{Button, Response, RichText, Sense, Shape, Stroke, Ui, pos2, vec2};

use super::Row;
use crate::state::{Bench, Change, rods_in_words};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intents, units_of, widgets};

/// Half the height of the mark, points.
const MARK: f32 = 4.0;

/// Says over the groups how many adjustments differ.
pub(super) fn summary(ui: &mut Ui, bench: &Bench) {
    let Some(reference) = bench.reference() else {
        return;
    };
    let count = reference.differing_adjustments(bench.setup());
    let text = match count {
        0 => "No adjustment differs from the reference".to_owned(),
        1 => "1 adjustment differs from the reference".to_owned(),
        _ => format!("{count} adjustments differ from the reference"),
    };
    ui.horizontal(|ui| {
        mark(ui);
        ui.colored_label(Tokens::of(ui.ctx()).reference, text);
    });
}

/// Shows the reference's value of an adjustment where it is another one; a click takes it over.
pub(super) fn show(ui: &mut Ui, bench: &Bench, row: &mut Row<'_>, intents: &mut Intents) {
    let counterpart = bench
        .reference()
        .and_then(|reference| reference.adjustment(&row.adjustment.name));
    let Some((adjustment, value)) = counterpart.filter(|(_, value)| *value != row.value) else {
        return;
    };
    let text = units_of(ui.ctx()).value(adjustment, &value);
    // The parts of the two cars may differ.
    let fits = row.adjustment.nearest(&value) == value;
    if line(ui, &row.adjustment.name, &text, fits).clicked() {
        row.apply(value, intents);
    }
}

/// Shows how the reference's rods are set where that is another way; a click takes it over.
pub(in crate::ui) fn rods(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let Some(rods) = bench
        .reference()
        .map(|reference| reference.setup().rods)
        .filter(|rods| *rods != bench.setup().rods)
    else {
        return;
    };
    if line(ui, "Rods", &rods_in_words(&rods, units_of(ui.ctx())), true).clicked() {
        intents.apply(Change::Rods(rods));
    }
}

fn line(ui: &mut Ui, name: &str, value: &str, fits: bool) -> Response {
    let tokens = Tokens::of(ui.ctx());
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
        mark(ui);
        let text = RichText::new(format!("reference {value}"))
            .small()
            .color(tokens.reference);
        let button = Button::new(text).frame(false);
        let name = format!("{name}: reference {value}");
        let hint = if fits {
            "Click to take the reference's value over"
        } else {
            "The parts of this car cannot be set to the reference's value"
        };
        widgets::named_button(ui, fits, button, &name)
            .on_hover_text(hint)
            .on_disabled_hover_text(hint)
    })
    .inner
}

/// The mark of a difference: a diamond, so that it can be told without its colour.
fn mark(ui: &mut Ui) {
    let (rect, _) = ui.allocate_exact_size(vec2(2.0 * MARK + 2.0, 2.0 * MARK), Sense::hover());
    let at = rect.center();
    let corners = [
        pos2(at.x - MARK, at.y),
        pos2(at.x, at.y - MARK),
        pos2(at.x + MARK, at.y),
        pos2(at.x, at.y + MARK),
    ];
    let stroke = Stroke::new(1.5, Tokens::of(ui.ctx()).reference);
    ui.painter()
        .add(Shape::closed_line(corners.to_vec(), stroke));
}
