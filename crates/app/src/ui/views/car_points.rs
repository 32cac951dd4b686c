//! The points of the car itself, to be dragged while it is described, and from where to where one is measured.

use eframe::egui::{
    Color32, Id, Painter, PointerButton, Pos2, Rect, Response, Role, Sense, Stroke, Ui, Vec2,
    WidgetInfo,
};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::Position;
use steerloft_setup::edit::CarEdit;
use steerloft_sheet::View;
use steerloft_solver::Isometry3;
use steerloft_solver::frame::{Point, Side, Vector};

use super::extras::{dimension, label};
use super::grab::{Hold, Pointer, hold, nearest};
use super::handles::handle_name;
use super::pivot::{Posed, posed};
use super::seen::Seen;
use crate::format;
use crate::state::{Bench, Change, Shown};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intent, Intents, ViewState, names, units_of};

/// Points go to whole steps of this while they are dragged, mm.
const STEP: f64 = 0.1;

/// A point of the car that is being dragged.
#[derive(Debug, Clone)]
pub(super) struct PointDrag {
    point: PointName,
    side: Side,
    view: View,
    /// The point at base when it was taken.
    start: Position,
    /// From the pose to as drawn, for the body that carries the point.
    to_drawn: Isometry3<f64>,
    /// Where the pointer went down.
    press: Pos2,
    /// Taken back with Escape; it waits for the pointer to be released.
    cancelled: bool,
}

/// A point in a view.
struct Spot {
    point: PointName,
    side: Side,
    posed: Posed,
    at: Pos2,
}

/// Draws the car's points in a view and takes what is done with them.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    state: &mut ViewState,
    intents: &mut Intents,
    seen: &Seen,
) {
    let spots = spots(bench, shown, seen);
    let responses: Vec<Response> = spots.iter().map(|spot| interact(ui, seen, spot)).collect();
    take(ui, bench, state, seen, &spots, &responses);
    let guide = state.car_editing.as_ref().and_then(|editing| editing.guide);
    let painter = ui.painter_at(seen.area);
    for (spot, response) in spots.iter().zip(responses) {
        let chosen = guide == Some((spot.point, spot.side));
        if chosen {
            paint_guide(ui, &painter, spot, seen);
        }
        paint(ui, &painter, spot, &response, chosen);
        if response.has_focus() {
            nudge(ui, bench, intents, seen, spot, &response);
        }
        response.on_hover_text(names::pivot(spot.point, spot.side));
    }
}

/// Whether the pointer is over a point that can be dragged.
pub(super) fn is_on_point(ui: &Ui, bench: &Bench, shown: &Shown, seen: &Seen) -> bool {
    let at = ui.input(|input| {
        let pointer = &input.pointer;
        pointer.press_origin().or(pointer.interact_pos())
    });
    let places = spots(bench, shown, seen).into_iter().map(|spot| spot.at);
    at.is_some_and(|at| nearest(places, at, Pointer::of(ui).reach()).is_some())
}

fn spots(bench: &Bench, shown: &Shown, seen: &Seen) -> Vec<Spot> {
    let car = &bench.setup().car;
    let all = PointName::ALL
        .into_iter()
        .filter(|point| !point.is_direction())
        .flat_map(|point| Side::BOTH.map(|side| (point, side)));
    all.filter(|(point, side)| !point.is_shared() || *side == Side::Left)
        .filter(|(point, side)| seen.shows(*side) && car.point(*point, *side).is_some())
        .filter_map(|(point, side)| {
            let posed = posed(shown, point, side)?;
            let at = seen.at(&posed.place);
            seen.area.contains(at).then_some(Spot {
                point,
                side,
                posed,
                at,
            })
        })
        .collect()
}

fn interact(ui: &Ui, seen: &Seen, spot: &Spot) -> Response {
    let name = handle_name(spot.point, spot.side, seen.view);
    let size = Vec2::splat(2.0 * Pointer::Fine.reach());
    let reach = Rect::from_center_size(spot.at, size).intersect(seen.area);
    let response = ui.interact(
        reach,
        Id::unique(("car point", &name)),
        Sense::click_and_drag(),
    );
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    response
}

fn take(
    ui: &Ui,
    bench: &Bench,
    state: &mut ViewState,
    seen: &Seen,
    spots: &[Spot],
    responses: &[Response],
) {
    let started = responses
        .iter()
        .any(|response| response.drag_started_by(PointerButton::Primary));
    let clicked = responses.iter().position(Response::clicked);
    let (press, at) =
        ui.input(|input| (input.pointer.press_origin(), input.pointer.interact_pos()));
    // A square reaches farther at its corners than a circle.
    let reach = Pointer::of(ui).reach() * std::f32::consts::SQRT_2;
    let meant = |at: Pos2| nearest(spots.iter().map(|spot| spot.at), at, reach);
    if let Some(press) = press.filter(|_| started)
        && let Some(spot) = meant(press).and_then(|index| spots.get(index))
        && let Some(start) = bench.setup().car.point(spot.point, spot.side)
    {
        state.views.point_drag = Some(PointDrag {
            point: spot.point,
            side: spot.side,
            view: seen.view,
            start,
            to_drawn: spot.posed.motion.inverse(),
            press,
            cancelled: false,
        });
    }
    if let Some(clicked) = clicked {
        let index = at.and_then(meant).unwrap_or(clicked);
        responses[index].request_focus();
        if let Some(editing) = &mut state.car_editing {
            editing.guide = Some((spots[index].point, spots[index].side));
        }
    }
}

