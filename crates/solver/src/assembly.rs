//! A front axle made ready to pose.

use crate::axle::{FrontAxle, Rod};
use crate::check::asked;
use crate::closure::corner::CornerClosure;
use crate::closure::corner_pose::RodAt;
use crate::closure::dead_centre::DeadCentre;
use crate::closure::path::{Bounds, DemandRate, Stall, StallCause, Waypoint};
use crate::closure::rod_setting::SetRod;
use crate::closure::second_order::Rotation;
use crate::drive::{DriveKinematics, DriveMiss, InnerBalls};
use crate::error::SolveError;
use crate::frame::{Side, Sides, Vector};
use crate::joints::JointLimits;
use crate::pace::SHORTEST_STEP;
use crate::pose::{AxlePose, Coordinates, CornerPose, DrivePose, HalfPose};

/// Farthest turn of a knuckle, rad, over which its known motion is taken for a first guess.
const FARTHEST_GUESS: f64 = 0.3;

/// A front axle made ready to pose: its geometry checked, its rods set, its static pose solved.
///
/// Making one takes microseconds and no heap memory; so does every pose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Assembly {
    axle: FrontAxle,
    drive: DriveKinematics,
    corners: Sides<CornerClosure>,
    rod_lengths: Sides<f64>,
    static_pose: AxlePose,
    joints: Option<JointLimits>,
}

/// One side of a pose that is known already, from which the next one is led.
#[derive(Debug, Clone, Copy)]
struct Known<'a> {
    input: f64,
    travel: f64,
    drive: &'a DrivePose,
    corner: &'a CornerPose,
}

impl<'a> Known<'a> {
    fn side_of(pose: &'a AxlePose, side: Side) -> Self {
        Self {
            input: pose.input,
            travel: *pose.travel.get(side),
            drive: &pose.drive,
            corner: pose.corners.get(side),
        }
    }
}

impl Assembly {
    /// Checks the axle, sets its rods and solves the static pose (input 0, travel 0).
    ///
    /// # Errors
    /// [`SolveError::BadNumber`] or [`SolveError::Degenerate`] for geometry that is no mechanism;
    /// [`SolveError::OutOfReach`] where a rod of fixed length or an arm cannot be put together.
    pub fn new(axle: &FrontAxle) -> Result<Self, SolveError> {
        Self::within(axle, None)
    }

    /// As [`Assembly::new`], with limits of the ball joints where they are known. Sweeps stop at them; single poses are not
    /// held to them.
    ///
    /// # Errors
    /// As [`Assembly::new`].
    pub fn within(axle: &FrontAxle, joints: Option<JointLimits>) -> Result<Self, SolveError> {
        axle.check()?;
        let drive = axle.drive.kinematics()?;
        let inner = drive.inner_balls(0.0).map_err(|miss| miss.at(0.0, 0.0))?;
        let road = axle.road.axes();
        let mut corners =
            Sides::try_from_fn(|side| CornerClosure::new(side, axle.corners.get(side)))?;
        let mut set_on = |side: Side| {
            let corner = corners.get_mut(side);
            let ball = inner.points.get(side);
            match *axle.rods.get(side) {
                Rod::HoldToe(toe) => corner.set_by_toe(ball, toe, &road),
                Rod::FixedLength(length) => corner.set_by_length(ball, length),
            }
        };
        let left = set_on(Side::Left)?;
        let set = if axle.is_mirror_symmetrical() {
            let right = corners.right.set_as_mirrored(&corners.left, &left);
            Sides::new(left, right)
        } else {
            Sides::new(left, set_on(Side::Right)?)
        };
        let static_corner = |side: Side| {
            let SetRod { at, length } = *set.get(side);
            corners
                .get(side)
                .pose(&at, &rod_at(&inner, side, length), 0.0, 0.0)
        };
        let static_pose = AxlePose {
            input: 0.0,
            travel: Sides::both(0.0),
            drive: drive.pose(0.0).map_err(|miss| miss.at(0.0, 0.0))?,
            corners: Sides::try_from_fn(static_corner)?,
        };
        Ok(Self {
            axle: *axle,
            drive,
            corners,
            rod_lengths: set.map(|rod| rod.length),
            static_pose,
            joints,
        })
    }

