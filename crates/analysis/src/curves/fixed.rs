//! Fixed ranges of the curves' axes. They depend on the car alone, so that two of its setups can be compared by eye.

use std::collections::BTreeMap;

use steerloft_setup::adjustment::{Adjustment, Kind};
use steerloft_setup::car::Car;
use steerloft_setup::layout::assemble;
use steerloft_setup::setup::{Chosen, Record, Rods, Setup};

use super::{Along, Curve, CurveKind, Sweeps, roll_range};
use crate::{Range, round_step};

/// Poses of a sweep that is only looked at for its greatest and least value.
const COARSE: usize = 13;

/// Share of its span that a swept axis goes on beyond either end of the sweep.
const MARGIN: f64 = 0.04;

/// Intervals into which an axis is divided about, when its ends are brought to round numbers.
const INTERVALS: f64 = 8.0;

/// Ranges of both axes of every curve.
#[derive(Debug, Clone, PartialEq)]
pub struct FixedRanges {
    travel: Range,
    input: Range,
    roll: Range,
    values: [Range; CurveKind::ALL.len()],
}

impl FixedRanges {
    /// The ranges that suit a car: each holds the curve of the car as its file gives it, and of every setup that differs
    /// from it in one adjustment taken to an end of its range.
    #[must_use]
    pub fn of(car: &Car) -> Self {
        let mut extents = [None; CurveKind::ALL.len()];
        let mut roll: f64 = 0.0;
        for setup in base_and_neighbours(car) {
            let Ok(assembly) = assemble(&setup) else {
                continue;
            };
            let rolls = roll_range(&assembly, assembly.static_pose(), &car.ranges);
            roll = roll.max(rolls.to.max(-rolls.from).to_degrees());
            let sweeps = Sweeps::with_samples(&assembly, &car.ranges, COARSE);
            for kind in CurveKind::ALL {
                let extent = &mut extents[kind.index()];
                *extent = union(*extent, extent_of(&sweeps.curve(kind)));
            }
        }
        let swept = |(from, to)| with_margin(Range::new(from, to));
        Self {
            travel: swept(car.ranges.travel),
            input: swept(car.ranges.input),
            roll: with_margin(Range::around_zero(roll)),
            values: CurveKind::ALL.map(|kind| range_of(kind, extents[kind.index()])),
        }
    }

    /// The range of the horizontal axis.
    #[must_use]
    pub fn horizontal(&self, kind: CurveKind) -> Range {
        match kind.along() {
            Along::Travel | Along::SteeredTravel => self.travel,
            Along::Steer => self.input,
            Along::InnerAngle => self.values[CurveKind::InnerOuter.index()],
            Along::Roll => self.roll,
        }
    }

    /// The range of the vertical axis.
    #[must_use]
    pub fn vertical(&self, kind: CurveKind) -> Range {
        self.values[kind.index()]
    }
}

/// The car without any choice, wheels straight, and with each of its adjustments alone at the ends of its range.
fn base_and_neighbours(car: &Car) -> impl Iterator<Item = Setup> {
    let base = Setup {
        car: car.clone(),
        chosen: BTreeMap::new(),
        rods: Rods::HoldToe(0.0),
        record: Record::default(),
    };
    let neighbours = car
        .adjustments
        .iter()
        .enumerate()
        .flat_map(|(index, adjustment)| {
            ends(adjustment)
                .into_iter()
                .map(move |value| (index, value))
        });
    let first = base.clone();
    std::iter::once(base).chain(neighbours.filter_map(move |(index, value)| {
        let mut setup = first.clone();
        setup.set(index, value).ok().map(|()| setup)
    }))
}

/// The values at the ends of an adjustment's range; every option of a choice.
fn ends(adjustment: &Adjustment) -> Vec<Chosen> {
    match &adjustment.kind {
        Kind::Slide { range, .. } => [range.0, range.1]
            .map(|end| adjustment.nearest(&Chosen::Slide(end)))
            .into(),
        Kind::Stack { most, .. } => [0.0, *most]
            .map(|end| adjustment.nearest(&Chosen::Stack(end)))
            .into(),
        Kind::Choice { .. } => adjustment.values().unwrap_or_default(),
    }
}

/// Least and greatest value of a curve of a setup.
fn extent_of(curve: &Curve) -> Option<Range> {
    let values = curve.extent(1);
    match curve.kind {
        // Both axes show wheel angles and have one range.
        CurveKind::InnerOuter => union(values, curve.extent(0)),
        _ => values,
    }
}

fn union(one: Option<Range>, other: Option<Range>) -> Option<Range> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.with(other.from).with(other.to)),
        (one, other) => one.or(other),
    }
}

