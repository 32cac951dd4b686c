//! The points of the car: three coordinates each, and from where to where they are measured.

use eframe::egui::{Button, RichText, Ui};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::{Car, RightCorner, Suspension};
use steerloft_setup::edit::CarEdit;
use steerloft_setup::measuring::{Measured, guide};
use steerloft_solver::frame::Side;

use super::{field, vector};
use crate::state::{Bench, CarEditing, Change, Field, edit_refused};
use crate::theme::Metrics;
use crate::ui::{Intents, car_change, names, units_of, widgets};

/// Directions that a car may have beside its points.
const DIRECTIONS: [PointName; 3] = [
    PointName::SlideDirection,
    PointName::DriveDirection,
    PointName::CrankDirection,
];

fn is_strut(car: &Car) -> bool {
    matches!(car.left.suspension, Suspension::Strut { .. })
}

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
    slide_line(ui, bench, editing, intents);
    if let Some(refused) = editing.refused.as_ref().filter(|_| is_strut(car)) {
        field::complain(ui, &format!("{}.", names::sentence(refused)));
    }
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
    let word = if point.is_shared() {
        String::new()
    } else {
        side.to_string()
    };
    let words = (word.as_str(), names::pivot(point, side));
    let field_of = |axis| Field::Point(point, side, axis);
    let focused = vector::row(ui, bench, editing, intents, (words.0, &words.1), field_of);
    if focused && !point.is_direction() {
        editing.guide = Some((point, side));
    }
}

/// Whether struts have a slide line of their own, to be given or let go.
fn slide_line(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    let car = &bench.setup().car;
    if !is_strut(car) {
        return;
    }
    let slide = car.point(PointName::SlideDirection, Side::Left);
    ui.add_space(Metrics::GAP_SMALL);
    ui.label("The strut slides");
    let options = ["along the steering axis", "along its own line"].into_iter();
    let chosen = Some(usize::from(slide.is_some()));
    let Some(index) = widgets::segments(ui, "The strut slides", options, chosen) else {
        return;
    };
    let edit = CarEdit::SlideLine { own: index == 1 };
    editing.refused = edit_refused(bench.setup(), &edit);
    if editing.refused.is_none() {
        intents.apply(car_change(edit));
    }
}
