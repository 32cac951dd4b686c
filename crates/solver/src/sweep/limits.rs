//! Where a sweep must stop: at a lock of the linkage, or earlier at a limit that it could pass: of a ball joint, or of
//! how flat a wheel may lie.
//!
//! Such a limit may be passed and left again between two poses of a sweep. So every stretch between two poses is looked
//! through. It is safe if what is left up to each limit at its two ends covers whatever the turn of knuckle and rod may use up, or
//! if that turn is small and the tangents at the two ends meet before the limit; otherwise it is halved.

use super::{Lock, LockKind};
use crate::error::{Fault, Member, SolveError};
use crate::frame::{Side, Vector};
use crate::joints::JointLimits;
use crate::pose::{AxlePose, CornerPose, FLATTEST_WHEEL};
use crate::twist::Twist;

/// What is left up to a limit at a pose, as a sine, and how fast that changes along a sweep.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Margin {
    pub(crate) left: f64,
    /// Per unit of the swept value.
    pub(crate) rate: f64,
}

impl Margin {
    /// Without any limit.
    const NONE: Self = Self {
        left: f64::MAX,
        rate: 0.0,
    };

    /// Whether a stretch between two poses within a limit stays within it, if what is left has one valley on it at most:
    /// the valley cannot be lower than where the tangents at the two ends meet.
    fn holds_up_to(&self, to: &Self, span: f64) -> bool {
        let (falls, rises) = (self.rate * span, to.rate * span);
        if falls >= 0.0 || rises <= 0.0 {
            return true;
        }
        let share = (to.left - self.left - rises) / (falls - rises);
        self.left + falls * share >= -ROUNDING
    }
}

impl Margin {
    /// Whether a pose within the limit stands as good as at it.
    fn is_used_up(self) -> bool {
        self.left <= AT_LIMIT.min(AT_PLACE * self.rate.abs())
    }
}

/// What rounding may make of nothing left.
const ROUNDING: f64 = 1e-13;

/// What a sweep sweeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Swept {
    /// The steering input.
    Input,
    /// The travel of both wheels.
    Travel,
}

impl Swept {
    /// Motion of a knuckle per unit of the swept value.
    pub(crate) fn knuckle(self, corner: &CornerPose) -> Twist {
        match (self, corner.per_travel) {
            (Self::Travel, Some(motion)) => motion,
            _ => corner.per_input,
        }
    }

    /// A rate of the drive per unit of input, per unit of the swept value.
    pub(crate) fn drive(self, per_input: &Vector) -> Vector {
        match self {
            Self::Input => *per_input,
            Self::Travel => Vector::zeros(),
        }
    }
}

/// A pose of a sweep with its swept value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stand {
    pub(super) pose: AxlePose,
    pub(super) at: f64,
}

/// What stops a sweep, and how to pose along it.
pub(super) struct Limits<'a, P> {
    pub(super) joints: Option<&'a JointLimits>,
    pub(super) swept: Swept,
    pub(super) pose: &'a P,
}

/// The end of a stretch.
enum End {
    Within(Box<Stand>),
    /// Beyond a limit that the linkage could pass, with what is left up to a ball joint's limit where there is a pose.
    Beyond(SolveError, Option<Margin>),
    /// The linkage locks before.
    Locked(SolveError),
}

/// Share of a stretch that is left out before a lock, one after the other until there is a pose: next to a lined-up arm
/// rounding leaves none.
const BEFORE_LOCK: [f64; 8] = [1e-9, 1e-7, 1e-5, 1e-3, 1e-2, 0.03, 0.1, MOST_LEFT_OUT];
const MOST_LEFT_OUT: f64 = 0.3;

/// Turn of a knuckle and its rod, rad, over which what is left up to a limit has one valley at most.
const KNOWN_TURN: f64 = 0.2;

/// How near to a limit, as a sine, and how near to its place, rad or mm, a pose within it counts as at it. Farther off than
/// rounding, and far nearer than anything that is shown.
const AT_LIMIT: f64 = 1e-12;
const AT_PLACE: f64 = 1e-11;

/// Halvings of a stretch: down to the rounding of the swept value.
const HALVINGS: u32 = 52;

/// Halvings of a stretch that is looked through for a limit passed and left again.
const FINEST: u32 = 26;

