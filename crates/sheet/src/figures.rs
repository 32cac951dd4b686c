//! The figures that a sheet lists: those that say how a car is set up, and those that can be read off gauges.

use steerloft_analysis::Study;
use steerloft_analysis::figures::{Figure, FigureKind};

/// The key figures, in the order in which they are listed.
const KEY: [FigureKind; 18] = [
    FigureKind::Toe,
    FigureKind::Camber,
    FigureKind::Caster,
    FigureKind::Inclination,
    FigureKind::ScrubRadius,
    FigureKind::Trail,
    FigureKind::BumpSteer,
    FigureKind::CamberGain,
    FigureKind::RollSteer,
    FigureKind::RollCentreHeight,
    FigureKind::StraightRatio,
    FigureKind::Track,
    FigureKind::Wheelbase,
    FigureKind::LockLeft,
    FigureKind::LockRight,
    FigureKind::LockAckermann,
    FigureKind::LockRadius,
    FigureKind::LeastTransmission,
];

/// The key figures of a setup at rest and at the ends of its steering.
pub(crate) fn key_figures(study: &Study) -> Vec<Figure> {
    let figures = study.figures(study.rest());
    KEY.map(|kind| figures.figure(kind)).into()
}
