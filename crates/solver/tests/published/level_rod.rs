//! A level tie rod beside a wheel that moves straight up: the plainest bump steer.

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod};
use steerloft_solver::drive::{Drive, Slider};
use steerloft_solver::figures::corner_figures;
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, Point, Sides, Vector};

use super::near;
use super::rig::{LEVEL, knuckle};

/// A rod of 50 mm whose outer ball rises by 10 mm lacks L - sqrt(L^2 - h^2) = 1.01021 mm sideways. Elementary; computed
/// here. A rack moved outward by that much so leaves the left wheel straight.
#[test]
fn lateral_pull_of_a_level_rod() {
    let kingpin = Point::new(0.0, 60.0, 0.0);
    let left = Corner {
        knuckle: Knuckle {
            steering_arm: Point::new(-12.0, 60.0, 15.0),
            ..knuckle(kingpin, Vector::z(), Point::new(0.0, 70.0, 20.0), 20.0)
        },
        suspension: Suspension::SlidingKingpin,
    };
    let axle = FrontAxle {
        corners: Sides::new(left, left.mirrored()),
        drive: Drive::Slider(Slider {
            direction: Vector::y(),
            rod_inner: Sides::new(
                Point::new(-12.0, 10.0, 15.0),
                Point::new(-12.0, -10.0, 15.0),
            ),
        }),
        rods: Sides::both(Rod::HoldToe(0.0)),
        wheelbase: 200.0,
        station: 0.0,
        road: LEVEL,
    };
    let assembly = Assembly::new(&axle).unwrap();
    near(assembly.rod_lengths().left, 50.0, 1e-12);
    let toe = |input: f64, travel: f64| {
        let pose = assembly.pose(input, Sides::both(travel)).unwrap();
        corner_figures(&pose.corners.left, &LEVEL).toe
    };
    // A rounding of the printed value turns a 12 mm arm by 4e-7 rad.
    near(toe(1.010_21, 10.0), 0.0, 5e-7);
    near(toe(1.010_21, -10.0), 0.0, 5e-7);
    // Without it the wheel toes out: the rod behind the axle draws the arm inboard.
    assert!(toe(0.0, 10.0) < -0.08);
}
