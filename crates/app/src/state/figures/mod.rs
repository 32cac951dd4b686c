//! The key figures of the pose on screen.

use steerloft_setup::car::TieRodParts;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::{
    CornerFigures, InnerOuter, corner_figures, inner_outer, travel_gradient,
};
use steerloft_solver::frame::Sides;
use steerloft_solver::pose::AxlePose;

use super::{Curves, SteerSample, Turn};

/// Key figures of a pose and of the setup it belongs to.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    /// Of each corner, in the pose on screen.
    pub corners: Sides<CornerFigures>,
    /// Toe of each wheel straight ahead at the travel of the pose on screen, rad, toe-in positive.
    pub toe: Sides<f64>,
    /// Change of toe with travel straight ahead at rest, rad/mm; none without travel.
    pub bump_steer: Sides<Option<f64>>,
    /// Inner and outer wheel of the pose on screen; none straight ahead.
    pub turn: Option<InnerOuter>,
    /// The tie rods.
    pub rods: Sides<RodFigures>,
    /// The end of steering to the left and to the right; none where the car never turns that way.
    pub full_lock: [Option<FullLock>; 2],
}

/// A tie rod as it is to be built.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RodFigures {
    /// Ball centre to ball centre, mm.
    pub length: f64,
    /// Gap between the open ends of the two cups, mm.
    pub gap: f64,
    /// Whether the parts can be screwed to this length.
    pub buildable: bool,
}

/// The end of steering in one direction.
#[derive(Debug, Clone, PartialEq)]
pub struct FullLock {
    /// The last pose of the sweep.
    pub sample: SteerSample,
    /// What ends it before the car's range does, if something does.
    pub cause: Option<String>,
}

impl Figures {
    /// The figures of a pose.
    #[must_use]
    pub fn new(
        assembly: &Assembly,
        pose: &AxlePose,
        curves: &Curves,
        tie_rod: &TieRodParts,
    ) -> Self {
        let road = &assembly.axle().road;
        let at_rest = assembly.static_pose();
        let lengths = assembly.rod_lengths();
        let straight = assembly
            .pose_near(at_rest, 0.0, pose.travel)
            .unwrap_or(*at_rest);
        Self {
            corners: Sides::from_fn(|side| corner_figures(pose.corners.get(side), road)),
            toe: Sides::from_fn(|side| corner_figures(straight.corners.get(side), road).toe),
            bump_steer: Sides::from_fn(|side| {
                travel_gradient(at_rest.corners.get(side), road).map(|gradient| gradient.toe)
            }),
            turn: inner_outer(assembly, pose),
            rods: lengths.map(|length| RodFigures::new(length, tie_rod)),
            full_lock: Turn::BOTH.map(|turn| full_lock(curves, turn)),
        }
    }
}

impl RodFigures {
    fn new(length: f64, tie_rod: &TieRodParts) -> Self {
        Self {
            length,
            gap: length - 2.0 * tie_rod.cup_length,
            buildable: (tie_rod.shortest..=tie_rod.longest).contains(&length),
        }
    }
}

fn full_lock(curves: &Curves, turn: Turn) -> Option<FullLock> {
    let sample = curves
        .steer
        .samples
        .iter()
        .filter(|sample| sample.turn == turn)
        .max_by(|a, b| a.input.abs().total_cmp(&b.input.abs()))?;
    let cause = curves
        .steer
        .locks
        .iter()
        .find(|lock| lock.at.is_sign_positive() == sample.input.is_sign_positive())
        .map(|lock| lock.cause.to_string());
    Some(FullLock {
        sample: *sample,
        cause,
    })
}
