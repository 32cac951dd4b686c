//! Ball joints.

use steerloft_solver::frame::Point;

use crate::drawing::{Outline, Role, View};

/// A ball with its centre marked.
pub(super) fn ball(view: View, centre: &Point, radius: f64) -> [(Role, Outline); 2] {
    let circle = |radius: f64| Outline::Circle {
        centre: view.project(centre),
        radius,
    };
    [
        (Role::Ball, circle(radius)),
        (Role::Pivot, circle(0.14 * radius)),
    ]
}
