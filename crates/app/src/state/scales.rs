//! Fixed ranges of the curves' axes. They depend on the car alone, so that two of its setups can be compared by eye.

use std::collections::BTreeMap;

use steerloft_setup::adjustment::{Adjustment, Kind};
use steerloft_setup::car::Car;
use steerloft_setup::layout::front_axle;
use steerloft_setup::setup::{Chosen, Record, Rods, Setup};
use steerloft_solver::assembly::Assembly;
use steerloft_solver::frame::Sides;

use super::{CurveKind, Curves, Sweep, Sweeps};

/// Poses on each curve that is only looked at for its greatest and least value.
const COARSE: usize = 13;

/// Share of its span that a swept axis goes on beyond either end of the sweep.
const MARGIN: f64 = 0.04;

/// Intervals into which an axis is divided about, when its ends are brought to round numbers.
const INTERVALS: f64 = 8.0;

/// Least and greatest value of an axis.
pub type Range = (f64, f64);

/// Ranges of both axes of every panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Scales {
    travel: Range,
    input: Range,
    roll: Range,
    values: [Range; CurveKind::ALL.len()],
}

impl Scales {
    /// The ranges that suit a car: each holds the curve of the car as its file gives it, and of every setup that differs
    /// from it in one adjustment taken to an end of its range.
    #[must_use]
    pub fn of(car: &Car) -> Self {
        let sweeps = Sweeps {
            samples: COARSE,
            ..Sweeps::of(car)
        };
        let mut extents = [None; CurveKind::ALL.len()];
        for setup in base_and_neighbours(car) {
            let Ok(assembly) = Assembly::new(&front_axle(&setup)) else {
                continue;
            };
            let curves = Curves::new(&assembly, &sweeps, Sides::both(0.0));
            for kind in CurveKind::ALL {
                let extent = &mut extents[kind.index()];
                *extent = union(*extent, extent_of(&curves, kind));
            }
        }
        Self {
            travel: with_margin(sweeps.travel),
            input: with_margin(sweeps.input),
            roll: with_margin((-sweeps.roll, sweeps.roll)),
            values: CurveKind::ALL.map(|kind| range_of(kind, extents[kind.index()])),
        }
    }