/// Follows the drag that goes on with the pointer, Escape and release.
pub(super) fn follow(ui: &Ui, state: &mut ViewState, intents: &mut Intents) {
    let Some(mut drag) = state.views.point_drag.take() else {
        return;
    };
    let Some(Hold { pointer, free }) = hold(ui, &mut drag.cancelled, intents) else {
        return;
    };
    if let (Some(pointer), Some(transform), false) =
        (pointer, state.views.transform(drag.view), drag.cancelled)
    {
        let (from, to) = (transform.to_plane(drag.press), transform.to_plane(pointer));
        let moved = drag.view.lift([to[0] - from[0], to[1] - from[1]]);
        let step = if free { None } else { Some(STEP) };
        intents.push(Intent::Preview(moved_by(
            &drag,
            drag.to_drawn * moved,
            step,
        )));
        if let Some(editing) = &mut state.car_editing {
            editing.guide = Some((drag.point, drag.side));
        }
    }
    state.views.point_drag = Some(drag);
}

fn moved_by(drag: &PointDrag, by: Vector, step: Option<f64>) -> Change {
    let on_step = |start: f64, by: f64| match step {
        // A coordinate that is not moved keeps all its decimals.
        Some(step) if by.abs() > 1e-9 => ((start + by) / step).round() / (1.0 / step).round(),
        _ => start + by,
    };
    let Position(x, y, z) = drag.start;
    Change::Car(Box::new(CarEdit::Point {
        point: drag.point,
        side: drag.side,
        to: Position(on_step(x, by.x), on_step(y, by.y), on_step(z, by.z)),
    }))
}

/// Arrow keys move the point that has the focus by a step.
fn nudge(
    ui: &Ui,
    bench: &Bench,
    intents: &mut Intents,
    seen: &Seen,
    spot: &Spot,
    response: &Response,
) {
    let Some(Position(x, y, z)) = bench.setup().car.point(spot.point, spot.side) else {
        return;
    };
    for arrow in super::handles::pressed_arrows(ui, response) {
        let way = seen.view.lift([f64::from(arrow.x), f64::from(-arrow.y)]) * STEP;
        let to = [x + way.x, y + way.y, z + way.z].map(format::without_dust);
        let to = Position(to[0], to[1], to[2]);
        intents.apply(Change::Car(Box::new(CarEdit::Point {
            point: spot.point,
            side: spot.side,
            to,
        })));
    }
}

fn paint(ui: &Ui, painter: &Painter, spot: &Spot, response: &Response, chosen: bool) {
    let tokens = Tokens::of(ui.ctx());
    let active = response.hovered() || response.has_focus() || response.dragged();
    let ink = if spot.point.is_shared() {
        tokens.part_line
    } else {
        tokens.side(spot.side)
    };
    let (fill, stroke) = if active || chosen {
        (tokens.accent_soft, Stroke::new(2.0, tokens.accent))
    } else {
        (tokens.canvas, Stroke::new(1.6, ink))
    };
    // A square tells a point of the car from a ring that an adjustment moves.
    let side = Vec2::splat(2.0 * Metrics::HANDLE_RADIUS - 1.0);
    let square = Rect::from_center_size(spot.at, side);
    painter.rect(square, 1.0, fill, stroke, eframe::egui::StrokeKind::Middle);
}

/// From the origin of the measures to a point, as two dimensions.
fn paint_guide(ui: &Ui, painter: &Painter, spot: &Spot, seen: &Seen) {
    let tokens = Tokens::of(ui.ctx());
    let unit = units_of(ui.ctx()).unit("mm", 2);
    let [u, v] = seen.view.project(&spot.posed.place);
    let place: Point = spot.posed.place;
    let (across, up) = match seen.view {
        View::Top => (("y", place.y), ("x", place.x)),
        View::Front => (("y", place.y), ("z", place.z)),
        View::Side => (("x", place.x), ("z", place.z)),
    };
    let ends = [([0.0, v], [u, v], across), ([u, 0.0], [u, v], up)];
    for (from, to, (letter, value)) in ends {
        let (from, to) = (seen.transform.to_screen(from), seen.transform.to_screen(to));
        measure_line(painter, from, to, tokens.accent);
        let number = format::number(value * unit.factor, unit.decimals);
        let middle = from + (to - from) * 0.5;
        label(
            ui,
            painter,
            middle,
            &format!("{letter} {number}"),
            tokens.accent,
        );
    }
}

fn measure_line(painter: &Painter, from: Pos2, to: Pos2, ink: Color32) {
    if from.distance(to) > 6.0 {
        dimension(painter, [from, to], Vec2::ZERO, ink);
    }
}
