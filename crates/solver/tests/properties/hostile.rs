//! Whatever numbers are given, the answer is a pose of numbers or an error.

use proptest::prop_assert;
use proptest::strategy::Strategy;
use proptest::test_runner::{Config, RngSeed, TestCaseError, TestRunner};
use steerloft_solver::axle::{Corner, FrontAxle, Rod};
use steerloft_solver::drive::{Crank, Drive};
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::sweep::{SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Assembly, Point, Sides, Vector};

use super::figures::all_numbers;
use super::geometry::{Kind, scaled};
use super::trial::{Trial, trials};

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

/// Every number of an axle, to change.
fn numbers(axle: &mut FrontAxle) -> Vec<&mut f64> {
    let mut numbers: Vec<&mut f64> = vec![
        &mut axle.wheelbase,
        &mut axle.road.ride_height,
        &mut axle.road.pitch,
        &mut axle.road.roll,
    ];
    for rod in [&mut axle.rods.left, &mut axle.rods.right] {
        numbers.push(match rod {
            Rod::HoldToe(toe) => toe,
            Rod::FixedLength(length) => length,
        });
    }
    for corner in [&mut axle.corners.left, &mut axle.corners.right] {
        of_corner(corner, &mut numbers);
    }
    of_drive(&mut axle.drive, &mut numbers);
    numbers
}

fn of_corner<'a>(corner: &'a mut Corner, numbers: &mut Vec<&'a mut f64>) {
    let knuckle = &mut corner.knuckle;
    for point in [
        &mut knuckle.wheel_centre,
        &mut knuckle.kingpin_lower,
        &mut knuckle.kingpin_upper,
        &mut knuckle.steering_arm,
    ] {
        numbers.extend(point.iter_mut());
    }
    numbers.extend(knuckle.spin_axis.iter_mut());
    numbers.push(&mut knuckle.tyre_radius);
    numbers.push(&mut knuckle.tyre_width);
    match &mut corner.suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => {}
        Suspension::SwingingUpperArm(arm) => of_arm(arm, numbers),
        Suspension::DoubleWishbone { lower, upper } => {
            of_arm(lower, numbers);
            of_arm(upper, numbers);
        }
        Suspension::Strut {
            lower,
            slide_direction,
        } => {
            of_arm(lower, numbers);
            numbers.extend(slide_direction.iter_mut());
        }
    }
}

fn of_arm<'a>(arm: &'a mut Arm, numbers: &mut Vec<&'a mut f64>) {
    for hinge in &mut arm.hinge {
        numbers.extend(hinge.iter_mut());
    }
    numbers.extend(arm.ball.iter_mut());
}

fn of_pair<'a>(points: &'a mut Sides<Point>, numbers: &mut Vec<&'a mut f64>) {
    numbers.extend(points.left.iter_mut());
    numbers.extend(points.right.iter_mut());
}

fn of_crank<'a>(crank: &'a mut Crank, numbers: &mut Vec<&'a mut f64>) {
    numbers.extend(crank.axis_point.iter_mut());
    numbers.extend(crank.axis_direction.iter_mut());
}

fn of_drive<'a>(drive: &'a mut Drive, numbers: &mut Vec<&'a mut f64>) {
    match drive {
        Drive::SwingArm(drive) => {
            numbers.extend(drive.axis_point.iter_mut());
            numbers.extend(drive.axis_direction.iter_mut());
            of_pair(&mut drive.rod_inner, numbers);
        }
        Drive::Slider(drive) => {
            numbers.extend(drive.direction.iter_mut());
            of_pair(&mut drive.rod_inner, numbers);
        }
        Drive::TwinCrank(drive) => {
            of_crank(&mut drive.cranks.left, numbers);
            of_crank(&mut drive.cranks.right, numbers);
            of_crank(&mut drive.servo, numbers);
            of_pair(&mut drive.cross_balls, numbers);
            of_pair(&mut drive.rod_inner, numbers);
            numbers.extend(drive.drag_servo.iter_mut());
            numbers.extend(drive.drag_crank.iter_mut());
            numbers.extend(drive.drag_length.iter_mut());
            numbers.extend(drive.cross_length.iter_mut());
        }
    }
}

/// Asks everything of an axle; nothing may panic, and what is answered must be numbers.
fn answers_in_numbers(
    axle: &FrontAxle,
    input: f64,
    travel: Sides<f64>,
) -> Result<(), TestCaseError> {
    let Ok(assembly) = Assembly::new(axle) else {
        return Ok(());
    };
    let words = super::figures::in_words(&assembly, assembly.static_pose());
    prop_assert!(all_numbers(&words), "static: {words}");
    if let Ok(pose) = assembly.pose(input, travel) {
        let words = super::figures::in_words(&assembly, &pose);
        prop_assert!(all_numbers(&words), "posed: {words}");
    }
    if let Ok(pose) = assembly.pose_on_road(assembly.static_pose(), input, &axle.road) {
        let words = super::figures::in_words(&assembly, &pose);
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