    /// The range of the horizontal axis.
    #[must_use]
    pub fn horizontal(&self, kind: CurveKind) -> Range {
        match kind.sweep() {
            Sweep::Travel => self.travel,
            Sweep::Steer => self.input,
            Sweep::InnerAngle => self.vertical(kind),
            Sweep::Roll => self.roll,
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

/// Least and greatest value of the lines of a panel.
fn extent_of(curves: &Curves, kind: CurveKind) -> Option<Range> {
    let lines = curves.lines(kind)?;
    let values = lines
        .iter()
        .flat_map(|(_, line)| line.iter())
        .map(|point| point[1]);
    let values: Vec<f64> = match kind {
        // Both axes show wheel angles and have one range.
        CurveKind::OuterInner => lines
            .iter()
            .flat_map(|(_, line)| line.iter())
            .flatten()
            .copied()
            .collect(),
        _ => values.collect(),
    };
    values
        .into_iter()
        .map(|value| Some((value, value)))
        .fold(None, union)
}

fn union(one: Option<Range>, other: Option<Range>) -> Option<Range> {
    match (one, other) {
        (Some(one), Some(other)) => Some((one.0.min(other.0), one.1.max(other.1))),
        (one, other) => one.or(other),
    }
}

fn with_margin((from, to): Range) -> Range {
    let margin = ((to - from).abs() * MARGIN).max(0.05);
    (from.min(to) - margin, from.max(to) + margin)
}

/// What a panel shows at least, whatever the car: no curve is blown up beyond what matters.
fn least(kind: CurveKind) -> Range {
    match kind {
        CurveKind::ToeTravel => (-0.2, 0.2),
        CurveKind::OuterInner => (0.0, 20.0),
        CurveKind::Ackermann => (0.0, 100.0),
        CurveKind::RollSteer => (-0.1, 0.1),
        CurveKind::Transmission => (60.0, 120.0),
        CurveKind::CamberTravel | CurveKind::CamberSteer | CurveKind::CamberRoll => (-1.0, 0.0),
        CurveKind::CasterTravel | CurveKind::Ratio => (f64::INFINITY, f64::NEG_INFINITY),
    }
}

/// What a panel shows at most: shares and angles beyond it say no more than that they are beyond it.
fn most(kind: CurveKind) -> Range {
    match kind {
        CurveKind::Ackermann => (-100.0, 250.0),
        CurveKind::Transmission => (0.0, 180.0),
        CurveKind::OuterInner => (0.0, 75.0),
        _ => (f64::NEG_INFINITY, f64::INFINITY),
    }
}

/// The range of a panel's vertical axis, with round ends, from what its lines reach.
fn range_of(kind: CurveKind, extent: Option<Range>) -> Range {
    let least = least(kind);
    let most = most(kind);
    let (low, high) = extent.unwrap_or((0.0, 0.0));
    let low = low.max(most.0).min(least.0);
    let high = high.min(most.1).max(least.1);
    let step = round_step(((high - low) / INTERVALS).max(0.01));
    let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
    if high > low {
        (low, high)
    } else {
        (low - step, high + step)
    }
}

/// The least of 1, 2 and 5 times a power of ten that is no less than this.
#[must_use]
pub fn round_step(least: f64) -> f64 {
    let power = 10_f64.powf(least.max(1e-9).log10().floor());
    let round = [1.0, 2.0, 5.0].map(|digit| digit * power);
    round
        .into_iter()
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}

#[cfg(test)]
mod tests {
    use super::*;
    use steerloft_setup::supplied::SUPPLIED;

    #[test]
    fn steps_are_round() {
        for (least, round) in [
            (0.1, 0.1),
            (0.11, 0.2),
            (0.3, 0.5),
            (0.7, 1.0),
            (6.0, 10.0),
            (42.0, 50.0),
        ] {
            let step = round_step(least);
            assert!((step - round).abs() < 1e-12, "{least}: {step}");
        }
    }

    #[test]
    fn every_supplied_car_and_its_neighbours_stay_within_the_axes() {
        for supplied in SUPPLIED {
            let car = supplied.setup().car;
            let scales = Scales::of(&car);
            let mut looked_at = 0;
            for setup in base_and_neighbours(&car) {
                let Ok(assembly) = Assembly::new(&front_axle(&setup)) else {
                    continue;
                };
                let curves = Curves::new(&assembly, &Sweeps::of(&car), Sides::both(0.0));
                for kind in CurveKind::ALL {
                    let Some(extent) = extent_of(&curves, kind) else {
                        continue;
                    };
                    let (low, high) = scales.vertical(kind);
                    let most = most(kind);
                    // Between the coarse poses a line may bulge by a hair; the share does most close to straight ahead.
                    let bulge = if kind == CurveKind::Ackermann {
                        0.1
                    } else {
                        0.02
                    };
                    let slack = (high - low) * bulge;
                    assert!(
                        extent.0.max(most.0) >= low - slack && extent.1.min(most.1) <= high + slack,
                        "{}: {kind:?} {extent:?} in {low}..{high}",
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
        assert_eq!(
            range_of(CurveKind::CasterTravel, Some((4.0, 4.0))),
            (3.99, 4.01)
        );
        assert_eq!(range_of(CurveKind::ToeTravel, None), (-0.2, 0.2));
        let (low, high) = range_of(CurveKind::CamberTravel, Some((-3.13, -0.9)));
        assert!(
            (low + 3.5).abs() < 1e-9 && high.abs() < 1e-9,
            "{low} {high}"
        );
    }
}
