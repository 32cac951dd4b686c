//! The band that a curve lies in.

use super::quantiles::Quantiles;
use crate::curves::{Curve, CurveKind, Series, Trace, value_at};

/// The band of a curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Band {
    /// The curve.
    pub kind: CurveKind,
    /// The band of each line that follows from the setup.
    pub lines: Vec<BandLine>,
}

/// The band of a line.
#[derive(Debug, Clone, PartialEq)]
pub struct BandLine {
    /// Which line.
    pub trace: Trace,
    /// Places in order of x.
    pub points: Vec<BandPoint>,
}

/// Where a line lies at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandPoint {
    /// The place, in the unit of the curve's x.
    pub at: f64,
    /// The value of the exact car, in the unit of the curve's y.
    pub exact: f64,
    /// Where the values of the cars lie that get there.
    pub quantiles: Quantiles,
}

/// The lines of exact curves, at whose places the curves of other cars are read.
pub(super) struct Lines {
    pub(super) kinds: Vec<CurveKind>,
    lines: Vec<(CurveKind, Trace, Vec<[f64; 2]>)>,
}

impl Lines {
    pub(super) fn of(curves: &[Curve]) -> Self {
        let of_curve = |curve: &Curve| {
            let lines: Vec<_> = curve
                .of_setup()
                .map(|line| (curve.kind, line.trace, line.points.clone()))
                .collect();
            lines
        };
        Self {
            kinds: curves.iter().map(|curve| curve.kind).collect(),
            lines: curves.iter().flat_map(of_curve).collect(),
        }
    }

    /// How many places there are.
    pub(super) fn places(&self) -> usize {
        self.lines.iter().map(|(_, _, points)| points.len()).sum()
    }

    /// Reads the curves of a car at all places; not a number where it does not get there.
    pub(super) fn read(&self, curves: &[Curve], into: &mut Vec<f64>) {
        for (kind, trace, points) in &self.lines {
            let curve = curves.iter().find(|curve| curve.kind == *kind);
            let line: Option<&Series> =
                curve.and_then(|curve| curve.of_setup().find(|line| line.trace == *trace));
            let value = |place: &[f64; 2]| {
                line.and_then(|line| value_at(&line.points, place[0]))
                    .unwrap_or(f64::NAN)
            };
            into.extend(points.iter().map(value));
        }
    }

    /// The bands from the values of all cars at each place.
    pub(super) fn bands(&self, values_at: impl Fn(usize) -> Vec<f64>) -> Vec<Band> {
        let mut place = 0;
        let mut lines = Vec::new();
        for (kind, trace, points) in &self.lines {
            let points = points.iter().filter_map(|[at, exact]| {
                let quantiles = Quantiles::of(&mut values_at(place));
                place += 1;
                Some(BandPoint {
                    at: *at,
                    exact: *exact,
                    quantiles: quantiles?,
                })
            });
            let line = BandLine {
                trace: *trace,
                points: points.collect(),
            };
            lines.push((*kind, line));
        }
        let of_kind = |kind: CurveKind| {
            let own = lines.iter().filter(|(other, _)| *other == kind);
            own.map(|(_, line)| line.clone()).collect()
        };
        let kinds = self.kinds.iter();
        kinds
            .map(|&kind| Band {
                kind,
                lines: of_kind(kind),
            })
            .collect()
    }
}