fn with_margin(range: Range) -> Range {
    let ordered = Range::new(range.from.min(range.to), range.from.max(range.to));
    ordered.widened((ordered.length() * MARGIN).max(0.05))
}

/// What a curve shows at least, whatever the car, so that none is blown up beyond what matters; none where any range will
/// do.
fn least(kind: CurveKind) -> Option<Range> {
    match kind {
        CurveKind::ToeTravel => Some(Range::around_zero(0.2)),
        CurveKind::ToeTravelSteered
        | CurveKind::RollSteer
        | CurveKind::TrackTravel
        | CurveKind::ContactTravel
        | CurveKind::CentreTravel
        | CurveKind::StationTravel
        | CurveKind::RoadSteer => Some(Range::around_zero(0.1)),
        CurveKind::InnerOuter => Some(Range::new(0.0, 20.0)),
        CurveKind::AckermannShare => Some(Range::new(0.0, 100.0)),
        CurveKind::WheelAngles => Some(Range::around_zero(20.0)),
        CurveKind::Transmission => Some(Range::new(60.0, 120.0)),
        CurveKind::InnerShare => Some(Range::new(50.0, 100.0)),
        CurveKind::CamberTravel | CurveKind::CamberSteer | CurveKind::RollCamber => {
            Some(Range::new(-1.0, 0.0))
        }
        CurveKind::DriveEffort => Some(Range::new(0.0, 0.0)),
        CurveKind::CasterTravel
        | CurveKind::CasterSteer
        | CurveKind::InclinationTravel
        | CurveKind::InclinationSteer
        | CurveKind::ScrubTravel
        | CurveKind::ScrubSteer
        | CurveKind::TrailTravel
        | CurveKind::TrailSteer
        | CurveKind::SteeringRatio => None,
    }
}

/// What a curve shows at most: shares and angles beyond it say no more than that they are beyond it.
fn most(kind: CurveKind) -> Range {
    match kind {
        CurveKind::AckermannShare => Range::new(-100.0, 250.0),
        CurveKind::Transmission => Range::new(0.0, 180.0),
        CurveKind::InnerOuter => Range::new(0.0, 75.0),
        _ => Range::new(f64::NEG_INFINITY, f64::INFINITY),
    }
}

/// The range of a curve's vertical axis, with round ends, from what its lines reach.
fn range_of(kind: CurveKind, extent: Option<Range>) -> Range {
    let most = most(kind);
    let within =
        extent.map(|extent| Range::new(extent.from.max(most.from), extent.to.min(most.to)));
    let shown = union(within, least(kind)).unwrap_or(Range::new(0.0, 0.0));
    let step = round_step((shown.length() / INTERVALS).max(0.01));
    let round = Range::new(
        (shown.from / step).floor() * step,
        (shown.to / step).ceil() * step,
    );
    if round.to > round.from {
        round
    } else {
        round.widened(step)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use steerloft_setup::supplied::SUPPLIED;

    #[test]
    fn every_supplied_car_and_its_neighbours_stay_within_the_axes() {
        for supplied in SUPPLIED {
            let car = supplied.setup().car;
            let fixed = FixedRanges::of(&car);
            let mut looked_at = 0;
            for setup in base_and_neighbours(&car) {
                let Ok(assembly) = assemble(&setup) else {
                    continue;
                };
                let sweeps = Sweeps::new(&assembly, &car.ranges);
                for kind in CurveKind::ALL {
                    let Some(extent) = extent_of(&sweeps.curve(kind)) else {
                        continue;
                    };
                    let shown = fixed.vertical(kind);
                    let most = most(kind);
                    // Between the coarse poses a line may bulge by a hair; the share does most close to straight ahead.
                    let bulge = if kind == CurveKind::AckermannShare {
                        0.1
                    } else {
                        0.02
                    };
                    let shown = shown.widened(shown.length() * bulge);
                    assert!(
                        extent.from.max(most.from) >= shown.from
                            && extent.to.min(most.to) <= shown.to,
                        "{}: {kind:?} {extent:?} in {shown:?}",
                        supplied.title
                    );
                    looked_at += 1;
                }
            }
            assert!(looked_at > 100, "{}", supplied.title);
        }
    }

    #[test]
    fn a_range_is_round_and_never_empty() {
        let level = range_of(CurveKind::CasterTravel, Some(Range::new(4.0, 4.0)));
        assert_eq!(level, Range::new(3.99, 4.01));
        assert_eq!(
            range_of(CurveKind::ToeTravel, None),
            Range::around_zero(0.2)
        );
        let camber = range_of(CurveKind::CamberTravel, Some(Range::new(-3.13, -0.9)));
        assert!(
            (camber.from + 3.5).abs() < 1e-9 && camber.to.abs() < 1e-9,
            "{camber:?}"
        );
    }
}
