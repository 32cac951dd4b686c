//! Moving what the views look at: by dragging, by wheel, touch pad and pinch, and by keys.

use eframe::egui::{
    Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, PointerButton, Pos2, Rect, Response,
    Ui, Vec2,
};
use steerloft_sheet::View;

use super::Views;
use super::handles::pressed_arrows;
use super::seen::Seen;

/// Zoom per point of the wheel.
const ZOOM_RATE: f64 = 0.004;

/// Zoom of one key press.
const KEY_ZOOM: f64 = 1.25;

/// Way of one key press, points.
const KEY_WAY: f32 = 40.0;

/// Follows what moves a view; a press that is meant for a handle does not.
pub(super) fn take(ui: &Ui, ground: &Response, views: &mut Views, seen: &Seen, on_handle: bool) {
    let &Seen { view, area, .. } = seen;
    if !on_handle {
        drag(ui, ground, views, view);
    }
    if ground.has_focus() {
        keys(ui, ground, views, view, area);
    }
    if ui.rect_contains_pointer(area) {
        scroll(ui, views, view, area);
    }
}

fn drag(ui: &Ui, ground: &Response, views: &mut Views, view: View) {
    if views.is_dragging() || ui.input(|input| input.multi_touch().is_some()) {
        return;
    }
    for button in [PointerButton::Primary, PointerButton::Middle] {
        if !ground.dragged_by(button) {
            continue;
        }
        let mut by = ground.drag_delta();
        if ground.drag_started_by(button)
            && let (Some(press), Some(pointer)) =
                ui.input(|input| (input.pointer.press_origin(), input.pointer.interact_pos()))
        {
            // What the pointer moved before the press was known for a drag counts too.
            by = pointer - press;
        }
        pan(views, view, by);
    }
}

fn pan(views: &mut Views, view: View, by: Vec2) {
    if by != Vec2::ZERO {
        views.camera.pan(view, [f64::from(by.x), f64::from(by.y)]);
        views.moved = true;
    }
}

fn zoom(views: &mut Views, view: View, area: Rect, at: Pos2, factor: f64) {
    if (factor - 1.0).abs() > f64::from(f32::EPSILON) {
        views.camera.zoom(view, area, at, factor);
        views.moved = true;
    }
}

/// A wheel zooms, two fingers on a touch pad move the drawing, and a pinch zooms.
fn scroll(ui: &Ui, views: &mut Views, view: View, area: Rect) {
    let (scroll, pinch, touches, pointer) = ui.input(|input| {
        for event in &input.events {
            if let Event::MouseWheel { source, unit, .. } = event {
                views.scroll_pans = is_touch_pad(*source, *unit);
            }
        }
        (
            input.smooth_scroll_delta,
            f64::from(input.zoom_delta()),
            input.multi_touch(),
            input.pointer.hover_pos(),
        )
    });
    if let Some(touches) = touches {
        pan(views, view, touches.translation_delta);
        zoom(
            views,
            view,
            area,
            touches.center_pos,
            f64::from(touches.zoom_delta),
        );
        return;
    }
    let by_wheel = if views.scroll_pans {
        pan(views, view, scroll);
        1.0
    } else {
        (f64::from(scroll.y) * ZOOM_RATE).exp()
    };
    if let Some(pointer) = pointer {
        zoom(views, view, area, pointer, by_wheel * pinch);
    }
}

/// Whether a turn of the wheel comes from fingers on a touch pad. Where the system does not say, only those scroll by
/// points.
fn is_touch_pad(source: MouseWheelSource, unit: MouseWheelUnit) -> bool {
    match source {
        MouseWheelSource::Wheel => false,
        MouseWheelSource::Unknown => unit == MouseWheelUnit::Point,
        _ => true,
    }
}

/// Arrow keys move a view that has the focus, plus and minus zoom about its middle.
fn keys(ui: &Ui, ground: &Response, views: &mut Views, view: View, area: Rect) {
    for arrow in pressed_arrows(ui, ground) {
        pan(views, view, -arrow * KEY_WAY);
    }
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    for (keys, factor) in [
        ([Key::Plus, Key::Equals], KEY_ZOOM),
        ([Key::Minus, Key::Minus], 1.0 / KEY_ZOOM),
    ] {
        if keys.into_iter().any(pressed) {
            zoom(views, view, area, area.center(), factor);
        }
    }
}