    /// The same with limits of the ball joints, as [`Assembly::within`] has them.
    #[must_use]
    pub const fn with_joint_limits(mut self, joints: JointLimits) -> Self {
        self.joints = Some(joints);
        self
    }

    /// The limits of the ball joints, if any are given.
    #[must_use]
    pub const fn joint_limits(&self) -> Option<&JointLimits> {
        self.joints.as_ref()
    }

    /// The geometry this was made from.
    #[must_use]
    pub const fn axle(&self) -> &FrontAxle {
        &self.axle
    }

    /// Centre-to-centre lengths of the tie rods, mm: given, or what the toe held asks for.
    #[must_use]
    pub const fn rod_lengths(&self) -> Sides<f64> {
        self.rod_lengths
    }

    /// The pose at input 0 and travel 0.
    #[must_use]
    pub const fn static_pose(&self) -> &AxlePose {
        &self.static_pose
    }

    /// Whether both wheels can move up and down against the chassis.
    #[must_use]
    pub fn has_travel(&self) -> bool {
        self.side_without_travel().is_none()
    }

    /// Whether the right half is the mirror image of the left one to the last digit, so that a turn to one side is the mirror
    /// image of a turn to the other. An axle with twin cranks, of which one is driven, never counts.
    #[must_use]
    pub fn is_mirror_symmetrical(&self) -> bool {
        self.axle.is_mirror_symmetrical()
            && (self.joints.as_ref()).is_none_or(JointLimits::is_mirror_symmetrical)
    }

    /// The pose at a steering input (rad) and wheel travels (mm), on the branch continuous with the static pose.
    ///
    /// # Errors
    /// [`SolveError::OutOfReach`] beyond a lock, with the member and what it misses in mm.
    pub fn pose(&self, input: f64, travel: Sides<f64>) -> Result<AxlePose, SolveError> {
        self.pose_near(&self.static_pose, input, travel)
    }

    /// As [`Assembly::pose`], led from a pose of this assembly that is already known, which is quicker when it
    /// is near.
    ///
    /// # Errors
    /// As [`Assembly::pose`].
    pub fn pose_near(
        &self,
        near: &AxlePose,
        input: f64,
        travel: Sides<f64>,
    ) -> Result<AxlePose, SolveError> {
        check_inputs(input, &travel)?;
        let drive = self.drive.pose(input);
        let goal = drive.as_ref().ok();
        let corner = |side| {
            let travel = *travel.get(side);
            self.corner(&Known::side_of(near, side), goal, input, travel)
        };
        let left = match corner(Side::Left) {
            // The other side is asked only where what it says may be told instead.
            Err(error) if !matches!(error, SolveError::OutOfReach(_)) => return Err(error),
            left => left,
        };
        match (left, corner(Side::Right), drive) {
            (Ok(left), Ok(right), Ok(drive)) => Ok(AxlePose {
                input,
                travel,
                drive,
                corners: Sides { left, right },
            }),
            (Err(left), Err(right), _) => Err(first_to_lock(left, right)),
            (Err(error), Ok(_), _) | (Ok(_), Err(error), _) => Err(error),
            (Ok(_), Ok(_), Err(miss)) => Err(miss.at(input, 1.0)),
        }
    }

    /// As [`Assembly::pose_near`], of one side alone: half the work where the other one is not asked for. The other may lock
    /// before.
    ///
    /// # Errors
    /// As [`Assembly::pose`].
    pub fn half_near(
        &self,
        near: &HalfPose,
        input: f64,
        travel: f64,
    ) -> Result<HalfPose, SolveError> {
        check_inputs(input, &Sides::both(travel))?;
        let drive = self.drive.pose(input);
        let known = Known {
            input: near.input,
            travel: near.travel,
            drive: &near.drive,
            corner: &near.corner,
        };
        let corner = self.corner(&known, drive.as_ref().ok(), input, travel)?;
        Ok(HalfPose {
            input,
            travel,
            drive: drive.map_err(|miss| miss.at(input, 1.0))?,
            corner,
        })
    }

