//! Sweeps: poses along the steering input or the wheel travel, each to its lock.

use crate::assembly::Assembly;
use crate::error::{JointLimit, Member, SolveError};
use crate::frame::Sides;
use crate::joints::JointLimits;
use crate::pose::AxlePose;

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
            self.from + (self.to - self.from) * share
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
}

impl std::fmt::Display for LockKind {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::DeadCentre => "dead centre",
            Self::OutOfReach => "out of reach",
            Self::JointLimit => "joint limit",
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
    sweep(assembly, range, |near, input| {
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
    Ok(sweep(assembly, range, |near, travel| {
        assembly.pose_near(near, input, Sides::both(travel))
    }))
}

/// Follows the range outward from the value nearest to zero, each pose from the one before.
fn sweep(
    assembly: &Assembly,
    range: SweepRange,
    pose: impl Fn(&AxlePose, f64) -> Result<AxlePose, SolveError>,
) -> Sweep {
    let run = |values: &mut dyn Iterator<Item = f64>| {
        let mut near = *assembly.static_pose();
        let mut at = 0.0;
        let mut poses = Vec::with_capacity(range.count);
        for value in values {
            match pose(&near, value) {
                Ok(next) => {
                    if let Some(limits) = assembly.joint_limits()
                        && let Some(limit) = limits.exceeded(&next)
                    {
                        let lock = joint_lock(limits, limit, (&near, at), value, &pose);
                        return (poses, Some(lock));
                    }
                    near = next;
                    at = value;
                    poses.push(next);
                }
                Err(cause) => return (poses, Some(Lock::on_way(at, value, cause))),
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

/// Where a ball joint meets its limit, between a value at which all are within and one at which one is beyond.
fn joint_lock(
    limits: &JointLimits,
    limit: JointLimit,
    (near, within): (&AxlePose, f64),
    beyond: f64,
    pose: impl Fn(&AxlePose, f64) -> Result<AxlePose, SolveError>,
) -> Lock {
    let (mut within, mut beyond, mut cause) = (within, beyond, limit);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (within + beyond);
        match pose(near, middle).ok().map(|pose| limits.exceeded(&pose)) {
            Some(Some(limit)) => {
                beyond = middle;
                cause = limit;
            }
            Some(None) => within = middle,
            None => break,
        }
    }
    Lock {
        at: within,
        cause: cause.into(),
        kind: LockKind::JointLimit,
    }
}

/// Halvings of a step of a sweep: down to the rounding of the swept value.
const HALVINGS: usize = 52;

impl Lock {
    fn on_way(from: f64, to: f64, cause: SolveError) -> Self {
        let share = match cause {
            SolveError::OutOfReach(miss) => miss.reached,
            _ => 0.0,
        };
        // A sweep to no finite value stops where it is.
        let way = if to.is_finite() { to - from } else { 0.0 };
        Self {
            at: from + way * share,
            kind: LockKind::of(&cause),
            cause,
        }
    }
}
