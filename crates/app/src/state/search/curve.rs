//! A whole curve as it is wanted in the window: point by point.

use steerloft_analysis::curves::{CurveKind, Trace};
use steerloft_analysis::find::{Measure, Target, Want, Wheel};

use super::behaviour::spread_over;
use crate::state::Shown;

/// Points that a curve is given at first.
const POINTS: usize = 3;

/// Most points that are typed.
pub const MOST_POINTS: usize = 24;

/// A curve that can be wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WantedCurve {
    /// Toe of a wheel against its travel.
    ToeTravel,
    /// Outer against inner angle of a turn.
    InnerOuter,
}

impl WantedCurve {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::ToeTravel, Self::InnerOuter];

    /// The curve.
    #[must_use]
    pub const fn kind(self) -> CurveKind {
        match self {
            Self::ToeTravel => CurveKind::ToeTravel,
            Self::InnerOuter => CurveKind::InnerOuter,
        }
    }

    /// The measure of such a curve through points.
    #[must_use]
    pub const fn measure(self, wheel: Wheel, points: Vec<[f64; 2]>, tolerance: f64) -> Measure {
        match self {
            Self::ToeTravel => Measure::ToeCurve {
                wheel,
                points,
                tolerance,
            },
            Self::InnerOuter => Measure::InnerOuterCurve {
                turn: wheel,
                points,
                tolerance,
            },
        }
    }
}

/// A whole curve as it is written.
#[derive(Debug, Clone, PartialEq)]
pub struct CurveDraft {
    /// Which curve.
    pub curve: WantedCurve,
    /// The wheel, or the turn.
    pub wheel: Wheel,
    /// Travel in mm with toe in degrees, or inner with outer angle in degrees.
    pub points: Vec<[f64; 2]>,
    /// How far it may be off at each point and still count as wanted, degrees.
    pub tolerance: f64,
    /// How much it matters.
    pub weight: f64,
}

impl CurveDraft {
    /// A curve through a few points of what a setup does now, on both sides; level where it has no such curve.
    #[must_use]
    pub fn of(curve: WantedCurve, now: &Shown) -> Self {
        let points = spread_over(now.curve(curve.kind()), Trace::Left, POINTS);
        let rounded = |value: f64| (value * 100.0).round() / 100.0;
        let rounded = points.map(|points| points.into_iter().map(|point| point.map(rounded)));
        Self {
            curve,
            wheel: Wheel::Both,
            points: rounded.map_or(vec![[0.0; 2]], Iterator::collect),
            tolerance: 0.0,
            weight: 1.0,
        }
    }

    /// Adds a point beyond the last one, as far again, at its value.
    pub fn add_point(&mut self) {
        if self.points.len() >= MOST_POINTS {
            return;
        }
        let next = match self.points.as_slice() {
            [.., [before, _], [last, value]] => [2.0 * last - before, *value],
            [[last, value]] => [last + 1.0, *value],
            [] => [0.0; 2],
        };
        self.points.push(next);
    }

    /// The want.
    #[must_use]
    pub fn want(&self) -> Want {
        Want {
            measure: (self.curve).measure(self.wheel, self.points.clone(), self.tolerance),
            target: Target::Value(0.0),
            weight: self.weight,
        }
    }
}
