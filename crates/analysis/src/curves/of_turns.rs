//! Curves against the angle of the inner wheel, of a turn to either side.

use steerloft_solver::figures::{ideal_outer, kingpin_distance, straight_ahead_share};
use steerloft_solver::frame::Sides;

use super::{Axis, Curve, CurveKind, End, Guide, SAMPLES, Series, Sweeps, Trace, Turn, TurnSample};
use crate::Range;

/// Least angle of the inner wheel at which an Ackermann share is shown, rad: nearer to straight ahead a difference in
/// static toe would make it a quotient of small numbers.
const LEAST_INNER: f64 = 1.0_f64.to_radians();

pub(super) fn curve(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let ends = sweeps.steering_ends();
    let Drawn { y, series, guides } = match kind {
        CurveKind::AckermannShare => share(sweeps),
        _ => pairs(sweeps),
    };
    Curve {
        kind,
        x: wheel_axis("inner wheel"),
        y,
        series,
        guides,
        notes: ends.iter().map(End::sentence).collect(),
        ends,
    }
}

/// What a curve draws over the angle of the inner wheel.
struct Drawn {
    y: Axis,
    series: Vec<Series>,
    guides: Vec<Guide>,
}

fn wheel_axis(quantity: &'static str) -> Axis {
    Axis {
        quantity,
        unit: "deg",
        sign: "from straight ahead",
        decimals: 2,
        least: Range::new(0.0, 10.0),
    }
}

fn at_rest(sweeps: &Sweeps) -> bool {
    sweeps.held().travel == Sides::both(0.0)
}

/// Angles of the outer wheel, with the ideal pair and parallel steering.
fn pairs(sweeps: &Sweeps) -> Drawn {
    let point = |sample: &TurnSample| {
        let angles = &sample.angles;
        Some([angles.inner.to_degrees(), angles.outer.to_degrees()])
    };
    // At rest both wheels' angles start from zero.
    let turns = turn_series(sweeps, point, at_rest(sweeps).then_some([0.0, 0.0]));
    let points = turns.iter().flat_map(|series| &series.points);
    let most = points.map(|point| point[0]).fold(0.0, f64::max);
    let line = |name: &str, trace, points| Series {
        name: name.to_owned(),
        trace,
        is_reference: false,
        points,
    };
    let parallel = vec![[0.0, 0.0], [most, most]];
    let mut series = vec![
        line("parallel", Trace::Parallel, parallel),
        line("ideal pair", Trace::Ideal, ideal(sweeps, most)),
    ];
    series.extend(turns);
    Drawn {
        y: wheel_axis("outer wheel"),
        series,
        guides: Vec::new(),
    }
}

/// The ideal pair up to an angle of the inner wheel, degrees.
fn ideal(sweeps: &Sweeps, most: f64) -> Vec<[f64; 2]> {
    let distance = kingpin_distance(sweeps.assembly());
    let wheelbase = sweeps.assembly().axle().wheelbase;
    #[allow(clippy::cast_precision_loss, reason = "a few dozen samples")]
    let inner_at = |index: usize| most * index as f64 / (SAMPLES - 1) as f64;
    (0..SAMPLES)
        .map(|index| {
            let inner = inner_at(index);
            let outer = ideal_outer(inner.to_radians(), distance, wheelbase);
            [inner, outer.to_degrees()]
        })
        .collect()
}

fn share(sweeps: &Sweeps) -> Drawn {
    let point = |sample: &TurnSample| {
        let share = sample.angles.ackermann_share?;
        let shown = sample.angles.inner >= LEAST_INNER;
        shown.then_some([sample.angles.inner.to_degrees(), share])
    };
    let limit = straight_ahead_share(sweeps.assembly()).filter(|_| at_rest(sweeps));
    let guide = |name, trace, at| Guide { name, trace, at };
    Drawn {
        y: Axis {
            quantity: "Ackermann share",
            unit: "%",
            sign: "0 parallel, 100 ideal pair",
            decimals: 1,
            least: Range::new(0.0, 100.0),
        },
        series: turn_series(sweeps, point, limit.map(|share| [0.0, share])),
        guides: vec![
            guide("parallel", Trace::Parallel, 0.0),
            guide("ideal pair", Trace::Ideal, 100.0),
        ],
    }
}

/// A line for each turn, from a point on where one is given.
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
