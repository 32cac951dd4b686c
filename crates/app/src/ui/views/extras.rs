//! What is drawn beside the car on demand: the construction of the turn, the wheels at the ends of their travel, the
//! gaps between the cups.

use eframe::egui::{Align2, Color32, Painter, Pos2, Rect, Stroke, TextStyle, Ui, Vec2, pos2, vec2};
use steerloft_sheet::{Role, Shape, View, front_end, turn_lines, wheel_outlines};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::pose::AxlePose;

use super::ink::ink;
use super::paint::{paint, paint_reference, stroke_line};
use super::seen::Seen;
use crate::format;
use crate::state::{Bench, Reference, Shown};
use crate::theme::{Metrics, Tokens};
use crate::ui::units_of;

/// Distance of a rod's dimension line from the rod, points.
const BESIDE_ROD: f32 = 17.0;

/// Length of the gap on screen below which it is not written, points.
const LEAST_GAP: f32 = 16.0;

/// Width of the key to the lines of the turn, and height of its lines, points.
const KEY_WIDTH: f32 = 200.0;
const KEY_LINE: f32 = 16.0;

/// Draws the wheels at both ends of their travel, with the steering as it stands.
pub(super) fn envelope(painter: &Painter, bench: &Bench, shown: &Shown, seen: &Seen) {
    let tokens = Tokens::of(painter.ctx());
    let (droop, bump) = bench.setup().car.ranges.travel;
    for travel in [droop, bump] {
        if let Some(pose) = nearest_to_end(shown, travel) {
            let drawing = wheel_outlines(&pose, seen.sight(painter.pixels_per_point()));
            paint(painter, &drawing, &seen.transform, tokens, false);
        }
    }
}

/// The pose at an end of the travel, or as near to it as the linkage goes with the steering as it stands; none for a
/// suspension without travel.
fn nearest_to_end(shown: &Shown, end: f64) -> Option<AxlePose> {
    if !shown.assembly().has_travel() {
        return None;
    }
    let at = |share: f64| {
        let travel = Sides::both(end * share);
        shown.assembly().pose(shown.pose.input, travel).ok()
    };
    let shares = [1.0, 0.875, 0.75, 0.625, 0.5, 0.375, 0.25];
    shares.into_iter().find_map(at)
}

/// Draws what the car is compared with, in outlines only.
pub(super) fn reference(painter: &Painter, bench: &Bench, seen: &Seen) {
    if let Some(other) = bench.reference().and_then(Reference::shown) {
        let tokens = Tokens::of(painter.ctx());
        let drawing = front_end(
            other.layout(),
            &other.pose,
            seen.sight(painter.pixels_per_point()),
        );
        paint_reference(painter, &drawing, &seen.transform, tokens);
    }
}

/// Draws the construction of the turn.
pub(super) fn turn(painter: &Painter, shown: &Shown, seen: &Seen) {
    let tokens = Tokens::of(painter.ctx());
    let drawing = turn_lines(shown.assembly(), &shown.pose, seen.view);
    paint(painter, &drawing, &seen.transform, tokens, false);
}

