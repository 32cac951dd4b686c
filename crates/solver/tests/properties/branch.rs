//! A pose is the one continuous with the reference pose: reached at one go it is the one reached in small steps,
//! and where the small steps meet a lock there is none.

use proptest::prop_assert;
use proptest::test_runner::TestCaseError;
use steerloft_solver::{Assembly, AxlePose, Sides, SolveError};

use super::trial::{Trial, refused};
use super::{Checked, Outcome};

/// Small steps on the way.
const STEPS: u32 = 60;

/// Follows the straight way from the static pose in small steps, each from the pose before.
fn by_small_steps(assembly: &Assembly, trial: &Trial) -> Result<AxlePose, SolveError> {
    let mut pose = *assembly.static_pose();
    for step in 1..=STEPS {
        let share = f64::from(step) / f64::from(STEPS);
        let travel = trial.travel.map(|travel| travel * share);
        pose = assembly.pose_near(&pose, trial.input * share, travel)?;
    }
    Ok(pose)
}

fn same_branch(trial: &Trial) -> Checked {
    let assembly = match Assembly::new(&trial.axle) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    let jump = assembly.pose(trial.input, trial.travel);
    match (jump, by_small_steps(&assembly, trial)) {
        (Ok(jump), Ok(stepped)) => {
            let apart = Sides::new(
                jump.corners.left.steering_arm - stepped.corners.left.steering_arm,
                jump.corners.right.steering_arm - stepped.corners.right.steering_arm,
            );
            let most = apart.left.norm().max(apart.right.norm());
            // Next to a lock a rounding of the residual is its square root in the pose.
            prop_assert!(most <= 1e-5 * trial.scale, "{most} mm apart");
            Ok(Outcome::Held)
        }
        (Err(error), Err(_)) => refused(&error),
        (Ok(_), Err(error)) => Err(TestCaseError::fail(format!(
            "jumped over a lock: {error:?}"
        ))),
        (Err(error), Ok(_)) => Err(TestCaseError::fail(format!("not reached: {error:?}"))),
    }
}

/// Far inputs, which may lie beyond one lock and another.
fn far_away(trial: &Trial) -> Checked {
    same_branch(&Trial {
        input: trial.input * 5.0,
        ..trial.clone()
    })
}

mod near {
    for_every_kind!(super::same_branch, share 0.7);
}

mod far {
    use crate::geometry::Kind;

    #[test]
    fn fixed_kingpin() {
        crate::hold(Kind::FixedKingpin, 0.1, super::far_away);
    }

    #[test]
    fn sliding_kingpin() {
        crate::hold(Kind::SlidingKingpin, 0.1, super::far_away);
    }

    #[test]
    fn double_wishbone() {
        crate::hold(Kind::DoubleWishbone, 0.1, super::far_away);
    }

    #[test]
    fn strut() {
        crate::hold(Kind::Strut, 0.1, super::far_away);
    }
}
