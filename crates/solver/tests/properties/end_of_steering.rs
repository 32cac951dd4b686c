//! The end of the steering told alone is where a fine sweep ends: at the input asked for, or before the lock that the sweep meets.

use proptest::prop_assert;
use steerloft_solver::drive::Drive;
use steerloft_solver::joints::JointLimits;
use steerloft_solver::sweep::{SweepRange, end_of_steering, steer_sweep};
use steerloft_solver::{Assembly, AxlePose, Sides, Vector};

use super::trial::{Trial, refused};
use super::{Checked, Outcome};

/// A millionth of a degree.
const ASIDE: f64 = 1e-6 * std::f64::consts::PI / 180.0;

/// How far from the end the wheels may point elsewhere, rad: next to a dead centre they turn by the root of what the input
/// is short of it.
const POINTS_ASIDE: f64 = 2e-4;

fn ends_as_a_sweep(trial: &Trial, joints: Option<JointLimits>) -> Checked {
    let assembly = match Assembly::within(&trial.axle, joints) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    let limits = assembly.joint_limits();
    if limits.is_some_and(|limits| limits.exceeded(assembly.static_pose()).is_some()) {
        return Ok(Outcome::Refused);
    }
    let unit = match trial.axle.drive {
        Drive::SwingArm(_) | Drive::TwinCrank(_) => 1.0,
        Drive::Slider(_) => 10.0 * trial.scale,
    };
    for end in [unit, -unit] {
        let range = SweepRange {
            from: -unit,
            to: unit,
            count: 201,
        };
        let sweep = steer_sweep(&assembly, range, Sides::both(0.0));
        let lock = if end > 0.0 {
            sweep.upper_lock
        } else {
            sweep.lower_lock
        };
        let Some(pose) = end_of_steering(&assembly, end) else {
            prop_assert!(lock.is_some(), "no end, and no lock before {end}");
            continue;
        };
        let at = lock.map_or(end, |lock| lock.at);
        prop_assert!(
            (pose.input - at).abs() <= ASIDE * unit,
            "ends at {} against {at}: {lock:?}",
            pose.input
        );
        let last = if end > 0.0 {
            sweep.poses.last()
        } else {
            sweep.poses.first()
        };
        let Some(swept) = last.and_then(|last| led(&assembly, last, pose.input)) else {
            continue;
        };
        for (one, other) in [
            (pose.corners.left, swept.corners.left),
            (pose.corners.right, swept.corners.right),
        ] {
            let apart = (one.spin_axis - other.spin_axis).norm();
            let most = if lock.is_some() { POINTS_ASIDE } else { ASIDE };
            prop_assert!(
                apart <= most,
                "wheels {apart} apart at {}: {lock:?}",
                pose.input
            );
        }
    }
    Ok(Outcome::Held)
}

fn led(assembly: &Assembly, last: &AxlePose, input: f64) -> Option<AxlePose> {
    assembly.pose_near(last, input, Sides::both(0.0)).ok()
}

fn free(trial: &Trial) -> Checked {
    ends_as_a_sweep(trial, None)
}

/// Ball joints of random limits: studs about upright in the knuckle, anyhow in what carries the inner balls.
fn limited(trial: &Trial) -> Checked {
    let lean = trial.input.sin();
    let limits = JointLimits {
        outer_studs: Sides::new(Vector::new(0.3 * lean, 0.2, 1.0), Vector::z()),
        inner_studs: Sides::both(Vector::new(lean.cos(), 0.1, lean)),
        most: 0.2 + 0.3 * lean.abs(),
    };
    ends_as_a_sweep(trial, Some(limits))
}

mod without_limits {
    for_every_kind!(super::free, share 0.4);
}

mod at_ball_joints {
    for_every_kind!(super::limited, share 0.3);
}
