//! The points of the car: three coordinates each, and from where to where they are measured.

use eframe::egui::{Button, RichText, Ui};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::RightCorner;
use steerloft_setup::edit::CarEdit;
use steerloft_setup::measuring::{Measured, guide};
use steerloft_solver::frame::Side;

use super::field;
use crate::state::{Axis, Bench, CarEditing, Change, Field};
use crate::theme::Metrics;
use crate::ui::{Intents, names, units_of, widgets};

/// Directions that a car may have beside its points.
const DIRECTIONS: [PointName; 3] = [
    PointName::SlideDirection,
    PointName::DriveDirection,
    PointName::CrankDirection,
];

/// Width of the name of a side.
const SIDE_WIDTH: f32 = 34.0;

pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    let unit = units_of(ui.ctx()).sign();
    widgets::group_heading(ui, &format!("Points, {unit} from the chassis"));
    sides(ui, bench, intents);
    for measured in guide(bench.setup()) {
        if let Some(point) = measured.point {
            one_point(ui, bench, editing, intents, &measured, point);
        }
    }
    let car = &bench.setup().car;
    let directions = DIRECTIONS
        .into_iter()
        .filter(|point| car.point(*point, Side::Left).is_some());
    for point in directions {
        ui.add_space(Metrics::GAP_SMALL);
        ui.label(names::sentence(point.label()))
            .on_hover_text("How far it goes forward, left and up; only the ratio counts.");
        rows(ui, bench, editing, intents, point);
    }
}

/// Whether the right corner mirrors the left one.
fn sides(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let separate = matches!(bench.setup().car.right, RightCorner::Given(_));
    ui.horizontal(|ui| {
        ui.label("Right corner").on_hover_text(
            "The wheel, the knuckle and what carries it. The steering drive always has both sides.",
        );
        let options = ["mirrors the left", "its own points"].into_iter();
        let clicked = widgets::segments(ui, "Right corner", options, Some(usize::from(separate)));
        match clicked {
            Some(0) => intents.apply(Change::Car(Box::new(CarEdit::MirrorSides))),
            Some(_) => intents.apply(Change::Car(Box::new(CarEdit::SeparateSides))),
            None => {}
        }
    });
}

fn one_point(
    ui: &mut Ui,
    bench: &Bench,
    editing: &mut CarEditing,
    intents: &mut Intents,
    measured: &Measured,
    point: PointName,
) {
    ui.add_space(Metrics::GAP_SMALL);
    let open = editing.guide.is_some_and(|(open, _)| open == point);
    let name = format!("How to measure: {}", measured.name);
    let button = Button::selectable(open, measured.name).frame_when_inactive(false);
    let clicked = widgets::named_button(ui, true, button, &name)
        .on_hover_text(names::sentence(measured.place))
        .clicked();
    if clicked {
        editing.guide = (!open).then_some((point, Side::Left));
    }
    rows(ui, bench, editing, intents, point);
    if editing.guide.is_some_and(|(open, _)| open == point) {
        explain(ui, measured);
    }
}

/// From where to where each coordinate is measured.
fn explain(ui: &mut Ui, measured: &Measured) {
    ui.indent(("guide", measured.name), |ui| {
        ui.label(RichText::new(names::sentence(measured.place)).small());
        for step in measured.steps() {
            ui.label(
                RichText::new(format!("{}: {}", step.axis, step.text))
                    .small()
                    .weak(),
            );
        }
    });
}

/// A row of coordinates for each side that has its own.
fn rows(
    ui: &mut Ui,
    bench: &Bench,
    editing: &mut CarEditing,
    intents: &mut Intents,
    point: PointName,
) {
    let car = &bench.setup().car;
    let is_separate = matches!(car.right, RightCorner::Given(_)) || !point.is_of_corner();
    for side in Side::BOTH {
        let has_row = side == Side::Left || (is_separate && !point.is_shared());
        if has_row && car.point(point, side).is_some() {
            row(ui, bench, editing, intents, point, side);
        }
    }
}

fn row(
    ui: &mut Ui,
    bench: &Bench,
    editing: &mut CarEditing,
    intents: &mut Intents,
    point: PointName,
    side: Side,
) {
    let fields = Axis::ALL.map(|axis| {
        let name = format!("{} {}", names::pivot(point, side), axis.letter());
        (Field::Point(point, side, axis), name)
    });
    let mut focused = false;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        let word = if point.is_shared() {
            String::new()
        } else {
            side.to_string()
        };
        ui.allocate_ui(
            eframe::egui::vec2(SIDE_WIDTH, Metrics::CONTROL_HEIGHT),
            |ui| {
                ui.set_min_width(SIDE_WIDTH);
                ui.label(RichText::new(word).small().weak());
            },
        );
        let room = ui.available_width() - 3.0 * 18.0 - 16.0;
        for ((field, name), axis) in fields.iter().zip(Axis::ALL) {
            ui.label(RichText::new(axis.letter()).small().weak());
            let entries = &mut editing.entries;
            let place = (*field, name.as_str(), (room / 3.0).clamp(36.0, 90.0));
            focused |= field::show(ui, bench, entries, intents, place);
        }
    });
    for (field, name) in &fields {
        field::error(ui, &editing.entries, *field, name);
    }
    if focused && !point.is_direction() {
        editing.guide = Some((point, side));
    }
}