/// Says what the lines of the turn are, on a patch of the ground with this lower left corner.
pub(super) fn turn_key(ui: &Ui, shown: &Shown, corner: Pos2) {
    let entries = [
        (Role::GroundPoint, "steering axis on the road"),
        (Role::WheelAxis, "axis of a wheel"),
        (Role::IdealAxis, "ideal axis of the outer wheel"),
        (Role::RearAxle, "rear axle"),
    ];
    let tokens = Tokens::of(ui.ctx());
    let drawing = turn_lines(shown.assembly(), &shown.pose, View::Top);
    let drawn = |role: Role| drawing.shapes.iter().find(|shape| shape.role == role);
    let drawn: Vec<(&Shape, &str)> = entries
        .into_iter()
        .filter_map(|(role, text)| Some((drawn(role)?, text)))
        .collect();
    #[allow(clippy::cast_precision_loss, reason = "a few lines")]
    let size = vec2(KEY_WIDTH, drawn.len() as f32 * KEY_LINE + 4.0);
    let patch = Rect::from_min_size(corner - vec2(0.0, size.y), size);
    let painter = ui.painter();
    painter.rect_filled(patch, f32::from(Metrics::CORNER), tokens.canvas);
    let font = TextStyle::Small.resolve(ui.style());
    let mut at = patch.left_top() + vec2(6.0, 2.0 + 0.5 * KEY_LINE);
    for (shape, text) in drawn {
        let ink = ink(shape, tokens);
        if shape.role == Role::GroundPoint {
            painter.circle_stroke(at + vec2(14.0, 0.0), 4.0, ink.stroke);
        } else {
            stroke_line(painter, [at, at + vec2(28.0, 0.0)], &ink);
        }
        let start = at + vec2(36.0, 0.0);
        let weak = tokens.text_weak;
        painter.text(start, Align2::LEFT_CENTER, text, font.clone(), weak);
        at.y += KEY_LINE;
    }
}

/// Writes on each rod the gap between the open ends of its cups, as a dimension beside it.
pub(super) fn rod_gaps(ui: &Ui, painter: &Painter, shown: &Shown, seen: &Seen) {
    for side in Side::BOTH {
        if seen.shows(side) {
            rod_gap(ui, painter, shown, seen, side);
        }
    }
}

fn rod_gap(ui: &Ui, painter: &Painter, shown: &Shown, seen: &Seen, side: Side) {
    let tokens = Tokens::of(ui.ctx());
    let corner = shown.pose.corners.get(side);
    let rods = shown.study.tie_rods();
    let rod = rods.get(side);
    let along = corner.steering_arm - corner.rod_inner;
    let cup = along * (shown.layout().cup_length / along.norm());
    let ends = [corner.rod_inner + cup, corner.steering_arm - cup].map(|end| seen.at(&end));
    let [from, to] = ends;
    if (to - from).length() < LEAST_GAP {
        return;
    }
    let ink = if rod.is_buildable() {
        tokens.side(side)
    } else {
        tokens.warning
    };
    let beside = away_from_wheels((to - from).normalized().rot90());
    dimension(painter, ends, beside * BESIDE_ROD, ink);
    let unit = units_of(ui.ctx()).unit("mm", 1);
    let text = format::number(rod.gap * unit.factor, unit.decimals);
    label(
        ui,
        painter,
        from + (to - from) * 0.5 + beside * BESIDE_ROD,
        &text,
        ink,
    );
}

/// Of the two ways square to a rod on screen the one that points up.
fn away_from_wheels(square: Vec2) -> Vec2 {
    if square.y > 0.0 { -square } else { square }
}

/// A dimension line a way off from what it measures, with ticks and thin lines back to it.
pub(super) fn dimension(painter: &Painter, ends: [Pos2; 2], off: Vec2, ink: Color32) {
    let thin = Stroke::new(0.8, ink.gamma_multiply(0.7));
    for end in ends {
        painter.line_segment([end, end + off * 1.15], thin);
    }
    let [from, to] = ends.map(|end| end + off);
    painter.line_segment([from, to], Stroke::new(1.0, ink));
    let along = (to - from).normalized();
    for end in [from, to] {
        let tick = (along + along.rot90()) * 3.0;
        painter.line_segment([end - tick, end + tick], Stroke::new(1.2, ink));
    }
}

/// Writing in the middle of a line, on a patch of the ground so that it can be read.
pub(super) fn label(ui: &Ui, painter: &Painter, at: Pos2, text: &str, ink: Color32) {
    let tokens = Tokens::of(ui.ctx());
    let font = TextStyle::Small.resolve(ui.style());
    let galley = painter.layout_no_wrap(text.to_owned(), font, ink);
    let place = Rect::from_center_size(at, galley.size() + vec2(6.0, 0.0));
    painter.rect_filled(place, 2.0, tokens.canvas);
    let corner = pos2(place.left() + 3.0, place.top());
    painter.galley(corner, galley, ink);
}
