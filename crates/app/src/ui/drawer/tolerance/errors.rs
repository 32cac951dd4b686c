//! How far the dimensions of the car may be off.

use eframe::egui::{Button, ComboBox, RichText, Ui};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::{BuildErrors, PointError};
use steerloft_setup::edit::CarEdit;
use steerloft_solver::frame::Side;

use crate::state::Bench;
use crate::theme::Metrics;
use crate::ui::widgets::{NumberField, named_button};
use crate::ui::{Intents, car_change, names};

/// Most that a dimension can be said to be off, mm or degrees.
const MOST: f64 = 10.0;

/// A build error: its name, its unit, and its place.
type Entry = (&'static str, &'static str, fn(&mut BuildErrors) -> &mut f64);

const ENTRIES: [Entry; 4] = [
    ("points, by callipers", "mm", |errors| &mut errors.points),
    ("lengths", "mm", |errors| &mut errors.lengths),
    ("angles", "\u{b0}", |errors| &mut errors.angles),
    ("play in holes and cups", "mm", |errors| {
        &mut errors.hole_play
    }),
];

/// Draws the fields; a change is one of the car, and can be undone.
pub(super) fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    ui.label(RichText::new("Off by at most").strong());
    let errors = &bench.setup().car.build_errors;
    for (name, unit, place) in ENTRIES {
        let mut edited = errors.clone();
        ui.horizontal(|ui| {
            let field = NumberField {
                name: &format!("Build error: {name}"),
                unit,
                range: 0.0..=MOST,
                speed: 0.005,
                decimals: 3,
            };
            let response = field.show(ui, place(&mut edited));
            ui.label(name);
            intents.follow(&response, || {
                car_change(CarEdit::BuildErrors(edited.clone()))
            });
        });
    }
    if *errors == BuildErrors::default() {
        ui.weak("These are usual ones: common practice, no source.");
    }
    own_errors(ui, bench, intents);
    ui.add_space(Metrics::GAP_SMALL);
    ui.weak("The bands in the curves hold nine in ten cars. Each dimension is drawn evenly within its error.");
}

/// Points with an error of their own, and a list to add one from.
fn own_errors(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let car = &bench.setup().car;
    let errors = &car.build_errors;
    for (index, own) in errors.own.iter().enumerate() {
        let point = names::sentence(own.point.label());
        let mut edited = errors.clone();
        ui.horizontal(|ui| {
            let field = NumberField {
                name: &format!("Build error of its own: {point}"),
                unit: "mm",
                range: 0.0..=MOST,
                speed: 0.005,
                decimals: 3,
            };
            let response = field.show(ui, &mut edited.own[index].error);
            intents.follow(&response, || {
                car_change(CarEdit::BuildErrors(edited.clone()))
            });
            let remove = Button::new("\u{d7}").small();
            let name = format!("No error of its own: {point}");
            let remove = named_button(ui, true, remove, &name).on_hover_text(&name);
            if remove.clicked() {
                let mut fewer = errors.clone();
                fewer.own.remove(index);
                intents.apply(car_change(CarEdit::BuildErrors(fewer)));
            }
            ui.label(&point);
        });
    }
    let others = PointName::ALL.into_iter().filter(|point| {
        let is_listed = errors.own.iter().any(|own| own.point == *point);
        !point.is_direction() && !is_listed && car.point(*point, Side::Left).is_some()
    });
    let list = ComboBox::from_id_salt("own build error").selected_text("a point by itself\u{2026}");
    let shown = list.show_ui(ui, |ui| {
        others
            .filter(|point| {
                let name = names::sentence(point.label());
                ui.selectable_label(false, name).clicked()
            })
            .last()
    });
    shown
        .response
        .accessible_name("Give a point an error of its own");
    if let Some(point) = shown.inner.flatten() {
        let mut more = errors.clone();
        let error = more.points;
        more.own.push(PointError { point, error });
        intents.apply(car_change(CarEdit::BuildErrors(more)));
    }
}
