//! Sweeps stop exactly at their locks, which do not hang on how finely the sweep steps; and on a fixed
//! steering axis what is missing beyond a lock begins at nothing and grows.

use proptest::prop_assert;
use proptest::test_runner::TestCaseError;
use steerloft_solver::drive::Drive;
use steerloft_solver::error::{Fault, Joint, Member, OutOfReach};
use steerloft_solver::frame::Side;
use steerloft_solver::joints::JointLimits;
use steerloft_solver::suspension::Suspension;
use steerloft_solver::sweep::{Lock, Sweep, SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Assembly, AxlePose, Sides, SolveError, Vector};

use super::trial::{Trial, refused};
use super::{Checked, Outcome};

/// A millionth of a degree.
const ASIDE: f64 = 1e-6 * std::f64::consts::PI / 180.0;

/// What a swept value is worth in rad: a displacement counts against a lever of usual length.
fn unit(trial: &Trial, swept: Swept) -> f64 {
    match trial.axle.drive {
        Drive::SwingArm(_) | Drive::TwinCrank(_) if swept == Swept::Input => 1.0,
        _ => 10.0 * trial.scale,
    }
}

/// What a sweep sweeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Swept {
    Input,
    Travel,
}

impl Swept {
    fn sweep(self, assembly: &Assembly, most: f64, count: usize) -> Result<Sweep, SolveError> {
        let range = SweepRange {
            from: -most,
            to: most,
            count,
        };
        match self {
            Self::Input => Ok(steer_sweep(assembly, range, Sides::both(0.0))),
            Self::Travel => bump_sweep(assembly, range, 0.0),
        }
    }

    fn pose(
        self,
        assembly: &Assembly,
        near: &AxlePose,
        value: f64,
    ) -> Result<AxlePose, SolveError> {
        match self {
            Self::Input => assembly.pose_near(near, value, Sides::both(0.0)),
            Self::Travel => assembly.pose_near(near, 0.0, Sides::both(value)),
        }
    }
}

/// What locks: the member and its side, the joint, or the limit of a wheel or steering axis.
#[derive(Debug, PartialEq)]
enum What {
    Member(Member, Side),
    Joint(Joint, Side),
    Fault(Fault, Option<Side>),
}

fn what(lock: &Lock) -> Result<What, TestCaseError> {
    match lock.cause {
        SolveError::OutOfReach(miss) => Ok(What::Member(miss.member, miss.side)),
        SolveError::JointLimit(limit) => Ok(What::Joint(limit.joint, limit.side)),
        SolveError::Degenerate { side, fault } => Ok(What::Fault(fault, side)),
        error => Err(TestCaseError::fail(format!("a lock by {error:?}"))),
    }
}

/// A coarse and a fine sweep meet the same locks.
fn same_locks(coarse: &Sweep, fine: &Sweep, tolerance: f64) -> Result<(), TestCaseError> {
    let pairs = [
        (coarse.lower_lock, fine.lower_lock),
        (coarse.upper_lock, fine.upper_lock),
    ];
    for pair in pairs {
        match pair {
            (Some(one), Some(other)) => {
                prop_assert!(
                    (one.at - other.at).abs() <= tolerance
                        && one.kind == other.kind
                        && what(&one)? == what(&other)?,
                    "{one:?} by coarse steps, {other:?} by fine"
                );
            }
            (None, None) => {}
            (coarse, fine) => {
                return Err(TestCaseError::fail(format!(
                    "{coarse:?} by coarse steps, {fine:?} by fine"
                )));
            }
        }
    }
    Ok(())
}

fn wishbones(trial: &Trial) -> bool {
    matches!(
        trial.axle.corners.left.suspension,
        Suspension::DoubleWishbone { .. }
    )
}

/// Whether the steering axis stands still in the chassis. Elsewhere what is missing just beyond a lock is a measure of
/// its own, taken with the knuckle held, and need not begin at nothing.
fn fixed_axis(trial: &Trial) -> bool {
    matches!(
        trial.axle.corners.left.suspension,
        Suspension::FixedKingpin | Suspension::SlidingKingpin
    )
}

/// The lock is where poses end: one exists just inside and none just outside, and there, on a fixed steering axis, what
/// is missing is next to nothing and grows.
fn exact(
    lock: &Lock,
    assembly: &Assembly,
    last: &AxlePose,
    trial: &Trial,
    swept: Swept,
) -> Result<(), TestCaseError> {
    let unit = unit(trial, swept);
    let outward = lock.at.signum() * unit;
    let lines_up = wishbones(trial)
        && matches!(lock.cause, SolveError::OutOfReach(miss) if miss.member == Member::Suspension);
    // Next to a wishbone that lines up with its kingpin rounding leaves no pose; its lock's place is exact all the same.
    let mut last = *last;
    if !lines_up {
        let inside = swept.pose(assembly, &last, lock.at - ASIDE * outward);
        prop_assert!(inside.is_ok(), "no pose just inside {lock:?}: {inside:?}");
        last = inside.map_err(|error| TestCaseError::fail(format!("{error}")))?;
    }
    let mut before: Option<OutOfReach> = None;
    for aside in [ASIDE, 1e-6] {
        match swept.pose(assembly, &last, lock.at + aside * outward) {
            Ok(_) => {
                return Err(TestCaseError::fail(format!(
                    "a pose {aside} rad beyond {lock:?}"
                )));
            }
            Err(SolveError::OutOfReach(miss)) if fixed_axis(trial) => {
                grows(&miss, before, aside * 10.0 * trial.scale, lock)?;
                before = Some(miss);
            }
            Err(
                SolveError::OutOfReach(_)
                | SolveError::Degenerate {
                    fault: Fault::WheelLiesFlat,
                    ..
                },
            ) => {}
            Err(error) => return Err(TestCaseError::fail(format!("{error:?}"))),
        }
    }
    Ok(())
}

