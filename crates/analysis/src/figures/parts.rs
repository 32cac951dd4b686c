//! What figures of a pose are read off, computed once and when it is needed.

use std::cell::OnceCell;

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::{
    CornerFigures, InnerOuter, Turning, corner_figures, inner_outer, turning,
};
use steerloft_solver::frame::{Road, Sides};
use steerloft_solver::pose::{AxlePose, CornerPose};

use super::lock::{LockPose, lock_poses};
use super::{Figure, FigureKind, Values};
use crate::{InputUnit, Study};

/// Radii beyond this say no more than that the car goes straight, mm.
const STRAIGHT: f64 = 1e6;

/// The figures of a pose of a setup. Nothing is computed before it is asked for.
#[derive(Debug)]
pub struct Figures<'a> {
    pub(super) study: &'a Study,
    pub(super) pose: &'a AxlePose,
    corners: OnceCell<Sides<CornerFigures>>,
    straight: OnceCell<AxlePose>,
    on_road: OnceCell<Option<AxlePose>>,
    turn: OnceCell<Option<InnerOuter>>,
    turning: OnceCell<Option<Turning>>,
    locks: OnceCell<Sides<Option<LockPose<'a>>>>,
}

impl<'a> Figures<'a> {
    /// The figures of a pose of a setup.
    #[must_use]
    pub fn new(study: &'a Study, pose: &'a AxlePose) -> Self {
        Self {
            study,
            pose,
            corners: OnceCell::new(),
            straight: OnceCell::new(),
            on_road: OnceCell::new(),
            turn: OnceCell::new(),
            turning: OnceCell::new(),
            locks: OnceCell::new(),
        }
    }

    /// The values of a figure, in its unit.
    #[must_use]
    pub fn values(&self, kind: FigureKind) -> Values {
        self.of(kind).finite()
    }

    /// A figure with its unit, its values, and what about them needs attention.
    #[must_use]
    pub fn figure(&self, kind: FigureKind) -> Figure {
        Figure {
            kind,
            unit: kind.facts().unit(self.unit()),
            values: self.values(kind),
            caution: self.caution(kind),
        }
    }

    /// Every figure, in the order in which they are listed.
    #[must_use]
    pub fn all(&self) -> [Figure; FigureKind::ALL.len()] {
        FigureKind::ALL.map(|kind| self.figure(kind))
    }

    /// Something about the values of a figure that needs attention.
    #[must_use]
    pub fn caution(&self, kind: FigureKind) -> Option<String> {
        match kind {
            FigureKind::RodLength => {
                let rods = self.study.tie_rods();
                (!rods.left.is_buildable() || !rods.right.is_buildable())
                    .then(|| "The rod's parts cannot be screwed to this length.".to_owned())
            }
            FigureKind::LockLeft => self.locks().left.as_ref()?.cause.clone(),
            FigureKind::LockRight => self.locks().right.as_ref()?.cause.clone(),
            _ => None,
        }
    }

    pub(super) fn unit(&self) -> InputUnit {
        self.study.unit()
    }

    pub(super) fn assembly(&self) -> &'a Assembly {
        self.study.assembly()
    }

    pub(super) fn road(&self) -> &'a Road {
        &self.assembly().axle().road
    }

    pub(super) fn corners(&self) -> &Sides<CornerFigures> {
        let corners = || {
            self.pose
                .corners
                .map(|corner| corner_figures(&corner, self.road()))
        };
        self.corners.get_or_init(corners)
    }

    /// The pose straight ahead at the travel of the pose; at rest where there is none.
    pub(super) fn straight(&self) -> &AxlePose {
        self.straight.get_or_init(|| {
            let rest = self.study.rest();
            let pose = self.assembly().pose_near(rest, 0.0, self.pose.travel);
            pose.unwrap_or(*rest)
        })
    }

    /// The pose straight ahead with both tyres on the road; none for a suspension without travel.
    pub(super) fn on_road(&self) -> Option<&AxlePose> {
        let pose = || {
            let rest = self.study.rest();
            self.assembly().pose_on_road(rest, 0.0, self.road()).ok()
        };
        self.on_road.get_or_init(pose).as_ref()
    }

    /// Inner and outer wheel; none straight ahead.
    pub(super) fn turn(&self) -> Option<&InnerOuter> {
        let turn = || inner_outer(self.assembly(), self.pose);
        self.turn.get_or_init(turn).as_ref()
    }

    /// Where the wheels' axes meet the rear-axle line; none where the axle goes as good as straight.
    pub(super) fn turning(&self) -> Option<&Turning> {
        let turning = || turning_of(self.assembly(), self.pose);
        self.turning.get_or_init(turning).as_ref()
    }

    /// The ends of steering to the left and to the right, at the travel held by the study.
    pub(super) fn locks(&self) -> &Sides<Option<LockPose<'a>>> {
        self.locks.get_or_init(|| lock_poses(self.study))
    }

    /// A value of each wheel in the pose.
    pub(super) fn each(&self, value: impl Fn(&CornerPose) -> Option<f64>) -> Values {
        Values::Sides(self.pose.corners.map(|corner| value(&corner)))
    }

    /// A value of each wheel at rest.
    pub(super) fn each_at_rest(&self, value: impl Fn(&CornerPose) -> Option<f64>) -> Values {
        let corners = self.study.rest().corners;
        Values::Sides(corners.map(|corner| value(&corner)))
    }
}

/// How the axle turns; none where it goes as good as straight.
pub(super) fn turning_of(assembly: &Assembly, pose: &AxlePose) -> Option<Turning> {
    let axle = assembly.axle();
    turning(pose, &axle.road, axle.rear_axle_behind())
        .filter(|turning| turning.swept_radius < STRAIGHT)
}
