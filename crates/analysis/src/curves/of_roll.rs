//! Curves against the roll of the chassis, both tyres kept on the road, the steering straight ahead.

use super::of_travel::NO_TRAVEL;
use super::quantity::{Ground, Quantity, of_sides};
use super::{Axis, Curve, CurveKind, RollPose, Sweeps};
use crate::Range;

/// Least range of an angle shown, degrees each way.
const LEAST_ANGLE: f64 = 0.2;

pub(super) fn curve(sweeps: &Sweeps, kind: CurveKind) -> Curve {
    let poses = sweeps.roll();
    let quantity = match kind {
        CurveKind::RollCamber => Quantity::Camber,
        _ => Quantity::Steer,
    };
    let least = Range::around_zero(LEAST_ANGLE);
    let mut y = quantity.axis(least);
    if quantity == Quantity::Steer {
        y.quantity = "steer from level";
        y.decimals = 3;
    }
    let series = if poses.is_empty() {
        Vec::new()
    } else {
        of_sides(|side| {
            let value = |sample: &RollPose| {
                quantity.of(sample.pose.corners.get(side), &Ground::new(sample.road))
            };
            // Level, with both tyres on the road: a ride height set otherwise than the tyres stand moves the wheels.
            let level = || {
                poses
                    .iter()
                    .min_by(|a, b| a.roll.abs().total_cmp(&b.roll.abs()))
            };
            let zero = match quantity {
                Quantity::Steer => level().map_or(0.0, value),
                _ => 0.0,
            };
            let point = |sample: &RollPose| [sample.roll.to_degrees(), value(sample) - zero];
            poses.iter().map(point).collect()
        })
    };
    let curve = Curve {
        kind,
        x: Axis {
            quantity: "roll",
            unit: "deg",
            sign: "right side down +",
            decimals: 2,
            least,
        },
        y,
        guides: Vec::new(),
        ends: Vec::new(),
        notes: notes(sweeps),
        series,
    };
    curve.levelled()
}

fn notes(sweeps: &Sweeps) -> Vec<String> {
    if !sweeps.assembly().has_travel() {
        vec![NO_TRAVEL.to_owned()]
    } else if sweeps.roll().is_empty() {
        vec!["The car's range of travel does not reach to both sides of rest.".to_owned()]
    } else {
        Vec::new()
    }
}
