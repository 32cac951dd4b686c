//! Inner against outer wheel: the ideal pair and the Ackermann share.

use super::steering_axis::axis_meets_plane;
use super::toe::{leftward_axis, steer_bend, steer_of, steer_rate};
use crate::assembly::Assembly;
use crate::frame::{Point, Side, Sides};
use crate::pose::AxlePose;

/// Turn of the two wheels from their own straight-ahead positions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InnerOuter {
    /// The side of the inner wheel, which is the side turned to.
    pub inner_side: Side,
    /// Turn of the inner wheel, rad, positive into the turn.
    pub inner: f64,
    /// Turn of the outer wheel, rad, positive into the turn.
    pub outer: f64,
    /// Turn of the outer wheel that would make both wheels' axes meet on the rear-axle line.
    pub ideal_outer: f64,
    /// 100 (inner - outer) / (inner - ideal outer), percent: 0 parallel, 100 ideal, negative reversed.
    pub ackermann_share: Option<f64>,
}

/// The outer wheel's angle for which cot(outer) - cot(inner) = B / L: both wheels' axes then meet on the
/// rear-axle line (ISO 8855:2011, 7.1.9, Ackermann geometry). Angles in rad, lengths in one unit.
#[must_use]
pub fn ideal_outer(inner: f64, kingpin_distance: f64, wheelbase: f64) -> f64 {
    let (sin, cos) = inner.sin_cos();
    // Times the wheelbase, so that nothing is divided by one that is next to nothing.
    (wheelbase * sin).atan2(wheelbase * cos + kingpin_distance * sin)
}

/// Where the steering axes meet the static road plane, straight ahead at zero travel, chassis axes, mm.
#[must_use]
pub fn static_ground_points(assembly: &Assembly) -> Sides<Point> {
    let road = assembly.axle().road;
    let level = Point::new(0.0, 0.0, -road.ride_height);
    assembly.static_pose().corners.map(|corner| {
        axis_meets_plane(
            &corner.kingpin_lower,
            &corner.kingpin_axis(),
            &level,
            &road.normal(),
        )
    })
}

/// Distance between the points where the steering axes meet the static road plane, mm: B of the ideal pair.
#[must_use]
pub fn kingpin_distance(assembly: &Assembly) -> f64 {
    let points = static_ground_points(assembly);
    (points.left - points.right).norm()
}

/// Least mean turn that counts as a turn, rad. Below it the share is a quotient of roundings.
const STRAIGHT_AHEAD: f64 = 1e-7;

/// Inner and outer angle of a pose, or nothing straight ahead.
#[must_use]
pub fn inner_outer(assembly: &Assembly, pose: &AxlePose) -> Option<InnerOuter> {
    let road = assembly.axle().road.axes();
    let steer = |pose: &AxlePose| {
        pose.corners
            .map(|corner| steer_of(&leftward_axis(&corner), &road))
    };
    let (now, straight) = (steer(pose), steer(assembly.static_pose()));
    let left = now.left - straight.left;
    let right = now.right - straight.right;
    let mean = 0.5 * (left + right);
    if mean.abs() < STRAIGHT_AHEAD {
        return None;
    }
    let (inner_side, inner, outer) = if mean > 0.0 {
        (Side::Left, left, right)
    } else {
        (Side::Right, -right, -left)
    };
    let ideal_outer = ideal_outer(inner, kingpin_distance(assembly), assembly.axle().wheelbase);
    let share = 100.0 * (inner - outer) / (inner - ideal_outer);
    Some(InnerOuter {
        inner_side,
        inner,
        outer,
        ideal_outer,
        ackermann_share: (inner > 0.0 && share.is_finite()).then_some(share),
    })
}

/// Greatest relative difference of the two wheels' steer rates straight ahead at which they count as alike.
const ALIKE: f64 = 1e-9;

/// Limit of the Ackermann share straight ahead, percent, from first and second derivatives of both steer angles by
/// the input. It exists only where both wheels start with the same steer rate, as in a mirror-symmetrical car.
///
/// Derived here: with steer a x + b x^2 / 2 on either side, inner less outer is (b left - b right) x^2 / 2, and
/// inner less ideal outer is (B / L) a^2 x^2, both to second order.
#[must_use]
pub fn straight_ahead_share(assembly: &Assembly) -> Option<f64> {
    let pose = assembly.static_pose();
    let road = assembly.axle().road.axes();
    let derivatives = |side: Side| {
        let rotation = assembly.rotation_by_input(pose, side)?;
        let leftward = leftward_axis(pose.corners.get(side));
        Some((
            steer_rate(&leftward, &rotation.angular, &road),
            steer_bend(&leftward, &rotation.angular, &rotation.angular_rate, &road),
        ))
    };
    let (left, right) = (derivatives(Side::Left)?, derivatives(Side::Right)?);
    let rate = 0.5 * (left.0 + right.0);
    if (left.0 - right.0).abs() > ALIKE * rate.abs() {
        return None;
    }
    let per_square = kingpin_distance(assembly) / assembly.axle().wheelbase * rate * rate;
    let share = 50.0 * (left.1 - right.1) / per_square;
    share.is_finite().then_some(share)
}

/// Where the straight-ahead lines from each steering axis's point on the static road plane to its outer rod ball
/// meet, seen from above.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ArmLines {
    /// Distance of the meeting point behind the front-axle station, mm; negative in front of it.
    pub behind: f64,
    /// 100 L / `behind`, percent: the second definition of Ackermann in use, from the aim of the steering arms.
    pub share: f64,
}

/// The aim of the steering arms straight ahead, or nothing where their lines are parallel.
#[must_use]
pub fn arm_lines(assembly: &Assembly) -> Option<ArmLines> {
    let road = assembly.axle().road;
    let axes = road.axes();
    let plan = |point: &Point| {
        let along = point.coords;
        (along.dot(&axes.forward), along.dot(&axes.leftward))
    };
    let grounds = static_ground_points(assembly);
    let lines = Sides::from_fn(|side| {
        let (x, y) = plan(grounds.get(side));
        let (to_x, to_y) = plan(&assembly.static_pose().corners.get(side).steering_arm);
        (x, y, to_x - x, to_y - y)
    });
    let (x, y, dx, dy) = lines.left;
    let (other_x, other_y, other_dx, other_dy) = lines.right;
    let along =
        ((other_x - x) * other_dy - (other_y - y) * other_dx) / (dx * other_dy - dy * other_dx);
    let behind = assembly.axle().station - (x + along * dx);
    let share = 100.0 * assembly.axle().wheelbase / behind;
    (behind.is_finite() && share.is_finite()).then_some(ArmLines { behind, share })
}
