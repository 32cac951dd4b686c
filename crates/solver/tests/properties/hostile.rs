//! Whatever numbers are given, the answer is a pose of numbers or an error.

use proptest::prop_assert;
use proptest::strategy::Strategy;
use proptest::test_runner::{Config, RngSeed, TestCaseError, TestRunner};
use steerloft_solver::axle::FrontAxle;
use steerloft_solver::drive::Drive;
use steerloft_solver::sweep::{SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Assembly, Sides, Vector};

use super::geometry::{Kind, scaled};
use super::numbers::numbers;
use super::trial::{Trial, trials};
use super::words::{all_numbers, in_words};

/// Numbers that are no measure of a car.
const HOSTILE: [f64; 14] = [
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    0.0,
    -0.0,
    f64::MAX,
    f64::MIN,
    f64::MIN_POSITIVE,
    5e-324,
    1e300,
    -1e18,
    1e6,
    1e-9,
    -1.0,
];

/// Asks everything of an axle; nothing may panic, and what is answered must be numbers.
fn answers_in_numbers(
    axle: &FrontAxle,
    input: f64,
    travel: Sides<f64>,
) -> Result<(), TestCaseError> {
    let Ok(assembly) = Assembly::new(axle) else {
        return Ok(());
    };
    let words = in_words(&assembly, assembly.static_pose());
    prop_assert!(all_numbers(&words), "static: {words}");
    if let Ok(pose) = assembly.pose(input, travel) {
        let words = in_words(&assembly, &pose);
        prop_assert!(all_numbers(&words), "posed: {words}");
    }
    if let Ok(pose) = assembly.pose_on_road(assembly.static_pose(), input, &axle.road) {
        let words = in_words(&assembly, &pose);
        prop_assert!(all_numbers(&words), "on the road: {words}");
    }
    let range = SweepRange {
        from: -input,
        to: input,
        count: 3,
    };
    let steered = steer_sweep(&assembly, range, travel);
    let bumped = bump_sweep(&assembly, range, 0.0);
    for sweep in [Some(steered), bumped.ok()].into_iter().flatten() {
        for lock in sweep.locks() {
            prop_assert!(!lock.at.is_nan(), "{lock:?}");
        }
        for pose in &sweep.poses {
            let words = format!("{pose:?}");
            prop_assert!(all_numbers(&words), "swept: {words}");
        }
    }
    Ok(())
}

/// Tries axles of one kind with something done to them.
#[track_caller]
fn survive<S: Strategy<Value = (Trial, u32, u32, u32)>>(
    strategy: &S,
    harm: impl Fn(&mut Trial, usize, usize, usize),
) {
    let config = Config {
        cases: super::cases() / 4,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(0x0BAD),
        ..Config::default()
    };
    let result = TestRunner::new(config).run(strategy, |(mut trial, first, second, third)| {
        harm(&mut trial, first as usize, second as usize, third as usize);
        answers_in_numbers(&trial.axle, trial.input, trial.travel)
    });
    if let Err(error) = result {
        panic!("{error}");
    }
}

fn harmed(kind: Kind) -> impl Strategy<Value = (Trial, u32, u32, u32)> {
    (trials(kind), 0..1000_u32, 0..1000_u32, 0..1000_u32)
}

const KINDS: [Kind; 5] = [
    Kind::FixedKingpin,
    Kind::SlidingKingpin,
    Kind::SwingingUpperArm,
    Kind::DoubleWishbone,
    Kind::Strut,
];

/// One number of the axle is no measure of a car.
#[test]
fn a_hostile_number() {
    for kind in KINDS {
        survive(&harmed(kind), |trial, which, what, _| {
            let mut numbers = numbers(&mut trial.axle);
            let which = which % numbers.len();
            *numbers[which] = HOSTILE[what % HOSTILE.len()];
        });
    }
}

/// Two points of the axle coincide, coordinate by coordinate as they are listed.
#[test]
fn coincident_points() {
    for kind in KINDS {
        survive(&harmed(kind), |trial, from, to, _| {
            let mut numbers = numbers(&mut trial.axle);
            // Six plain numbers come first, then the coordinates of points.
            let points = (numbers.len() - 6) / 3;
            let (from, to) = (6 + 3 * (from % points), 6 + 3 * (to % points));
            for axis in 0..3 {
                *numbers[to + axis] = *numbers[from + axis];
            }
        });
    }
}

/// Inputs and travels that no car is asked for.
#[test]
fn hostile_poses() {
    for kind in KINDS {
        survive(&harmed(kind), |trial, input, left, right| {
            trial.input = HOSTILE[input % HOSTILE.len()];
            if trial.axle.corners.left.suspension.has_travel() {
                trial.travel = Sides::new(
                    HOSTILE[left % HOSTILE.len()],
                    HOSTILE[right % HOSTILE.len()],
                );
            }
        });
    }
}

/// Cars from a thousandth of a pan car's size to a hundred thousand times it.
#[test]
fn extreme_sizes() {
    for kind in KINDS {
        survive(&harmed(kind), |trial, size, _, _| {
            let exponent = f64::from(u32::try_from(size).unwrap()) / 1000.0 * 8.0 - 3.0;
            trial.axle = scaled(&trial.axle, 10.0_f64.powf(exponent) / trial.scale);
        });
    }
}

/// Two axes of the drive and the kingpins lie parallel, whichever way.
#[test]
fn parallel_axes() {
    for kind in KINDS {
        survive(&harmed(kind), |trial, way, side, _| {
            let knuckle = &trial.axle.corners.left.knuckle;
            let kingpin = knuckle.kingpin_upper - knuckle.kingpin_lower;
            let direction = [kingpin, Vector::x(), Vector::y(), Vector::z(), -kingpin][way % 5];
            match &mut trial.axle.drive {
                Drive::SwingArm(drive) => drive.axis_direction = direction,
                Drive::Slider(drive) => drive.direction = direction,
                Drive::TwinCrank(drive) if side % 2 == 0 => {
                    drive.cranks.left.axis_direction = direction;
                    drive.servo.axis_direction = direction;
                }
                Drive::TwinCrank(drive) => drive.cranks.right.axis_direction = direction,
            }
        });
    }
}
