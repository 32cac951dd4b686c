//! Whole curves that are wanted, point by point.

use std::ops::RangeInclusive;

use eframe::egui::{Button, RichText, Ui};

use super::wants;
use crate::state::Bench;
use crate::state::search::{CurveDraft, MOST_POINTS, SearchForm, WantedCurve};
use crate::theme::Metrics;
use crate::ui::widgets::{self, NumberField};

/// Travels that a toe can be wanted at, mm.
const TRAVELS: RangeInclusive<f64> = -200.0..=200.0;

/// Angles that can be wanted, degrees.
const ANGLES: RangeInclusive<f64> = -80.0..=80.0;

/// Tolerances that can be given, degrees.
const TOLERANCES: RangeInclusive<f64> = 0.0..=10.0;

/// Draws the list of curves and the buttons that add one.
pub(super) fn show(ui: &mut Ui, bench: &Bench, form: &mut SearchForm) {
    let mut taken = None;
    for (index, curve) in form.curves.iter_mut().enumerate() {
        ui.push_id(("curve", index), |ui| {
            if show_curve(ui, &format!("Curve {}", index + 1), curve) {
                taken = Some(index);
            }
        });
        ui.add_space(Metrics::GAP_SMALL);
    }
    if let Some(index) = taken {
        form.curves.remove(index);
    }
    let Some(now) = bench.derived().shown() else {
        return;
    };
    ui.menu_button("Add a curve", |ui| {
        for curve in WantedCurve::ALL {
            if ui.button(curve.kind().title()).clicked() {
                form.curves.push(CurveDraft::of(curve, now));
                ui.close();
            }
        }
    });
}

/// One curve; whether it is to be taken away.
fn show_curve(ui: &mut Ui, name: &str, curve: &mut CurveDraft) -> bool {
    let mut taken = false;
    ui.label(curve.curve.kind().title());
    ui.horizontal(|ui| {
        wants::wheel(ui, name, &mut curve.wheel);
        taken = widgets::take_away(ui, name, "Do without this curve");
    });
    points(ui, name, curve);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
        ui.label("within");
        let field = NumberField {
            name: &format!("{name}: tolerance"),
            unit: "\u{b0}",
            range: TOLERANCES,
            speed: 0.01,
            decimals: 3,
        };
        let hint = "How far it may be off at each point and still count as wanted";
        field.show(ui, &mut curve.tolerance).on_hover_text(hint);
        wants::weight(ui, name, &mut curve.weight);
    });
    taken
}

/// The points, each with a button that takes it away.
fn points(ui: &mut Ui, name: &str, curve: &mut CurveDraft) {
    let (at, at_unit, range, value) = match curve.curve {
        WantedCurve::ToeTravel => ("travel", "mm", TRAVELS, "toe"),
        WantedCurve::InnerOuter => ("inner angle", "\u{b0}", ANGLES, "outer angle"),
    };
    ui.label(RichText::new(format!("{at}, {value}")).small());
    let mut taken = None;
    let several = curve.points.len() > 1;
    for (index, [place, wanted]) in curve.points.iter_mut().enumerate() {
        let name = format!("{name}, point {}", index + 1);
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
            let field = |name: &str, unit, range, decimals, ui: &mut Ui, value: &mut f64| {
                let field = NumberField {
                    name,
                    unit,
                    range,
                    speed: 10_f64.powi(1 - i32::try_from(decimals).unwrap_or(2)),
                    decimals,
                };
                field.show(ui, value);
            };
            field(
                &format!("{name}: {at}"),
                at_unit,
                range.clone(),
                2,
                ui,
                place,
            );
            field(&format!("{name}: {value}"), "\u{b0}", ANGLES, 3, ui, wanted);
            let button = Button::new("\u{d7}").small();
            let away = format!("{name}: take away");
            if widgets::named_button(ui, several, button, &away).clicked() {
                taken = Some(index);
            }
        });
    }
    if let Some(index) = taken {
        curve.points.remove(index);
    }
    let room = curve.points.len() < MOST_POINTS;
    let button = Button::new("Add a point").small();
    if widgets::named_button(ui, room, button, &format!("{name}: add a point")).clicked() {
        curve.add_point();
    }
}
