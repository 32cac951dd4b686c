//! Wheel and tyre: a solid of revolution about the spin axis, seen truly at its camber and steer.

use steerloft_solver::frame::Side;
use steerloft_solver::pose::{AxlePose, CornerPose};

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::{Drawing, Outline, Role, Shape, View};
use crate::sight::Sight;
use crate::solid::{Circle, SQUARE_ON, hull_of_wheel_circles};

/// Rim radius against tyre radius.
const RIM: f64 = 0.62;

/// Rounding of the tyre's shoulders against the lesser of its radius and half its width.
const SHOULDER: f64 = 0.16;

/// How far the rim's face stands inside the tyre's, against the tyre's width.
const DISH: f64 = 0.04;

/// A face seen flatter than this, as the sine of its tilt, shows nothing of what is on it.
const LEAST_FACING: f64 = 0.12;

/// Adds tyre, rim, axle and the line of the wheel plane.
pub(super) fn add(parts: &mut Parts, corner: &CornerPose, sizes: Proportions) {
    let sight = parts.sight;
    let side = Some(corner.side);
    let facing = corner.spin_axis.dot(&sight.view.towards_eye());
    // The face that the eye sees: the outboard one where the spin axis points towards the eye.
    let near_face = if facing < 0.0 { -0.5 } else { 0.5 } * corner.tyre_width;
    let circle = |radius: f64, offset: f64| Circle {
        centre: corner.wheel_centre + corner.spin_axis * offset,
        normal: corner.spin_axis,
        radius,
    };
    let face = |radius: f64, offset: f64| hull_of_wheel_circles(sight, &[circle(radius, offset)]);
    let mut shapes = vec![(Role::Tyre, tyre(sight, corner))];
    if facing.abs() > SQUARE_ON {
        let seat = near_face * (1.0 - 2.0 * DISH);
        let flat = corner.tyre_radius - shoulder(corner);
        shapes.push((Role::Tyre, face(flat, near_face)));
        if facing.abs() > LEAST_FACING {
            shapes.push((Role::Wheel, face(RIM * corner.tyre_radius, seat)));
            shapes.push((Role::Wheel, face(1.8 * sizes.ball, seat)));
        }
    }
    parts.add(Layer::Wheels, &corner.wheel_centre, side, shapes);
    add_plane_line(parts, corner, sizes);
}

/// The outlines of both tyres in a pose, to be drawn lightly: where the wheels come to at an end of their travel.
///
/// In side view only the left one, which hides the other.
#[must_use]
pub fn wheel_outlines(pose: &AxlePose, sight: impl Into<Sight>) -> Drawing {
    let sight = sight.into();
    let corners = [&pose.corners.left, &pose.corners.right];
    let seen = corners
        .into_iter()
        .filter(|corner| sight.view != View::Side || corner.side == Side::Left);
    Drawing {
        shapes: seen
            .map(|corner| Shape {
                role: Role::Envelope,
                side: Some(corner.side),
                outline: tyre(sight, corner),
            })
            .collect(),
    }
}

fn shoulder(corner: &CornerPose) -> f64 {
    SHOULDER * corner.tyre_radius.min(corner.tyre_width / 2.0)
}

/// Outline of the tyre: a cylinder of its radius and width with rounded shoulders.
fn tyre(sight: Sight, corner: &CornerPose) -> Outline {
    let rounding = shoulder(corner);
    let circles: Vec<Circle> = [0.0, 30.0, 60.0, 90.0_f64]
        .into_iter()
        .flat_map(|degrees| {
            let (sin, cos) = degrees.to_radians().sin_cos();
            let offset = corner.tyre_width / 2.0 - rounding * (1.0 - sin);
            let radius = corner.tyre_radius - rounding * (1.0 - cos);
            [-offset, offset].map(|offset| Circle {
                centre: corner.wheel_centre + corner.spin_axis * offset,
                normal: corner.spin_axis,
                radius,
            })
        })
        .collect();
    hull_of_wheel_circles(sight, &circles)
}

/// The wheel plane where it is seen nearly edge-on, and the wheel centre where it is seen in its face.
fn add_plane_line(parts: &mut Parts, corner: &CornerPose, sizes: Proportions) {
    let view = parts.sight.view;
    let centre = view.project(&corner.wheel_centre);
    let across = view.project_vector(&corner.spin_axis);
    let length = across[0].hypot(across[1]);
    let lines = if length > 0.5 {
        let reach = corner.tyre_radius + sizes.ball;
        let along = [-across[1] / length * reach, across[0] / length * reach];
        vec![mark(centre, along)]
    } else {
        let reach = 2.6 * sizes.ball;
        vec![mark(centre, [reach, 0.0]), mark(centre, [0.0, reach])]
    };
    let shapes = lines.into_iter().map(|line| (Role::WheelLine, line));
    parts.add(Layer::Axes, &corner.wheel_centre, Some(corner.side), shapes);
}

/// A line through a centre, reaching to both sides of it.
fn mark(centre: [f64; 2], reach: [f64; 2]) -> Outline {
    Outline::Line([
        [centre[0] - reach[0], centre[1] - reach[1]],
        [centre[0] + reach[0], centre[1] + reach[1]],
    ])
}
