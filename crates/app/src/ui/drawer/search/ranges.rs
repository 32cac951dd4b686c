//! Between which values an adjustment is kept for a search.

use eframe::egui::{Button, Ui};
use steerloft_setup::adjustment::{Adjustment, Kind, Unit};
use steerloft_setup::setup::Chosen;

use crate::state::search::SearchForm;
use crate::theme::Metrics;
use crate::ui::widgets::{self, NumberField};

/// The least and greatest value that an adjustment can have, mm or degrees; none for a choice.
fn ends(adjustment: &Adjustment) -> Option<(f64, f64)> {
    if let Kind::Slide { range, .. } = adjustment.kind {
        return Some(range);
    }
    let values = adjustment.values()?;
    match (values.first(), values.last()) {
        (Some(Chosen::Stack(least)), Some(Chosen::Stack(most))) => Some((*least, *most)),
        _ => None,
    }
}

/// The button that narrows an adjustment, beside its tick.
pub(super) fn button(ui: &mut Ui, adjustment: &Adjustment, form: &mut SearchForm) {
    let Some(ends) = ends(adjustment) else {
        return;
    };
    let name = &adjustment.name;
    if form.ranges.contains_key(name) {
        return;
    }
    let button = Button::new("\u{2026}").small();
    let narrow = widgets::named_button(ui, true, button, &format!("Keep within: {name}"));
    let hint = "Keep it within a range for this search";
    if narrow.on_hover_text(hint).clicked() {
        form.ranges.insert(name.clone(), ends);
    }
}

/// The range of an adjustment that is narrowed, below its tick.
pub(super) fn show(ui: &mut Ui, adjustment: &Adjustment, form: &mut SearchForm) {
    let name = &adjustment.name;
    let (Some((from, to)), Some((least, most))) = (ends(adjustment), form.ranges.get_mut(name))
    else {
        return;
    };
    let mut taken = false;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
        ui.add_space(Metrics::GAP);
        let field = |ui: &mut Ui, what: &str, value: &mut f64| {
            let field = NumberField {
                name: &format!("{name}: {what}"),
                unit: match adjustment.unit() {
                    Unit::Millimetres => "mm",
                    Unit::Degrees => "\u{b0}",
                },
                range: from..=to,
                speed: 0.05,
                decimals: 3,
            };
            field.show(ui, value);
        };
        field(ui, "least", least);
        *most = most.max(*least);
        ui.label("to");
        field(ui, "most", most);
        *least = least.min(*most);
        let button = Button::new("\u{d7}").small();
        let whole = widgets::named_button(ui, true, button, &format!("{name}: whole range"));
        taken = whole
            .on_hover_text("Let it be anything it can be")
            .clicked();
    });
    if taken {
        form.ranges.remove(name);
    }
}
