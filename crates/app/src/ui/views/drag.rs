//! Dragging a pivot: which adjustment it drives, and to which value.

use eframe::egui::{Pos2, Ui, Vec2, vec2};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::handles::{Handle, displacement, value_nearest};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_sheet::View;
use steerloft_solver::Isometry3;
use steerloft_solver::frame::{Point, Side, Vector};

use super::camera::Transform;
use super::grab::{Hold, hold};
use super::pivot::Posed;
use crate::state::{Bench, Change};
use crate::theme::Metrics;
use crate::ui::{Intent, Intents, ViewState};

/// Displacements shorter than this in a view cannot be dragged in it, mm.
const FLAT: f64 = 1e-6;

/// How much better another adjustment must match the movement to be taken instead of the one used last.
const LOYALTY: f64 = 0.25;

/// A drag that goes on.
#[derive(Debug, Clone)]
pub(super) struct Drag {
    handle: Handle,
    view: View,
    /// Where the pivot was taken, chassis axes, mm.
    start: Point,
    /// From the pose to as drawn, for the body that carries the pivot.
    to_drawn: Isometry3<f64>,
    /// Where the pointer went down.
    press: Pos2,
    /// From the pointer to the pivot when it was taken, in the drawing plane, mm.
    grab: [f64; 2],
    /// The adjustment that the drag drives, once the pointer has shown a direction.
    adjustment: Option<usize>,
    /// Taken back with Escape; it waits for the pointer to be released.
    cancelled: bool,
}

impl Drag {
    /// A drag of a pivot taken at a place on screen.
    pub(super) fn new(
        handle: Handle,
        posed: &Posed,
        view: View,
        transform: &Transform,
        press: Pos2,
    ) -> Self {
        let pointer = transform.to_plane(press);
        let at = view.project(&posed.place);
        Self {
            handle,
            view,
            start: posed.place,
            to_drawn: posed.motion.inverse(),
            press,
            grab: [at[0] - pointer[0], at[1] - pointer[1]],
            adjustment: None,
            cancelled: false,
        }
    }

    /// Whether this is a drag of the pivot in the view.
    pub(super) fn is_of(&self, point: PointName, side: Side, view: View) -> bool {
        self.handle.point == point && self.handle.side == side && self.view == view
    }

    /// The adjustment being driven.
    pub(super) fn adjustment(&self) -> Option<usize> {
        if self.cancelled {
            None
        } else {
            self.adjustment
        }
    }

    /// The change that brings the pivot nearest to the pointer.
    fn change(
        &self,
        setup: &Setup,
        transform: &Transform,
        pointer: Pos2,
        free: bool,
    ) -> Option<Change> {
        let adjustment = self.adjustment()?;
        let at = transform.to_plane(pointer);
        let start = self.view.project(&self.start);
        let moved = [
            at[0] + self.grab[0] - start[0],
            at[1] + self.grab[1] - start[1],
        ];
        let wanted = self.to_drawn * (self.start + self.view.lift(moved));
        let axes = [[1.0, 0.0], [0.0, 1.0]].map(|axis| self.to_drawn * self.view.lift(axis));
        let Handle { point, side, .. } = self.handle;
        let value = value_nearest(setup, adjustment, point, side, wanted, &axes, free);
        Some(Change::Adjust { adjustment, value })
    }
}

/// Follows the drag that goes on with the pointer, Escape and release.
pub(super) fn follow(ui: &Ui, bench: &Bench, state: &mut ViewState, intents: &mut Intents) {
    let Some(mut drag) = state.views.drag.take() else {
        return;
    };
    let Some(Hold { pointer, free }) = hold(ui, &mut drag.cancelled, intents) else {
        return;
    };
    if let (Some(pointer), Some(transform)) = (pointer, state.views.transform(drag.view)) {
        let movement = pointer - drag.press;
        if drag.adjustment.is_none() && movement.length() >= Metrics::DRAG_THRESHOLD {
            drag.adjustment = best_match(bench.setup(), &drag, movement, state.last_adjustment);
            state.last_adjustment = drag.adjustment.or(state.last_adjustment);
        }
        if let Some(change) = drag.change(bench.setup(), &transform, pointer, free) {
            intents.push(Intent::Preview(change));
        }
    }
    state.views.drag = Some(drag);
}

