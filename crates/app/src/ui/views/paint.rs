//! Drawings painted on screen.

use eframe::egui::{Align2, FontId, Painter, Pos2, Rect, Shape as Painted, Stroke};
use steerloft_sheet::{Anchor, Drawing, Outline, Role, Shape, Text};

use super::camera::Transform;
use super::ink::{Ink, ink};
use super::outline::{as_line, fit_for_painting};
use crate::theme::Tokens;

/// Margin beyond the visible area within which lines are still drawn, points.
const MARGIN: f32 = 40.0;

/// Parts seen thinner than this are drawn as the line they look like, points: two strokes fill them.
const THINNEST: f32 = 1.8;

/// A wheel's face seen thinner than this is left out, points: its outline would run into that of the tyre.
const THINNEST_FACE: f32 = 3.5;

/// Paints the outlines of a car to compare with; lines that it is measured from are left out.
pub(super) fn paint_reference(
    painter: &Painter,
    drawing: &Drawing,
    transform: &Transform,
    tokens: &Tokens,
) {
    let ink = Ink::reference(tokens);
    let parts = drawing.shapes.iter().filter(|shape| {
        !matches!(
            shape.role,
            Role::CentreLine | Role::AxleLine | Role::Chassis | Role::Road | Role::WheelLine
        )
    });
    for shape in parts {
        paint_shape(painter, shape, transform, &ink);
    }
}

/// Paints a drawing, dimmed if it is not what was asked for.
pub(super) fn paint(
    painter: &Painter,
    drawing: &Drawing,
    transform: &Transform,
    tokens: &Tokens,
    dimmed: bool,
) {
    for shape in &drawing.shapes {
        let mut ink = ink(shape, tokens);
        if dimmed {
            ink = ink.dimmed(tokens.canvas);
        }
        paint_shape(painter, shape, transform, &ink);
    }
}

fn paint_shape(painter: &Painter, shape: &Shape, transform: &Transform, ink: &Ink) {
    match &shape.outline {
        Outline::Line(ends) => stroke_line(painter, ends.map(|end| transform.to_screen(end)), ink),
        Outline::Polyline(points) => {
            let points: Vec<Pos2> = points
                .iter()
                .map(|point| transform.to_screen(*point))
                .collect();
            for ends in points.windows(2) {
                if let [from, to] = ends {
                    stroke_line(painter, [*from, *to], ink);
                }
            }
        }
        Outline::Polygon(points) => {
            let corners: Vec<Pos2> = points
                .iter()
                .map(|point| transform.to_screen(*point))
                .collect();
            let is_wheel = matches!(shape.role, Role::Tyre | Role::Wheel);
            if is_wheel && as_line(&corners, THINNEST_FACE).is_some() {
                return;
            }
            if let Some(ends) = as_line(&corners, THINNEST) {
                painter.line_segment(ends, ink.stroke);
                return;
            }
            let corners = fit_for_painting(corners);
            painter.add(Painted::convex_polygon(corners, ink.fill, ink.stroke));
        }
        Outline::Circle { centre, radius } => {
            painter.circle(
                transform.to_screen(*centre),
                transform.length(*radius),
                ink.fill,
                ink.stroke,
            );
        }
        Outline::Text(text) => write(painter, text, transform, ink.stroke),
    }
}

/// Strokes a line as far as it can be seen, so that dashes are not laid over what lies far outside.
pub(super) fn stroke_line(painter: &Painter, ends: [Pos2; 2], ink: &Ink) {
    let Some(seen) = clip(ends, painter.clip_rect().expand(MARGIN)) else {
        return;
    };
    match ink.dashes {
        None => {
            painter.line_segment(seen, ink.stroke);
        }
        Some((dashes, gaps)) => {
            // Dashes are counted from the true end, so that they do not crawl when the view moves.
            let period: f32 = dashes.iter().chain(gaps).sum();
            let offset = (seen[0] - ends[0]).length() % period;
            let start = seen[0] - (seen[1] - seen[0]).normalized() * offset;
            painter.extend(Painted::dashed_line_with_offset(
                &[start, seen[1]],
                ink.stroke,
                dashes,
                gaps,
                0.0,
            ));
        }
    }
}

/// The part of a line inside a rectangle (Liang and Barsky, "A new concept and method for line clipping", 1984).
fn clip([from, to]: [Pos2; 2], area: Rect) -> Option<[Pos2; 2]> {
    let along = to - from;
    let (mut enter, mut leave) = (0.0_f32, 1.0_f32);
    let edges = [
        (-along.x, from.x - area.left()),
        (along.x, area.right() - from.x),
        (-along.y, from.y - area.top()),
        (along.y, area.bottom() - from.y),
    ];
    for (out, room) in edges {
        if out == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if out < 0.0 {
            enter = enter.max(room / out);
        } else {
            leave = leave.min(room / out);
        }
    }
    (enter < leave).then(|| [from + along * enter, from + along * leave])
}

fn write(painter: &Painter, text: &Text, transform: &Transform, stroke: Stroke) {
    let anchor = match text.anchor {
        Anchor::Start => Align2::LEFT_BOTTOM,
        Anchor::Middle => Align2::CENTER_BOTTOM,
        Anchor::End => Align2::RIGHT_BOTTOM,
    };
    let font = FontId::proportional(transform.length(text.size).clamp(6.0, 60.0));
    painter.text(
        transform.to_screen(text.at),
        anchor,
        &text.content,
        font,
        stroke.color,
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use eframe::egui::pos2;

    const AREA: Rect = Rect {
        min: Pos2::new(0.0, 0.0),
        max: Pos2::new(10.0, 10.0),
    };

    #[test]
    fn a_line_is_cut_at_the_edges() {
        let seen = clip([pos2(-10.0, 5.0), pos2(30.0, 5.0)], AREA);
        assert_eq!(seen, Some([pos2(0.0, 5.0), pos2(10.0, 5.0)]));
    }

    #[test]
    fn a_line_outside_is_not_drawn() {
        assert_eq!(clip([pos2(-10.0, 20.0), pos2(30.0, 20.0)], AREA), None);
        assert_eq!(clip([pos2(12.0, -5.0), pos2(12.0, 15.0)], AREA), None);
        assert_eq!(clip([pos2(-5.0, 2.0), pos2(2.0, -5.0)], AREA), None);
    }
}