impl<P> Limits<'_, P>
where
    P: Fn(&AxlePose, f64) -> Result<AxlePose, SolveError>,
{
    /// The next pose of a sweep, or the lock that is met before.
    pub(super) fn step(&self, from: &Stand, to: f64) -> Result<Stand, Lock> {
        self.reached(from, to, self.end(from, to))
    }

    /// As [`Limits::step`] of a sweep over the steering input, to a pose that is known already.
    pub(super) fn step_to(&self, from: &Stand, pose: &AxlePose) -> Result<Stand, Lock> {
        self.reached(from, pose.input, self.judged(pose, pose.input))
    }

    /// Whether a stretch between two poses on one path is known to stay within every limit: what is left at its ends covers what
    /// the bodies turn on it. Not to be told otherwise by where tangents meet, since there may be poses between.
    pub(super) fn is_clear(&self, from: &Stand, to: &Stand) -> bool {
        let turns = Turns::between(&from.pose, &to.pose, self.joints);
        let pairs = self.margins(&from.pose).into_iter();
        let mut pairs = pairs.zip(self.margins(&to.pose)).zip(turns.used);
        pairs.all(|((from, to), used)| to.left > 0.0 && from.left + to.left >= 2.0 * used)
    }

    fn reached(&self, from: &Stand, to: f64, end: End) -> Result<Stand, Lock> {
        match end {
            End::Within(next) => match self.passed(from, &next, FINEST) {
                Some(lock) => Err(lock),
                None => Ok(*next),
            },
            End::Beyond(cause, margin) => Err(self.first(from, (to, margin), cause)),
            End::Locked(cause) => {
                let lock = self.lock(from, to, cause);
                Err(self.before(from, &lock).unwrap_or(lock))
            }
        }
    }

    fn end(&self, from: &Stand, at: f64) -> End {
        match (self.pose)(&from.pose, at) {
            Ok(pose) => self.judged(&pose, at),
            Err(
                cause @ SolveError::Degenerate {
                    fault: Fault::WheelLiesFlat,
                    ..
                },
            ) => End::Beyond(cause, None),
            Err(cause) => End::Locked(cause),
        }
    }

    /// Whether a pose lies within the limits of the ball joints.
    fn judged(&self, pose: &AxlePose, at: f64) -> End {
        match self.joints.and_then(|joints| joints.exceeded(pose)) {
            Some(limit) => End::Beyond(limit.into(), self.least_of_joints(pose)),
            None => End::Within(Box::new(Stand { pose: *pose, at })),
        }
    }

    /// The lock of a linkage that has no pose at the end of a stretch.
    fn lock(&self, from: &Stand, to: f64, cause: SolveError) -> Lock {
        match cause {
            // The end lies so near before a lined-up arm that rounding leaves no pose: the arm is met farther on.
            SolveError::OutOfReach(miss)
                if miss.member == Member::Suspension && miss.reached >= 1.0 =>
            {
                let farther = to + (to - from.at);
                match (self.pose)(&from.pose, farther) {
                    Err(cause) => Lock::on_way(from.at, farther, cause),
                    Ok(_) => Lock::on_way(from.at, to, cause),
                }
            }
            _ => Lock::on_way(from.at, to, cause),
        }
    }

    /// A limit met before a lock.
    fn before(&self, from: &Stand, lock: &Lock) -> Option<Lock> {
        if lock.kind == LockKind::NotFollowed {
            return None;
        }
        let way = lock.at - from.at;
        let mut followed = true;
        for left_out in BEFORE_LOCK {
            // Where a way takes too many steps, one that is hardly shorter does too.
            if !followed && left_out < MOST_LEFT_OUT {
                continue;
            }
            let at = lock.at - way * left_out;
            match self.end(from, at) {
                End::Within(next) => return self.passed(from, &next, FINEST),
                End::Beyond(cause, margin) => {
                    return Some(self.first(from, (at, margin), cause));
                }
                End::Locked(cause) => followed = LockKind::of(&cause) != LockKind::NotFollowed,
            }
        }
        None
    }

    /// The first limit on a stretch whose end lies beyond one.
    ///
    /// The place is led between a pose within and one beyond: to where the nearer one's tangent says, and to the middle where
    /// that is not between them.
    fn first(&self, from: &Stand, beyond: (f64, Option<Margin>), cause: SolveError) -> Lock {
        let (mut within, mut beyond, mut cause) = (*from, beyond, cause);
        for _ in 0..HALVINGS {
            let margin = self.least_of_joints(&within.pose);
            if let Some(joints) = self
                .joints
                .filter(|_| margin.is_some_and(Margin::is_used_up))
            {
                // What swings farthest here is what would go beyond.
                return Lock::at(within.at, joints.worst(&within.pose).into());
            }
            let inside = margin.map(|margin| (within.at, margin));
            let outside = beyond.1.map(|margin| (beyond.0, margin));
            let at = crossing(inside, outside)
                .filter(|at| (at - within.at) * (at - beyond.0) < 0.0)
                .unwrap_or(0.5 * (within.at + beyond.0));
            match self.end(&within, at) {
                End::Within(next) => {
                    if let Some(lock) = self.passed(&within, &next, FINEST) {
                        return lock;
                    }
                    within = *next;
                }
                End::Beyond(nearer, margin) => (beyond, cause) = ((at, margin), nearer),
                End::Locked(cause) => return Lock::on_way(within.at, at, cause),
            }
        }
        Lock::at(within.at, cause)
    }

    /// What is left up to the nearest limit of a ball joint.
    fn least_of_joints(&self, pose: &AxlePose) -> Option<Margin> {
        let margins = self.joints?.margins(pose, self.swept).into_iter();
        margins.min_by(|a, b| a.left.total_cmp(&b.left))
    }

    /// A limit that is passed and left again between two poses within it.
    fn passed(&self, from: &Stand, to: &Stand, halvings: u32) -> Option<Lock> {
        if halvings == 0 || self.safe(from, to) {
            return None;
        }
        let middle = 0.5 * (from.at + to.at);
        match self.end(from, middle) {
            End::Within(next) => self
                .passed(from, &next, halvings - 1)
                .or_else(|| self.passed(&next, to, halvings - 1)),
            End::Beyond(cause, margin) => Some(self.first(from, (middle, margin), cause)),
            End::Locked(cause) => Some(self.lock(from, middle, cause)),
        }
    }

    fn safe(&self, from: &Stand, to: &Stand) -> bool {
        let span = to.at - from.at;
        let turns = Turns::between(&from.pose, &to.pose, self.joints);
        let pairs = self.margins(&from.pose).into_iter();
        let pairs = pairs.zip(self.margins(&to.pose)).zip(turns.used);
        pairs.into_iter().all(|((from, to), used)| {
            let covers_turn = from.left + to.left >= 2.0 * used;
            covers_turn || (turns.most <= KNOWN_TURN && from.holds_up_to(&to, span))
        })
    }

    fn margins(&self, pose: &AxlePose) -> [Margin; 6] {
        let [left, right] = Side::BOTH.map(|side| {
            let corner = pose.corners.get(side);
            let lean = corner.spin_axis.z;
            let rate = self
                .swept
                .knuckle(corner)
                .angular
                .cross(&corner.spin_axis)
                .z;
            Margin {
                left: FLATTEST_WHEEL - lean.abs(),
                rate: -rate * lean.signum(),
            }
        });
        let [a, b, c, d] = self
            .joints
            .map_or([Margin::NONE; 4], |joints| joints.margins(pose, self.swept));
        [left, right, a, b, c, d]
    }
}

