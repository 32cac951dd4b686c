//! Rings on the pivots that can be dragged.

use eframe::egui::{
    Align2, Color32, CornerRadius, EventFilter, Id, Key, Modifiers, Pos2, Rect, Response, RichText,
    Sense, Stroke, TextStyle, Ui, Vec2, WidgetInfo, vec2,
};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::handles::Handle;
use steerloft_sheet::View;
use steerloft_solver::frame::Side;

use super::camera::Transform;
use super::drag::{self, Drag};
use super::pivot::{Posed, posed};
use crate::format;
use crate::state::{Bench, Change, Shown};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intent, Intents, ViewState, names};

/// Length of the lines that show where a pivot may go, points.
const WAY: f32 = 22.0;

/// Arrow keys with their directions on screen.
const ARROWS: [(Key, Vec2); 4] = [
    (Key::ArrowLeft, vec2(-1.0, 0.0)),
    (Key::ArrowRight, vec2(1.0, 0.0)),
    (Key::ArrowUp, vec2(0.0, -1.0)),
    (Key::ArrowDown, vec2(0.0, 1.0)),
];

/// A view as it is drawn.
pub(super) struct Seen {
    pub(super) view: View,
    pub(super) area: Rect,
    pub(super) transform: Transform,
}

/// A handle in a view.
struct Ring<'a> {
    handle: &'a Handle,
    posed: Posed,
    at: Pos2,
}

/// Accessible name of a handle, such as "Outer tie-rod ball, left (Top view)".
#[must_use]
pub fn handle_name(point: PointName, side: Side, view: View) -> String {
    let view = view
        .title()
        .split(',')
        .next()
        .unwrap_or_default()
        .to_lowercase();
    format!("{} ({view})", names::pivot(point, side))
}

/// Draws the handles of a view and takes what is done with them.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    state: &mut ViewState,
    intents: &mut Intents,
    seen: &Seen,
) {
    let mut rings: Vec<Ring<'_>> = shown
        .handles
        .iter()
        // From the side the near corner hides the far one.
        .filter(|handle| seen.view != View::Side || handle.side == Side::Left)
        .filter_map(|handle| {
            let posed = posed(shown, handle.point, handle.side)?;
            let at = seen.transform.to_screen(seen.view.project(&posed.place));
            seen.area.contains(at).then_some(Ring { handle, posed, at })
        })
        .collect();
    // Where handles overlap, the one nearest to the pointer comes last and so lies on top.
    if let Some(pointer) = ui
        .input(|input| input.pointer.hover_pos())
        .filter(|at| seen.area.contains(*at))
    {
        rings.sort_by(|a, b| pointer.distance(b.at).total_cmp(&pointer.distance(a.at)));
    }
    for ring in &rings {
        show_ring(ui, bench, state, intents, seen, ring);
    }
}

fn show_ring(
    ui: &mut Ui,
    bench: &Bench,
    state: &mut ViewState,
    intents: &mut Intents,
    seen: &Seen,
    ring: &Ring<'_>,
) {
    let Handle { point, side, .. } = *ring.handle;
    let name = handle_name(point, side, seen.view);
    let reach = Rect::from_center_size(ring.at, Vec2::splat(2.0 * Metrics::HANDLE_REACH))
        .intersect(seen.area);
    let response = ui.interact(
        reach,
        Id::unique(("handle", &name)),
        Sense::click_and_drag(),
    );
    response.widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Button, true, &name));
    if response.drag_started_by(eframe::egui::PointerButton::Primary) {
        let press = ui
            .input(|input| input.pointer.press_origin())
            .unwrap_or(ring.at);
        state.views.drag = Some(Drag::new(
            ring.handle.clone(),
            &ring.posed,
            seen.view,
            &seen.transform,
            press,
        ));
        intents.push(Intent::Select(Some((point, side))));
    }
    if response.double_clicked() {
        back_to_base(bench, ring.handle, intents);
    } else if response.clicked() {
        response.request_focus();
        intents.push(Intent::Select(Some((point, side))));
    }
    if response.has_focus() {
        take_arrows(ui, bench, state, intents, seen, ring, &response);
    }
    let dragged = state
        .views
        .drag
        .as_ref()
        .filter(|drag| drag.is_of(point, side, seen.view));
    let driven = dragged.and_then(Drag::adjustment);
    paint(ui, bench, seen, ring, &response, driven);
    if dragged.is_none() {
        response.on_hover_ui(|ui| tooltip(ui, bench, ring));
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
    let arrows_are_ours = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, arrows_are_ours));
    for (key, arrow) in ARROWS {
        if ui.input_mut(|input| input.consume_key(Modifiers::NONE, key))
            && let Some((adjustment, change)) = drag::nudge(
                bench.setup(),
                ring.handle,
                seen.view,
                &ring.posed.motion,
                arrow,
            )
        {
            state.last_adjustment = Some(adjustment);
            intents.apply(change);
        }
    }
}