    /// Where the drive is at an input; nothing where it cannot be put together.
    pub(crate) fn drive_at(&self, input: f64) -> Option<DrivePose> {
        self.drive.pose(input).ok()
    }

    /// One corner's pose, its travel held, where a known pose is near enough to be sure of it at once; nothing where it is
    /// not, or where there is none.
    pub(crate) fn corner_in_reach(
        &self,
        near: &AxlePose,
        side: Side,
        drive: &DrivePose,
        input: f64,
    ) -> Option<CornerPose> {
        let travel = *near.travel.get(side);
        let rod = self.rod_on(drive, side);
        self.guessed(&Known::side_of(near, side), drive, &rod, input, travel)
    }

    /// One corner's pose led from a known one, travel held; nothing where it locks before.
    pub(crate) fn corner_led(
        &self,
        near: &AxlePose,
        side: Side,
        drive: &DrivePose,
        input: f64,
    ) -> Option<CornerPose> {
        let travel = *near.travel.get(side);
        self.corner(&Known::side_of(near, side), Some(drive), input, travel)
            .ok()
    }

    /// The dead centre that a corner's rod comes to on the way from a known pose to an input, travel held; nothing where none
    /// is found near by.
    pub(crate) fn dead_centre(
        &self,
        from: &AxlePose,
        side: Side,
        input: f64,
    ) -> Option<DeadCentre> {
        self.corners.get(side).dead_centre(
            (&from.corners.get(side).coordinates, from.input),
            input,
            *from.travel.get(side),
            *self.rod_lengths.get(side),
            |input| self.drive.inner_balls(input).ok(),
        )
    }

    /// A corner's pose with its knuckle turned on by so much, rad, and the input that does so; travel held.
    pub(crate) fn corner_turned(
        &self,
        from: &AxlePose,
        side: Side,
        by: f64,
    ) -> Option<(f64, CornerPose)> {
        let corner = self.corners.get(side);
        let travel = *from.travel.get(side);
        let length = *self.rod_lengths.get(side);
        let inner = |input| self.drive.inner_balls(input).ok();
        let here = (&from.corners.get(side).coordinates, from.input);
        let (at, input) = corner.turned_on(here, by, travel, length, inner)?;
        let rod = rod_at(&inner(input)?, side, length);
        Some((input, corner.pose(&at, &rod, travel, input).ok()?))
    }

    /// A corner's pose at an input a little before a dead centre found from a known pose.
    pub(crate) fn corner_before(
        &self,
        from: &AxlePose,
        centre: &DeadCentre,
        side: Side,
        input: f64,
    ) -> Option<CornerPose> {
        let corner = self.corners.get(side);
        let travel = *from.travel.get(side);
        let rod = rod_at(
            &self.drive.inner_balls(input).ok()?,
            side,
            *self.rod_lengths.get(side),
        );
        let at = corner.before_dead_centre(centre, &rod, input, travel)?;
        corner.pose(&at, &rod, travel, input).ok()
    }

    fn rod_on(&self, drive: &DrivePose, side: Side) -> RodAt {
        RodAt {
            inner: *drive.rod_inner.get(side),
            inner_rate: *drive.rod_inner_rate.get(side),
            length: *self.rod_lengths.get(side),
        }
    }

