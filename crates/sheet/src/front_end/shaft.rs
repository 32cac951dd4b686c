//! Shaft and axis of a lever of the steering drive.

use steerloft_setup::layout::ServoBox;
use steerloft_solver::frame::{Point, Vector};

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::{Outline, Role};
use crate::solid::{cylinder, disc, foot_on_line, hull_of_circles};

/// A lever's hub on its shaft.
pub(super) struct Shaft {
    /// Where the shaft comes out of what carries it.
    root: Point,
    /// Centre of the lever's hub.
    boss: Point,
    /// Unit direction of the axis.
    axis: Vector,
}

impl Shaft {
    /// A shaft that comes out of the face of a servo's case.
    pub(super) fn of_servo(servo: &ServoBox, boss: Point, axis: Vector) -> Self {
        let inside = foot_on_line(&servo.centre, &boss, &axis);
        let half_depth = servo.size.dot(&axis.abs()) / 2.0;
        let to_boss = (boss - inside).dot(&axis);
        let root = inside + axis * to_boss.signum() * half_depth.min(to_boss.abs());
        Self { root, boss, axis }
    }

    /// A shaft that begins at a given point of its axis.
    pub(super) fn from_point(point: &Point, boss: Point, axis: Vector) -> Self {
        Self {
            root: foot_on_line(point, &boss, &axis),
            boss,
            axis,
        }
    }

    /// Adds shaft, hub and axis.
    pub(super) fn add(&self, parts: &mut Parts, sizes: Proportions) {
        let sight = parts.sight;
        let shaft = cylinder(sight, [self.root, self.boss], 1.6 * sizes.ball);
        parts.add(Layer::Case, &self.root, None, [(Role::DriveHub, shaft)]);
        let hub = disc(self.boss, self.axis, 1.2 * sizes.ball, 1.6 * sizes.lever());
        parts.add(
            Layer::Linkage,
            &self.boss,
            None,
            [(Role::DriveHub, hull_of_circles(sight, &hub))],
        );
        self.add_axis(parts, sizes);
    }

    /// The axis as a line, and crossed where the eye looks along it.
    fn add_axis(&self, parts: &mut Parts, sizes: Proportions) {
        let view = parts.sight.view;
        let backwards = (self.boss - self.root).dot(&self.axis) < 0.0;
        let outward = if backwards { -self.axis } else { self.axis };
        let tip = self.boss + outward * (2.0 * sizes.overhang());
        let tail = self.root - outward * sizes.overhang();
        let mut lines = vec![[view.project(&tail), view.project(&tip)]];
        if self.axis.dot(&view.towards_eye()).abs() > 0.5 {
            let [u, v] = view.project(&self.boss);
            let reach = sizes.overhang();
            lines.push([[u - reach, v], [u + reach, v]]);
            lines.push([[u, v - reach], [u, v + reach]]);
        }
        let shapes = lines
            .into_iter()
            .map(|line| (Role::DriveAxis, Outline::Line(line)));
        parts.add(Layer::Axes, &self.boss, None, shapes);
    }
}