fn paint(
    ui: &Ui,
    bench: &Bench,
    seen: &Seen,
    ring: &Ring<'_>,
    response: &Response,
    driven: Option<usize>,
) {
    let tokens = Tokens::of(ui.ctx());
    let painter = ui.painter_at(seen.area);
    let Handle { point, side, .. } = *ring.handle;
    let active = driven.is_some() || response.hovered();
    let selected = bench.selected() == Some((point, side));
    let ways: &[usize] = match &driven {
        Some(adjustment) => std::slice::from_ref(adjustment),
        None if response.hovered() || response.has_focus() => &ring.handle.adjustments,
        None => &[],
    };
    for &adjustment in ways {
        if let Some(way) = drag::direction(
            bench.setup(),
            ring.handle,
            adjustment,
            seen.view,
            &ring.posed.motion,
        ) {
            let stroke = Stroke::new(1.5, tokens.accent);
            painter.line_segment([ring.at - way * WAY, ring.at + way * WAY], stroke);
        }
    }
    let ink = if point.is_shared() {
        tokens.part_line
    } else {
        tokens.side(side)
    };
    let (fill, stroke) = if active {
        (tokens.accent_soft, Stroke::new(2.0, tokens.accent))
    } else if selected {
        (tokens.canvas, Stroke::new(2.4, tokens.accent))
    } else {
        (tokens.canvas, Stroke::new(1.6, ink))
    };
    painter.circle(ring.at, Metrics::HANDLE_RADIUS, fill, stroke);
    if response.has_focus() {
        painter.circle_stroke(
            ring.at,
            Metrics::HANDLE_RADIUS + 3.5,
            Stroke::new(1.0, tokens.accent),
        );
    }
    if let Some(adjustment) = driven.and_then(|index| bench.setup().car.adjustments.get(index)) {
        let value = format::value(adjustment, &bench.setup().value_of(adjustment));
        tag(
            ui,
            seen.area,
            ring.at,
            &format!("{}  {value}", adjustment.name),
            tokens.raised,
        );
    }
}

/// A small label beside a pivot that is being dragged.
fn tag(ui: &Ui, area: Rect, at: Pos2, text: &str, ground: Color32) {
    let tokens = Tokens::of(ui.ctx());
    let painter = ui.painter();
    let font = TextStyle::Body.resolve(ui.style());
    let galley = painter.layout_no_wrap(text.to_owned(), font, tokens.text_strong);
    let size = galley.size() + vec2(16.0, 8.0);
    let wanted = Rect::from_min_size(at + vec2(16.0, -16.0 - size.y), size);
    let inside = Vec2::new(
        (area.right() - 6.0 - wanted.right()).min(0.0),
        (area.top() + 6.0 - wanted.top()).max(0.0),
    );
    let place = wanted.translate(inside);
    painter.rect(
        place,
        CornerRadius::same(Metrics::CORNER),
        ground,
        Stroke::new(1.0, tokens.accent),
        eframe::egui::StrokeKind::Inside,
    );
    let corner = Align2::CENTER_CENTER
        .align_size_within_rect(galley.size(), place)
        .min;
    painter.galley(corner, galley, tokens.text_strong);
}

fn tooltip(ui: &mut Ui, bench: &Bench, ring: &Ring<'_>) {
    let tokens = Tokens::of(ui.ctx());
    let place = ring.posed.place;
    ui.set_max_width(320.0);
    ui.label(RichText::new(names::pivot(ring.handle.point, ring.handle.side)).strong());
    ui.label(format!(
        "x {}   y {}   z {} mm",
        format::number(place.x, 2),
        format::number(place.y, 2),
        format::number(place.z, 2)
    ));
    ui.add_space(Metrics::GAP_SMALL);
    for &index in &ring.handle.adjustments {
        if let Some(adjustment) = bench.setup().car.adjustments.get(index) {
            let value = format::value(adjustment, &bench.setup().value_of(adjustment));
            ui.colored_label(tokens.accent, format!("{}: {value}", adjustment.name));
        }
    }
    ui.add_space(Metrics::GAP_SMALL);
    ui.weak("Drag to move it; Alt frees it from steps. Arrow keys nudge it once clicked. Double-click puts it back to base.");
}
