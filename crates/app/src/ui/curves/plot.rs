//! One panel: what its axes say, how its lines look, and what the pointer does in it.

use eframe::egui::{Stroke, Ui};
use egui_plot::{FilledArea, LineStyle};
use steerloft_analysis::Range;
use steerloft_analysis::curves::{Along, Curve, CurveKind, End, Trace, Turn, value_at};

use steerloft_analysis::tolerance::{BandLine, BandPoint};

use super::axis::ShownAxis;
use super::heading::Heading;
use super::panel::{self, Axes, LineInk};
use super::readout::readout;
use crate::state::{Bench, Cursor, Shown, Subject};
use crate::theme::Tokens;
use crate::ui::{Drawer, Intent, Intents, ViewState, pictures, units_of};
use crate::units::Units;

/// Draws the panel.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    view: &ViewState,
    intents: &mut Intents,
    curve: &Curve,
) {
    let tokens = Tokens::of(ui.ctx());
    let kind = curve.kind;
    let reference = reference(bench, curve);
    let [x_range, y_range] = ranges(bench, view, curve, reference);
    let lines = lines(curve, reference, x_range, tokens);
    let keys: Vec<(&str, LineInk)> = lines
        .iter()
        .filter(|line| line.has_key)
        .map(|line| (line.name.as_str(), line.ink))
        .collect();
    let units = units_of(ui.ctx());
    let heading = Heading {
        kind,
        note: &note(shown, kind, units),
        warning: &warning(curve),
        is_cut: is_cut(curve, [x_range, y_range]),
        keys: &keys,
    };
    heading.show(ui, view, intents);
    if kind.along() == Along::SteeredTravel {
        super::arrange::held_input(ui, bench, intents);
    }
    let [x, y] = [&curve.x, &curve.y].map(|axis| ShownAxis::new(axis, units));
    let axes = Axes {
        name: kind.title(),
        x: &x.label(),
        y: &y.label(),
        x_range,
        y_range,
        x_factor: x.factor,
        y_factor: y.factor,
    };
    let drawn = lines
        .into_iter()
        .map(|line| line.ink.line(&line.name, line.points))
        .collect();
    let cursor = cursor(shown, curve, tokens);
    let readout = readout(curve, reference, [x, y]);
    let drawn = panel::show(
        ui,
        &axes,
        bands(bench, view, curve, tokens),
        drawn,
        cursor,
        readout,
    );
    pictures::context_menu(&drawn.response, Subject::Curve(kind), intents);
    if let Some(place) = drawn.place
        && let Some(cursor) = cursor_at(bench, shown, kind, place)
    {
        intents.push(Intent::Cursor(cursor));
    }
}

/// The same curve of the reference, where its axes are the same.
fn reference<'a>(bench: &'a Bench, curve: &Curve) -> Option<&'a Curve> {
    let other = bench.compared()?.curve(curve.kind);
    (other.x.unit == curve.x.unit && other.y.unit == curve.y.unit).then_some(other)
}

/// Where nine in ten cars lie within the build errors, while the drawer about that is open.
fn bands(bench: &Bench, view: &ViewState, curve: &Curve, tokens: &Tokens) -> Vec<FilledArea> {
    if view.drawers.open != Some(Drawer::Tolerance) {
        return Vec::new();
    }
    let Some(band) = view.drawers.tolerances.band(bench, curve.kind) else {
        return Vec::new();
    };
    let area = |line: &BandLine| {
        let of_points = |value: fn(&BandPoint) -> f64| line.points.iter().map(value).collect();
        let at: Vec<f64> = of_points(|point| point.at);
        let low: Vec<f64> = of_points(|point| point.quantiles.low);
        let high: Vec<f64> = of_points(|point| point.quantiles.high);
        let ink = ink(curve, line.trace, tokens).color;
        FilledArea::new("band", &at, &low, &high)
            .fill_color(ink.gamma_multiply(0.18))
            .stroke(Stroke::new(0.8, ink.gamma_multiply(0.6)))
            .allow_hover(false)
    };
    band.lines.iter().map(area).collect()
}

/// A line as it is drawn.
struct Drawn {
    name: String,
    ink: LineInk,
    points: Vec<[f64; 2]>,
    has_key: bool,
}

/// All lines, those to compare with first, so that the setup's own lie over them.
fn lines(curve: &Curve, reference: Option<&Curve>, width: Range, tokens: &Tokens) -> Vec<Drawn> {
    let guides = curve.guides.iter().map(|guide| Drawn {
        name: guide.name.to_owned(),
        ink: ink(curve, guide.trace, tokens),
        points: vec![[width.from, guide.at], [width.to, guide.at]],
        has_key: true,
    });
    let compared = reference
        .into_iter()
        .flat_map(Curve::of_setup)
        .map(|series| Drawn {
            name: format!("ref. {}", series.name),
            ink: ink(curve, series.trace, tokens).ghost(),
            points: series.points.clone(),
            has_key: true,
        });
    let own = curve.series.iter().map(|series| Drawn {
        name: series.name.clone(),
        ink: ink(curve, series.trace, tokens),
        points: series.points.clone(),
        has_key: series.trace != Trace::Axle || reference.is_some(),
    });
    guides.chain(compared).chain(own).collect()
}

