//! What the knuckle turns on, arms apart: a pin in bearings or in a ball, or a strut.

use steerloft_solver::frame::{Point, Vector};
use steerloft_solver::pose::CornerPose;
use steerloft_solver::suspension::Suspension;

use super::joint::ball;
use super::knuckle::Kingpin;
use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::{Outline, Role};
use crate::solid::{cylinder, disc, foot_on_line, hull_of_circles};

/// Adds the kingpin with what the chassis holds it by, as the suspension has it.
pub(super) fn add(
    parts: &mut Parts,
    corner: &CornerPose,
    kingpin: &Kingpin,
    suspension: &Suspension,
    sizes: Proportions,
) {
    match suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => {
            add_pin(parts, corner, kingpin, sizes);
            add_bearings(parts, corner, kingpin, sizes);
        }
        Suspension::SwingingUpperArm(_) => {
            add_pin(parts, corner, kingpin, sizes);
            let end = &kingpin.lower;
            parts.add(
                Layer::Linkage,
                end,
                Some(corner.side),
                ball(parts.sight.view, end, sizes.ball),
            );
        }
        // Its balls belong to the arms.
        Suspension::DoubleWishbone { .. } => {}
        Suspension::Strut {
            slide_direction, ..
        } => {
            add_strut(parts, corner, kingpin, slide_direction, sizes);
            let end = &kingpin.upper;
            parts.add(
                Layer::Linkage,
                end,
                Some(corner.side),
                ball(parts.sight.view, end, sizes.ball),
            );
        }
    }
}

fn add_pin(parts: &mut Parts, corner: &CornerPose, kingpin: &Kingpin, sizes: Proportions) {
    let middle = kingpin.lower + (kingpin.upper - kingpin.lower) * 0.5;
    let past = kingpin.up * sizes.ball;
    let ends = [kingpin.lower - past, kingpin.upper + past];
    let pin = (Role::Kingpin, cylinder(parts.sight, ends, sizes.kingpin()));
    let near = nearer(parts, middle, kingpin.hub);
    parts.add(Layer::Linkage, &near, Some(corner.side), [pin]);
}

/// The nearer of two points: what runs in the knuckle's body is seen through it.
fn nearer(parts: &Parts, point: Point, hub: Point) -> Point {
    let towards_eye = parts.sight.view.towards_eye();
    if (point - hub).dot(&towards_eye) > 0.0 {
        point
    } else {
        hub
    }
}

fn add_bearings(parts: &mut Parts, corner: &CornerPose, kingpin: &Kingpin, sizes: Proportions) {
    let sight = parts.sight;
    for end in [kingpin.lower, kingpin.upper] {
        let ring = |radius: f64| hull_of_circles(sight, &disc(end, kingpin.up, radius, sizes.ball));
        let shapes = [
            (Role::Bearing, ring(1.5 * sizes.ball)),
            (Role::Kingpin, ring(sizes.kingpin())),
        ];
        parts.add(Layer::Linkage, &end, Some(corner.side), shapes);
    }
}

/// A strut from the top mount along the slide line to the knuckle: its rod above, its tube below.
fn add_strut(
    parts: &mut Parts,
    corner: &CornerPose,
    kingpin: &Kingpin,
    slide_direction: &Vector,
    sizes: Proportions,
) {
    let slide = corner.knuckle.rotation * slide_direction;
    let Some(slide) = slide.try_normalize(f64::EPSILON) else {
        return;
    };
    let foot = foot_on_line(&kingpin.hub, &kingpin.upper, &slide);
    let neck = foot + (kingpin.upper - foot) * 0.55;
    let rod = cylinder(parts.sight, [neck, kingpin.upper], 0.7 * sizes.ball);
    let tube = cylinder(parts.sight, [foot, neck], 1.5 * sizes.ball);
    let near = nearer(parts, neck, kingpin.hub);
    let shapes = [(Role::Kingpin, rod), (Role::Knuckle, tube)];
    parts.add(Layer::Linkage, &near, Some(corner.side), shapes);
}

/// Adds the steering axis, drawn on from above the kingpin down to where it meets the road.
pub(super) fn add_axis(
    parts: &mut Parts,
    corner: &CornerPose,
    kingpin: &Kingpin,
    ground: Option<Point>,
    sizes: Proportions,
) {
    let view = parts.sight.view;
    let past = kingpin.up * sizes.overhang();
    let bottom = ground.unwrap_or(kingpin.lower - past);
    let line = Outline::Line([view.project(&bottom), view.project(&(kingpin.upper + past))]);
    let shapes = [(Role::KingpinAxis, line)];
    parts.add(Layer::Axes, &kingpin.upper, Some(corner.side), shapes);
}
