//! Sweeps stop exactly at their locks, which do not hang on how finely the sweep steps; and what is missing beyond
//! a lock begins at nothing and grows.

use proptest::prop_assert;
use proptest::test_runner::TestCaseError;
use steerloft_solver::drive::Drive;
use steerloft_solver::error::{Member, OutOfReach};
use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::suspension::Suspension;
use steerloft_solver::sweep::{Lock, LockKind, Sweep, SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Assembly, AxlePose, Sides, SolveError};

use super::trial::{Trial, refused};
use super::{Checked, Outcome};

/// A millionth of a degree.
const ASIDE: f64 = 1e-6 * std::f64::consts::PI / 180.0;

/// What a swept value is worth in rad: a displacement counts against a lever of usual length.
fn unit(trial: &Trial, steering: bool) -> f64 {
    match trial.axle.drive {
        Drive::SwingArm(_) | Drive::TwinCrank(_) if steering => 1.0,
        _ => 10.0 * trial.scale,
    }
}

/// What is missing at a swept value, or nothing where there is a pose.
fn missing(
    pose: &impl Fn(&AxlePose, f64) -> Result<AxlePose, SolveError>,
    from: &AxlePose,
    value: f64,
) -> Result<Option<OutOfReach>, TestCaseError> {
    match pose(from, value) {
        Ok(_) => Ok(None),
        Err(SolveError::OutOfReach(miss)) => {
            prop_assert!(
                miss.shortfall > 0.0 && miss.shortfall.is_finite(),
                "{miss:?}"
            );
            Ok(Some(miss))
        }
        Err(error) => Err(TestCaseError::fail(format!("{error:?}"))),
    }
}

/// The lock is where poses end: one exists just inside and none just outside, and there what is missing is next to
/// nothing and grows.
fn exact(
    lock: &Lock,
    last: &AxlePose,
    trial: &Trial,
    unit: f64,
    pose: impl Fn(&AxlePose, f64) -> Result<AxlePose, SolveError>,
) -> Result<(), TestCaseError> {
    let outward = lock.at.signum() * unit;
    let inside = pose(last, lock.at - ASIDE * outward);
    if matches!(inside, Err(SolveError::Degenerate { .. })) {
        // The wheel lies flat before the lock, between two poses of the sweep.
        return Ok(());
    }
    prop_assert!(inside.is_ok(), "no pose just inside {lock:?}: {inside:?}");
    let last = inside.map_err(|error| TestCaseError::fail(format!("{error}")))?;
    if !shows_dead_centre(lock, &last) {
        return Ok(());
    }
    let mut before: Option<OutOfReach> = None;
    for aside in [ASIDE, 1e-6] {
        let missing = missing(&pose, &last, lock.at + aside * outward)?;
        let Some(missing) = missing else {
            return Err(TestCaseError::fail(format!(
                "a pose {aside} rad beyond {lock:?}"
            )));
        };
        let most = 1e3 * aside * 10.0 * trial.scale;
        prop_assert!(
            missing.shortfall <= most,
            "{missing:?} at {aside} rad beyond {lock:?}"
        );
        // Next to one lock another member may lock as well.
        if let Some(before) = before.filter(|before| before.member == missing.member) {
            prop_assert!(
                missing.shortfall > before.shortfall,
                "{missing:?} after {before:?}"
            );
        }
        before = Some(missing);
    }
    Ok(())
}

/// Next to its dead centre a rod hardly transmits. Where an arm turns back it may: that end of a sweep is known to some
/// thousandths of a mm only.
fn shows_dead_centre(lock: &Lock, inside: &AxlePose) -> bool {
    match lock.cause {
        SolveError::OutOfReach(miss) if miss.member == Member::TieRod => {
            outer_transmission(inside.corners.get(miss.side)).share < 0.02
        }
        _ => true,
    }
}

/// Whether a lock is one that must be found exactly: any dead centre, but for a rod's on wishbones, where an arm that
/// turns back may be taken for one.
fn must_be_exact(lock: &Lock, trial: &Trial) -> bool {
    let SolveError::OutOfReach(miss) = lock.cause else {
        return false;
    };
    let wishbones = matches!(
        trial.axle.corners.left.suspension,
        Suspension::DoubleWishbone { .. }
    );
    lock.kind == LockKind::DeadCentre && !(wishbones && miss.member == Member::TieRod)
}

/// How well a lock's place is known. Wishbones have more than one way of ending a sweep, the lower arm's turning back
/// among them.
fn tolerance(trial: &Trial, unit: f64) -> f64 {
    match trial.axle.corners.left.suspension {
        Suspension::DoubleWishbone { .. } => 1e-4 * unit,
        _ => ASIDE * unit,
    }
}

