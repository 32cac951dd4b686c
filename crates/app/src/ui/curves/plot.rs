//! One panel: what its axes say, how its lines look, and what the pointer does in it.

use eframe::egui::Ui;
use egui_plot::LineStyle;
use steerloft_solver::frame::Side;

use super::panel::{self, Axes, LineInk};
use super::readout::{precision, readout};
use crate::state::{
    Bench, Cursor, CurveKind, InputUnit, Line, Shown, Strand, Sweep, Turn, value_at,
};
use crate::theme::Tokens;
use crate::ui::{Intent, Intents, ViewState, units_of};
use crate::units::Units;

/// Ends of the line of parallel steering, degrees.
const PARALLEL_TO: f64 = 75.0;

/// Draws the panel.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    view: &ViewState,
    intents: &mut Intents,
    (kind, lines): (CurveKind, &[(Strand, &Line)]),
) {
    let tokens = Tokens::of(ui.ctx());
    let scales = bench.derived().scales();
    let mut x_range = scales.horizontal(kind);
    let references = references(shown, kind, x_range, tokens);
    let strands = lines
        .iter()
        .filter(|(strand, _)| *strand != Strand::Axle)
        .map(|(strand, _)| (name(*strand), ink(*strand, tokens)));
    let keys: Vec<(&str, LineInk)> = strands
        .chain(references.iter().map(|line| (line.name, line.ink)))
        .collect();
    let units = units_of(ui.ctx());
    let note = note(shown, kind, units);
    panel::heading(ui, kind.title(), kind.meaning(), &note, &keys);

    let mut y_range = scales.vertical(kind);
    if view.curves.fitted {
        y_range = fitted(lines, kind, y_range);
        if kind.sweep() == Sweep::InnerAngle {
            x_range = y_range;
        }
    }
    let unit = InputUnit::of(&bench.setup().car);
    let axes = Axes {
        name: kind.title(),
        x: &horizontal_label(shown, kind, unit, units),
        y: &vertical_label(kind, unit, units),
        x_range,
        y_range,
        x_factor: units.unit(horizontal_unit(kind, unit), 0).factor,
        y_factor: units.unit(precision(kind, unit).0, 0).factor,
    };
    let drawn = references
        .iter()
        .map(|line| line.ink.line(line.name, line.points.clone()))
        .chain(
            lines
                .iter()
                .map(|(strand, line)| ink(*strand, tokens).line(name(*strand), (*line).clone())),
        )
        .collect();
    let cursor = cursor(bench, shown, kind, lines, tokens);
    let readout = readout(shown, kind, unit, units, lines);
    if let Some(place) = panel::show(ui, &axes, drawn, cursor, readout)
        && let Some(cursor) = cursor_at(bench, shown, kind, place)
    {
        intents.push(Intent::Cursor(cursor));
    }
}

/// A line to compare with.
struct Reference {
    name: &'static str,
    ink: LineInk,
    points: Line,
}

/// The lines to compare with, over the whole width of the panel.
fn references(
    shown: &Shown,
    kind: CurveKind,
    width: (f64, f64),
    tokens: &Tokens,
) -> Vec<Reference> {
    let dotted = LineInk::reference(tokens.reference, LineStyle::Dotted { spacing: 5.0 });
    let dashed = LineInk::reference(tokens.reference, LineStyle::Dashed { length: 4.0 });
    let level = |name, ink, value| Reference {
        name,
        ink,
        points: vec![[width.0, value], [width.1, value]],
    };
    match kind {
        CurveKind::OuterInner => vec![
            Reference {
                name: "ideal",
                ink: dotted,
                points: shown.curves.steer.ideal.clone(),
            },
            Reference {
                name: "parallel",
                ink: dashed,
                points: vec![[0.0, 0.0], [PARALLEL_TO, PARALLEL_TO]],
            },
        ],
        CurveKind::Ackermann => vec![
            level("ideal", dotted, 100.0),
            level("parallel", dashed, 0.0),
        ],
        CurveKind::Transmission => vec![level("best", dotted, 90.0)],
        _ => Vec::new(),
    }
}

/// What a line is called.
pub(super) fn name(strand: Strand) -> &'static str {
    match strand {
        Strand::Side(Side::Left) => "left",
        Strand::Side(Side::Right) => "right",
        Strand::Turn(Turn::Left) => "left turn",
        Strand::Turn(Turn::Right) => "right turn",
        Strand::Axle => "both wheels",
    }
}

fn ink(strand: Strand, tokens: &Tokens) -> LineInk {
    match strand {
        Strand::Side(Side::Left) => LineInk::full(tokens.left),
        Strand::Side(Side::Right) => LineInk::dashed(tokens.right),
        Strand::Turn(Turn::Left) => LineInk::full(tokens.turn_left),
        Strand::Turn(Turn::Right) => LineInk::dashed(tokens.turn_right),
        Strand::Axle => LineInk::full(tokens.part_line),
    }
}

