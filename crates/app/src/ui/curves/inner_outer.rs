//! Angle of the outer wheel against that of the inner one, with the ideal pair and parallel steering to compare with.

use eframe::egui::{Color32, Ui};
use egui_plot::LineStyle;

use super::panel::{self, Axes, LineInk, value_at};
use crate::format;
use crate::state::{Bench, Cursor, Shown, Turn};
use crate::theme::Tokens;
use crate::ui::{Intent, Intents, ViewState};

/// Fixed range of wheel angles, degrees.
const ANGLES: panel::Range = (0.0, 40.0);

pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    view: &ViewState,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let ideal_ink = LineInk::reference(tokens.reference, LineStyle::Dotted { spacing: 5.0 });
    let parallel_ink = LineInk::reference(tokens.reference, LineStyle::Dashed { length: 4.0 });
    let keys = [
        ("left turn", ink(tokens, Turn::Left)),
        ("right turn", ink(tokens, Turn::Right)),
        ("ideal", ideal_ink),
        ("parallel", parallel_ink),
    ];
    let travel = shown.pose.travel.left;
    let note = if travel == 0.0 {
        "at rest".to_owned()
    } else {
        format!("at {} mm travel", format::signed(travel, 1))
    };
    panel::heading(ui, "Outer against inner angle", &note, &keys);
    let steer = &shown.curves.steer;
    let turns = Turn::BOTH.map(|turn| steer.line(turn));
    let range = if view.curves_fitted {
        let all = turns.iter().flatten().flatten();
        panel::fitted(all.copied(), ANGLES)
    } else {
        ANGLES
    };
    let axes = Axes {
        name: "Outer against inner angle",
        x: "inner wheel, deg from straight ahead",
        y: "outer wheel, deg",
        x_range: range,
        y_range: range,
    };
    let mut lines = vec![
        ideal_ink.line("ideal", steer.ideal.clone()),
        parallel_ink.line("parallel", vec![[0.0, 0.0], [60.0, 60.0]]),
    ];
    for (turn, line) in Turn::BOTH.into_iter().zip(&turns) {
        lines.push(ink(tokens, turn).line("turn", line.clone()));
    }
    let cursor = cursor(shown, tokens);
    let [left, right] = turns;
    let ideal = steer.ideal.clone();
    let readout = move |inner: f64| readout(&left, &right, &ideal, inner);
    if let Some(inner) = panel::show(ui, &axes, lines, &cursor, readout)
        && let Some(input) = steer.input_at(present_turn(shown), inner)
    {
        intents.push(Intent::Cursor(Cursor {
            input,
            ..bench.cursor()
        }));
    }
}

fn ink(tokens: &Tokens, turn: Turn) -> LineInk {
    match turn {
        Turn::Left => LineInk::full(tokens.turn_left),
        Turn::Right => LineInk::dashed(tokens.turn_right),
    }
}

/// The direction in which the car on screen turns; left when it goes straight.
fn present_turn(shown: &Shown) -> Turn {
    shown
        .figures
        .turn
        .map_or(Turn::Left, |turn| Turn::with_inner(turn.inner_side))
}

fn cursor(shown: &Shown, tokens: &Tokens) -> panel::Cursor {
    let Some(turn) = shown.figures.turn else {
        return panel::Cursor {
            at: 0.0,
            marks: Vec::new(),
        };
    };
    let (inner, outer) = (turn.inner.to_degrees(), turn.outer.to_degrees());
    let color: Color32 = ink(tokens, present_turn(shown)).color;
    panel::Cursor {
        at: inner,
        marks: vec![(inner, outer, color)],
    }
}

fn readout(
    left: &[[f64; 2]],
    right: &[[f64; 2]],
    ideal: &[[f64; 2]],
    inner: f64,
) -> Option<String> {
    let lines = [("left turn", left), ("right turn", right), ("ideal", ideal)];
    let values: Vec<String> = lines
        .into_iter()
        .filter_map(|(name, line)| {
            let outer = value_at(line, inner)?;
            Some(format!("{name} {}\u{b0}", format::number(outer, 2)))
        })
        .collect();
    let inner = format::number(inner, 1);
    (!values.is_empty()).then(|| format!("inner {inner}\u{b0}\n{}", values.join("\n")))
}