/// Where a limit is met between a place within it and one beyond, by the tangent at whichever is nearer to it. From beyond a
/// hair is taken off, so that the place itself comes to lie within.
fn crossing(inside: Option<(f64, Margin)>, outside: Option<(f64, Margin)>) -> Option<f64> {
    let (inside, outside) = inside.zip(outside)?;
    let ((at, margin), hair) = if outside.1.left.abs() < inside.1.left {
        (outside, 0.3 * AT_LIMIT)
    } else {
        (inside, 0.0)
    };
    let place = at - (margin.left - hair) / margin.rate;
    place.is_finite().then_some(place)
}

/// How much the bodies at the limits turn between two poses.
struct Turns {
    /// The most that a knuckle and its rod turn, rad.
    most: f64,
    /// What each limit may have used up, as a sine: both wheels, then both balls of the left rod and of the right one. No less than
    /// knuckle and rod turn together: chords of what the limit hangs on tell too little where the drive turns back.
    used: [f64; 6],
}

/// Turn of a knuckle up to which what its parts have turned by is told by where they point before and after, rad.
const PLAIN_TURN: f64 = 1.0;

/// An arc of such a turn against its chord, at the most.
const ARC: f64 = 1.05;

impl Turns {
    fn between(from: &AxlePose, to: &AxlePose, joints: Option<&JointLimits>) -> Self {
        let sides = Side::BOTH.map(|side| {
            let (from_corner, to_corner) = (from.corners.get(side), to.corners.get(side));
            let rod = |corner: &CornerPose| (corner.steering_arm - corner.rod_inner).normalize();
            let rod_turn = (rod(to_corner) - rod(from_corner)).norm();
            let turn = (from_corner.knuckle.rotation).angle_to(&to_corner.knuckle.rotation);
            let whole = turn + rod_turn;
            if turn > PLAIN_TURN {
                return (whole, [whole; 3]);
            }
            let wheel = (to_corner.spin_axis - from_corner.spin_axis).norm();
            let [outer, inner] =
                joints.map_or([0.0; 2], |joints| joints.stud_turns(from, to, side));
            let used = [wheel, rod_turn + outer, rod_turn + inner];
            (whole, used.map(|used| whole.max(ARC * used)))
        });
        let [(left, [a, b, c]), (right, [d, e, f])] = sides;
        Self {
            most: left.max(right),
            used: [a, d, b, c, e, f],
        }
    }
}
