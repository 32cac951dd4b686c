//! Where the steering axis points and where it meets the ground.

use steerloft_solver::axle::Knuckle;
use steerloft_solver::figures::{CornerFigures, corner_figures};
use steerloft_solver::{Point, Vector};

use super::near;
use super::rig::{LEVEL, knuckle, steering_axis, turned, turntable};

fn figures(knuckle: Knuckle) -> CornerFigures {
    corner_figures(&turned(&turntable(knuckle), 0.0), &LEVEL)
}

/// A ball-joint axis through (10, 640, 180) and (-10, 610, 480), contact at (0, 700, 0): ground point (22, 658, 0),
/// caster 3.81407, inclination 5.71059, trail +22, scrub radius +42. Definitions as SAE J670 (from memory), values
/// computed here.
#[test]
fn ball_joint_axis() {
    let figures = figures(Knuckle {
        wheel_centre: Point::new(0.0, 700.0, 300.0),
        spin_axis: Vector::y(),
        kingpin_lower: Point::new(10.0, 640.0, 180.0),
        kingpin_upper: Point::new(-10.0, 610.0, 480.0),
        steering_arm: Point::origin(),
        tyre_radius: 300.0,
        tyre_width: 200.0,
    });
    near(
        (figures.contact_centre - Point::new(0.0, 700.0, 0.0)).norm(),
        0.0,
        1e-10,
    );
    near(
        (figures.ground_point - Point::new(22.0, 658.0, 0.0)).norm(),
        0.0,
        1e-10,
    );
    near(figures.caster.to_degrees(), 3.814_07, 1e-5);
    near(figures.inclination.to_degrees(), 5.710_59, 1e-5);
    near(figures.trail, 22.0, 1e-10);
    near(figures.scrub_radius, 42.0, 1e-10);
}

/// An axis through the wheel centre in side view trails by R tan(caster). Textbooks on vehicle dynamics, steering
/// chapter (formula from memory); computed here.
#[test]
fn trail_of_caster_alone() {
    let axis = steering_axis(5.0, 0.0);
    let ground_point = Point::new(300.0 * 5.0_f64.to_radians().tan(), 0.0, 0.0);
    let centre = Point::new(0.0, 50.0, 300.0);
    let figures = figures(knuckle(ground_point, axis, centre, 300.0));
    near(figures.trail, 26.2466, 1e-4);
    near(figures.castor_offset, 0.0, 1e-10);
}

/// Scrub radius from the axis' offset at hub height: r = q - R tan(inclination). Reimpell, chassis textbook, section
/// on the kingpin offset (formula from memory); computed here.
#[test]
fn scrub_radius_from_the_offset_at_hub_height() {
    let axis = steering_axis(0.0, 10.0);
    let lean = 300.0 * 10.0_f64.to_radians().tan();
    let centre = Point::new(0.0, 100.0 - lean, 300.0);
    let figures = figures(knuckle(Point::origin(), axis, centre, 300.0));
    near(figures.axis_offset, 100.0, 1e-10);
    near(figures.scrub_radius, 47.1019, 1e-4);
}

/// Trail square to the axis: R sin(caster) - d cos(caster), with the axis d behind the hub. Formula published at
/// formuladen.com, formula 34933, and for head angles on a page on bicycle geometry; computed here.
#[test]
fn trail_square_to_the_axis() {
    let axis = steering_axis(5.0, 0.0);
    let ground_point = Point::new(300.0 * 5.0_f64.to_radians().tan() - 10.0, 0.0, 0.0);
    let centre = Point::new(0.0, 50.0, 300.0);
    let figures = figures(knuckle(ground_point, axis, centre, 300.0));
    near(figures.castor_offset, -10.0, 1e-10);
    near(figures.trail * figures.caster.cos(), 16.1848, 1e-4);
}
