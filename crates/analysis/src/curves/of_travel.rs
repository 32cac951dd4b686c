//! Curves against wheel travel, both wheels moving together.

use steerloft_solver::frame::Side;
use steerloft_solver::pose::AxlePose;
use steerloft_solver::sweep::Sweep;

use super::quantity::{Ground, Quantity, of_axle, of_sides};
use super::sweeps::travel_ends;
use super::{Axis, Curve, CurveKind, End, Series, Sweeps, value_at};
use crate::Range;

/// Said where a suspension has no travel.
pub(super) const NO_TRAVEL: &str =
    "This suspension has no travel: the kingpins are fixed in the chassis.";

/// Least range of an angle shown, degrees each way, for a travel as great as the tyre's radius. It goes with the car
/// alone, so that curves of different setups look as different as they are.
const ANGLE_PER_RADIUS: f64 = 2.0;

/// Least range of a length shown for each mm of travel, mm each way.
const LENGTH_PER_TRAVEL: f64 = 0.05;

/// A curve with the steering straight ahead.
pub(super) fn straight(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let sweep = sweeps.travel();
    let series = match (sweep, kind) {
        (None, _) => Vec::new(),
        (Some(sweep), CurveKind::TrackTravel) => of_axle("track", track(sweeps, sweep)),
        (Some(sweep), _) => {
            let is_path = matches!(
                kind,
                CurveKind::ContactTravel | CurveKind::CentreTravel | CurveKind::StationTravel
            );
            let rest = is_path.then(|| sweeps.assembly().static_pose());
            wheels(sweeps, sweep, quantity(kind), rest)
        }
    };
    curve(sweeps, kind, sweep, series)
}

/// A curve at the steering input held: changes from how the wheels point there at rest.
pub(super) fn steered(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let sweep = sweeps.steered_travel();
    let series = sweep.map_or_else(Vec::new, |sweep| {
        let mut series = wheels(sweeps, sweep, Quantity::Toe, None);
        for line in &mut series {
            let zero = value_at(&line.points, 0.0).unwrap_or_default();
            for point in &mut line.points {
                point[1] -= zero;
            }
        }
        series
    });
    let mut curve = curve(sweeps, kind, sweep, series);
    curve.y.quantity = "toe from rest";
    curve
}

fn curve(sweeps: &Sweeps, kind: CurveKind, sweep: Option<&Sweep>, series: Vec<Series>) -> Curve {
    let ends = sweep.map(travel_ends).unwrap_or_default();
    let notes = if sweep.is_none() {
        vec![NO_TRAVEL.to_owned()]
    } else {
        ends.iter().map(End::sentence).collect()
    };
    let curve = Curve {
        kind,
        x: travel_axis(sweeps),
        y: value_axis(sweeps, kind),
        series,
        guides: Vec::new(),
        ends,
        notes,
    };
    curve.levelled()
}

fn travel_axis(sweeps: &Sweeps) -> Axis {
    let (from, to) = sweeps.ranges().travel;
    Axis {
        quantity: "wheel travel",
        unit: "mm",
        sign: "bump +",
        decimals: 2,
        least: Range::new(from, to),
    }
}

fn value_axis(sweeps: &Sweeps, kind: CurveKind) -> Axis {
    let (from, to) = sweeps.ranges().travel;
    let most = from.abs().max(to.abs()).max(0.1);
    let radius = sweeps.assembly().static_pose().corners.left.tyre_radius;
    let angle = Range::around_zero(ANGLE_PER_RADIUS * most / radius);
    let length = Range::around_zero(LENGTH_PER_TRAVEL * most);
    match kind {
        CurveKind::TrackTravel => Axis {
            quantity: "track from rest",
            unit: "mm",
            sign: "wider +",
            decimals: 3,
            least: length,
        },
        CurveKind::ContactTravel
        | CurveKind::CentreTravel
        | CurveKind::StationTravel
        | CurveKind::ScrubTravel
        | CurveKind::TrailTravel => quantity(kind).axis(length),
        _ => quantity(kind).axis(angle),
    }
}

fn quantity(kind: CurveKind) -> Quantity {
    match kind {
        CurveKind::CamberTravel => Quantity::Camber,
        CurveKind::CasterTravel => Quantity::Caster,
        CurveKind::InclinationTravel => Quantity::Inclination,
        CurveKind::ContactTravel => Quantity::Contact,
        CurveKind::CentreTravel => Quantity::Centre,
        CurveKind::StationTravel => Quantity::Station,
        CurveKind::ScrubTravel => Quantity::Scrub,
        CurveKind::TrailTravel => Quantity::Trail,
        _ => Quantity::Toe,
    }
}

/// A quantity of each wheel, from its value in a pose where one is given.
fn wheels(
    sweeps: &Sweeps,
    sweep: &Sweep,
    quantity: Quantity,
    from: Option<&AxlePose>,
) -> Vec<Series> {
    let ground = Ground::new(sweeps.assembly().axle().road);
    of_sides(|side| {
        let value = |pose: &AxlePose| quantity.of(pose.corners.get(side), &ground);
        let zero = from.map_or(0.0, value);
        let point = |pose: &AxlePose| [*pose.travel.get(side), value(pose) - zero];
        sweep.poses.iter().map(point).collect()
    })
}

/// How much farther apart the contact centres lie than at rest, over the travel.
fn track(sweeps: &Sweeps, sweep: &Sweep) -> Vec<[f64; 2]> {
    let ground = Ground::new(sweeps.assembly().axle().road);
    let width = |pose: &AxlePose| {
        let outboard = |side: Side| Quantity::Contact.of(pose.corners.get(side), &ground);
        outboard(Side::Left) + outboard(Side::Right)
    };
    let at_rest = width(sweeps.assembly().static_pose());
    let point = |pose: &AxlePose| [pose.travel.left, width(pose) - at_rest];
    sweep.poses.iter().map(point).collect()
}
