//! How far the car rises or drops as a wheel steers: two models that differ, and each test says which.
//!
//! All computed here, on a left wheel of radius 300 whose contact lies 50 outboard of the ground point.

use steerloft_solver::figures::contact::contact_centre;
use steerloft_solver::{Assembly, Point, Vector};

use super::near;
use super::rig::{at_toe, knuckle, steering_axis, turned, turntable};

const CONTACT: Point = Point::new(0.0, 50.0, 0.0);

fn wheel(caster: f64, inclination: f64) -> Assembly {
    let axis = steering_axis(caster, inclination);
    let centre = CONTACT + Vector::z() * 300.0;
    turntable(knuckle(Point::origin(), axis, centre, 300.0))
}

/// Drop of the contact point of the straight wheel, taken as fixed to the knuckle, at a turn in degrees.
fn drop_of_fixed_point(wheel: &Assembly, turn: f64) -> f64 {
    -(turned(wheel, turn).knuckle * CONTACT).z
}

/// Drop of the lowest point of the thin disc at a toe in degrees: the chassis is held, so the body on flat ground
/// lifts as much.
fn drop_of_disc(wheel: &Assembly, toe: f64) -> f64 {
    -contact_centre(&at_toe(wheel, toe).0, &Vector::z()).z
}

/// Contact point fixed to the knuckle, inclination 10: d sin S cos S (1 - cos turn), the same both ways; within the
/// small angles of d sin S (1 - cos turn) = 1.1632, the integral of the vertical-load moment of T. D. Gillespie,
/// Fundamentals of Vehicle Dynamics, chapter 8 (formula from memory).
#[test]
fn fixed_point_on_inclination() {
    let wheel = wheel(0.0, 10.0);
    for turn in [30.0, -30.0] {
        near(drop_of_fixed_point(&wheel, turn), 1.145_55, 1e-5);
        near(drop_of_fixed_point(&wheel, turn), 1.1632, 0.02);
    }
}

/// Contact point fixed to the knuckle, caster 5: d sin P sin(turn), down at the inner wheel, up at the outer.
/// Gillespie as above.
#[test]
fn fixed_point_on_caster() {
    let wheel = wheel(5.0, 0.0);
    near(drop_of_fixed_point(&wheel, 30.0), 2.178_89, 1e-5);
    near(drop_of_fixed_point(&wheel, -30.0), -2.178_89, 1e-5);
}

/// Thin disc, inclination 10: lift R sqrt(1 - ez^2) - cz, about twice that of the fixed point, both ways.
#[test]
fn disc_on_inclination() {
    let wheel = wheel(0.0, 10.0);
    near(drop_of_disc(&wheel, 30.0), 2.3512, 1e-4);
    near(drop_of_disc(&wheel, -30.0), 2.3512, 1e-4);
}

/// Thin disc, caster 5: the inner wheel lifts its side, the outer lets it down.
#[test]
fn disc_on_caster() {
    let axis = steering_axis(5.0, 0.0);
    let centre = CONTACT + Vector::z() * 300.0;
    let wheel = turntable(knuckle(Point::origin(), axis, centre, 300.0));
    near(drop_of_disc(&wheel, -30.0), 2.2057, 1e-4);
    near(drop_of_disc(&wheel, 30.0), -2.1646, 1e-4);
}