/// In which state of the car the curve is taken.
fn note(shown: &Shown, kind: CurveKind, units: Units) -> String {
    let travel = shown.pose.travel.left;
    match kind.sweep() {
        Sweep::Travel => "straight ahead".to_owned(),
        Sweep::Roll => "tyres on the road".to_owned(),
        Sweep::Steer | Sweep::InnerAngle if travel == 0.0 => "at rest".to_owned(),
        Sweep::Steer | Sweep::InnerAngle => {
            format!("at {} travel", units.signed_length(travel, 1))
        }
    }
}

/// Unit in which places along the horizontal axis are held.
fn horizontal_unit(kind: CurveKind, unit: InputUnit) -> &'static str {
    match kind.sweep() {
        Sweep::Travel => "mm",
        Sweep::Steer => unit.sign(),
        Sweep::InnerAngle | Sweep::Roll => "\u{b0}",
    }
}

/// The unit of the steering input in words.
fn input_word(unit: InputUnit, units: Units) -> &'static str {
    match unit.word() {
        "mm" => units.sign(),
        word => word,
    }
}

fn horizontal_label(shown: &Shown, kind: CurveKind, unit: InputUnit, units: Units) -> String {
    match kind.sweep() {
        Sweep::Travel => format!("wheel travel, {} (bump +)", units.sign()),
        Sweep::InnerAngle => "inner wheel, deg from straight ahead".to_owned(),
        Sweep::Roll => "roll from rest, deg (right side down +)".to_owned(),
        Sweep::Steer => {
            let unit = input_word(unit, units);
            let positive = match shown.curves.steer.positive_input() {
                Some(Turn::Left) => " (left turn +)",
                Some(Turn::Right) => " (right turn +)",
                None => "",
            };
            format!("steering input, {unit}{positive}")
        }
    }
}

fn vertical_label(kind: CurveKind, unit: InputUnit, units: Units) -> String {
    let label = match kind {
        CurveKind::ToeTravel => "toe, deg (toe-in +)",
        CurveKind::OuterInner => "outer wheel, deg",
        CurveKind::Ackermann => "Ackermann share, %",
        CurveKind::CamberTravel | CurveKind::CamberSteer | CurveKind::CamberRoll => {
            "camber, deg (top out +)"
        }
        CurveKind::CasterTravel => "caster, deg (top back +)",
        CurveKind::RollSteer => "steer, deg (to the left +)",
        CurveKind::Ratio => {
            return format!("input for a wheel's degree, {}", input_word(unit, units));
        }
        CurveKind::Transmission => "rod to arm, deg",
    };
    label.to_owned()
}

fn fitted(lines: &[(Strand, &Line)], kind: CurveKind, fixed: panel::Range) -> panel::Range {
    let points = || lines.iter().flat_map(|(_, line)| line.iter());
    if kind.sweep() == Sweep::InnerAngle {
        panel::fitted(points().flatten().copied(), fixed)
    } else {
        panel::fitted(points().map(|point| point[1]), fixed)
    }
}

/// The direction in which the car on screen turns; left when it goes straight.
fn present_turn(shown: &Shown) -> Turn {
    let turn = shown.figures.pose.turn;
    turn.map_or(Turn::Left, |turn| Turn::with_inner(turn.inner_side))
}

/// Where the car on screen stands in the panel.
fn cursor(
    bench: &Bench,
    shown: &Shown,
    kind: CurveKind,
    lines: &[(Strand, &Line)],
    tokens: &Tokens,
) -> Option<panel::Cursor> {
    let at = match kind.sweep() {
        Sweep::Travel => shown.pose.travel.left,
        Sweep::Steer => InputUnit::of(&bench.setup().car).from_solver(shown.pose.input),
        Sweep::InnerAngle => {
            let turn = shown.figures.pose.turn;
            turn.map_or(0.0, |turn| turn.inner.to_degrees())
        }
        Sweep::Roll => return None,
    };
    let present = Strand::Turn(present_turn(shown));
    let marks = lines
        .iter()
        .filter(|(strand, _)| kind.sweep() != Sweep::InnerAngle || *strand == present)
        .filter_map(|(strand, line)| Some((at, value_at(line, at)?, ink(*strand, tokens).color)))
        .collect();
    Some(panel::Cursor { at, marks })
}

/// The cursor of the bench when the user points at a place of the panel.
fn cursor_at(bench: &Bench, shown: &Shown, kind: CurveKind, place: f64) -> Option<Cursor> {
    let cursor = bench.cursor();
    match kind.sweep() {
        Sweep::Travel => Some(Cursor {
            travel: place,
            ..cursor
        }),
        Sweep::Steer => Some(Cursor {
            input: place,
            ..cursor
        }),
        Sweep::InnerAngle => {
            let input = shown.curves.steer.input_at(present_turn(shown), place)?;
            Some(Cursor { input, ..cursor })
        }
        Sweep::Roll => None,
    }
}