fn grows(
    miss: &OutOfReach,
    before: Option<OutOfReach>,
    aside: f64,
    lock: &Lock,
) -> Result<(), TestCaseError> {
    prop_assert!(
        miss.shortfall > 0.0 && miss.shortfall <= 1e3 * aside,
        "{miss:?} at {aside} mm beyond {lock:?}"
    );
    // Next to one lock another member may lock as well.
    if let Some(before) = before.filter(|before| before.member == miss.member) {
        prop_assert!(
            miss.shortfall > before.shortfall,
            "{miss:?} after {before:?} beyond {lock:?}"
        );
    }
    Ok(())
}

fn stops_at_locks(trial: &Trial, swept: Swept) -> Checked {
    let assembly = match Assembly::new(&trial.axle) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    let unit = unit(trial, swept);
    let most = match swept {
        Swept::Input => std::f64::consts::PI * unit,
        Swept::Travel => 2.0 * unit,
    };
    let (Ok(coarse), Ok(fine)) = (
        swept.sweep(&assembly, most, 9),
        swept.sweep(&assembly, most, 61),
    ) else {
        return Ok(Outcome::Refused);
    };
    same_locks(&coarse, &fine, ASIDE * unit)?;
    let ends = [
        (fine.lower_lock, fine.poses.first()),
        (fine.upper_lock, fine.poses.last()),
    ];
    let mut outcome = Outcome::Refused;
    for (lock, last) in ends {
        if let Some(lock) = lock {
            let last = last.unwrap_or(assembly.static_pose());
            exact(&lock, &assembly, last, trial, swept)?;
            outcome = Outcome::Held;
        }
    }
    Ok(outcome)
}

mod in_steering {
    fn stops(trial: &super::Trial) -> super::Checked {
        super::stops_at_locks(trial, super::Swept::Input)
    }

    for_every_kind!(stops, share 0.7);
}

mod in_travel {
    use crate::geometry::Kind;

    fn stops(trial: &super::Trial) -> super::Checked {
        super::stops_at_locks(trial, super::Swept::Travel)
    }

    #[test]
    fn sliding_kingpin() {
        crate::hold(Kind::SlidingKingpin, 0.2, stops);
    }

    #[test]
    fn swinging_upper_arm() {
        crate::hold(Kind::SwingingUpperArm, 0.5, stops);
    }

    #[test]
    fn double_wishbone() {
        crate::hold(Kind::DoubleWishbone, 0.5, stops);
    }

    #[test]
    fn strut() {
        crate::hold(Kind::Strut, 0.4, stops);
    }
}

/// Ball joints of random limits: studs about upright in the knuckle, anyhow in what carries the inner balls.
fn limited(trial: &Trial) -> Checked {
    let free = match Assembly::new(&trial.axle) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    // Numbers of the trial that have no bearing on the sweeps serve for the limits.
    let lean = trial.input.sin();
    let assembly = free.with_joint_limits(JointLimits {
        outer_studs: Sides::new(Vector::new(0.3 * lean, 0.2, 1.0), Vector::z()),
        inner_studs: Sides::both(Vector::new(lean.cos(), 0.1, lean)),
        most: 0.2 + 0.3 * lean.abs(),
    });
    if assembly
        .joint_limits()
        .is_some_and(|limits| limits.exceeded(assembly.static_pose()).is_some())
    {
        return Ok(Outcome::Refused);
    }
    for swept in [Swept::Input, Swept::Travel] {
        let most = unit(trial, swept);
        let (Ok(coarse), Ok(fine)) = (
            swept.sweep(&assembly, most, 5),
            swept.sweep(&assembly, most, 151),
        ) else {
            continue;
        };
        same_locks(&coarse, &fine, ASIDE * most)?;
        for lock in fine.locks() {
            let SolveError::JointLimit(limit) = lock.cause else {
                continue;
            };
            prop_assert!(
                (limit.misalignment - limit.most).abs() <= 1e-9,
                "{limit:?} at its limit"
            );
        }
    }
    Ok(Outcome::Held)
}

mod at_ball_joints {
    for_every_kind!(super::limited, share 0.3);
}
