//! How sweeps stop: where, and in which way the linkage locks.
#![allow(clippy::unwrap_used)]

mod common;

use common::{front_axle, table};
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
    assert!(miss.shortfall > 0.0);
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
