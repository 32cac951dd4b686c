//! Curves against wheel travel, both wheels moving together, the steering straight ahead.

use steerloft_solver::figures::{CornerFigures, corner_figures};
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::pose::CornerPose;

use super::{Axis, Curve, CurveKind, Range, Series, Sweeps, Trace};
use crate::number::signed;

/// Said where a suspension has no travel.
pub(super) const NO_TRAVEL: &str =
    "This suspension has no travel: the kingpins are fixed in the chassis.";

/// Least range of an angle shown, degrees each way, for a travel as great as the tyre's radius. It goes with the car
/// alone, so that curves of different setups look as different as they are.
const ANGLE_PER_RADIUS: f64 = 2.0;

/// Least range of a length shown for each mm of travel, mm each way.
const LENGTH_PER_TRAVEL: f64 = 0.05;

pub(super) fn curve(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let (from, to) = sweeps.ranges.travel;
    let most = from.abs().max(to.abs()).max(0.1);
    let radius = sweeps.assembly.static_pose().corners.left.tyre_radius;
    let x = Axis {
        quantity: "wheel travel",
        unit: "mm",
        sign: "bump +".to_owned(),
        least: Range::new(from, to),
    };
    let angle = |quantity, sign: &str| Axis {
        quantity,
        unit: "deg",
        sign: sign.to_owned(),
        least: Range::around_zero(ANGLE_PER_RADIUS * most / radius),
    };
    let (y, value): (Axis, fn(&CornerFigures) -> f64) = match kind {
        CurveKind::CamberTravel => (angle("camber", "top out +"), |figures| {
            figures.camber.to_degrees()
        }),
        CurveKind::CasterTravel => (angle("caster", "top back +"), |figures| {
            figures.caster.to_degrees()
        }),
        CurveKind::InclinationTravel => (angle("kingpin inclination", "top in +"), |figures| {
            figures.inclination.to_degrees()
        }),
        CurveKind::ContactTravel => (
            Axis {
                quantity: "contact from rest",
                unit: "mm",
                sign: "outboard +".to_owned(),
                least: Range::around_zero(LENGTH_PER_TRAVEL * most),
            },
            |figures| figures.contact_centre.y,
        ),
        _ => (angle("toe", "toe-in +"), |figures| figures.toe.to_degrees()),
    };
    let mut curve = Curve {
        kind,
        x,
        y,
        series: series(sweeps, kind, value),
        notes: notes(sweeps),
    };
    level(&mut curve);
    curve
}

fn series(sweeps: &Sweeps, kind: CurveKind, value: fn(&CornerFigures) -> f64) -> Vec<Series> {
    let Some(sweep) = &sweeps.travel else {
        return Vec::new();
    };
    let road = &sweeps.assembly.axle().road;
    let at_rest = sweeps.assembly.static_pose();
    of_sides(|side| {
        let shown = |corner: &CornerPose| shown(kind, corner, road, value);
        let zero = if kind == CurveKind::ContactTravel {
            shown(at_rest.corners.get(side))
        } else {
            0.0
        };
        let points = sweep.poses.iter().map(|pose| {
            let corner = pose.corners.get(side);
            [*pose.travel.get(side), shown(corner) - zero]
        });
        points.collect()
    })
}

/// The value of a corner; sideways places count outboard.
fn shown(
    kind: CurveKind,
    corner: &CornerPose,
    road: &Road,
    value: fn(&CornerFigures) -> f64,
) -> f64 {
    let value = value(&corner_figures(corner, road));
    match kind {
        CurveKind::ContactTravel => corner.side.sign() * value,
        _ => value,
    }
}

/// A series for each wheel.
pub(super) fn of_sides(points: impl Fn(Side) -> Vec<[f64; 2]>) -> Vec<Series> {
    let of_side = |side: Side| Series {
        name: side.to_string(),
        trace: trace(side),
        is_reference: false,
        points: points(side),
    };
    Side::BOTH.map(of_side).into()
}

pub(super) const fn trace(side: Side) -> Trace {
    match side {
        Side::Left => Trace::Left,
        Side::Right => Trace::Right,
    }
}

/// Takes the least range of the upper axis along with the curve where zero is far from it: caster of 8 degrees is not
/// drawn from zero.
pub(super) fn level(curve: &mut Curve) {
    let least = curve.y.least;
    let points = curve.series.iter().flat_map(|series| &series.points);
    let mut values = points
        .map(|point| point[1])
        .filter(|value| value.is_finite());
    let Some(first) = values.next() else {
        return;
    };
    let all = values.fold(Range::new(first, first), Range::with);
    let middle = f64::midpoint(all.from, all.to);
    if middle.abs() > least.length() {
        let half = least.length() / 2.0;
        curve.y.least = Range::new(middle - half, middle + half);
    }
}

fn notes(sweeps: &Sweeps) -> Vec<String> {
    let Some(sweep) = &sweeps.travel else {
        return vec![NO_TRAVEL.to_owned()];
    };
    let end = |lock: &steerloft_solver::sweep::Lock| {
        format!("Travel ends at {} mm: {}.", signed(lock.at, 1), lock.cause)
    };
    sweep.locks().map(end).collect()
}
