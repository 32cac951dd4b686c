//! How sweeps stop: where, and in which way the linkage locks.
#![allow(clippy::unwrap_used)]

mod common;

use common::{front_axle, table};
use steerloft_solver::drive::Drive;
use steerloft_solver::error::{Joint, Member, SolveError};
use steerloft_solver::joints::JointLimits;
use steerloft_solver::sweep::{LockKind, SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Assembly, Sides, Vector};

fn assembly(folder: &str, name: &str) -> Assembly {
    Assembly::new(&front_axle(&table(folder, name))).unwrap()
}

fn range(to: f64) -> SweepRange {
    SweepRange {
        from: -to,
        to,
        count: 41,
    }
}

/// Studs upright in the knuckle and along the servo's axis in the arm.
fn limits(most: f64) -> JointLimits {
    JointLimits {
        outer_studs: Sides::both(Vector::z()),
        inner_studs: Sides::both(Vector::x()),
        most,
    }
}

#[test]
fn a_rod_locks_at_its_dead_centre() {
    let kart = assembly("tables", "kart_past_the_lock.json");
    let sweep = steer_sweep(&kart, range(70.0_f64.to_radians()), Sides::both(0.0));
    for lock in [sweep.lower_lock.unwrap(), sweep.upper_lock.unwrap()] {
        assert_eq!(lock.kind, LockKind::DeadCentre);
        let inside = lock.at * (1.0 - 1e-8);
        let outside = lock.at * (1.0 + 1e-8);
        assert!(kart.pose(inside, Sides::both(0.0)).is_ok());
        assert!(kart.pose(outside, Sides::both(0.0)).is_err());
    }
}

#[test]
fn an_arm_that_can_reach_no_farther_is_named() {
    let car = assembly("independent", "dw_sl_01.json");
    let sweep = bump_sweep(&car, range(80.0), 0.0).unwrap();
    let lock = sweep.upper_lock.unwrap();
    let SolveError::OutOfReach(miss) = lock.cause else {
        unreachable!("{}", lock.cause);
    };
    assert_eq!(miss.member, Member::Suspension);
    assert_eq!(lock.kind, LockKind::OutOfReach);
    // The wheel stays about as far from the height asked for as the arm is lifted past its end.
    let past = miss.travel - lock.at;
    assert!(
        past > 1.0 && (miss.shortfall / past - 1.0).abs() < 0.2,
        "{miss:?} {past}"
    );
    assert!(car.pose(0.0, Sides::both(lock.at - 1e-6)).is_ok());
    assert!(car.pose(0.0, Sides::both(lock.at + 1e-6)).is_err());
}

#[test]
fn a_ball_joint_stops_the_sweep_at_its_limit() {
    let free = assembly("independent", "sk_sa_01.json");
    let most = 9.0_f64.to_radians();
    let limited = free.with_joint_limits(limits(most));
    let wide = range(24.0_f64.to_radians());
    assert_eq!(
        steer_sweep(&free, wide, Sides::both(0.0)).locks().count(),
        0
    );
    let sweep = steer_sweep(&limited, wide, Sides::both(0.0));
    let locks: Vec<_> = sweep.locks().collect();
    assert_eq!(
        locks.len(),
        2,
        "a mirror-symmetrical car locks alike either way"
    );
    assert!((locks[0].at + locks[1].at).abs() < 1e-12);
    for lock in locks {
        assert_eq!(lock.kind, LockKind::JointLimit);
        let SolveError::JointLimit(limit) = lock.cause else {
            unreachable!("{}", lock.cause);
        };
        let pose = limited.pose(lock.at, Sides::both(0.0)).unwrap();
        let worst = limited.joint_limits().unwrap().worst(&pose);
        assert!((worst.misalignment - most).abs() < 1e-12);
        assert_eq!((worst.joint, worst.side), (limit.joint, limit.side));
        assert!(limit.to_string().contains("ball joint swings 9.0 degrees"));
    }
    assert!(
        sweep
            .poses
            .iter()
            .all(|pose| limits(most).exceeded(pose).is_none())
    );
}

