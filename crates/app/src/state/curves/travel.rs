//! Curves over the wheel travel, both wheels together, steering straight ahead.

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::{CornerFigures, corner_figures};
use steerloft_solver::frame::Sides;
use steerloft_solver::sweep::bump_sweep;

use super::{End, Line, Sweeps};

/// Angles of both wheels over the wheel travel: mm, bump positive, and degrees.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TravelCurves {
    /// Toe, toe-in positive.
    pub toe: Sides<Line>,
    /// Camber, positive with the top outboard.
    pub camber: Sides<Line>,
    /// Caster, positive with the steering axis leaning back.
    pub caster: Sides<Line>,
    /// Where travel ends before the car's range does.
    pub ends: Vec<End>,
}

impl TravelCurves {
    /// The curves, or nothing for a suspension without travel.
    #[must_use]
    pub fn new(assembly: &Assembly, sweeps: &Sweeps) -> Option<Self> {
        let sweep = bump_sweep(assembly, sweeps.range(sweeps.travel), 0.0).ok()?;
        let road = &assembly.axle().road;
        let figures = Sides::from_fn(|side| {
            let corners = sweep.poses.iter().map(|pose| pose.corners.get(side));
            corners
                .map(|corner| corner_figures(corner, road))
                .collect::<Vec<_>>()
        });
        let line = |value: fn(&CornerFigures) -> f64| {
            Sides::from_fn(|side| {
                let values = figures.get(side).iter().map(value);
                let travels = sweep.poses.iter().map(|pose| *pose.travel.get(side));
                travels
                    .zip(values)
                    .map(|(travel, angle)| [travel, angle.to_degrees()])
                    .collect()
            })
        };
        Some(Self {
            toe: line(|corner| corner.toe),
            camber: line(|corner| corner.camber),
            caster: line(|corner| corner.caster),
            ends: sweep
                .locks()
                .map(|lock| End::of(lock, |travel| travel))
                .collect(),
        })
    }
}
