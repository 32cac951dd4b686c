//! How the ring on a pivot looks, and what is said about it.

use eframe::egui::{
    Align2, Color32, CornerRadius, Pos2, Rect, Response, RichText, Stroke, TextStyle, Ui, Vec2,
    vec2,
};
use steerloft_setup::handles::Handle;

use super::drag;
use super::handles::Ring;
use super::seen::Seen;
use crate::format;
use crate::state::Bench;
use crate::theme::{Metrics, Tokens};
use crate::ui::{names, units_of};

/// Length of the lines that show where a pivot may go, points.
const WAY: f32 = 22.0;

/// Paints a ring, the ways its pivot can go, and what a drag drives.
pub(super) fn paint(
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
        let value = units_of(ui.ctx()).value(adjustment, &bench.setup().value_of(adjustment));
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

/// Says what a pivot is, where it stands and what it drives.
pub(super) fn tooltip(ui: &mut Ui, bench: &Bench, ring: &Ring<'_>) {
    let tokens = Tokens::of(ui.ctx());
    let place = ring.posed.place;
    let unit = units_of(ui.ctx()).unit("mm", 2);
    let coordinate = |mm: f64| format::number(mm * unit.factor, unit.decimals);
    ui.set_max_width(320.0);
    ui.label(RichText::new(names::pivot(ring.handle.point, ring.handle.side)).strong());
    ui.label(format!(
        "x {}   y {}   z {} {}",
        coordinate(place.x),
        coordinate(place.y),
        coordinate(place.z),
        unit.sign
    ));
    ui.add_space(Metrics::GAP_SMALL);
    for &index in &ring.handle.adjustments {
        if let Some(adjustment) = bench.setup().car.adjustments.get(index) {
            let value = units_of(ui.ctx()).value(adjustment, &bench.setup().value_of(adjustment));
            ui.colored_label(tokens.accent, format!("{}: {value}", adjustment.name));
        }
    }
    ui.add_space(Metrics::GAP_SMALL);
    ui.weak("Drag to move it; Alt frees it from steps. Arrow keys nudge it once clicked. Double-click puts it back to base.");
}