    /// One corner's pose. Newton's iteration is tried from where the known motions lead; where that fails, it is led
    /// along the path. Without a drive pose there is nothing at the goal, and the path says why.
    fn corner(
        &self,
        near: &Known<'_>,
        drive: Option<&DrivePose>,
        input: f64,
        travel: f64,
    ) -> Result<CornerPose, SolveError> {
        let side = near.corner.side;
        let corner = self.corners.get(side);
        if !corner.has_travel && travel != 0.0 {
            return Err(SolveError::NoTravel { side });
        }
        let rod = drive.map(|drive| self.rod_on(drive, side));
        if let (Some(drive), Some(rod)) = (drive, &rod)
            && let Some(pose) = self.guessed(near, drive, rod, input, travel)
        {
            return Ok(pose);
        }
        let at = self.lead(near, input, travel)?;
        let rod = rod.ok_or(corner.apart(travel, input))?;
        corner.pose(&at, &rod, travel, input).map_err(|error| {
            // Just before a lined-up arm rounding keeps Newton's iteration from closing: the range ends here.
            let waypoint = self.waypoints(near, input, travel);
            let stall = Stall {
                reached: 1.0,
                at,
                why: StallCause::Corner,
            };
            match (error, corner.edge(&stall, waypoint)) {
                (SolveError::NotClosed { .. }, Some(edge)) => {
                    corner.explain(&stall, Some(&edge), &rod.demand(travel), input)
                }
                _ => error,
            }
        })
    }

    /// One corner's pose from where the known motions lead, if what is known is near enough to be sure of it.
    fn guessed(
        &self,
        near: &Known<'_>,
        drive: &DrivePose,
        rod: &RodAt,
        input: f64,
        travel: f64,
    ) -> Option<CornerPose> {
        let known = near.corner;
        let corner = self.corners.get(known.side);
        let (input_by, travel_by) = (input - near.input, travel - near.travel);
        let step = known
            .by_input
            .times(input_by)
            .plus(&known.by_travel.times(travel_by));
        let together = input_by.abs() <= near.drive.stay + drive.stay;
        if !together || step.steering.abs() > FARTHEST_GUESS {
            return None;
        }
        let at = corner.close(&rod.demand(travel), &known.coordinates.plus(&step))?;
        let pose = corner.pose(&at, rod, travel, input).ok()?;
        let speed = |rate: &Vector| way_speed(rate, input_by, travel_by);
        let known_rate = near.drive.rod_inner_rate.get(known.side);
        let way = speed(known_rate).max(speed(&rod.inner_rate));
        let swing = (pose.coordinates.suspension - known.coordinates.suspension).abs();
        let is_sure = way <= known.reserve + pose.reserve
            && swing <= known.suspension_stay + pose.suspension_stay;
        is_sure.then_some(pose)
    }

    /// The path of demands on a corner from a known pose to the goal, by its share.
    fn waypoints(
        &self,
        near: &Known<'_>,
        input: f64,
        travel: f64,
    ) -> impl Fn(f64) -> Option<Waypoint> + Copy {
        let side = near.corner.side;
        let length = *self.rod_lengths.get(side);
        let from = near.input;
        let travel_from = near.travel;
        let whole = input - from;
        let travel_by = travel - travel_from;
        move |share: f64| {
            let inner = self.drive.inner_balls(from + whole * share).ok()?;
            let travel = travel_from + travel_by * share;
            Some(Waypoint {
                demand: rod_at(&inner, side, length).demand(travel),
                speed: way_speed(inner.rates.get(side), whole, travel_by),
                rate: DemandRate {
                    travel: travel_by,
                    inner: inner.rates.get(side) * whole,
                },
            })
        }
    }

    /// Leads a corner's coordinates along the path from a known pose to the goal.
    fn lead(&self, near: &Known<'_>, input: f64, travel: f64) -> Result<Coordinates, SolveError> {
        let corner = self.corners.get(near.corner.side);
        let waypoint = self.waypoints(near, input, travel);
        let together = self.drive.together(near.input, input);
        let bounds = Bounds {
            end: together.share,
            ..Bounds::WHOLE
        };
        corner
            .follow(&near.corner.coordinates, waypoint, bounds)
            .map_err(|mut stall| {
                if stall.why == StallCause::End && !together.followed {
                    stall.why = StallCause::Steps;
                }
                let goal = if stall.why == StallCause::End {
                    None
                } else {
                    farthest(waypoint, stall.reached)
                };
                let edge = goal.and_then(|_| corner.edge(&stall, waypoint));
                match goal {
                    Some(goal) => corner.explain(&stall, edge.as_ref(), &goal.demand, input),
                    None => self
                        .drive_miss(near.input, input, stall.reached)
                        .map_or(corner.apart(travel, input), |miss| {
                            miss.at(input, stall.reached)
                        }),
                }
            })
    }