/// The adjustment whose effect in the view lies most along the pointer's movement; the one used last if it does nearly
/// as well.
fn best_match(setup: &Setup, drag: &Drag, movement: Vec2, last: Option<usize>) -> Option<usize> {
    let from_drawn = drag.to_drawn.inverse();
    let score = |&index: &usize| {
        let way = direction(setup, &drag.handle, index, drag.view, &from_drawn)?;
        let share = f64::from((way.dot(movement) / movement.length()).abs());
        let bonus = if last == Some(index) { LOYALTY } else { 0.0 };
        Some((index, share + bonus))
    };
    let scored = drag.handle.adjustments.iter().filter_map(score);
    // Of equals the first in the car's list.
    scored
        .reduce(|best, other| if other.1 > best.1 + 1e-9 { other } else { best })
        .map(|(index, _)| index)
}

/// Unit direction on screen in which more of an adjustment moves the pivot; none if it does not show in the view.
pub(super) fn direction(
    setup: &Setup,
    handle: &Handle,
    adjustment: usize,
    view: View,
    from_drawn: &Isometry3<f64>,
) -> Option<Vec2> {
    let moved: Vector = from_drawn * displacement(setup, adjustment, handle.point, handle.side);
    let [right, up] = view.project_vector(&moved);
    let length = right.hypot(up);
    #[allow(clippy::cast_possible_truncation, reason = "a direction on screen")]
    let on_screen = vec2((right / length) as f32, (-up / length) as f32);
    (length > FLAT).then_some(on_screen)
}

/// The change that an arrow key asks of a selected pivot: one step of the adjustment that moves it most that way.
pub(super) fn nudge(
    setup: &Setup,
    handle: &Handle,
    view: View,
    from_drawn: &Isometry3<f64>,
    arrow: Vec2,
) -> Option<(usize, Change)> {
    let along = |&index: &usize| {
        let way = direction(setup, handle, index, view, from_drawn)?;
        Some((index, way.dot(arrow)))
    };
    let (adjustment, along) =
        handle
            .adjustments
            .iter()
            .filter_map(along)
            .reduce(|best, other| {
                if other.1.abs() > best.1.abs() + 1e-6 {
                    other
                } else {
                    best
                }
            })?;
    if along.abs() < 0.3 {
        return None;
    }
    let steps = if along > 0.0 { 1 } else { -1 };
    let car_adjustment = setup.car.adjustments.get(adjustment)?;
    let from = setup.value(adjustment);
    let value = match (&from, along > 0.0) {
        // A choice's direction points at its farthest option, so the way is known but not the order of the list.
        (Chosen::Choice(_), _) => {
            choice_towards(setup, handle, adjustment, view, from_drawn, arrow)?
        }
        _ => car_adjustment.step_from(&from, steps),
    };
    Some((adjustment, Change::Adjust { adjustment, value }))
}

/// The option whose place is the next one in a direction on screen.
fn choice_towards(
    setup: &Setup,
    handle: &Handle,
    adjustment: usize,
    view: View,
    from_drawn: &Isometry3<f64>,
    arrow: Vec2,
) -> Option<Chosen> {
    let options = setup.car.adjustments.get(adjustment)?.values()?;
    let along = |option: &Chosen| {
        let mut other = setup.clone();
        other.set(adjustment, option.clone()).ok()?;
        let here = steerloft_setup::layout::layout(setup);
        let there = steerloft_setup::layout::layout(&other);
        let from = steerloft_setup::handles::point_of(&here, handle.point, handle.side)?;
        let to = steerloft_setup::handles::point_of(&there, handle.point, handle.side)?;
        let [right, up] = view.project_vector(&(from_drawn * (to - from)));
        Some(right * f64::from(arrow.x) - up * f64::from(arrow.y))
    };
    options
        .into_iter()
        .filter_map(|option| along(&option).map(|distance| (option, distance)))
        .filter(|(_, distance)| *distance > FLAT)
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(option, _)| option)
}
