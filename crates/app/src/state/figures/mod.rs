//! The figures of the pose on screen and of the setup it belongs to.

mod pose;
mod rest;

use steerloft_setup::car::TieRodParts;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::frame::Sides;
use steerloft_solver::pose::AxlePose;

use super::{Curves, InputUnit, SteerSample, Turn};

pub use pose::PoseFigures;
pub use rest::{InstantCentre, RestFigures};

/// All figures of a pose and of the setup it belongs to.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    /// Unit of the steering input.
    pub unit: InputUnit,
    /// Of the pose on screen.
    pub pose: PoseFigures,
    /// Of the setup straight ahead at rest.
    pub rest: RestFigures,
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
    /// Diameter of the circle that the outer tyre sweeps there, mm; none where a wheel points straight ahead.
    pub circle: Option<f64>,
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
        unit: InputUnit,
    ) -> Self {
        Self {
            unit,
            pose: PoseFigures::new(assembly, pose),
            rest: RestFigures::new(assembly),
            rods: assembly
                .rod_lengths()
                .map(|length| RodFigures::new(length, tie_rod)),
            full_lock: full_locks(assembly, pose, curves, unit),
        }
    }

    /// The figures of another pose of the same setup.
    pub(super) fn pose_again(
        &mut self,
        assembly: &Assembly,
        pose: &AxlePose,
        curves: &Curves,
        travel_changed: bool,
    ) {
        self.pose = PoseFigures::new(assembly, pose);
        if travel_changed {
            self.full_lock = full_locks(assembly, pose, curves, self.unit);
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

fn full_locks(
    assembly: &Assembly,
    near: &AxlePose,
    curves: &Curves,
    unit: InputUnit,
) -> [Option<FullLock>; 2] {
    Turn::BOTH.map(|turn| full_lock(assembly, near, curves, turn, unit))
}

fn full_lock(
    assembly: &Assembly,
    near: &AxlePose,
    curves: &Curves,
    turn: Turn,
    unit: InputUnit,
) -> Option<FullLock> {
    let steer = &curves.steer;
    let sample = steer
        .samples
        .iter()
        .filter(|sample| sample.turn == turn)
        .max_by(|a, b| a.input.abs().total_cmp(&b.input.abs()))?;
    let cause = steer
        .ends
        .iter()
        .find(|end| end.at.is_sign_positive() == sample.input.is_sign_positive())
        .map(|end| end.cause.to_string());
    let input = unit.to_solver(sample.input);
    let pose = assembly.pose(input, near.travel).ok();
    Some(FullLock {
        sample: *sample,
        circle: pose.and_then(|pose| pose::swept_circle(assembly, &pose)),
        cause,
    })
}