/// The misalignment of the outer ball is the rod's slope against the plane square to the stud, seen from the knuckle.
#[test]
fn misalignment_is_the_rods_slope_at_rest() {
    let car = assembly("independent", "sk_sa_01.json");
    let pose = car.static_pose();
    let rod = pose.corners.left.steering_arm - pose.corners.left.rod_inner;
    let worst = limits(1.0).worst(pose);
    let slopes = [
        (Joint::Outer, (rod.z / rod.norm()).abs().asin()),
        (Joint::Inner, (rod.x / rod.norm()).abs().asin()),
    ];
    let (joint, slope) = if slopes[0].1 > slopes[1].1 {
        slopes[0]
    } else {
        slopes[1]
    };
    assert_eq!(worst.joint, joint);
    assert!((worst.misalignment - slope).abs() < 1e-12);
}

/// A limit that is passed and left again between two poses of a coarse sweep stops it where it stops a fine one.
///
/// The stud is set so that the rod comes nearest to it at an input of 12 degrees, where it swings a thousandth of a
/// degree beyond the limit.
#[test]
fn a_limit_passed_and_left_again_is_not_missed() {
    let free = assembly("independent", "sk_sa_01.json");
    let worst_at = 12.0_f64.to_radians();
    let pose = free.pose(worst_at, Sides::both(0.0)).unwrap();
    let corner = &pose.corners.left;
    let rod = (corner.steering_arm - corner.rod_inner).normalize();
    // Square to the rod's motion in the knuckle, so that the misalignment has its greatest value here.
    let seen = |input: f64| {
        let pose = free.pose(input, Sides::both(0.0)).unwrap();
        let corner = &pose.corners.left;
        let rod = (corner.steering_arm - corner.rod_inner).normalize();
        corner.knuckle.rotation.inverse() * rod
    };
    let motion = (seen(worst_at + 1e-4) - seen(worst_at - 1e-4)).normalize();
    let here = corner.knuckle.rotation.inverse() * rod;
    let aside = here.cross(&motion).normalize();
    let stud = here * 0.5 + aside * 0.75_f64.sqrt();
    let limits = |most| JointLimits {
        outer_studs: Sides::new(stud, Vector::z()),
        inner_studs: Sides::both(Vector::zeros()),
        most,
    };
    let peak = limits(1.0).worst(&pose);
    assert_eq!(peak.side, steerloft_solver::Side::Left);
    let limited = free.with_joint_limits(limits(peak.misalignment - 1e-3_f64.to_radians()));
    let sweep = |count| {
        let range = SweepRange {
            from: 0.0,
            to: 24.5_f64.to_radians(),
            count,
        };
        steer_sweep(&limited, range, Sides::both(0.0))
    };
    let (coarse, fine) = (sweep(2), sweep(4001));
    let (coarse, fine) = (coarse.upper_lock.unwrap(), fine.upper_lock.unwrap());
    assert_eq!(coarse.kind, LockKind::JointLimit);
    assert!((coarse.at - fine.at).abs() < 1e-9);
    let short_of = worst_at - coarse.at;
    assert!(short_of > 1e-4 && short_of < 0.02, "{short_of}");
}

