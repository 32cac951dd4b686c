//! Curves against the steering input or the angle of the inner wheel, the wheels at rest height.

use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::figures::{
    corner_figures, ideal_outer, kingpin_distance, steering_ratio, straight_ahead_share,
};
use steerloft_solver::frame::Side;
use steerloft_solver::pose::CornerPose;

use super::of_travel::{level, of_sides};
use super::{Axis, Curve, CurveKind, Range, SAMPLES, Series, Sweeps, Trace, Turn, TurnSample};

/// Least angle of the inner wheel at which an Ackermann share is shown, rad: nearer to straight ahead a difference in
/// static toe would make it a quotient of small numbers.
const LEAST_INNER: f64 = 1.0_f64.to_radians();

pub(super) fn curve(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let mut curve = match kind {
        CurveKind::AckermannShare => ackermann(sweeps),
        CurveKind::WheelAngles => wheel_angles(sweeps),
        CurveKind::SteeringRatio => ratio(sweeps),
        CurveKind::CamberSteer
        | CurveKind::ScrubSteer
        | CurveKind::TrailSteer
        | CurveKind::Transmission => of_wheels(sweeps, kind),
        _ => inner_outer(sweeps),
    };
    curve.notes.extend(sweeps.steering_notes());
    curve
}

fn plain(quantity: &'static str, unit: &'static str, sign: &str, least: Range) -> Axis {
    Axis {
        quantity,
        unit,
        sign: sign.to_owned(),
        least,
    }
}

fn turn_series(
    sweeps: &Sweeps,
    point: impl Fn(&TurnSample) -> Option<[f64; 2]>,
    from: Option<[f64; 2]>,
) -> Vec<Series> {
    Turn::BOTH
        .into_iter()
        .map(|turn| {
            let (name, trace) = match turn {
                Turn::Left => ("left turn", Trace::Left),
                Turn::Right => ("right turn", Trace::Right),
            };
            let samples = sweeps.turns().filter(|sample| sample.turn == turn);
            let mut points: Vec<[f64; 2]> = samples.filter_map(|sample| point(&sample)).collect();
            if !points.is_empty() {
                points.extend(from);
            }
            points.sort_by(|a, b| a[0].total_cmp(&b[0]));
            Series {
                name: name.to_owned(),
                trace,
                is_reference: false,
                points,
            }
        })
        .filter(|series| !series.points.is_empty())
        .collect()
}

fn inner_outer(sweeps: &Sweeps) -> Curve {
    let point = |sample: &TurnSample| {
        let angles = &sample.angles;
        Some([angles.inner.to_degrees(), angles.outer.to_degrees()])
    };
    let turns = turn_series(sweeps, point, Some([0.0, 0.0]));
    let most = turns
        .iter()
        .flat_map(|series| &series.points)
        .map(|point| point[0])
        .fold(0.0, f64::max);
    let distance = kingpin_distance(&sweeps.assembly);
    let wheelbase = sweeps.assembly.axle().wheelbase;
    #[allow(clippy::cast_precision_loss, reason = "a few dozen samples")]
    let inner_at = |index: usize| most * index as f64 / (SAMPLES - 1) as f64;
    let ideal = |index: usize| {
        let inner = inner_at(index);
        let outer = ideal_outer(inner.to_radians(), distance, wheelbase);
        [inner, outer.to_degrees()]
    };
    let line = |name: &str, trace, points| Series {
        name: name.to_owned(),
        trace,
        is_reference: false,
        points,
    };
    let mut series = vec![
        line("parallel", Trace::Parallel, vec![[0.0, 0.0], [most, most]]),
        line(
            "ideal pair",
            Trace::Ideal,
            (0..SAMPLES).map(ideal).collect(),
        ),
    ];
    series.extend(turns);
    let least = Range::new(0.0, 10.0);
    Curve {
        kind: CurveKind::InnerOuter,
        x: plain("inner wheel", "deg", "from straight ahead", least),
        y: plain("outer wheel", "deg", "from straight ahead", least),
        series,
        notes: Vec::new(),
    }
}

