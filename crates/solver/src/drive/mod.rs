//! Steering drives: how the input moves the inner tie-rod balls, one drive a file.
//!
//! Every drive answers one question: where are the two inner balls at an input, and how fast do they move? The
//! closure asks nothing else, so a further drive is a further file here.

mod parts;
mod slider;
mod swing_arm;
mod twin_crank;

pub use slider::Slider;
pub use swing_arm::SwingArm;
pub use twin_crank::{Crank, InnerBallsOn, TwinCrank};

use crate::error::{Member, Miss, OutOfReach, SolveError};
use crate::frame::{Point, Side, Sides, Vector};
use crate::pace::{AMPLE, Pace};
use crate::pose::DrivePose;
use slider::SliderKinematics;
use swing_arm::SwingArmKinematics;
use twin_crank::TwinCrankKinematics;

/// What moves the inner tie-rod balls.
#[derive(Debug, Clone, Copy, PartialEq)]
#[allow(
    clippy::large_enum_variant,
    reason = "a drive is plain data without heap memory"
)]
pub enum Drive {
    /// Both inner balls on one arm that turns about an axis; the input is its angle, rad.
    SwingArm(SwingArm),
    /// Two cranks tied by a cross link, one of them turned by a drag link from a servo arm; the input is the
    /// servo arm's angle, rad.
    TwinCrank(TwinCrank),
    /// Both inner balls move along a direction, as on a rack; the input is the displacement, mm.
    Slider(Slider),
}

impl Drive {
    /// Makes the drive ready to be moved.
    pub(crate) fn kinematics(&self) -> Result<DriveKinematics, SolveError> {
        Ok(match self {
            Self::SwingArm(drive) => DriveKinematics::SwingArm(drive.kinematics()?),
            Self::TwinCrank(drive) => DriveKinematics::TwinCrank(drive.kinematics()?),
            Self::Slider(drive) => DriveKinematics::Slider(drive.kinematics()?),
        })
    }
}

/// A drive made ready to be moved by its input.
#[derive(Debug, Clone, Copy, PartialEq)]
#[allow(
    clippy::large_enum_variant,
    reason = "a drive is plain data without heap memory"
)]
pub(crate) enum DriveKinematics {
    SwingArm(SwingArmKinematics),
    TwinCrank(TwinCrankKinematics),
    Slider(SliderKinematics),
}

/// Inner balls and their velocities per unit of input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct InnerBalls {
    pub(crate) points: Sides<Point>,
    pub(crate) rates: Sides<Vector>,
    /// Change of the input over which the drive stays together, at the least; without end for a drive in one piece.
    pub(crate) stay: f64,
}

/// A link of a drive that does not reach.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DriveMiss {
    pub(crate) member: Member,
    /// Side of the crank that is not reached.
    pub(crate) side: Side,
    /// mm, positive when the link is too short.
    pub(crate) difference: f64,
}

impl DriveMiss {
    /// As an error at an input, met after this share of the way there.
    pub(crate) fn at(&self, input: f64, reached: f64) -> SolveError {
        OutOfReach {
            member: self.member,
            side: self.side,
            miss: Miss::of(self.difference),
            shortfall: self.difference.abs(),
            input,
            travel: 0.0,
            reached,
        }
        .into()
    }
}

/// How far a drive stays together on the way from one input to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Together {
    /// Share of the way, 0 to 1. The drive can be put together there.
    pub(crate) share: f64,
    /// Whether the way was followed to its end or to a lock; else it takes more steps than are allowed.
    pub(crate) followed: bool,
}

/// Most steps on the way of a drive. Each takes a fraction of a microsecond. With a fifth of them a lock of a plausible axle was told
/// wrongly: next to its dead centre a drive is sure to stay together for tiny steps only.
const MOST_STEPS: usize = 50_000;

impl DriveKinematics {
    /// How far the drive stays together on the way from an input at which it is.
    ///
    /// A step counts only if what the drive surely stays together for at its two ends covers it, so that none can jump over a
    /// stretch where a link does not reach. A lock is followed to within [`SHORTEST_STEP`] of it.
    ///
    /// [`SHORTEST_STEP`]: crate::pace::SHORTEST_STEP
    pub(crate) fn together(&self, from: f64, to: f64) -> Together {
        let way = to - from;
        let least = way.abs().max(f64::MIN_POSITIVE);
        let stay = |share: f64| {
            let balls = self.inner_balls(from + way * share).ok()?;
            Some(balls.stay / least)
        };
        let mut pace = Pace::new();
        let mut share = 0.0;
        let mut followed = true;
        let Some(mut behind) = stay(0.0) else {
            return Together { share, followed };
        };
        for _ in 0..MOST_STEPS {
            let goal = f64::min(share + pace.step, 1.0);
            let covers = |ahead: f64, times: f64| (goal - share) * times <= behind + ahead;
            if let Some(ahead) = stay(goal).filter(|ahead| covers(*ahead, 1.0)) {
                let amply = covers(ahead, AMPLE);
                behind = ahead;
                share = goal;
                if share >= 1.0 {
                    return Together { share, followed };
                }
                pace.went(amply);
            } else if pace.failed().is_none() {
                return Together { share, followed };
            }
        }
        followed = false;
        Together { share, followed }
    }

    /// Where the inner balls are at an input.
    #[inline]
    pub(crate) fn inner_balls(&self, input: f64) -> Result<InnerBalls, DriveMiss> {
        match self {
            Self::SwingArm(drive) => Ok(drive.inner_balls(input)),
            Self::TwinCrank(drive) => drive.inner_balls(input),
            Self::Slider(drive) => Ok(drive.inner_balls(input)),
        }
    }

    /// Accelerations of the inner balls, mm per unit of input squared.
    pub(crate) fn inner_bends(&self, input: f64) -> Result<Sides<Vector>, DriveMiss> {
        match self {
            Self::SwingArm(drive) => Ok(drive.inner_bends(input)),
            Self::TwinCrank(drive) => drive.inner_bends(input),
            Self::Slider(_) => Ok(Sides::both(Vector::zeros())),
        }
    }

    /// Where the whole drive is at an input.
    pub(crate) fn pose(&self, input: f64) -> Result<DrivePose, DriveMiss> {
        match self {
            Self::SwingArm(drive) => Ok(drive.pose(input)),
            Self::TwinCrank(drive) => drive.pose(input),
            Self::Slider(drive) => Ok(drive.pose(input)),
        }
    }
}
