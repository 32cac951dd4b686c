//! Sweeps: poses along the steering input or the wheel travel, each to its lock.

mod end;
mod limits;

pub use end::end_of_steering;
pub(crate) use limits::{Margin, Swept};

use crate::assembly::Assembly;
use crate::error::{Member, SolveError};
use crate::frame::Sides;
use crate::pose::AxlePose;
use limits::{Limits, Stand};

/// Evenly spaced values from one end to the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SweepRange {
    /// First value, rad or mm.
    pub from: f64,
    /// Last value, rad or mm.
    pub to: f64,
    /// How many values, both ends included.
    pub count: usize,
}

impl SweepRange {
    /// The values in order.
    #[must_use]
    pub fn values(self) -> impl DoubleEndedIterator<Item = f64> + Clone {
        let last = self.count.saturating_sub(1).max(1);
        (0..self.count).map(move |index| {
            #[allow(
                clippy::cast_precision_loss,
                reason = "a sweep has far fewer points than f64 has whole numbers"
            )]
            let share = index as f64 / last as f64;
            let span = self.to - self.from;
            if span.is_finite() {
                self.from + span * share
            } else {
                // Ends so far apart that their difference is no number.
                self.from * (1.0 - share) + self.to * share
            }
        })
    }
}

/// Poses along a sweep.
#[derive(Debug, Clone, PartialEq)]
pub struct Sweep {
    /// Poses in order of the swept value; values beyond a lock are absent.
    pub poses: Vec<AxlePose>,
    /// The lock met going down from the middle, if any.
    pub lower_lock: Option<Lock>,
    /// The lock met going up from the middle, if any.
    pub upper_lock: Option<Lock>,
}

/// Where a sweep had to stop.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lock {
    /// The swept value at the lock, rad or mm.
    pub at: f64,
    /// What locks, and by how much it would miss at the next value of the sweep.
    pub cause: SolveError,
    /// In which way it locks.
    pub kind: LockKind,
}

/// In which way a linkage locks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LockKind {
    /// A rod or link points straight at the axis it should turn.
    DeadCentre,
    /// A member of the suspension can reach no farther.
    OutOfReach,
    /// A ball joint has swung as far as it goes.
    JointLimit,
    /// Nothing locks for sure: the way on takes more steps than are allowed.
    NotFollowed,
}

impl std::fmt::Display for LockKind {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::DeadCentre => "dead centre",
            Self::OutOfReach => "out of reach",
            Self::JointLimit => "joint limit",
            Self::NotFollowed => "not followed",
        })
    }
}

impl LockKind {
    fn of(cause: &SolveError) -> Self {
        match cause {
            SolveError::JointLimit(_) => Self::JointLimit,
            SolveError::OutOfReach(miss) => match miss.member {
                Member::TieRod | Member::DragLink | Member::CrossLink => Self::DeadCentre,
                Member::Suspension => Self::OutOfReach,
            },
            SolveError::NotFollowed { .. } => Self::NotFollowed,
            SolveError::Degenerate { .. }
            | SolveError::BadNumber { .. }
            | SolveError::NoTravel { .. }
            | SolveError::NotClosed { .. } => Self::OutOfReach,
        }
    }
}

impl Sweep {
    /// Both locks that were met.
    pub fn locks(&self) -> impl Iterator<Item = &Lock> {
        self.lower_lock.iter().chain(&self.upper_lock)
    }
}

/// Poses over a range of the steering input, wheel travels held. Each way from straight ahead the sweep ends at
/// the lock it meets.
#[must_use]
pub fn steer_sweep(assembly: &Assembly, range: SweepRange, travel: Sides<f64>) -> Sweep {
    sweep(assembly, range, Swept::Input, |near, input| {
        assembly.pose_near(near, input, travel)
    })
}

/// Poses over a range of wheel travel, both wheels together, steering input held.
///
/// # Errors
/// [`SolveError::NoTravel`] where a corner has a fixed kingpin.
pub fn bump_sweep(assembly: &Assembly, range: SweepRange, input: f64) -> Result<Sweep, SolveError> {
    if let Some(side) = assembly.side_without_travel() {
        return Err(SolveError::NoTravel { side });
    }
    Ok(sweep(assembly, range, Swept::Travel, |near, travel| {
        assembly.pose_near(near, input, Sides::both(travel))
    }))
}

/// Follows the range outward from the value nearest to zero, each pose from the one before.
fn sweep(
    assembly: &Assembly,
    range: SweepRange,
    swept: Swept,
    pose: impl Fn(&AxlePose, f64) -> Result<AxlePose, SolveError>,
) -> Sweep {
    let limits = Limits {
        joints: assembly.joint_limits(),
        swept,
        pose: &pose,
    };
    let run = |values: &mut dyn Iterator<Item = f64>| {
        let mut last = Stand {
            pose: *assembly.static_pose(),
            at: 0.0,
        };
        let mut poses = Vec::with_capacity(range.count);
        for value in values {
            match limits.step(&last, value) {
                Ok(next) => {
                    last = next;
                    poses.push(next.pose);
                }
                Err(lock) => return (poses, Some(lock)),
            }
        }
        (poses, None)
    };
    let (mut poses, lower_lock) = run(&mut range.values().rev().filter(|value| *value < 0.0));
    poses.reverse();
    let (upward, upper_lock) = run(&mut range.values().filter(|value| *value >= 0.0));
    poses.extend(upward);
    Sweep {
        poses,
        lower_lock,
        upper_lock,
    }
}

impl Lock {
    fn on_way(from: f64, to: f64, cause: SolveError) -> Self {
        let share = match cause {
            SolveError::OutOfReach(miss) => miss.reached,
            SolveError::NotFollowed { reached, .. } => reached,
            _ => 0.0,
        };
        // A sweep to no finite value stops where it is.
        let way = if to.is_finite() { to - from } else { 0.0 };
        Self::at(from + way * share, cause)
    }

    fn at(at: f64, cause: SolveError) -> Self {
        Self {
            at,
            kind: LockKind::of(&cause),
            cause,
        }
    }
}
