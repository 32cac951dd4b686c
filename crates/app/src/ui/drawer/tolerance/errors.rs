//! How far the dimensions of the car may be off.

use eframe::egui::{RichText, Ui};
use steerloft_setup::car::BuildErrors;
use steerloft_setup::edit::CarEdit;

use crate::state::{Bench, Change};
use crate::theme::Metrics;
use crate::ui::widgets::NumberField;
use crate::ui::{Intents, names};

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
                Change::Car(Box::new(CarEdit::BuildErrors(edited.clone())))
            });
        });
    }
    if *errors == BuildErrors::default() {
        ui.weak("These are usual ones: common practice, no source.");
    }
    for own in &errors.own {
        let point = names::sentence(own.point.label());
        ui.weak(format!("{point} by itself: \u{b1}{} mm", own.error));
    }
    ui.add_space(Metrics::GAP_SMALL);
    ui.weak("The bands in the curves hold nine in ten cars. Each dimension is drawn evenly within its error.");
}
