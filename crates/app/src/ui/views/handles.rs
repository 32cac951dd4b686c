//! The pivots that can be dragged: what is done with them by pointer and keys.

use eframe::egui::{
    EventFilter, Id, Key, Modifiers, PointerButton, Pos2, Rect, Response, Role, Sense, Ui, Vec2,
    WidgetInfo, vec2,
};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::handles::Handle;
use steerloft_sheet::View;
use steerloft_solver::frame::Side;

use super::drag::{self, Drag};
use super::grab::{Pointer, nearest};
use super::pivot::{Posed, posed};
use super::ring;
use super::seen::Seen;
use crate::state::{Bench, Change, Shown};
use crate::ui::{Intent, Intents, ViewState, names};

/// Arrow keys with their directions on screen.
const ARROWS: [(Key, Vec2); 4] = [
    (Key::ArrowLeft, vec2(-1.0, 0.0)),
    (Key::ArrowRight, vec2(1.0, 0.0)),
    (Key::ArrowUp, vec2(0.0, -1.0)),
    (Key::ArrowDown, vec2(0.0, 1.0)),
];

/// A handle in a view.
pub(super) struct Ring<'a> {
    pub(super) handle: &'a Handle,
    pub(super) posed: Posed,
    pub(super) at: Pos2,
}

/// Accessible name of a handle, such as "Outer tie-rod ball, left (top view)".
#[must_use]
pub fn handle_name(point: PointName, side: Side, view: View) -> String {
    format!("{} ({})", names::pivot(point, side), names::view(view))
}

/// The handles that a view shows; where they overlap, the one nearest to the pointer comes last and so lies on top.
pub(super) fn rings<'a>(ui: &Ui, shown: &'a Shown, seen: &Seen) -> Vec<Ring<'a>> {
    let mut rings: Vec<Ring<'_>> = shown
        .handles
        .iter()
        .filter(|handle| seen.shows(handle.side))
        .filter_map(|handle| {
            let posed = posed(shown, handle.point, handle.side)?;
            let at = seen.at(&posed.place);
            seen.area.contains(at).then_some(Ring { handle, posed, at })
        })
        .collect();
    if let Some(pointer) = ui
        .input(|input| input.pointer.hover_pos())
        .filter(|at| seen.area.contains(*at))
    {
        rings.sort_by(|a, b| pointer.distance(b.at).total_cmp(&pointer.distance(a.at)));
    }
    rings
}

/// The handle that is meant where the pointer pressed, or is: the nearest one within its reach.
pub(super) fn meant(ui: &Ui, rings: &[Ring<'_>]) -> Option<usize> {
    let at = ui.input(|input| {
        let pointer = &input.pointer;
        pointer.press_origin().or(pointer.interact_pos())
    })?;
    // What is registered for a ring is a square, which reaches farther at its corners.
    let reach = Pointer::of(ui).reach() * std::f32::consts::SQRT_2;
    nearest(rings.iter().map(|ring| ring.at), at, reach)
}

/// Takes what is done with the handles of a view. The nearest one within the pointer's reach is meant, whatever part of
/// which handle lies under it, and a finger reaches beyond their rings.
pub(super) fn take(
    ui: &mut Ui,
    bench: &Bench,
    state: &mut ViewState,
    intents: &mut Intents,
    seen: &Seen,
    rings: &[Ring<'_>],
    ground: &Response,
) -> Vec<Response> {
    let responses: Vec<Response> = rings.iter().map(|ring| interact(ui, seen, ring)).collect();
    let touched: Vec<&Response> = match Pointer::of(ui) {
        Pointer::Fine => responses.iter().collect(),
        Pointer::Finger => responses.iter().chain([ground]).collect(),
    };
    let started = touched
        .iter()
        .any(|response| response.drag_started_by(PointerButton::Primary));
    if let Some(press) = ui.input(|input| input.pointer.press_origin())
        && let Some(index) = meant(ui, rings).filter(|_| started)
    {
        let ring = &rings[index];
        let Handle { point, side, .. } = *ring.handle;
        state.views.drag = Some(Drag::new(
            ring.handle.clone(),
            &ring.posed,
            seen.view,
            &seen.transform,
            press,
        ));
        intents.push(Intent::Select(Some((point, side))));
    }
    // A click by key or screen reader has no place and means the one that has the focus.
    let by_key = responses.iter().position(Response::clicked);
    if let Some(clicked) = touched.iter().find(|response| response.clicked())
        && let Some(index) = meant(ui, rings)
            .filter(|_| clicked.interact_pointer_pos().is_some())
            .or(by_key)
    {
        let ring = &rings[index];
        if clicked.double_clicked() {
            back_to_base(bench, ring.handle, intents);
        } else {
            responses[index].request_focus();
            intents.push(Intent::Select(Some((ring.handle.point, ring.handle.side))));
        }
    }
    for (ring, response) in rings.iter().zip(&responses) {
        if response.has_focus() {
            take_arrows(ui, bench, state, intents, seen, ring, response);
        }
    }
    responses
}

fn interact(ui: &Ui, seen: &Seen, ring: &Ring<'_>) -> Response {
    let name = handle_name(ring.handle.point, ring.handle.side, seen.view);
    let size = Vec2::splat(2.0 * Pointer::Fine.reach());
    let reach = Rect::from_center_size(ring.at, size).intersect(seen.area);
    let response = ui.interact(
        reach,
        Id::unique(("handle", &name)),
        Sense::click_and_drag(),
    );
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    response
}

/// Paints the handles of a view.
pub(super) fn paint(
    ui: &Ui,
    bench: &Bench,
    state: &ViewState,
    seen: &Seen,
    rings: &[Ring<'_>],
    responses: Vec<Response>,
) {
    for (ring, response) in rings.iter().zip(responses) {
        let Handle { point, side, .. } = *ring.handle;
        let dragged = state
            .views
            .drag
            .as_ref()
            .filter(|drag| drag.is_of(point, side, seen.view));
        let driven = dragged.and_then(Drag::adjustment);
        ring::paint(ui, bench, seen, ring, &response, driven);
        if dragged.is_none() {
            response.on_hover_ui(|ui| ring::tooltip(ui, bench, ring));
        }
    }
}

/// Puts every adjustment that drives the pivot back to its base, as one step.
fn back_to_base(bench: &Bench, handle: &Handle, intents: &mut Intents) {
    intents.push(Intent::Finish);
    for &index in &handle.adjustments {
        if let Some(adjustment) = bench.setup().car.adjustments.get(index) {
            intents.push(Intent::Preview(Change::Adjust {
                adjustment: index,
                value: adjustment.base(),
            }));
        }
    }
    intents.push(Intent::Finish);
}

fn take_arrows(
    ui: &Ui,
    bench: &Bench,
    state: &mut ViewState,
    intents: &mut Intents,
    seen: &Seen,
    ring: &Ring<'_>,
    response: &Response,
) {
    for arrow in pressed_arrows(ui, response) {
        let nudge = drag::nudge(
            bench.setup(),
            ring.handle,
            seen.view,
            &ring.posed.motion,
            arrow,
        );
        if let Some((adjustment, change)) = nudge {
            state.last_adjustment = Some(adjustment);
            intents.apply(change);
        }
    }
}

/// The arrow keys pressed on a widget that has the focus, as directions on screen; none of them moves the focus.
pub(super) fn pressed_arrows(ui: &Ui, focused: &Response) -> Vec<Vec2> {
    let arrows_are_ours = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(focused.id, arrows_are_ours));
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    ARROWS
        .into_iter()
        .filter_map(|(key, arrow)| pressed(key).then_some(arrow))
        .collect()
}
