//! The grid behind a drawing, and the bar that gives its scale.

use eframe::egui::{Align2, Painter, Rect, Stroke, TextStyle, Ui, pos2};

use super::camera::Transform;
use crate::theme::Tokens;
use crate::ui::units_of;
use crate::units::Units;

/// Spacings of the grid, mm or in.
const SPACINGS: [f64; 16] = [
    0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1_000.0,
];

/// Least distance of grid lines, points.
const LEAST: f64 = 24.0;

/// Spacing of the grid at a scale, mm.
fn spacing(transform: &Transform, units: Units) -> f64 {
    let mut spacings = SPACINGS.map(|shown| units.millimetres(shown)).into_iter();
    let fitting = spacings.find(|mm| mm * transform.scale() >= LEAST);
    fitting.unwrap_or(units.millimetres(SPACINGS[SPACINGS.len() - 1]))
}

/// Draws the grid.
pub(super) fn paint(painter: &Painter, area: Rect, transform: &Transform, tokens: &Tokens) {
    let step = spacing(transform, units_of(painter.ctx()));
    let stroke = Stroke::new(1.0, tokens.grid);
    let low = transform.to_plane(area.left_bottom());
    let high = transform.to_plane(area.right_top());
    let mut u = (low[0] / step).ceil() * step;
    while u < high[0] {
        painter.vline(transform.to_screen([u, 0.0]).x, area.y_range(), stroke);
        u += step;
    }
    let mut v = (low[1] / step).ceil() * step;
    while v < high[1] {
        painter.hline(area.x_range(), transform.to_screen([0.0, v]).y, stroke);
        v += step;
    }
}

/// Draws the scale bar in the lower right corner: as long as one square of the grid.
pub(super) fn scale_bar(
    ui: &Ui,
    painter: &Painter,
    area: Rect,
    transform: &Transform,
    tokens: &Tokens,
) {
    let units = units_of(ui.ctx());
    let mm = spacing(transform, units);
    let length = transform.length(mm);
    let end = pos2(area.right() - 12.0, area.bottom() - 10.0);
    let start = pos2(end.x - length, end.y);
    let stroke = Stroke::new(1.0, tokens.text_weak);
    painter.line_segment([start, end], stroke);
    for place in [start, end] {
        painter.vline(place.x, place.y - 3.0..=place.y + 3.0, stroke);
    }
    let text = units.short_length(mm, 2);
    let font = TextStyle::Small.resolve(ui.style());
    painter.text(
        pos2(start.x - 6.0, end.y),
        Align2::RIGHT_CENTER,
        text,
        font,
        tokens.text_weak,
    );
}