/// A planar wishbone in droop, whose upper arm lines up with the kingpin: the lower ball then stands at upper arm and
/// kingpin together from the upper hinge, and the law of cosines in the triangle of both hinges and the lower ball gives
/// the lower arm's angle. The wheel centre sits on the kingpin, so that steering does not lift it.
#[test]
fn a_wishbone_lines_up_where_the_law_of_cosines_says() {
    use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
    use steerloft_solver::drive::{Drive, Slider};
    use steerloft_solver::frame::{Road, Side};
    use steerloft_solver::suspension::{Arm, Suspension};
    use steerloft_solver::{Point, frame::mirrored_point};

    let (lower_hinge, upper_hinge) = ((30.0, 4.0), (50.0, 40.0));
    let (lower, upper) = ((70.0, 0.0), (68.0, 24.0));
    let point = |x: f64, (y, z): (f64, f64)| Point::new(x, y, z);
    let arm = |hinge, ball| Arm {
        hinge: [point(10.0, hinge), point(-10.0, hinge)],
        ball: point(0.0, ball),
    };
    let middle = point(0.0, (69.0, 12.0));
    let left = Corner {
        knuckle: Knuckle {
            wheel_centre: middle,
            spin_axis: spin_axis_at_camber(Side::Left, 0.0),
            kingpin_lower: point(0.0, lower),
            kingpin_upper: point(0.0, upper),
            steering_arm: middle + Vector::new(-14.0, -1.0, 0.0),
            tyre_radius: 20.0,
            tyre_width: 20.0,
        },
        suspension: Suspension::DoubleWishbone {
            lower: arm(lower_hinge, lower),
            upper: arm(upper_hinge, upper),
        },
    };
    let inner = Point::new(-14.0, 28.0, 12.0);
    let axle = FrontAxle {
        corners: Sides::new(left, left.mirrored()),
        drive: Drive::Slider(Slider {
            direction: Vector::y(),
            rod_inner: Sides::new(inner, mirrored_point(&inner)),
        }),
        rods: Sides::both(Rod::HoldToe(0.0)),
        wheelbase: 260.0,
        station: 0.0,
        road: Road {
            ride_height: 8.0,
            pitch: 0.0,
            roll: 0.0,
        },
    };
    let distance = |one: (f64, f64), other: (f64, f64)| (one.0 - other.0).hypot(one.1 - other.1);
    let (lower_arm, between) = (
        distance(lower_hinge, lower),
        distance(lower_hinge, upper_hinge),
    );
    let kingpin = distance(lower, upper);
    let reach = distance(upper_hinge, upper) + kingpin;
    let cosine =
        (lower_arm * lower_arm + between * between - reach * reach) / (2.0 * lower_arm * between);
    let to_upper = (upper_hinge.1 - lower_hinge.1).atan2(upper_hinge.0 - lower_hinge.0);
    let (sin, cos) = (to_upper - cosine.acos()).sin_cos();
    let ball = (
        lower_hinge.0 + lower_arm * cos,
        lower_hinge.1 + lower_arm * sin,
    );
    // Half-way up the kingpin, which now points at the upper hinge.
    let height = ball.1 + 0.5 * kingpin * (upper_hinge.1 - ball.1) / reach;
    let expected = height - middle.z;

    let car = Assembly::new(&axle).unwrap();
    for count in [3, 41, 400] {
        let sweep = bump_sweep(
            &car,
            SweepRange {
                count,
                ..range(20.0)
            },
            0.0,
        )
        .unwrap();
        let lock = sweep.lower_lock.unwrap();
        let SolveError::OutOfReach(miss) = lock.cause else {
            unreachable!("{}", lock.cause);
        };
        assert_eq!(miss.member, Member::Suspension);
        assert!(
            (lock.at - expected).abs() < 1e-9,
            "{} against {expected} with {count} poses",
            lock.at
        );
    }
}

/// Whoever asks for thousands of turns of an arm that never locks is told that they were not followed, not that it locks.
#[test]
fn what_takes_too_many_steps_is_no_lock() {
    let mut axle = front_axle(&table("tables", "kart_past_the_lock.json"));
    let Drive::SwingArm(arm) = &mut axle.drive else {
        unreachable!("the kart has a column");
    };
    // Both balls circle closely about a line across the car.
    arm.rod_inner.right.x = arm.rod_inner.left.x;
    arm.rod_inner.right.z = arm.rod_inner.left.z;
    arm.axis_point = arm.rod_inner.left + 10.0 * Vector::z();
    arm.axis_direction = Vector::y();
    let kart = Assembly::new(&axle).unwrap();
    assert!(kart.pose(100.0, Sides::both(0.0)).is_ok());
    let far = 900_000.0;
    let error = kart.pose(far, Sides::both(0.0)).unwrap_err();
    let SolveError::NotFollowed { reached, .. } = error else {
        unreachable!("{error}");
    };
    assert!(reached > 0.0 && reached < 1.0);
    assert!(error.to_string().contains("ask for less"), "{error}");
    let sweep = steer_sweep(
        &kart,
        SweepRange {
            from: 0.0,
            to: far,
            count: 2,
        },
        Sides::both(0.0),
    );
    let end = sweep.upper_lock.unwrap();
    assert_eq!(end.kind, LockKind::NotFollowed);
    assert_eq!(end.kind.to_string(), "not followed");
    assert!(end.at > 0.0 && end.at < far);
}

#[test]
fn a_range_goes_from_one_end_to_the_other_however_far_apart_they_are() {
    let values =
        |from, to, count| -> Vec<f64> { SweepRange { from, to, count }.values().collect() };
    assert_eq!(values(-1.0, 3.0, 5), [-1.0, 0.0, 1.0, 2.0, 3.0]);
    assert_eq!(values(7.0, 9.0, 1), [7.0]);
    assert_eq!(values(f64::MIN, f64::MAX, 3), [f64::MIN, 0.0, f64::MAX]);
}
