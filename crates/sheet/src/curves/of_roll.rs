//! Curves against the roll of the chassis, both tyres kept on the road, the steering straight ahead.

use steerloft_solver::figures::{CornerFigures, corner_figures};
use steerloft_solver::frame::Road;
use steerloft_solver::pose::AxlePose;

use super::of_travel::{NO_TRAVEL, level, of_sides};
use super::{Axis, Curve, CurveKind, Range, Sweeps};

/// Least range of an angle shown, degrees each way.
const LEAST_ANGLE: f64 = 0.2;

pub(super) fn curve(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let (quantity, sign, value): (_, _, fn(&CornerFigures) -> f64) = match kind {
        CurveKind::RollCamber => ("camber", "top out +", |figures| figures.camber),
        _ => ("steer from level", "left +", |figures| figures.steer),
    };
    let at_rest = sweeps.assembly.axle().road;
    let poses = &sweeps.roll;
    let series = if poses.is_empty() {
        Vec::new()
    } else {
        of_sides(|side| {
            let figure = |(roll, pose): &(f64, AxlePose)| {
                let road = Road {
                    roll: at_rest.roll + roll,
                    ..at_rest
                };
                value(&corner_figures(pose.corners.get(side), &road)).to_degrees()
            };
            // Level, with both tyres on the road: a ride height set otherwise than the tyres stand moves the wheels.
            let level = poses.iter().min_by(|a, b| a.0.abs().total_cmp(&b.0.abs()));
            let zero = match kind {
                CurveKind::RollSteer => level.map_or(0.0, figure),
                _ => 0.0,
            };
            let point = |sample: &(f64, AxlePose)| [sample.0.to_degrees(), figure(sample) - zero];
            poses.iter().map(point).collect()
        })
    };
    let mut curve = Curve {
        kind,
        x: Axis {
            quantity: "roll",
            unit: "deg",
            sign: "right side down +".to_owned(),
            least: Range::around_zero(LEAST_ANGLE),
        },
        y: Axis {
            quantity,
            unit: "deg",
            sign: sign.to_owned(),
            least: Range::around_zero(LEAST_ANGLE),
        },
        notes: notes(sweeps),
        series,
    };
    level(&mut curve);
    curve
}

fn notes(sweeps: &Sweeps) -> Vec<String> {
    if sweeps.travel.is_none() {
        vec![NO_TRAVEL.to_owned()]
    } else if sweeps.roll.is_empty() {
        vec!["The car's range of travel does not reach to both sides of rest.".to_owned()]
    } else {
        Vec::new()
    }
}
