//! Turn centres and turning radii. Angles in degrees, lengths in the unit of each source.

use steerloft_solver::figures::{TurnCentre, ideal_outer, turn_centre};
use steerloft_solver::{Assembly, Sides};

use super::near;
use super::rig::{LEVEL, Pair};

fn centres(assembly: &Assembly) -> Sides<TurnCentre> {
    let wheelbase = assembly.axle().wheelbase;
    assembly
        .static_pose()
        .corners
        .map(|corner| turn_centre(&corner, &LEVEL, wheelbase).unwrap())
}

/// One wheel on the centre line, as in the bicycle model.
fn single(wheelbase: f64, steer: f64) -> TurnCentre {
    let pair = Pair {
        kingpins: 0.0,
        track: 0.0,
        wheelbase,
        steer: Sides::both(steer),
    };
    centres(&pair.assemble()).left
}

/// L = 2.743 m, kingpins 1.065 m, track 1.217 m, inner 40: outer 32.330, outer front wheel on 5.205 m, inner rear
/// wheel on 3.193 m. Stock problem of automobile-engineering textbooks, e.g. R. B. Gupta, steering chapter (inputs
/// and formulas from memory); values computed here. The turning radius is taken to the centre of contact of the
/// outer front wheel, SAE J695 clauses 3.1 to 3.4 (published, first page).
#[test]
fn outer_front_and_inner_rear_path() {
    let outer = ideal_outer(40.0_f64.to_radians(), 1.065, 2.743).to_degrees();
    near(outer, 32.330, 0.001);
    let pair = Pair {
        kingpins: 1.065,
        track: 1.217,
        wheelbase: 2.743,
        steer: Sides::new(40.0, outer),
    };
    let centres = centres(&pair.assemble());
    near(centres.right.radius, 5.205, 0.001);
    near(centres.right.lateral - 0.5 * 1.217, 3.193, 0.001);
    near(centres.left.lateral, centres.right.lateral, 1e-9);
}

/// Turning diameter 2 (WB / sin(outer) + offset) = 10.410 m for that car. Published: summary of SAE J695-2024,
/// equation 3, at tnlab.org; value computed here.
#[test]
fn turning_diameter_from_the_outer_angle() {
    let pair = Pair {
        kingpins: 1.065,
        track: 1.065 + 2.0 * 0.076,
        wheelbase: 2.743,
        steer: Sides::new(40.0, 32.330),
    };
    near(2.0 * centres(&pair.assemble()).right.radius, 10.410, 0.001);
}

/// A path of 6200 mm about the rear-axle centre at L = 2600, T = 1600 asks 25.71 of the inner wheel. Published: a
/// university solar-car team's design page, uwmidsun.atlassian.net, page 36052240.
#[test]
fn inner_angle_from_the_path_radius() {
    let at = |steer: f64| {
        let pair = Pair {
            kingpins: 1600.0,
            track: 1600.0,
            wheelbase: 2600.0,
            steer: Sides::both(steer),
        };
        centres(&pair.assemble()).left.lateral
    };
    assert!(at(25.715) < 6200.0 && 6200.0 < at(25.705));
}

/// R = L / tan(d): 4.33 m at L = 2.5 m and 30 degrees. Published: documentation of an open-source robotics library,
/// example of the bicycle model (name withheld).
#[test]
fn bicycle_model() {
    near(single(2.5, 30.0).lateral, 4.33, 0.001);
}

/// The same bicycle at 5 m/s yaws at v tan(d) / L = 1.1547 rad/s: speed over the distance of its turn centre. Published:
/// the same example.
#[test]
fn yaw_rate_of_the_bicycle_model() {
    near(5.0 / single(2.5, 30.0).lateral, 1.1547, 0.0001);
}

/// Kerb to kerb: L / sin(d) + half a tyre: 6.100 m at L = 3 m, 30 degrees, tyre 0.2 m wide. Formula published:
/// encyclopaedia article "Turning radius" (mirror tickerdossier.com); value computed here.
#[test]
fn kerb_to_kerb_radius() {
    near(single(3.0, 30.0).radius + 0.5 * 0.2, 6.1, 1e-12);
}

/// Steady off-tracking R - sqrt(R^2 - L^2) = 5.689 ft at R = 38 ft, L = 20 ft: the difference of front and rear
/// radius of a bicycle. Classical; computed here.
#[test]
fn off_tracking() {
    let centre = single(20.0, (20.0_f64 / 38.0).asin().to_degrees());
    near(centre.radius, 38.0, 1e-9);
    near(centre.radius - centre.lateral, 5.689, 0.001);
}

/// A single-unit truck, L = 20 ft on a centre-line radius of 38 ft, 8 ft wide: steering angle 31.8, inside radius
/// 28.4 ft. AASHTO, geometric design of highways, 2004 and 2011, minimum turning path (values from memory).
#[test]
fn design_vehicle() {
    let steer = (20.0_f64 / 38.0).asin().to_degrees();
    near(steer, 31.8, 0.05);
    let centre = single(20.0, steer);
    near(centre.radius, 38.0, 1e-9);
    near(centre.lateral - 4.0, 28.4, 0.1);
}

/// R1 = l cot(i) + w / 2 = 515.85 in, outer 10.6808, and the mean cotangent's angle 11.3025 at l = 103.1 in,
/// w = 61.6 in, i = 12. R. N. Jazar, Vehicle Dynamics, steering chapter (formulas and dimensions from memory);
/// values computed here. A centre of mass 60 in ahead of the rear axle runs on hypot(60, R1) = 519.33 in.
#[test]
fn mass_centre_radius() {
    let outer = ideal_outer(12.0_f64.to_radians(), 61.6, 103.1).to_degrees();
    near(outer, 10.6808, 1e-4);
    let pair = Pair {
        kingpins: 61.6,
        track: 61.6,
        wheelbase: 103.1,
        steer: Sides::new(12.0, outer),
    };
    let lateral = centres(&pair.assemble()).map(|centre| centre.lateral);
    near(lateral.left, 515.85, 0.005);
    near(lateral.right, 515.85, 0.005);
    near((103.1 / lateral.left).atan().to_degrees(), 11.3025, 1e-4);
    near(lateral.left.hypot(60.0), 519.33, 0.005);
}

/// The ring that this car sweeps with a front overhang of 32 in is 78.05 in wide, from the inner side to the outer front
/// corner. The same chapter, "space requirement" (formula from memory); value computed here.
#[test]
fn width_of_the_ring_swept() {
    let outer = ideal_outer(12.0_f64.to_radians(), 61.6, 103.1).to_degrees();
    let pair = Pair {
        kingpins: 61.6,
        track: 61.6,
        wheelbase: 103.1,
        steer: Sides::new(12.0, outer),
    };
    let middle = centres(&pair.assemble()).left.lateral;
    let (inner_side, outer_side) = (middle - 30.8, middle + 30.8);
    near(outer_side.hypot(103.1 + 32.0) - inner_side, 78.05, 0.01);
}

/// A wheel that points straight ahead has no turn centre.
#[test]
fn straight_ahead() {
    let pair = Pair {
        kingpins: 1.0,
        track: 1.0,
        wheelbase: 2.0,
        steer: Sides::both(0.0),
    };
    let corner = pair.assemble().static_pose().corners.left;
    assert!(turn_centre(&corner, &LEVEL, 2.0).is_none_or(|centre| centre.radius > 1e12));
}