    /// The link of the drive that locks a path after a share, with what it misses by at the goal; or, if it could be put
    /// together again there or another link keeps it from being asked, with the most it misses by on the way.
    fn drive_miss(&self, from: f64, goal: f64, locks_after: f64) -> Option<DriveMiss> {
        let miss_at = |share: f64| self.drive.inner_balls(from + (goal - from) * share).err();
        let mut beyond = std::iter::successors(Some(SHORTEST_STEP), |step| Some(step * 2.0))
            .map(|step| locks_after + step)
            .take_while(|share| *share < 1.0)
            .chain(std::iter::once(1.0))
            .filter_map(miss_at);
        let first = beyond.next()?;
        let same = |miss: &DriveMiss| miss.member == first.member;
        let most = |one: DriveMiss, other: DriveMiss| {
            if other.difference.abs() > one.difference.abs() {
                other
            } else {
                one
            }
        };
        miss_at(1.0)
            .filter(same)
            .or_else(|| Some(beyond.filter(same).fold(first, most)))
    }

    /// First and second derivative of a knuckle's rotation by the input at a pose of this assembly, travel held.
    pub(crate) fn rotation_by_input(&self, pose: &AxlePose, side: Side) -> Option<Rotation> {
        let inner = self.drive.inner_balls(pose.input).ok()?;
        let bends = self.drive.inner_bends(pose.input).ok()?;
        self.corners.get(side).rotation_by_input(
            &pose.corners.get(side).coordinates,
            &rod_at(&inner, side, *self.rod_lengths.get(side)),
            bends.get(side),
            *pose.travel.get(side),
        )
    }

    /// The side whose corner has no travel, if there is one.
    pub(crate) fn side_without_travel(&self) -> Option<Side> {
        Side::BOTH
            .into_iter()
            .find(|side| !self.corners.get(*side).has_travel)
    }
}

/// The farthest waypoint of a path that exists, from a share at which one does: the goal, or the end of what the drive
/// can do.
fn farthest(waypoint: impl Fn(f64) -> Option<Waypoint>, from: f64) -> Option<Waypoint> {
    if let Some(goal) = waypoint(1.0) {
        return Some(goal);
    }
    let (mut there, mut beyond) = (from, 1.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (there + beyond);
        if waypoint(middle).is_some() {
            there = middle;
        } else {
            beyond = middle;
        }
    }
    waypoint(there)
}

/// Halvings of a path: down to rounding.
const HALVINGS: usize = 52;

/// How far the distance of a rod's balls may change with the knuckle unturned, mm, when the inner ball moves at a rate
/// by the input and the wheel by some travel. A ball on a knuckle moves little more than its wheel.
fn way_speed(inner_rate: &Vector, input_by: f64, travel_by: f64) -> f64 {
    inner_rate.norm() * input_by.abs() + 1.5 * travel_by.abs()
}

fn rod_at(inner: &InnerBalls, side: Side, length: f64) -> RodAt {
    RodAt {
        inner: *inner.points.get(side),
        inner_rate: *inner.rates.get(side),
        length,
    }
}

/// Shares of a path that differ by less count as the same: a mirror-symmetrical car locks on both sides at once.
const ALIKE: f64 = 1e-9;

/// Of two errors of one path, the one that is met first along it.
fn first_to_lock(left: SolveError, right: SolveError) -> SolveError {
    match (left, right) {
        (SolveError::OutOfReach(a), SolveError::OutOfReach(b)) if b.reached < a.reached - ALIKE => {
            right
        }
        _ => left,
    }
}

fn check_inputs(input: f64, travel: &Sides<f64>) -> Result<(), SolveError> {
    asked("the steering input", input)?;
    asked("the left wheel travel", travel.left)?;
    asked("the right wheel travel", travel.right)
}
