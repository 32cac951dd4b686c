//! What is off on a car as built.

use std::fmt;

use steerloft_setup::adjustment::Unit;
use steerloft_setup::dimension::{Dimension, dimensions};
use steerloft_setup::setup::{Rods, Setup};
use steerloft_solver::frame::Side;

/// Something that is off on a car as built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Source {
    /// A dimension of the car.
    Dimension(Dimension),
    /// The toe that a rod is set to on the gauges.
    Toe(Side),
}

impl Source {
    /// Its unit, of a drive that is turned in a unit.
    #[must_use]
    pub const fn unit(&self, input: Unit) -> Unit {
        match self {
            Self::Dimension(dimension) => dimension.unit(input),
            Self::Toe(_) => Unit::Degrees,
        }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Dimension(dimension) => dimension.fmt(f),
            Self::Toe(side) => write!(f, "{side} toe as set on the gauges"),
        }
    }
}

/// Something that is off, how far, and how much that matters.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Matter {
    /// What is off.
    pub source: Source,
    /// The most that it is off either way, mm or degrees.
    pub error: f64,
    /// What it moves the figures by, in noticeable differences: the root of the sum of the squares of the parts of their
    /// standard deviations that are due to it.
    pub effect: f64,
}

/// Everything that is off on a car, with the most that it is off either way; what is exact is left out.
pub(super) fn sources(setup: &Setup) -> Vec<(Source, f64)> {
    let (errors, input) = (&setup.car.build_errors, setup.car.drive.input_unit());
    let dimensions = dimensions(setup).into_iter();
    let mut sources: Vec<(Source, f64)> = dimensions
        .map(|dimension| (Source::Dimension(dimension), dimension.error(errors, input)))
        .collect();
    if let Rods::HoldToe(_) = setup.rods {
        sources.extend(Side::BOTH.map(|side| (Source::Toe(side), errors.angles)));
    }
    sources.retain(|(_, error)| *error > 0.0);
    sources
}
