//! One want as it is written in the window.

use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::{Measure, Target, Want, Wheel};

/// Angle of the inner wheel at which an Ackermann share is wanted at first, degrees.
const INNER: f64 = 20.0;

/// A want as it is written.
#[derive(Debug, Clone, PartialEq)]
pub struct WantDraft {
    /// The figure.
    pub figure: FigureKind,
    /// The wheel, or the turn.
    pub wheel: Wheel,
    /// Angle of the inner wheel at which an Ackermann share is taken, degrees.
    pub inner: f64,
    /// What it should be.
    pub target: Target,
    /// How much it matters.
    pub weight: f64,
}

impl WantDraft {
    /// A figure wanted at 0 on both wheels.
    #[must_use]
    pub const fn of(figure: FigureKind) -> Self {
        Self {
            figure,
            wheel: Wheel::Both,
            inner: INNER,
            target: Target::Value(0.0),
            weight: 1.0,
        }
    }

    /// The figures that can be wanted.
    pub fn figures() -> impl Iterator<Item = FigureKind> {
        let can_be_wanted =
            |kind: &FigureKind| Measure::of_figure(*kind, Wheel::Both, INNER).is_some();
        FigureKind::ALL.into_iter().filter(can_be_wanted)
    }

    /// What is measured.
    #[must_use]
    pub const fn measure(&self) -> Option<Measure> {
        Measure::of_figure(self.figure, self.wheel, self.inner)
    }

    /// Whether it is told for one wheel or turn; no for a figure of the whole axle.
    #[must_use]
    pub fn has_wheel(&self) -> bool {
        self.measure()
            .is_some_and(|measure| measure.wheel().is_some())
    }

    /// The want.
    #[must_use]
    pub fn want(&self) -> Option<Want> {
        Some(Want {
            measure: self.measure()?,
            target: self.target,
            weight: self.weight,
        })
    }
}
