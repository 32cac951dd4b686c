//! Toe of both wheels against wheel travel.

use eframe::egui::{Align2, TextStyle, Ui};
use steerloft_solver::frame::Side;

use super::panel::{self, Axes, LineInk, value_at};
use crate::format;
use crate::state::{Bench, BumpCurve, Cursor, Shown};
use crate::theme::Tokens;
use crate::ui::{Intent, Intents, ViewState};

/// Fixed range of toe for each mm of the car's greatest travel, degrees each way: it depends on the car alone, so that two
/// of its setups can be compared by eye.
const TOE_PER_TRAVEL: f64 = 0.3;

pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    view: &ViewState,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let inks = |side| match side {
        Side::Left => LineInk::full(tokens.left),
        Side::Right => LineInk::dashed(tokens.right),
    };
    let keys = [("left", inks(Side::Left)), ("right", inks(Side::Right))];
    panel::heading(ui, "Toe against travel", "straight ahead", &keys);
    let Some(curve) = &shown.curves.bump else {
        let font = TextStyle::Body.resolve(ui.style());
        let middle = ui.available_rect_before_wrap().center();
        let text = "This suspension has no travel.";
        ui.painter()
            .text(middle, Align2::CENTER_CENTER, text, font, tokens.text_weak);
        return;
    };
    let travel = shown.pose.travel.left;
    let range = bench.setup().car.ranges.travel;
    let margin = ((range.1 - range.0) * 0.04).max(0.05);
    let most_toe = (TOE_PER_TRAVEL * range.0.abs().max(range.1.abs())).max(0.1);
    let mut toe_range = (-most_toe, most_toe);
    if view.curves_fitted {
        let all = curve.toe.left.iter().chain(&curve.toe.right);
        toe_range = panel::fitted(all.map(|point| point[1]), toe_range);
    }
    let axes = Axes {
        name: "Toe against travel",
        x: "wheel travel, mm (bump +)",
        y: "toe, deg (toe-in +)",
        x_range: (range.0 - margin, range.1 + margin),
        y_range: toe_range,
    };
    let lines = Side::BOTH
        .map(|side| inks(side).line(&side.to_string(), curve.toe.get(side).clone()))
        .into();
    let marks = Side::BOTH
        .iter()
        .map(|&side| {
            let toe = shown.figures.toe.get(side).to_degrees();
            (travel, toe, tokens.side(side))
        })
        .collect();
    let cursor = panel::Cursor { at: travel, marks };
    let read = curve.clone();
    if let Some(travel) = panel::show(ui, &axes, lines, &cursor, move |x| readout(&read, x)) {
        intents.push(Intent::Cursor(Cursor {
            travel,
            ..bench.cursor()
        }));
    }
}

fn readout(curve: &BumpCurve, travel: f64) -> Option<String> {
    let left = value_at(&curve.toe.left, travel)?;
    let right = value_at(&curve.toe.right, travel)?;
    Some(format!(
        "travel {} mm\nleft {}\u{b0}\nright {}\u{b0}",
        format::signed(travel, 2),
        format::signed(left, 3),
        format::signed(right, 3)
    ))
}
