//! What stands in the way, drawn while the car is described.

use eframe::egui::{Align2, Painter, Pos2, Rect, Shape as Line, Stroke, TextStyle, Ui, vec2};
use steerloft_setup::car::{Obstacle, Position, Shape};
use steerloft_solver::frame::{Point, Vector};

use super::seen::Seen;
use crate::state::Bench;
use crate::theme::Tokens;

/// Length of the strokes that show which side of a plane is taken, points.
const HATCH: f32 = 7.0;

/// Distance of those strokes, points.
const HATCH_STEP: f32 = 14.0;

/// Draws boxes as outlines, and planes that are seen on edge as lines with strokes on the side that they take.
pub(super) fn paint(ui: &Ui, painter: &Painter, bench: &Bench, seen: &Seen) {
    for obstacle in &bench.setup().car.obstacles {
        one(ui, painter, obstacle, obstacle.shape, seen);
        if obstacle.mirrored {
            one(ui, painter, obstacle, mirrored(obstacle.shape), seen);
        }
    }
}

fn one(ui: &Ui, painter: &Painter, obstacle: &Obstacle, shape: Shape, seen: &Seen) {
    let tokens = Tokens::of(ui.ctx());
    let stroke = Stroke::new(1.2, tokens.text_weak);
    let corner = match shape {
        Shape::Box { centre, size } => {
            let (centre, half) = (centre.point(), size.vector() / 2.0);
            let ends = [centre - half, centre + half].map(|end| seen.at(&end));
            let outline = Rect::from_two_pos(ends[0], ends[1]);
            let corners = [
                outline.left_top(),
                outline.right_top(),
                outline.right_bottom(),
                outline.left_bottom(),
                outline.left_top(),
            ];
            painter.extend(Line::dashed_line(&corners, stroke, 5.0, 3.0));
            Some(outline.left_top())
        }
        Shape::Plane { point, free } => {
            on_edge(painter, seen, point.point(), free.vector(), stroke)
        }
    };
    if let Some(corner) = corner.filter(|corner| seen.area.contains(*corner)) {
        let font = TextStyle::Small.resolve(ui.style());
        painter.text(
            corner - vec2(0.0, 1.0),
            Align2::LEFT_BOTTOM,
            &obstacle.name,
            font,
            tokens.text_weak,
        );
    }
}

/// Draws a plane that is seen on edge, and says where its name goes; nothing for one that is not.
fn on_edge(
    painter: &Painter,
    seen: &Seen,
    point: Point,
    free: Vector,
    stroke: Stroke,
) -> Option<Pos2> {
    let free = free.try_normalize(1e-12)?;
    let [u, v] = seen.view.project_vector(&free);
    // Seen on edge, its direction lies in the plane of the drawing.
    if u.hypot(v) < 0.999 {
        return None;
    }
    let at = seen.at(&point);
    #[allow(clippy::cast_possible_truncation, reason = "a direction on screen")]
    let (free, along) = (vec2(u as f32, -v as f32), vec2(v as f32, u as f32));
    let reach = seen.area.size().length() + (at - seen.area.center()).length();
    let ends = [at - along * reach, at + along * reach];
    painter.line_segment(ends, stroke);
    let count = (2.0 * reach / HATCH_STEP).min(2_000.0);
    let mut step = 0.0;
    while step < count {
        let from = ends[0] + along * (step * HATCH_STEP);
        if seen.area.contains(from) {
            let to = from - free * HATCH + along * HATCH;
            painter.line_segment([from, to], Stroke::new(1.0, stroke.color));
        }
        step += 1.0;
    }
    Some(at)
}

fn mirrored(shape: Shape) -> Shape {
    let mirror = |Position(x, y, z): Position| Position(x, -y, z);
    match shape {
        Shape::Box { centre, size } => Shape::Box {
            centre: mirror(centre),
            size,
        },
        Shape::Plane { point, free } => Shape::Plane {
            point: mirror(point),
            free: mirror(free),
        },
    }
}
