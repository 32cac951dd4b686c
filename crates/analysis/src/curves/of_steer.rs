//! Curves against the steering input, at the wheel travel held.

use steerloft_solver::figures::linkage::inner_share;
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::steering_ratio;
use steerloft_solver::frame::Sides;
use steerloft_solver::pose::AxlePose;

use super::of_travel::NO_TRAVEL;
use super::quantity::{Ground, Quantity, of_axle, of_sides};
use super::{Axis, Curve, CurveKind, End, Guide, Series, Sweeps, Trace};
use crate::Range;

/// Least range of a length shown against the tyre's radius, each way.
const LENGTH_PER_RADIUS: f64 = 0.05;

pub(super) fn curve(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    if kind == CurveKind::RoadSteer {
        return on_road(sweeps);
    }
    let ends = sweeps.steering_ends();
    let (y, series) = match kind {
        CurveKind::SteeringRatio => ratio(sweeps),
        CurveKind::DriveEffort => effort(sweeps),
        CurveKind::InnerShare => share(sweeps),
        _ => of_wheels(sweeps, kind),
    };
    let guides = match kind {
        CurveKind::Transmission => vec![Guide {
            name: "best",
            trace: Trace::Ideal,
            at: 90.0,
        }],
        _ => Vec::new(),
    };
    let curve = Curve {
        kind,
        x: sweeps.input_axis(),
        y,
        series,
        guides,
        notes: ends.iter().map(End::sentence).collect(),
        ends,
    };
    match kind {
        CurveKind::CamberSteer
        | CurveKind::CasterSteer
        | CurveKind::InclinationSteer
        | CurveKind::ScrubSteer
        | CurveKind::TrailSteer => curve.levelled(),
        _ => curve,
    }
}

fn of_wheels(sweeps: &Sweeps, kind: CurveKind) -> (Axis, Vec<Series>) {
    let radius = sweeps.assembly().static_pose().corners.left.tyre_radius;
    let length = Range::around_zero(LENGTH_PER_RADIUS * radius);
    let degree = Range::around_zero(1.0);
    let (quantity, least) = match kind {
        CurveKind::ScrubSteer => (Quantity::Scrub, length),
        CurveKind::TrailSteer => (Quantity::Trail, length),
        CurveKind::Transmission => (Quantity::Transmission, Range::new(60.0, 120.0)),
        CurveKind::CamberSteer => (Quantity::Camber, degree),
        CurveKind::CasterSteer => (Quantity::Caster, degree),
        CurveKind::InclinationSteer => (Quantity::Inclination, degree),
        _ => (Quantity::Steer, Range::around_zero(10.0)),
    };
    let ground = Ground::new(sweeps.assembly().axle().road);
    let unit = sweeps.unit();
    let series = of_sides(|side| {
        let point = |pose: &AxlePose| {
            let value = quantity.of(pose.corners.get(side), &ground);
            [unit.from_solver(pose.input), value]
        };
        sweeps.steer().poses.iter().map(point).collect()
    });
    (quantity.axis(least), series)
}

/// Wheel travel that keeps both tyres on the road, from that straight ahead.
fn on_road(sweeps: &Sweeps) -> Curve {
    let unit = sweeps.unit();
    let poses = sweeps.steer_on_road();
    let straight = poses
        .iter()
        .min_by(|a, b| a.input.abs().total_cmp(&b.input.abs()));
    let series = straight.map_or_else(Vec::new, |straight| {
        of_sides(|side| {
            let point = |pose: &AxlePose| {
                let from_straight = pose.travel.get(side) - straight.travel.get(side);
                [unit.from_solver(pose.input), from_straight]
            };
            poses.iter().map(point).collect()
        })
    });
    let notes = if sweeps.assembly().has_travel() {
        Vec::new()
    } else {
        vec![NO_TRAVEL.to_owned()]
    };
    let curve = Curve {
        kind: CurveKind::RoadSteer,
        x: sweeps.input_axis(),
        y: Axis {
            quantity: "travel from straight ahead",
            unit: "mm",
            sign: "bump +",
            decimals: 3,
            least: Range::around_zero(0.1),
        },
        series,
        guides: Vec::new(),
        notes,
        ends: Vec::new(),
    };
    curve.levelled()
}

fn ratio(sweeps: &Sweeps) -> (Axis, Vec<Series>) {
    let unit = sweeps.unit();
    let road = &sweeps.assembly().axle().road;
    let axis = Axis {
        quantity: "input per mean wheel angle",
        unit: if unit.word() == "mm" {
            "mm/deg"
        } else {
            "deg/deg"
        },
        sign: "",
        decimals: 3,
        least: Range::new(0.0, 0.5),
    };
    let value = |pose: &AxlePose| Some(unit.ratio(steering_ratio(pose, road)?));
    (axis, of_axle("both wheels", over_input(sweeps, value)))
}

/// What holds a moment of 1 N m at each kingpin in one sense.
fn effort(sweeps: &Sweeps) -> (Axis, Vec<Series>) {
    let unit = sweeps.unit();
    let axis = Axis {
        quantity: "effort per kingpin moment",
        unit: unit.effort_unit(),
        sign: "",
        decimals: 2,
        least: Range::new(0.0, 1.0),
    };
    let value = |pose: &AxlePose| Some(unit.effort(holding_effort(pose, &Sides::both(1.0))).abs());
    (axis, of_axle("drive", over_input(sweeps, value)))
}

fn share(sweeps: &Sweeps) -> (Axis, Vec<Series>) {
    let unit = sweeps.unit();
    let axis = Axis {
        quantity: "motion along the rod",
        unit: "%",
        sign: "100 best",
        decimals: 1,
        least: Range::new(50.0, 100.0),
    };
    let series = of_sides(|side| {
        let point = |pose: &AxlePose| {
            let share = inner_share(pose, pose.corners.get(side))?;
            Some([unit.from_solver(pose.input), share * 100.0])
        };
        sweeps.steer().poses.iter().filter_map(point).collect()
    });
    (axis, series)
}

/// A value of the axle over the input, where there is one.
fn over_input(sweeps: &Sweeps, value: impl Fn(&AxlePose) -> Option<f64>) -> Vec<[f64; 2]> {
    let unit = sweeps.unit();
    let point = |pose: &AxlePose| Some([unit.from_solver(pose.input), value(pose)?]);
    sweeps.steer().poses.iter().filter_map(point).collect()
}
