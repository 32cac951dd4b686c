//! How alike the two sides are: greatest differences of mirrored curves.

use crate::Study;
use crate::curves::{CurveKind, Trace, Turn, value_at};

/// Greatest difference between the outer angles of a left and of a right turn at the same inner angle, and between the
/// inner angles reached at mirrored inputs, degrees; none where the car does not turn both ways.
pub(super) fn of_turns(study: &Study) -> Option<f64> {
    let angles = |turn: Turn| {
        let samples = study.sweeps().turns();
        let of_turn = samples.filter(move |sample| sample.turn == turn);
        of_turn.map(|sample| {
            let angles = &sample.angles;
            (
                sample.input.abs(),
                angles.inner.to_degrees(),
                angles.outer.to_degrees(),
            )
        })
    };
    let line = |pick: fn((f64, f64, f64)) -> f64| {
        let mut line: Vec<[f64; 2]> = angles(Turn::Right)
            .map(|sample| [sample.0, pick(sample)])
            .collect();
        line.sort_by(|a, b| a[0].total_cmp(&b[0]));
        line
    };
    let (inner, outer) = (line(|sample| sample.1), line(|sample| sample.2));
    let differences = angles(Turn::Left).filter_map(|(input, left_inner, left_outer)| {
        let by_inner = left_inner - value_at(&inner, input)?;
        let by_outer = left_outer - value_at(&outer, input)?;
        Some(by_inner.abs().max(by_outer.abs()))
    });
    differences.reduce(f64::max)
}

/// Greatest difference between the lines of the left and of the right wheel over the travel, in the curve's unit; none
/// without travel.
pub(super) fn of_travel(study: &Study, kind: CurveKind) -> Option<f64> {
    let curve = study.curve(kind);
    let line = |trace| curve.series.iter().find(|series| series.trace == trace);
    let (left, right) = (line(Trace::Left)?, line(Trace::Right)?);
    let pairs = left.points.iter().zip(&right.points);
    pairs
        .map(|(left, right)| (left[1] - right[1]).abs())
        .reduce(f64::max)
}
