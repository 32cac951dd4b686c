//! What is wanted: figures with a value or a range and a weight, whole curves, and the behaviour of the reference.

use std::ops::RangeInclusive;

use eframe::egui::{ComboBox, RichText, Ui};
use steerloft_analysis::InputUnit;
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::{Target, Wheel};

use super::curves;
use crate::state::Bench;
use crate::state::search::{SearchForm, WantDraft};
use crate::theme::Metrics;
use crate::ui::widgets::{self, NumberField};

/// Values that can be wanted, in the figure's unit.
const VALUES: RangeInclusive<f64> = -10_000.0..=10_000.0;

/// Angles of the inner wheel at which an Ackermann share can be wanted, degrees.
const ANGLES: RangeInclusive<f64> = 1.0..=60.0;

/// Weights that can be given.
const WEIGHTS: RangeInclusive<f64> = 0.01..=100.0;

/// Draws the list of wants.
pub(super) fn show(ui: &mut Ui, bench: &Bench, form: &mut SearchForm) {
    ui.label(RichText::new("Wanted").strong());
    let unit = InputUnit::of(&bench.setup().car);
    let mut taken = None;
    for (index, want) in form.wants.iter_mut().enumerate() {
        ui.push_id(index, |ui| {
            if show_want(ui, &format!("Want {}", index + 1), want, unit) {
                taken = Some(index);
            }
        });
        ui.add_space(Metrics::GAP_SMALL);
    }
    if let Some(index) = taken {
        form.wants.remove(index);
    }
    if ui.button("Add a want").clicked() {
        let used = |kind: &FigureKind| form.wants.iter().any(|want| want.figure == *kind);
        let next = WantDraft::figures().find(|kind| !used(kind));
        let next = WantDraft::of(next.unwrap_or(FigureKind::BumpSteer));
        form.wants.push(next);
    }
    ui.add_space(Metrics::GAP_SMALL);
    curves::show(ui, bench, form);
    ui.add_space(Metrics::GAP);
    let has_reference = bench.compared().is_some();
    ui.add_enabled_ui(has_reference || form.keeps_behaviour, |ui| {
        widgets::tick(ui, &mut form.keeps_behaviour, "The reference's curves")
            .on_hover_text(
                "Bring toe against travel and outer against inner angle of the reference back, after a part was changed",
            )
            .on_disabled_hover_text("Keep or open a reference first");
    });
}

/// One want; whether it is to be taken away.
fn show_want(ui: &mut Ui, name: &str, want: &mut WantDraft, unit: InputUnit) -> bool {
    let mut taken = false;
    ui.horizontal(|ui| {
        figure(ui, name, want);
        if want.has_wheel() {
            wheel(ui, name, &mut want.wheel);
        }
        taken = widgets::take_away(ui, name, "Do without this want");
    });
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
        target(ui, name, want, unit);
    });
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
        if want.figure == FigureKind::Ackermann {
            ui.label("inner at");
            let field = NumberField {
                name: &format!("{name}: angle of the inner wheel"),
                unit: "\u{b0}",
                range: ANGLES,
                speed: 0.25,
                decimals: 1,
            };
            field.show(ui, &mut want.inner);
        }
        weight(ui, name, &mut want.weight);
    });
    taken
}

/// How much a want matters.
pub(super) fn weight(ui: &mut Ui, name: &str, weight: &mut f64) {
    ui.label("weight");
    let field = NumberField {
        name: &format!("{name}: weight"),
        unit: "",
        range: WEIGHTS,
        speed: 0.05,
        decimals: 2,
    };
    let hint = "How much it matters against the other wants";
    field.show(ui, weight).on_hover_text(hint);
}

fn figure(ui: &mut Ui, name: &str, want: &mut WantDraft) {
    let list = ComboBox::from_id_salt("figure")
        .selected_text(want.figure.facts().brief)
        .width(118.0);
    let response = list.show_ui(ui, |ui| {
        for kind in WantDraft::figures() {
            ui.selectable_value(&mut want.figure, kind, kind.facts().title)
                .on_hover_text(kind.facts().meaning);
        }
    });
    response.response.accessible_name(format!("{name}: figure"));
}

/// The wheel, or the turn, that a want is about.
pub(super) fn wheel(ui: &mut Ui, name: &str, wanted: &mut Wheel) {
    let options = [
        (Wheel::Both, "both"),
        (Wheel::Left, "left"),
        (Wheel::Right, "right"),
    ];
    let text = options.iter().find(|(wheel, _)| wheel == wanted);
    let list = ComboBox::from_id_salt("wheel")
        .selected_text(text.map_or("", |(_, text)| text))
        .width(52.0);
    let response = list.show_ui(ui, |ui| {
        for (wheel, text) in options {
            ui.selectable_value(wanted, wheel, text);
        }
    });
    response.response.accessible_name(format!("{name}: side"));
}

/// One value, or a range.
fn target(ui: &mut Ui, name: &str, want: &mut WantDraft, unit: InputUnit) {
    let facts = want.figure.facts();
    let field = |ui: &mut Ui, what: &str, value: &mut f64| {
        let field = NumberField {
            name: &format!("{name}: {what}"),
            unit: facts.unit(unit),
            range: VALUES,
            speed: 10_f64.powi(-i32::try_from(facts.decimals).unwrap_or(2)),
            decimals: facts.decimals + 1,
        };
        field.show(ui, value);
    };
    let is_range = matches!(want.target, Target::Range(..));
    let kinds = ["be", "lie in"];
    let chosen = widgets::segments(ui, name, kinds.into_iter(), Some(usize::from(is_range)));
    match (chosen, want.target) {
        (Some(1), Target::Value(value)) => want.target = Target::Range(value, value),
        (Some(0), Target::Range(least, most)) => {
            want.target = Target::Value(f64::midpoint(least, most));
        }
        _ => {}
    }
    match &mut want.target {
        Target::Value(value) => field(ui, "value", value),
        Target::Range(least, most) => {
            field(ui, "least", least);
            *most = most.max(*least);
            ui.label("to");
            field(ui, "most", most);
            *least = least.min(*most);
        }
    }
}
