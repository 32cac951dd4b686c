//! Knuckle with spin axle and steering arm, schematic around the axes that the pose gives.

use steerloft_solver::frame::{Point, Vector};
use steerloft_solver::pose::CornerPose;
use steerloft_solver::suspension::Suspension;

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use super::stacks::Seat;
use crate::drawing::{Outline, Role};
use crate::sight::Sight;
use crate::solid::{Circle, cylinder, disc, foot_on_line, hull_of_circles};

/// The steering axis, and where the knuckle carries its axle on it.
pub(super) struct Kingpin {
    pub(super) lower: Point,
    pub(super) upper: Point,
    /// Unit vector, upwards.
    pub(super) up: Vector,
    /// The point of the axis nearest to the line of the spin axis.
    pub(super) hub: Point,
}

impl Kingpin {
    pub(super) fn of(corner: &CornerPose) -> Self {
        let (lower, up) = (corner.kingpin_lower, corner.kingpin_axis());
        Self {
            lower,
            upper: corner.kingpin_upper,
            up,
            hub: hub(corner, &lower, &up),
        }
    }

    fn length(&self) -> f64 {
        (self.upper - self.lower).norm()
    }
}

/// The foot of the common perpendicular of steering axis and spin axis on the steering axis.
///
/// Where they are parallel, or so nearly that it would lie far off, the foot from the wheel centre serves.
fn hub(corner: &CornerPose, lower: &Point, up: &Vector) -> Point {
    let across = up.dot(&corner.spin_axis);
    let apart = corner.wheel_centre - lower;
    let sine_squared = 1.0 - across * across;
    if sine_squared < 0.1 {
        return foot_on_line(&corner.wheel_centre, lower, up);
    }
    let along = (up.dot(&apart) - across * corner.spin_axis.dot(&apart)) / sine_squared;
    lower + up * along
}

/// Adds what turns with the knuckle, wheel apart. The steering arm reaches to the outer ball's seat.
pub(super) fn add(
    parts: &mut Parts,
    corner: &CornerPose,
    kingpin: &Kingpin,
    suspension: &Suspension,
    seat: &Seat,
    sizes: Proportions,
) {
    let sight = parts.sight;
    let side = Some(corner.side);
    let axle_end = corner.wheel_centre + corner.spin_axis * (0.3 * corner.tyre_width);
    let axle = cylinder(sight, [kingpin.hub, axle_end], 0.75 * sizes.ball);
    let body = body(sight, corner, kingpin, suspension, sizes);
    let shapes = [(Role::SpinAxle, axle), (Role::Knuckle, body)];
    parts.add(Layer::Linkage, &kingpin.hub, side, shapes);
    // The lever lies behind the face that the stud stands on.
    let tip = seat.face - seat.towards_ball * (sizes.lever() / 2.0);
    let arm = (Role::SteeringArm, steering_arm(sight, kingpin, tip, sizes));
    parts.add(Layer::Linkage, &tip, side, [arm]);
}

/// The knuckle's body: a boss around the kingpin, or an upright between two balls, and a barrel to the wheel.
fn body(
    sight: Sight,
    corner: &CornerPose,
    kingpin: &Kingpin,
    suspension: &Suspension,
    sizes: Proportions,
) -> Outline {
    let to_wheel = (corner.wheel_centre - kingpin.hub).dot(&corner.spin_axis);
    let barrel = (to_wheel - 0.5 * corner.tyre_width).max(1.6 * sizes.ball);
    let flange = Circle {
        centre: kingpin.hub + corner.spin_axis * barrel,
        normal: corner.spin_axis,
        radius: 1.5 * sizes.ball,
    };
    let middle = kingpin.lower + (kingpin.upper - kingpin.lower) * 0.5;
    let [bottom, top] = match suspension {
        Suspension::DoubleWishbone { .. } => {
            let between_balls = (kingpin.length() - 2.6 * sizes.ball).max(sizes.ball);
            disc(middle, kingpin.up, 1.3 * sizes.ball, between_balls)
        }
        _ => disc(
            kingpin.hub,
            kingpin.up,
            1.6 * sizes.ball,
            boss_height(corner, kingpin, sizes),
        ),
    };
    hull_of_circles(sight, &[bottom, top, flange])
}

/// Height of the boss around the kingpin: most of the kingpin, within what suits ball and wheel.
fn boss_height(corner: &CornerPose, kingpin: &Kingpin, sizes: Proportions) -> f64 {
    let least = 2.4 * sizes.ball;
    (0.6 * kingpin.length())
        .min(0.7 * corner.tyre_radius)
        .max(least)
}

/// A flat lever square to the kingpin, from the kingpin to under the ball.
fn steering_arm(sight: Sight, kingpin: &Kingpin, tip: Point, sizes: Proportions) -> Outline {
    let root = foot_on_line(&tip, &kingpin.lower, &kingpin.up);
    let [root_low, root_high] = disc(root, kingpin.up, 1.7 * sizes.ball, sizes.lever());
    let [tip_low, tip_high] = disc(tip, kingpin.up, 1.15 * sizes.ball, sizes.lever());
    hull_of_circles(sight, &[root_low, root_high, tip_low, tip_high])
}
