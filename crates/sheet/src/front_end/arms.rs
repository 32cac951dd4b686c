//! Suspension arms: two bars from the hinge to the ball, with the ball.

use steerloft_solver::pose::{ArmPose, CornerPose};
use steerloft_solver::suspension::Suspension;

use super::joint::ball;
use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::{Outline, Role};
use crate::sight::Sight;
use crate::solid::{bar, cylinder};

/// Adds the arms of a corner.
pub(super) fn add(
    parts: &mut Parts,
    suspension: &Suspension,
    corner: &CornerPose,
    sizes: Proportions,
) {
    for arm in suspension.arms(corner) {
        let middle = arm.ball + ((arm.hinge[0] - arm.ball) + (arm.hinge[1] - arm.ball)) * 0.25;
        let shapes = shapes(parts.sight, &arm, sizes);
        parts.add(Layer::Linkage, &middle, Some(corner.side), shapes);
    }
}

fn shapes(sight: Sight, arm: &ArmPose, sizes: Proportions) -> Vec<(Role, Outline)> {
    let [front, rear] = arm.hinge;
    let leg = 0.75 * sizes.ball;
    let along = (front - rear).try_normalize(f64::EPSILON);
    let past = along.unwrap_or_default() * (1.6 * sizes.ball);
    let pin = cylinder(sight, [front + past, rear - past], 0.5 * sizes.ball);
    let mut shapes = vec![(Role::Hinge, pin)];
    for hinge in arm.hinge {
        shapes.push((Role::Arm, bar(sight, &[(hinge, leg), (arm.ball, leg)])));
    }
    for hinge in arm.hinge {
        let eye = [hinge + past * 0.75, hinge - past * 0.75];
        shapes.push((Role::Arm, cylinder(sight, eye, sizes.ball)));
    }
    shapes.push((Role::Arm, bar(sight, &[(arm.ball, 1.5 * sizes.ball)])));
    shapes.extend(ball(sight.view, &arm.ball, sizes.ball));
    shapes
}
