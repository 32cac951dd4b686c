//! The end of the steering alone: what a sweep of two poses would give, with less work on the way.

use super::limits::{Limits, Stand};
use super::{Lock, Swept};
use crate::assembly::Assembly;
use crate::frame::{Side, Sides};
use crate::pose::{AxlePose, CornerPose};

/// Turn of a knuckle in one stride, rad: little enough that the next pose is closed from where the known motions lead.
const STRIDE: f64 = 0.28;

/// Turn of a knuckle in one stride towards a dead centre, rad: little enough that nothing passes unseen between.
const SHORT_STRIDE: f64 = 0.16;

/// How many times its rod's reserve the inner ball may move in one stride: the next pose has a reserve too, though a smaller one.
const OF_RESERVE: f64 = 1.6;

/// Most strides that are left to an end. Whoever needs more is near a dead centre, or has far to go and is led whole.
const MOST_STRIDES: f64 = 8.0;

/// How close to a lock, as a share of the way there, the last pose is taken.
const SHORT_OF_LOCK: f64 = 1e-9;

/// The pose at a steering input, travel held at 0, or a hair before the lock or limit that a sweep from rest to that input
/// meets first. Nothing where rounding leaves no pose before a lock.
#[must_use]
pub fn end_of_steering(assembly: &Assembly, input: f64) -> Option<AxlePose> {
    let way = Way {
        assembly,
        limits: Limits {
            joints: assembly.joint_limits(),
            swept: Swept::Input,
            pose: &|near: &AxlePose, input| assembly.pose_near(near, input, Sides::both(0.0)),
        },
        end: input,
    };
    let rest = Stand {
        pose: *assembly.static_pose(),
        at: 0.0,
    };
    way.walk(&rest)
}

/// The way from rest to an end of the steering.
struct Way<'a, P> {
    assembly: &'a Assembly,
    limits: Limits<'a, P>,
    end: f64,
}

impl<P> Way<'_, P>
where
    P: Fn(&AxlePose, f64) -> Result<AxlePose, crate::SolveError>,
{
    /// Goes to the end in strides. Limits are looked for on the whole way at once where that can be done, else stride by
    /// stride.
    fn walk(&self, rest: &Stand) -> Option<AxlePose> {
        let mut last = *rest;
        while self.stride(&mut last) {}
        if self.limits.is_clear(rest, &last) {
            return self.ended(&last);
        }
        let (mut here, mut next) = (*rest, *rest);
        while self.stride(&mut next) {
            match self.limits.step_to(&here, &next.pose) {
                Ok(_) => here = next,
                Err(lock) => return self.before(&here, &lock),
            }
        }
        self.ended(&here)
    }

    /// The pose at the end from the last one that strides lead to.
    fn ended(&self, here: &Stand) -> Option<AxlePose> {
        if here.at.to_bits() == self.end.to_bits() {
            return Some(here.pose);
        }
        self.last(here)
    }

    /// Goes a stride nearer to the end; whether there was one that could be told at once.
    fn stride(&self, here: &mut Stand) -> bool {
        if here.at.to_bits() == self.end.to_bits() {
            return false;
        }
        let strides = self.strides_left(&here.pose);
        // Put so that not-a-number is led whole.
        let few = strides <= MOST_STRIDES;
        if !few {
            return false;
        }
        let to = if strides > 1.0 {
            here.at + (self.end - here.at) / strides
        } else {
            self.end
        };
        let Some(pose) = self.pose_at(here, to) else {
            return false;
        };
        *here = Stand { pose, at: to };
        true
    }

    /// How many strides are left to the end, as far as can be told from here.
    fn strides_left(&self, from: &AxlePose) -> f64 {
        let left = (self.end - from.input).abs();
        let strides = |side: Side| {
            let corner = from.corners.get(side);
            let turn = corner.by_input.steering.abs() * left;
            let way = from.drive.rod_inner_rate.get(side).norm() * left;
            (turn / STRIDE).max(way / (OF_RESERVE * corner.reserve))
        };
        strides(Side::Left).max(strides(Side::Right)).ceil()
    }

    /// The pose at the end, or before what locks first, from a pose from which no stride leads on.
    fn last(&self, stand: &Stand) -> Option<AxlePose> {
        let mut here = *stand;
        let next = if let Some(next) = self.to_dead_centre(&mut here) {
            next
        } else {
            here = *stand;
            self.limits.step(stand, self.end)
        };
        match next {
            Ok(last) => Some(last.pose),
            Err(lock) => self.before(&here, &lock),
        }
    }

    /// The pose at the end of a stride, where it can be told at once.
    fn pose_at(&self, from: &Stand, to: f64) -> Option<AxlePose> {
        let drive = self.assembly.drive_at(to)?;
        let corner = |side| self.assembly.corner_in_reach(&from.pose, side, &drive, to);
        Some(AxlePose {
            input: to,
            travel: from.pose.travel,
            corners: Sides::new(corner(Side::Left)?, corner(Side::Right)?),
            drive,
        })
    }

    /// Goes on to a hair before the dead centre of a rod that is met before the end, or to the limit on the way there; nothing
    /// where no dead centre is found.
    fn to_dead_centre(&self, here: &mut Stand) -> Option<Result<Stand, Lock>> {
        let assembly = self.assembly;
        let way = (self.end - here.at).abs();
        let (side, centre) = Side::BOTH
            .into_iter()
            .filter_map(|side| Some((side, assembly.dead_centre(&here.pose, side, self.end)?)))
            .filter(|(_, centre)| (centre.input - here.at).abs() <= way)
            .min_by(|(_, a), (_, b)| a.input.abs().total_cmp(&b.input.abs()))?;
        let from = here.pose.corners.get(side).coordinates.steering;
        let turn = centre.turn() - from;
        let mut left = (turn.abs() / SHORT_STRIDE).ceil();
        while left > 1.0 {
            let now = here.pose.corners.get(side).coordinates.steering;
            let by = (centre.turn() - now) / left;
            let (input, corner) = assembly.corner_turned(&here.pose, side, by)?;
            let pose = self.beside(here, input, &corner)?;
            match self.limits.step_to(here, &pose) {
                Ok(next) => *here = next,
                Err(lock) => return Some(Err(lock)),
            }
            left -= 1.0;
        }
        let input = centre.input * (1.0 - SHORT_OF_LOCK);
        let corner = assembly.corner_before(&here.pose, &centre, side, input)?;
        let last = self.beside(here, input, &corner)?;
        Some(self.limits.step_to(here, &last))
    }

    /// The pose with a corner that is known.
    fn beside(&self, from: &Stand, input: f64, corner: &CornerPose) -> Option<AxlePose> {
        let side = corner.side;
        let drive = self.assembly.drive_at(input)?;
        let other = (self.assembly).corner_led(&from.pose, side.other(), &drive, input)?;
        Some(AxlePose {
            input,
            travel: from.pose.travel,
            drive,
            corners: match side {
                Side::Left => Sides::new(*corner, other),
                Side::Right => Sides::new(other, *corner),
            },
        })
    }

    fn before(&self, stand: &Stand, lock: &Lock) -> Option<AxlePose> {
        let input = lock.at * (1.0 - SHORT_OF_LOCK);
        (self.limits.pose)(&stand.pose, input).ok()
    }
}
