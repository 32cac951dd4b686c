//! Tie rods and other links with the cups at their ends and the balls in them.

use steerloft_solver::frame::{Point, Side, Vector};
use steerloft_solver::pose::CornerPose;

use super::joint::ball;
use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::{Outline, Role};
use crate::sight::Sight;
use crate::solid::{bar, cylinder, direction};

/// Greatest share of a rod that one cup is drawn to cover, so that the rod is still seen between them.
const MOST_OF_ROD: f64 = 0.46;

/// Adds the tie rod of a corner, with cups as long as its parts have them.
pub(super) fn add(parts: &mut Parts, corner: &CornerPose, cup_length: f64, sizes: Proportions) {
    let ends = [corner.rod_inner, corner.steering_arm];
    add_rod(parts, ends, Some(corner.side), cup_length, sizes);
}

/// Adds another link with a ball joint at each end.
pub(super) fn add_link(parts: &mut Parts, ends: [Point; 2], sizes: Proportions) {
    let length = (ends[1] - ends[0]).norm();
    let cup_length = (0.27 * length).min(4.2 * sizes.ball);
    add_rod(parts, ends, None, cup_length, sizes);
}

fn add_rod(
    parts: &mut Parts,
    ends: [Point; 2],
    side: Option<Side>,
    cup_length: f64,
    sizes: Proportions,
) {
    let sight = parts.sight;
    let middle = ends[0] + (ends[1] - ends[0]) * 0.5;
    let mut shapes = vec![(Role::Rod, cylinder(sight, ends, 0.62 * sizes.ball))];
    if let Some(along) = direction(&ends[0], &ends[1]) {
        let length = (ends[1] - ends[0]).norm();
        let cup_length = cup_length.min(MOST_OF_ROD * length);
        let half_flats = along
            * (0.08 * length)
                .min(0.3 * length - 0.6 * cup_length)
                .max(0.0);
        let flats = [middle - half_flats, middle + half_flats];
        shapes.push((Role::Rod, cylinder(sight, flats, 0.85 * sizes.ball)));
        for (end, inward) in [(ends[0], along), (ends[1], -along)] {
            shapes.push((Role::Cup, cup(sight, end, inward * cup_length, sizes)));
        }
    }
    parts.add(Layer::Linkage, &middle, side, shapes);
    for end in ends {
        parts.add(
            Layer::Joints,
            &end,
            side,
            ball(sight.view, &end, sizes.ball),
        );
    }
}

/// A cup around a ball, tapering along the rod.
fn cup(sight: Sight, ball: Point, length: Vector, sizes: Proportions) -> Outline {
    bar(
        sight,
        &[(ball, 1.4 * sizes.ball), (ball + length, 0.85 * sizes.ball)],
    )
}
