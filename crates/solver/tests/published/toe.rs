//! Toe as an angle and as a length.

use steerloft_solver::Sides;
use steerloft_solver::figures::toe::total_toe_length;

use super::near;

/// One wheel of 381 mm with 1 mm between front and rear: 0.150383 degrees, 9.0230 minutes of arc. Computed here.
#[test]
fn one_wheel_by_the_chord() {
    let toe = Sides::new(0.150_383_f64.to_radians(), 0.0);
    near(total_toe_length(&toe, 381.0), 1.0, 4e-6);
    near((1.0_f64 / 381.0).asin().to_degrees() * 60.0, 9.0230, 1e-4);
}

/// Two wheels of 60 mm at 1 degree each: 2 D sin(1) = 2.09429 mm, the sum over the axle (ISO 8855:2011, 7.1.7,
/// published). Computed here.
#[test]
fn both_wheels() {
    let toe = Sides::both(1.0_f64.to_radians());
    near(total_toe_length(&toe, 60.0), 2.094_29, 1e-5);
    near(
        total_toe_length(&toe.map(|toe| -toe), 60.0),
        -2.094_29,
        1e-5,
    );
}

/// Workshop tables say pi D / 360 mm for a degree: 3.32485 mm on 15 inches, 3.98982 on 18 (rule published on an
/// owners' forum, address withheld; 2.77778 mm on a metre of circumference: onlineconversion.com, 2003). They count
/// one edge of one wheel; front less rear is twice that.
#[test]
fn workshop_rule_counts_one_edge() {
    let one_degree = Sides::new(1.0_f64.to_radians(), 0.0);
    let table = [
        (15.0 * 25.4, 3.324_85),
        (18.0 * 25.4, 3.989_82),
        (1000.0 / std::f64::consts::PI, 2.777_78),
    ];
    for (diameter, edge) in table {
        // Arc against chord: 1 degree differs by 5e-5 of the length.
        near(
            0.5 * total_toe_length(&one_degree, diameter),
            edge,
            6e-5 * edge,
        );
    }
}
