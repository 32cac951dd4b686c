//! Lines that the front end is measured from: centre line, axle line, chassis underside, road.

use steerloft_solver::axle::{Corner, FrontAxle};
use steerloft_solver::frame::{Point, Road, Vector};
use steerloft_solver::pose::{AxlePose, CornerPose};

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::{Bounds, Outline, Role, View};

/// Adds the lines around parts that reach over `extent`.
pub(super) fn add(
    parts: &mut Parts,
    axle: &FrontAxle,
    pose: &AxlePose,
    extent: &Bounds,
    sizes: Proportions,
) {
    let origin = Point::origin();
    add_chassis(parts, axle, extent);
    if let Some(line) = road_line(parts.sight.view, pose, &axle.road, extent, sizes) {
        parts.add(Layer::Ground, &origin, None, [(Role::Road, line)]);
    }
    if parts.sight.view != View::Side {
        let reach = sizes.overhang();
        let centre = Outline::Line([[0.0, extent.min[1] - reach], [0.0, extent.max[1] + reach]]);
        parts.add(Layer::Axes, &origin, None, [(Role::CentreLine, centre)]);
        if let Some(line) = axle_line(parts.sight.view, axle, extent) {
            parts.add(Layer::Axes, &origin, None, [(Role::AxleLine, line)]);
        }
    }
}

/// Underside of the chassis plate: between the kingpins in front view, along the drawing in side view.
fn add_chassis(parts: &mut Parts, axle: &FrontAxle, extent: &Bounds) {
    let corners = &axle.corners;
    let inboard = |corner: &Corner| -0.92 * corner.knuckle.kingpin_lower.y;
    let ends = match parts.sight.view {
        View::Top => return,
        View::Front => [inboard(&corners.left), inboard(&corners.right)],
        View::Side => [extent.min[0], extent.max[0]],
    };
    let line = Outline::Line(ends.map(|u| [u, 0.0]));
    parts.add(
        Layer::Ground,
        &Point::origin(),
        None,
        [(Role::Chassis, line)],
    );
}

/// Through both wheel centres as drawn, across the whole drawing.
fn axle_line(view: View, axle: &FrontAxle, extent: &Bounds) -> Option<Outline> {
    let left = view.project(&axle.corners.left.knuckle.wheel_centre);
    let right = view.project(&axle.corners.right.knuckle.wheel_centre);
    let slope = (right[1] - left[1]) / (right[0] - left[0]);
    slope.is_finite().then(|| {
        Outline::Line([extent.min[0], extent.max[0]].map(|u| [u, left[1] + slope * (u - left[0])]))
    })
}

/// The road, cut at the station of the wheels in front view and at the left wheel in side view.
fn road_line(
    view: View,
    pose: &AxlePose,
    road: &Road,
    extent: &Bounds,
    sizes: Proportions,
) -> Option<Outline> {
    let centre = |corner: &CornerPose| corner.wheel_centre.coords;
    let station = match view {
        View::Top => return None,
        View::Front => (centre(&pose.corners.left) + centre(&pose.corners.right)) * 0.5,
        View::Side => centre(&pose.corners.left),
    };
    let normal = road.normal();
    let reach = sizes.overhang();
    let point_at = |u: f64| {
        // The eye looks along the third axis, in which the station stays.
        let towards_eye = view.towards_eye();
        let in_plane = view.lift([u, 0.0]) + towards_eye * station.dot(&towards_eye);
        let rise = -(road.ride_height * normal.z + normal.dot(&in_plane)) / normal.z;
        [u, Vector::z().dot(&in_plane) + rise]
    };
    let ends = [
        point_at(extent.min[0] - reach),
        point_at(extent.max[0] + reach),
    ];
    ends.iter()
        .all(|end| end[1].is_finite())
        .then_some(Outline::Line(ends))
}

/// Where the steering axis of a corner meets the road plane; none if that is far from the wheel.
pub(super) fn ground_point(corner: &CornerPose, road: &Road) -> Option<Point> {
    let down = -corner.kingpin_axis();
    let sinking = -down.dot(&road.normal());
    let length = road.height_of(&corner.kingpin_lower) / sinking;
    let near = 0.0..4.0 * corner.tyre_radius;
    near.contains(&length)
        .then(|| corner.kingpin_lower + down * length)
}