/// How a line of the setup, or one to compare with, looks.
fn ink(curve: &Curve, trace: Trace, tokens: &Tokens) -> LineInk {
    let of_turns = curve.kind.along() == Along::InnerAngle;
    match trace {
        Trace::Left if of_turns => LineInk::full(tokens.turn_left),
        Trace::Right if of_turns => LineInk::dashed(tokens.turn_right),
        Trace::Left => LineInk::full(tokens.left),
        Trace::Right => LineInk::dashed(tokens.right),
        Trace::Axle => LineInk::full(tokens.part_line),
        Trace::Ideal => LineInk::guide(tokens.reference, LineStyle::Dotted { spacing: 5.0 }),
        Trace::Parallel => LineInk::guide(tokens.reference, LineStyle::Dashed { length: 4.0 }),
    }
}

/// The axes' ranges: fixed ones that go with the car, or such that the lines fill the panel.
fn ranges(bench: &Bench, view: &ViewState, curve: &Curve, reference: Option<&Curve>) -> [Range; 2] {
    let fixed = bench.derived().fixed_ranges();
    let [x, y] = [fixed.horizontal(curve.kind), fixed.vertical(curve.kind)];
    if !view.curves.fitted {
        return [x, y];
    }
    let extent = |axis: usize| {
        let curves = std::iter::once(curve).chain(reference);
        let ends = curves.filter_map(|curve| curve.extent(axis));
        Range::of(ends.flat_map(|range| [range.from, range.to]))
    };
    let filled = |axis: usize, fixed| extent(axis).map_or(fixed, panel::with_margin);
    match curve.kind.along() {
        Along::InnerAngle => [filled(0, x), filled(1, y)],
        _ => [x, filled(1, y)],
    }
}

/// Whether a part of the setup's own lines lies beyond the axes.
fn is_cut(curve: &Curve, ranges: [Range; 2]) -> bool {
    let outside = |point: &[f64; 2]| {
        let axes = point.iter().zip(ranges);
        axes.into_iter().any(|(value, range)| {
            // What runs along the frame is not cut.
            let slack = 1e-6 * range.length();
            *value < range.from - slack || *value > range.to + slack
        })
    };
    let mut points = curve.of_setup().flat_map(|series| &series.points);
    points.any(outside)
}

/// In which state of the car the curve is taken.
fn note(shown: &Shown, kind: CurveKind, units: Units) -> String {
    let travel = shown.pose.travel.left;
    match kind.along() {
        Along::Travel => "straight ahead".to_owned(),
        Along::SteeredTravel => {
            let input = shown.study.sweeps().held().input;
            let input = units.amount(input, shown.study.unit().sign(), 1);
            format!("at {input} of input")
        }
        Along::Roll => "tyres on the road".to_owned(),
        Along::Steer | Along::InnerAngle if travel == 0.0 => "at rest".to_owned(),
        Along::Steer | Along::InnerAngle => {
            format!("at {} travel", units.signed_length(travel, 1))
        }
    }
}

/// Where and why the curve ends before the car's range does.
fn warning(curve: &Curve) -> String {
    let ends: Vec<String> = curve.ends.iter().map(End::sentence).collect();
    ends.join("\n")
}

/// Where the car on screen stands in the panel.
fn cursor(shown: &Shown, curve: &Curve, tokens: &Tokens) -> Option<panel::Cursor> {
    let along = curve.kind.along();
    let at = match along {
        Along::Travel | Along::SteeredTravel => shown.pose.travel.left,
        Along::Steer => shown.study.unit().from_solver(shown.pose.input),
        Along::InnerAngle => shown.turn().map_or(0.0, |turn| turn.inner.to_degrees()),
        Along::Roll => return None,
    };
    let turning = match shown.present_turn() {
        Turn::Left => Trace::Left,
        Turn::Right => Trace::Right,
    };
    let marks = curve
        .of_setup()
        .filter(|series| along != Along::InnerAngle || series.trace == turning)
        .filter_map(|series| {
            let color = ink(curve, series.trace, tokens).color;
            Some((at, value_at(&series.points, at)?, color))
        })
        .collect();
    Some(panel::Cursor { at, marks })
}

/// The cursor of the bench when the user points at a place of the panel.
fn cursor_at(bench: &Bench, shown: &Shown, kind: CurveKind, place: f64) -> Option<Cursor> {
    let cursor = bench.cursor();
    match kind.along() {
        Along::Travel => Some(Cursor {
            travel: place,
            ..cursor
        }),
        // The curve belongs to the input that is held for it.
        Along::SteeredTravel => Some(Cursor {
            travel: place,
            input: shown.study.sweeps().held().input,
        }),
        Along::Steer => Some(Cursor {
            input: place,
            ..cursor
        }),
        Along::InnerAngle => {
            let turn = shown.present_turn();
            let input = shown.study.sweeps().input_at(turn, place)?;
            Some(Cursor { input, ..cursor })
        }
        Along::Roll => None,
    }
}
