//! The spatial four-bar of two turning joints and two ball joints, as a steering arm, its rod and the drive make it.
//! Angles in degrees.

use steerloft_solver::{Point, Sides, Vector};

use super::near;
use super::rig::Levers;

/// Crank and rocker axes at a right angle: crank ball (a cos t, a sin t, 0), rocker ball (D, c cos f, c sin f), so
/// (D - a cos t)^2 + (a sin t)^2 + c^2 - 2 a c sin t cos f = L^2. Closure as in textbooks on mechanisms (J. J. Uicker
/// and others, from memory), this case derived and computed here: a = 50, D = 100, c = 60, L = 110, t = 60 gives
/// f = +-101.09580. The case is turned so that its x, the rocker's axis, is the chassis' z.
#[test]
fn axes_at_a_right_angle() {
    let turned = |x, y, z| Point::new(y, z, x);
    let crank_ball = |t: f64| {
        turned(
            50.0 * t.to_radians().cos(),
            50.0 * t.to_radians().sin(),
            0.0,
        )
    };
    let levers = Levers {
        crank_pivot: Point::origin(),
        crank_axis: Vector::y(),
        crank_ball: crank_ball(60.0),
        rocker_pivot: turned(100.0, 0.0, 0.0),
        rocker_axis: Vector::z(),
        rocker_arm: Vector::new(60.0, 0.0, 0.0),
        drawn: Sides::new(90.0, -90.0),
        rod: 110.0,
    };
    let assembly = levers.assemble().unwrap();
    let angles = levers.rocker_angles(&assembly, 0.0);
    near(angles.left, 101.095_80, 1e-5);
    near(angles.right, -101.095_80, 1e-5);
    for step in -7..=20 {
        let input = f64::from(step);
        let (sin, cos) = (60.0 + input).to_radians().sin_cos();
        let across: f64 = 100.0 - 50.0 * cos;
        let squares = across * across + 2500.0 * sin * sin + 3600.0 - 12_100.0;
        let expected = (squares / (6000.0 * sin)).acos().to_degrees();
        let angles = levers.rocker_angles(&assembly, input);
        near(angles.left, expected, 1e-9);
        near(angles.right, -expected, 1e-9);
    }
}

/// With parallel axes it is the planar four-bar, in whatever plane: links 2, 7, 9, 6 at 30 in the plane square to
/// (1, 2, 3) give the planar 117.2861 and -143.6596. Invariance under rigid motion; computed here.
#[test]
fn parallel_axes_in_an_inclined_plane() {
    let axis = Vector::new(1.0, 2.0, 3.0).normalize();
    let first = axis.cross(&Vector::new(0.3, -1.0, 0.2)).normalize();
    let second = axis.cross(&first);
    let origin = Point::new(12.0, -7.0, 31.0);
    let in_plane = |length: f64, degrees: f64| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        (first * cos + second * sin) * length
    };
    let inclined = Levers {
        crank_pivot: origin,
        crank_axis: axis,
        crank_ball: origin + in_plane(2.0, 30.0),
        rocker_pivot: origin + in_plane(6.0, 0.0),
        rocker_axis: axis,
        rocker_arm: in_plane(9.0, 0.0),
        drawn: Sides::new(100.0, -130.0),
        rod: 7.0,
    };
    let planar = Levers {
        crank_pivot: Point::origin(),
        crank_axis: Vector::z(),
        crank_ball: Point::new(3.0_f64.sqrt(), 1.0, 0.0),
        rocker_pivot: Point::new(6.0, 0.0, 0.0),
        rocker_axis: Vector::z(),
        rocker_arm: Vector::new(9.0, 0.0, 0.0),
        ..inclined
    };
    let assemblies = (inclined.assemble().unwrap(), planar.assemble().unwrap());
    let angles = inclined.rocker_angles(&assemblies.0, 0.0);
    near(angles.left, 117.2861, 1e-4);
    near(angles.right, -143.6596, 1e-4);
    for step in -12..=12 {
        let input = f64::from(step) * 15.0;
        let there = inclined.rocker_angles(&assemblies.0, input);
        let here = planar.rocker_angles(&assemblies.1, input);
        near(there.left, here.left, 1e-9);
        near(there.right, here.right, 1e-9);
    }
}
