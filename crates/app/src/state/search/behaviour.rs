//! The behaviour of a setup as wants: its curves of toe against travel and of outer against inner angle.

use steerloft_analysis::curves::{Curve, CurveKind, Trace};
use steerloft_analysis::find::{Target, Want, Wheel};

use super::WantedCurve;
use crate::state::Shown;

/// Points of a curve that are wanted back: enough for a curve that is smooth.
const POINTS: usize = 9;

/// What a setup does, as wants: both curves on both sides, as far as the car has them.
#[must_use]
pub fn behaviour_of(reference: &Shown) -> Vec<Want> {
    let toe = reference.curve(CurveKind::ToeTravel);
    let pair = reference.curve(CurveKind::InnerOuter);
    let mut wants = Vec::new();
    for (trace, wheel) in [(Trace::Left, Wheel::Left), (Trace::Right, Wheel::Right)] {
        let whole = |curve: WantedCurve, points| curve.measure(wheel, points, 0.0);
        let toe = spread_over(toe, trace, POINTS);
        let toe = toe.map(|points| whole(WantedCurve::ToeTravel, points));
        let pair = spread_over(pair, trace, POINTS);
        let pair = pair.map(|points| whole(WantedCurve::InnerOuter, points));
        wants.extend([toe, pair].into_iter().flatten().map(|measure| Want {
            measure,
            target: Target::Value(0.0),
            weight: 1.0,
        }));
    }
    wants
}

/// So many points spread over a line of a curve; none where the car has no such line.
pub(super) fn spread_over(curve: &Curve, trace: Trace, count: usize) -> Option<Vec<[f64; 2]>> {
    let series = curve.series.iter().find(|series| series.trace == trace)?;
    let line = &series.points;
    let last = line.len().checked_sub(1).filter(|last| *last > 0)?;
    // The ends may be locks, which another setup need not reach.
    let places = (1..=count).map(|place| line[place * last / (count + 1)]);
    Some(places.collect())
}
