//! Rotation about an inclined axis: the drive's arm and the knuckle about its steering axis.

use steerloft_solver::{Point, Vector};

use super::near;
use super::rig::{knuckle, spin_axis, steering_axis, turned, turntable};
use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod};
use steerloft_solver::drive::{Drive, SwingArm};
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, Isometry3, Sides};

/// Motion of a small swing arm about the axis given, far from the wheels so that its rods follow any angle.
fn swing(axis_direction: Vector, degrees: f64) -> Isometry3<f64> {
    let kingpin = Point::new(0.0, 50.0, 0.0);
    let left = Corner {
        knuckle: Knuckle {
            steering_arm: Point::new(-20.0, 50.0, 10.0),
            ..knuckle(kingpin, Vector::z(), Point::new(0.0, 60.0, 20.0), 20.0)
        },
        suspension: Suspension::FixedKingpin,
    };
    let axle = FrontAxle {
        corners: Sides::new(left, left.mirrored()),
        drive: Drive::SwingArm(SwingArm {
            axis_point: Point::new(-20.0, 0.0, 10.0),
            axis_direction,
            rod_inner: Sides::new(Point::new(-20.0, 3.0, 11.0), Point::new(-20.0, -3.0, 11.0)),
        }),
        rods: Sides::both(Rod::HoldToe(0.0)),
        wheelbase: 200.0,
        station: 0.0,
        road: super::rig::LEVEL,
    };
    let pose = Assembly::new(&axle)
        .unwrap()
        .pose(degrees.to_radians(), Sides::both(0.0))
        .unwrap();
    for (side, at_rest) in [
        (pose.drive.rod_inner.left, Point::new(-20.0, 3.0, 11.0)),
        (pose.drive.rod_inner.right, Point::new(-20.0, -3.0, 11.0)),
    ] {
        near(
            (side - pose.drive.carrier.left * at_rest).norm(),
            0.0,
            1e-12,
        );
    }
    pose.drive.carrier.left
}

/// A turn of 120 degrees about (1, 1, 1) carries x to y to z to x. Textbook rotation formula; matrix form seen at
/// astrogreg.com, rotationAroundArbitraryAxis. Computed here.
#[test]
fn third_of_a_turn_about_the_space_diagonal() {
    let motion = swing(Vector::new(1.0, 1.0, 1.0), 120.0);
    for (from, to) in [
        (Vector::x(), Vector::y()),
        (Vector::y(), Vector::z()),
        (Vector::z(), Vector::x()),
    ] {
        near((motion * from - to).norm(), 0.0, 1e-12);
    }
}

/// The right-hand rule: x turned by 30 degrees about -y is (0.8660254, 0, 0.5). Published: reference of a general
/// drawing program's vector functions, second example (name withheld).
#[test]
fn sense_of_rotation() {
    let turned = swing(-Vector::y(), 30.0) * Vector::x();
    near(
        (turned - Vector::new(0.866_025_4, 0.0, 0.5)).norm(),
        0.0,
        1e-7,
    );
}

/// Caster 5, inclination 10: the unit axis and its true lean, tan^2 = tan^2 + tan^2. The vector as in R. N. Jazar,
/// Vehicle Dynamics, steering chapter, up to his choice of signs (from memory). Computed here.
#[test]
fn axis_from_caster_and_inclination() {
    let axis = steering_axis(5.0, 10.0);
    let wheel = knuckle(Point::origin(), axis, Point::new(0.0, 10.0, 30.0), 30.0);
    let corner = turned(&turntable(wheel), 17.0);
    let posed = corner.kingpin_axis();
    let expected = Vector::new(-0.085_841_5, -0.173_007_2, 0.981_172_6);
    near((posed - expected).norm(), 0.0, 1e-7);
    near(posed.z.acos().to_degrees(), 11.135_66, 1e-5);
    let figures = steerloft_solver::figures::corner_figures(&corner, &super::rig::LEVEL);
    near(figures.caster.to_degrees(), 5.0, 1e-12);
    near(figures.inclination.to_degrees(), 10.0, 1e-12);
}

/// A rigid turn keeps the angle between spin axis and steering axis. Elementary; computed here.
#[test]
fn spin_axis_keeps_its_angle_to_the_steering_axis() {
    let axis = steering_axis(11.0, 8.0);
    let wheel = Knuckle {
        spin_axis: spin_axis(-2.0, 0.7),
        ..knuckle(Point::origin(), axis, Point::new(0.0, 10.0, 30.0), 30.0)
    };
    let table = turntable(wheel);
    let product = spin_axis(-2.0, 0.7).dot(&axis);
    for step in -18..=18 {
        let corner = turned(&table, f64::from(step) * 5.0);
        near(corner.spin_axis.dot(&corner.kingpin_axis()), product, 1e-12);
        near(corner.spin_axis.norm(), 1.0, 1e-14);
    }
}