/// A lock of reach, rather than the limit at which a wheel counts as lying flat, which is looked for at the poses of
/// a sweep only.
fn of_reach(lock: Option<Lock>) -> Option<Lock> {
    lock.filter(|lock| matches!(lock.cause, SolveError::OutOfReach(_)))
}

fn lies_flat(lock: Option<Lock>) -> bool {
    lock.is_some_and(|lock| matches!(lock.cause, SolveError::Degenerate { .. }))
}

fn steering_stops_at_locks(trial: &Trial) -> Checked {
    let assembly = match Assembly::new(&trial.axle) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    let unit = unit(trial, true);
    let most = std::f64::consts::PI * unit;
    let sweep = |count| {
        let range = SweepRange {
            from: -most,
            to: most,
            count,
        };
        steer_sweep(&assembly, range, Sides::both(0.0))
    };
    let (coarse, fine) = (sweep(13), sweep(145));
    same_locks(&coarse, &fine, tolerance(trial, unit), trial.scale)?;
    let pose = |near: &AxlePose, input| assembly.pose_near(near, input, Sides::both(0.0));
    locks_are_exact(&assembly, &fine, trial, unit, pose)
}

/// In travel a lock is found as exactly on a fixed steering axis. Arms that turn back, or an axis that leans too far,
/// end a sweep too, and where they do is known to some thousandths of a mm.
fn travel_stops_at_locks(trial: &Trial) -> Checked {
    let assembly = match Assembly::new(&trial.axle) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    let unit = unit(trial, false);
    let sweep = |count| {
        let range = SweepRange {
            from: -unit,
            to: unit,
            count,
        };
        bump_sweep(&assembly, range, 0.0)
    };
    let (Ok(coarse), Ok(fine)) = (sweep(13), sweep(145)) else {
        return Ok(Outcome::Refused);
    };
    if trial.axle.corners.left.suspension != Suspension::SlidingKingpin {
        same_locks(&coarse, &fine, tolerance(trial, unit), trial.scale)?;
        let met = fine.locks().next().is_some();
        return Ok(if met { Outcome::Held } else { Outcome::Refused });
    }
    same_locks(&coarse, &fine, tolerance(trial, unit), trial.scale)?;
    let pose = |near: &AxlePose, travel| assembly.pose_near(near, 0.0, Sides::both(travel));
    locks_are_exact(&assembly, &fine, trial, unit, pose)
}

fn locks_are_exact(
    assembly: &Assembly,
    sweep: &Sweep,
    trial: &Trial,
    unit: f64,
    pose: impl Fn(&AxlePose, f64) -> Result<AxlePose, SolveError>,
) -> Checked {
    let ends = [
        (sweep.lower_lock, sweep.poses.first()),
        (sweep.upper_lock, sweep.poses.last()),
    ];
    let mut outcome = Outcome::Refused;
    for (lock, last) in ends {
        let dead_centre = of_reach(lock).filter(|lock| must_be_exact(lock, trial));
        if let Some(lock) = dead_centre {
            exact(
                &lock,
                last.unwrap_or(assembly.static_pose()),
                trial,
                unit,
                &pose,
            )?;
            outcome = Outcome::Held;
        }
    }
    Ok(outcome)
}

fn same_locks(
    coarse: &Sweep,
    fine: &Sweep,
    tolerance: f64,
    scale: f64,
) -> Result<(), TestCaseError> {
    let pairs = [
        (coarse.lower_lock, fine.lower_lock),
        (coarse.upper_lock, fine.upper_lock),
    ];
    for pair in pairs {
        if lies_flat(pair.0) || lies_flat(pair.1) {
            continue;
        }
        match (of_reach(pair.0), of_reach(pair.1)) {
            (Some(one), Some(other)) => {
                let off = (one.at - other.at).abs();
                // Where an arm turns back, its angle no longer tells the pose.
                let turns_back = LockKind::OutOfReach;
                let tolerance = if one.kind == turns_back || other.kind == turns_back {
                    5e-3 * scale
                } else {
                    tolerance
                };
                prop_assert!(
                    off <= tolerance,
                    "lock at {} by coarse steps, at {} by fine",
                    one.at,
                    other.at
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

/// Held where the steering axis is fixed in the chassis. Where an arm turns back, or its kingpin leans past the limit,
/// a sweep's end is known only as finely as the sweep steps.
mod in_steering {
    use crate::geometry::Kind;

    #[test]
    fn fixed_kingpin() {
        crate::hold(Kind::FixedKingpin, 0.7, super::steering_stops_at_locks);
    }

    #[test]
    fn sliding_kingpin() {
        crate::hold(Kind::SlidingKingpin, 0.7, super::steering_stops_at_locks);
    }
}

/// As in steering.
mod in_travel {
    use crate::geometry::Kind;

    #[test]
    fn sliding_kingpin() {
        crate::hold(Kind::SlidingKingpin, 0.02, super::travel_stops_at_locks);
    }
}
