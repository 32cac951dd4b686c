//! The ends of steering.

use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::pose::AxlePose;

use crate::Study;
use crate::curves::{Turn, TurnSample};

/// The end of steering in one direction.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct LockPose<'a> {
    pub(super) sample: TurnSample,
    pub(super) pose: &'a AxlePose,
    /// What ends it before the car's range does, if something does.
    pub(super) cause: Option<String>,
}

impl LockPose<'_> {
    /// How far each wheel is turned, degrees.
    pub(super) fn wheels(&self) -> Sides<f64> {
        let angles = &self.sample.angles;
        let (inner, outer) = (angles.inner.to_degrees(), angles.outer.to_degrees());
        match self.sample.turn {
            Turn::Left => Sides::new(inner, outer),
            Turn::Right => Sides::new(outer, inner),
        }
    }
}

/// The ends of steering to the left and to the right; none where the car never turns that way.
pub(super) fn lock_poses(study: &Study) -> Sides<Option<LockPose<'_>>> {
    let [left, right] = Turn::BOTH.map(|turn| {
        let (sample, pose) = study.sweeps().full_lock(turn)?;
        let ends = study.sweeps().steering_ends();
        let same_way = |at: f64| at.is_sign_positive() == sample.input.is_sign_positive();
        let end = ends.iter().find(|end| same_way(end.at));
        Some(LockPose {
            sample,
            pose,
            cause: end.map(|end| end.cause.to_string()),
        })
    });
    Sides::new(left, right)
}

/// Angle between rod and steering arm, folded to at most a right angle, where it is least over the steering, degrees.
pub(super) fn least_transmission(study: &Study, side: Side) -> Option<f64> {
    let poses = study.sweeps().steer().poses.iter();
    let folded = poses.map(|pose| {
        let corner = pose.corners.get(side);
        let angle = outer_transmission(corner).angle.to_degrees();
        angle.min(180.0 - angle)
    });
    folded.reduce(f64::min)
}
