//! Steering ratio: input over the mean angle of both wheels (ISO 8855:2011, 7.1.3, for the mean).
//!
//! A rack pulls steering arms by rods square to them, so straight ahead a wheel turns by 1 rad for as many millimetres as
//! its arm is long. With a pinion of 1 mm radius that is the hand wheel's angle over the road wheel's.

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod};
use steerloft_solver::drive::{Drive, Slider};
use steerloft_solver::figures::steering_ratio;
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, Point, Side, Sides, Vector};

use super::near;
use super::rig::{LEVEL, knuckle};

/// The ratio straight ahead of an axle whose wheels turn by these angles in all, in the same sense, when the hand wheel
/// turns by another.
fn ratio(hand_wheel: f64, wheels: Sides<f64>) -> f64 {
    let arm = wheels.map(|wheel| hand_wheel / wheel);
    let corner = |side: Side| {
        let kingpin = Point::new(0.0, 60.0 * side.sign(), 0.0);
        let centre = kingpin + Vector::new(0.0, 0.0, 20.0);
        Corner {
            knuckle: Knuckle {
                spin_axis: Vector::y() * side.sign(),
                steering_arm: kingpin + Vector::new(-arm.get(side), 0.0, 10.0),
                ..knuckle(kingpin, Vector::z(), centre, 20.0)
            },
            suspension: Suspension::FixedKingpin,
        }
    };
    let axle = FrontAxle {
        corners: Sides::from_fn(corner),
        drive: Drive::Slider(Slider {
            direction: -Vector::y(),
            rod_inner: Sides::from_fn(|side| Point::new(-arm.get(side), 6.0 * side.sign(), 10.0)),
        }),
        rods: Sides::both(Rod::HoldToe(0.0)),
        wheelbase: 200.0,
        station: 0.0,
        road: LEVEL,
    };
    let assembly = Assembly::new(&axle).unwrap();
    steering_ratio(assembly.static_pose(), &LEVEL).unwrap()
}

/// A turn of the hand wheel that turns the wheels by 24 is 15, one that turns them by 20 is 18. Published: encyclopaedia
/// article "Steering ratio" (mirror liquisearch.com); asvab-prep.com, question 5459521298235392.
#[test]
fn both_wheels_alike() {
    near(ratio(360.0, Sides::both(24.0)), 15.0, 1e-12);
    near(ratio(360.0, Sides::both(20.0)), 18.0, 1e-12);
}

/// Wheels of different angles count by their mean: 540 for 35 and 30 is 16.615. Published: askvity.info, "how to
/// calculate steering ratio".
#[test]
fn wheels_that_differ_count_by_their_mean() {
    near(ratio(540.0, Sides::new(35.0, 30.0)), 16.615, 0.001);
}
