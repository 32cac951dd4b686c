//! Camber gained by steering on an inclined axis.
//!
//! With toe-in T (so positive T is the outer wheel of a turn), camber C, caster P and inclination S:
//! sin C + cos C (tan S cos T + tan P sin T) keeps its value. Two positions give the caster:
//! tan P = (sin C1 - sin C2 - (cos C2 cos T2 - cos C1 cos T1) tan S) / (cos C2 sin T2 - cos C1 sin T1), the form of
//! D. B. January, SAE 850219 (abstract read, formula as quoted on a page of formulas). All angles in degrees.

use steerloft_solver::axle::Knuckle;
use steerloft_solver::figures::camber::camber_of;
use steerloft_solver::{Assembly, Point, Vector};

use super::near;
use super::rig::{at_toe, knuckle, spin_axis, steering_axis, turntable};

fn wheel(caster: f64, inclination: f64, camber: f64, toe: f64) -> Assembly {
    let axis = steering_axis(caster, inclination);
    turntable(Knuckle {
        spin_axis: spin_axis(camber, toe),
        ..knuckle(Point::origin(), axis, Point::new(0.0, 10.0, 30.0), 30.0)
    })
}

fn camber(wheel: &Assembly, toe: f64) -> f64 {
    let corner = at_toe(wheel, toe).0;
    camber_of(&corner.spin_axis, &Vector::z()).to_degrees()
}

/// Caster 5 alone, 20 either way: the outer wheel gains negative camber, the inner positive. Relation above,
/// computed here.
#[test]
fn caster_alone() {
    let wheel = wheel(5.0, 0.0, 0.0, 0.0);
    near(camber(&wheel, 20.0), -1.713_94, 1e-5);
    near(camber(&wheel, -20.0), 1.713_94, 1e-5);
}

/// Caster 7, inclination 12, 25 either way; and the turn about the axis that takes, which is not the steer angle
/// seen from above. Relation above, computed here.
#[test]
fn caster_and_inclination() {
    let wheel = wheel(7.0, 12.0, 0.0, 0.0);
    near(camber(&wheel, 25.0), -1.825_30, 1e-5);
    near(camber(&wheel, -25.0), 4.138_80, 1e-5);
    near(at_toe(&wheel, 25.0).1, -25.6232, 1e-4);
    near(at_toe(&wheel, -25.0).1, 25.8854, 1e-4);
}

/// With camber -1.5 and toe 0.5 straight ahead, caster 6, inclination 9. Relation above, computed here.
#[test]
fn with_static_camber_and_toe() {
    let wheel = wheel(6.0, 9.0, -1.5, 0.5);
    near(camber(&wheel, 0.5), -1.5, 1e-9);
    near(camber(&wheel, 15.0), -2.689_76, 1e-5);
    near(camber(&wheel, -15.0), 0.417_28, 1e-5);
}

/// The small-angle law C - C0 = S (1 - cos T) - P sin T and how far it is off. Textbook approximation, e.g. J. C.
/// Dixon, Suspension Geometry and Computation (formula from memory); computed here.
#[test]
fn small_angle_law() {
    let wheel = wheel(7.0, 12.0, 0.0, 0.0);
    let law = |toe: f64| {
        let (sin, cos) = toe.to_radians().sin_cos();
        12.0 * (1.0 - cos) - 7.0 * sin
    };
    near(camber(&wheel, 25.0) - law(25.0), 0.009, 0.001);
    near(camber(&wheel, -25.0) - law(-25.0), 0.056, 0.001);
}

/// At a quarter turn the wheel leans by the inclination, top outward: a workshop rule of thumb says "8" for 8
/// (published: irate4x4.com, thread 401824, page 4); exactly, sin C = tan S.
#[test]
fn inclination_alone_at_a_quarter_turn() {
    let wheel = wheel(0.0, 8.0, 0.0, 0.0);
    for toe in [90.0, -90.0] {
        let camber = camber(&wheel, toe);
        near(camber, 8.0, 0.1);
        near(camber, 8.0_f64.to_radians().tan().asin().to_degrees(), 1e-9);
    }
}

/// Caster gauges multiply the camber difference over 20 either way by 1 / (2 sin 20) = 1.4619; the trade uses 1.5
/// (published: several alignment forums, addresses withheld). On caster 7 it reads 7.0309 (computed here).
#[test]
fn caster_gauge_factor() {
    let wheel = wheel(7.0, 0.0, 0.0, 0.0);
    let difference = camber(&wheel, -20.0) - camber(&wheel, 20.0);
    near(7.0 / difference, 1.5, 0.05);
    let factor = 0.5 / 20.0_f64.to_radians().sin();
    near(factor * difference, 7.0309, 1e-4);
}

/// One-sided gauges turn 22.5 and multiply by 1 / sin 22.5 = 2.6131 (published as 2.6: team.net mailing-list
/// archive, August 1997, message 346). Small casters read right.
#[test]
fn one_sided_caster_gauge_factor() {
    let wheel = wheel(1.0, 0.0, 0.0, 0.0);
    near(1.0 / camber(&wheel, -22.5), 2.6131, 2e-3);
    near(1.0 / camber(&wheel, -22.5), 2.6, 0.02);
}

/// Two measured positions give the caster back exactly. Formula of SAE 850219 as above; computed here.
#[test]
fn caster_from_two_positions() {
    let wheel = wheel(7.0, 12.0, 0.0, 0.0);
    let measured = |toe: f64| {
        let (sin_camber, cos_camber) = camber(&wheel, toe).to_radians().sin_cos();
        let (sin_toe, cos_toe) = toe.to_radians().sin_cos();
        (sin_camber, cos_camber * cos_toe, cos_camber * sin_toe)
    };
    let (sin1, cos1, along1) = measured(25.0);
    let (sin2, cos2, along2) = measured(-25.0);
    let tan_inclination = 12.0_f64.to_radians().tan();
    let tan = (sin1 - sin2 - (cos2 - cos1) * tan_inclination) / (along2 - along1);
    near(tan.atan().to_degrees(), 7.0, 1e-9);
}