fn ackermann(sweeps: &Sweeps) -> Curve {
    let point = |sample: &TurnSample| {
        let share = sample.angles.ackermann_share?;
        let shown = sample.angles.inner >= LEAST_INNER;
        shown.then_some([sample.angles.inner.to_degrees(), share])
    };
    let limit = straight_ahead_share(&sweeps.assembly).map(|share| [0.0, share]);
    Curve {
        kind: CurveKind::AckermannShare,
        x: plain(
            "inner wheel",
            "deg",
            "from straight ahead",
            Range::new(0.0, 10.0),
        ),
        y: plain(
            "Ackermann share",
            "%",
            "0 parallel, 100 ideal pair",
            Range::new(0.0, 100.0),
        ),
        series: turn_series(sweeps, point, limit),
        notes: Vec::new(),
    }
}

/// Values of each wheel over the steering input.
fn wheel_series(sweeps: &Sweeps, value: impl Fn(&CornerPose) -> f64) -> Vec<Series> {
    let unit = sweeps.input_unit().in_solver;
    of_sides(|side: Side| {
        let poses = sweeps.steer.poses.iter();
        poses
            .map(|pose| [pose.input / unit, value(pose.corners.get(side))])
            .collect()
    })
}

fn wheel_angles(sweeps: &Sweeps) -> Curve {
    let road = &sweeps.assembly.axle().road;
    Curve {
        kind: CurveKind::WheelAngles,
        x: sweeps.input_axis(),
        y: plain("steer angle", "deg", "left +", Range::around_zero(10.0)),
        series: wheel_series(sweeps, |corner| {
            corner_figures(corner, road).steer.to_degrees()
        }),
        notes: Vec::new(),
    }
}

fn ratio(sweeps: &Sweeps) -> Curve {
    let unit = sweeps.input_unit();
    let road = &sweeps.assembly.axle().road;
    let point = |pose: &steerloft_solver::AxlePose| {
        let per_radian = steering_ratio(pose, road)?.abs();
        let per_degree = per_radian / unit.in_solver * 1.0_f64.to_radians();
        Some([pose.input / unit.in_solver, per_degree])
    };
    let points: Vec<[f64; 2]> = sweeps.steer.poses.iter().filter_map(point).collect();
    let per_degree = if unit.name == "mm" {
        "mm/deg"
    } else {
        "deg/deg"
    };
    Curve {
        kind: CurveKind::SteeringRatio,
        x: sweeps.input_axis(),
        y: plain(
            "input per mean wheel angle",
            per_degree,
            "",
            Range::new(0.0, 0.5),
        ),
        series: vec![Series {
            name: "both wheels".to_owned(),
            trace: Trace::Axle,
            is_reference: false,
            points,
        }],
        notes: Vec::new(),
    }
}

fn of_wheels(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let road = &sweeps.assembly.axle().road;
    let radius = sweeps.assembly.static_pose().corners.left.tyre_radius;
    let length = Range::around_zero(0.05 * radius);
    let (y, series) = match kind {
        CurveKind::ScrubSteer => (
            plain("scrub radius", "mm", "contact outboard +", length),
            wheel_series(sweeps, |corner| corner_figures(corner, road).scrub_radius),
        ),
        CurveKind::TrailSteer => (
            plain("trail", "mm", "contact behind +", length),
            wheel_series(sweeps, |corner| corner_figures(corner, road).trail),
        ),
        CurveKind::Transmission => (
            plain(
                "rod to steering arm",
                "deg",
                "90 best",
                Range::new(60.0, 120.0),
            ),
            wheel_series(sweeps, |corner| {
                outer_transmission(corner).angle.to_degrees()
            }),
        ),
        _ => (
            plain("camber", "deg", "top out +", Range::around_zero(1.0)),
            wheel_series(sweeps, |corner| {
                corner_figures(corner, road).camber.to_degrees()
            }),
        ),
    };
    let mut curve = Curve {
        kind,
        x: sweeps.input_axis(),
        y,
        series,
        notes: Vec::new(),
    };
    if kind != CurveKind::Transmission {
        level(&mut curve);
    }
    curve
}
