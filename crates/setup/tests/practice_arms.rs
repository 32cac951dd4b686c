//! Rules of the trade for cars with arms, racks and fixed kingpins, on the supplied cars.
//!
//! Every rule here is common practice, no source; what the notes of the cars' adjustments say is held by these.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::{assert_abs_diff_eq, assert_relative_eq};
use common::axle::{
    angles_at, assembled, bump_steer, camber_gain, difference_at_mean, left_figures,
};
use common::{car, choose, choose_option};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::figures::instant_centre::{roll_centre, side_view_instant_centre};

const TOURING_CAR: &str = "touring-car.ron";
const BUGGY: &str = "buggy-front-end.ron";
const KART: &str = "kart.ron";
const FORMULA_CAR: &str = "formula-corner.ron";
const STRUT: &str = "strut-corner.ron";

fn with_stack(name: &str, adjustment: &str, total: f64) -> Setup {
    let mut setup = car(name);
    choose(&mut setup, adjustment, Chosen::Stack(total));
    setup
}

fn with_slide(name: &str, adjustment: &str, value: f64) -> Setup {
    let mut setup = car(name);
    choose(&mut setup, adjustment, Chosen::Slide(value));
    setup
}

fn with_option(name: &str, adjustment: &str, option: &str) -> Setup {
    let mut setup = car(name);
    choose_option(&mut setup, adjustment, option);
    setup
}

/// Roll centre over the road, mm.
fn roll_centre_height(setup: &Setup) -> f64 {
    let assembly = assembled(setup);
    let centre = roll_centre(assembly.static_pose(), &assembly.axle().road);
    centre.unwrap().height
}

fn camber(setup: &Setup) -> f64 {
    left_figures(setup).camber.to_degrees()
}

fn caster(setup: &Setup) -> f64 {
    left_figures(setup).caster.to_degrees()
}

/// How steeply the line from the contact centre to the side-view instant centre rises towards the rear: what of the
/// dive under the brakes the arms take up grows with it.
fn anti_dive(setup: &Setup) -> f64 {
    let assembly = assembled(setup);
    let pose = &assembly.static_pose().corners.left;
    let centre = side_view_instant_centre(pose, &assembly.axle().road).unwrap();
    let contact = left_figures(setup).contact_centre;
    (centre.z - contact.z) / (contact.x - centre.x)
}

#[test]
fn a_higher_upper_hinge_makes_camber_change_less_and_lowers_the_roll_centre() {
    for (name, adjustment, low, high) in [
        (TOURING_CAR, "Upper hinge packing", 0.0, 3.0),
        (BUGGY, "Upper hinge packing", 0.0, 4.0),
    ] {
        let low = with_stack(name, adjustment, low);
        let high = with_stack(name, adjustment, high);
        assert!(camber_gain(&low) < camber_gain(&high) - 0.05, "{name}");
        assert!(roll_centre_height(&low) > roll_centre_height(&high) + 1.0);
    }
    let lower = with_option(FORMULA_CAR, "Upper pickups", "lower row");
    let upper = with_option(FORMULA_CAR, "Upper pickups", "upper row");
    assert!(camber_gain(&lower) < camber_gain(&upper) - 0.01);
    assert!(roll_centre_height(&lower) > roll_centre_height(&upper) + 10.0);
}

#[test]
fn a_shorter_upper_arm_makes_camber_change_more() {
    for (name, short, long) in [
        (TOURING_CAR, "outer holes", "inner holes"),
        (BUGGY, "outer holes", "inner holes"),
    ] {
        let gain = |option: &str| camber_gain(&with_option(name, "Upper arm mount hole", option));
        assert!(gain(short) < gain(long) - 0.003, "{name}");
    }
}

#[test]
fn a_lower_ball_further_down_raises_the_roll_centre() {
    for (name, adjustment, total) in [
        (TOURING_CAR, "Lower ball packing", 2.0),
        (FORMULA_CAR, "Lower ball spacers", 8.0),
        (STRUT, "Lower ball spacer", 15.0),
    ] {
        let raised = roll_centre_height(&with_stack(name, adjustment, total));
        assert!(raised > roll_centre_height(&car(name)) + 2.0, "{name}");
    }
}

#[test]
fn a_longer_upper_arm_takes_camber_towards_positive_and_a_longer_lower_one_towards_negative() {
    let step = |setup: &Setup, name: &str| camber(setup) - camber(&car(name));
    for name in [TOURING_CAR, BUGGY] {
        let change = step(&with_slide(name, "Upper arm length", 0.5), name);
        assert!((0.5..1.5).contains(&change), "{name}: {change}");
    }
    let shims = step(
        &with_stack(FORMULA_CAR, "Upper arm shims", 6.0),
        FORMULA_CAR,
    );
    assert!((0.3..1.0).contains(&shims), "{shims}");
    for name in [FORMULA_CAR, STRUT] {
        let change = step(&with_slide(name, "Lower arm length", 2.0), name);
        assert!((-1.0..-0.1).contains(&change), "{name}: {change}");
    }
}

#[test]
fn a_hinge_that_falls_to_the_front_is_anti_dive() {
    let base = anti_dive(&car(TOURING_CAR));
    let touring = |adjustment: &str| anti_dive(&with_stack(TOURING_CAR, adjustment, 2.0));
    assert!(touring("Lower hinge packing, front") < base - 0.01);
    assert!(touring("Lower hinge packing, rear") > base + 0.01);
    let base = anti_dive(&car(FORMULA_CAR));
    let rear = with_stack(FORMULA_CAR, "Lower rear pickup packing", 6.0);
    assert!(anti_dive(&rear) > base + 0.005);
    let front = with_option(FORMULA_CAR, "Upper front pickup", "high hole");
    assert!(anti_dive(&front) > base + 0.005);
    let bush = with_stack(STRUT, "Lower front bush packing", 9.0);
    assert!(anti_dive(&bush) > anti_dive(&car(STRUT)) + 0.005);
    // Both hinges of a buggy's kicked-up front end rise to the front.
    assert!(anti_dive(&car(BUGGY)) < -0.2);
}

#[test]
fn caster_changes_by_the_angle_of_the_insert() {
    for (name, adjustment, less, more, by) in [
        (
            TOURING_CAR,
            "Caster",
            "2 degrees less",
            "2 degrees more",
            2.0,
        ),
        (BUGGY, "Kick-up", "17.5 degrees", "22.5 degrees", 2.5),
        (BUGGY, "Caster block", "2.5 degrees", "7.5 degrees", 2.5),
        (KART, "Caster pill", "2 degrees less", "2 degrees more", 2.0),
        (FORMULA_CAR, "Caster", "1 degree less", "1 degree more", 1.0),
    ] {
        let base = caster(&car(name));
        let with = |option: &str| caster(&with_option(name, adjustment, option));
        assert_abs_diff_eq!(with(less), base - by, epsilon = 1e-3);
        assert_abs_diff_eq!(with(more), base + by, epsilon = 1e-3);
    }
    let plate = caster(&with_slide(STRUT, "Caster plate", 10.0)) - caster(&car(STRUT));
    assert_abs_diff_eq!(plate, 1.0, epsilon = 0.01);
    let rake = caster(&with_slide(TOURING_CAR, "Rake", 0.5)) - caster(&car(TOURING_CAR));
    assert_abs_diff_eq!(rake, -0.5, epsilon = 0.01);
}

#[test]
fn a_camber_plate_leans_wheel_and_steering_axis_alike() {
    let moved = left_figures(&with_slide(STRUT, "Camber plate", 10.0));
    let base = left_figures(&car(STRUT));
    let camber = (moved.camber - base.camber).to_degrees();
    let inclination = (moved.inclination - base.inclination).to_degrees();
    assert_abs_diff_eq!(camber, -1.0, epsilon = 0.01);
    assert_abs_diff_eq!(inclination, 1.0, epsilon = 0.02);
}

#[test]
fn a_drive_further_back_makes_the_wheels_differ_more() {
    let mean = 15.0;
    for (name, adjustment, rear, front) in [
        (TOURING_CAR, "Crank station", "rear holes", "front holes"),
        (FORMULA_CAR, "Rack station", "rear holes", "front holes"),
    ] {
        let with = |option: &str| difference_at_mean(&with_option(name, adjustment, option), mean);
        assert!(with(rear) > with(front) + 0.05, "{name}");
    }
    for (name, hole) in [(TOURING_CAR, "inner hole"), (BUGGY, "inner hole")] {
        let inner = difference_at_mean(&with_option(name, "Steering-arm hole", hole), mean);
        assert!(inner > difference_at_mean(&car(name), mean) + 0.2, "{name}");
    }
}

#[test]
fn longer_drive_levers_and_shorter_steering_arms_steer_faster() {
    for (name, adjustment, slow, fast) in [
        (TOURING_CAR, "Servo-arm hole", "lower hole", "upper hole"),
        (TOURING_CAR, "Crank rod hole", "near hole", "far hole"),
        (BUGGY, "Servo-arm hole", "lower hole", "upper hole"),
        (BUGGY, "Crank drag-link hole", "far hole", "near hole"),
        (KART, "Column-lever hole", "near holes", "far holes"),
        (KART, "Steering-arm hole", "long hole", "short hole"),
        (FORMULA_CAR, "Steering-arm hole", "long hole", "short hole"),
    ] {
        let inner = |option: &str| {
            let setup = with_option(name, adjustment, option);
            let input = 0.5 * setup.car.ranges.input.1;
            angles_at(&assembled(&setup), input).inner
        };
        assert!(inner(fast) > 1.05 * inner(slow), "{name}, {adjustment}");
    }
}

/// Raising the inner end of the rods and lowering their outer end do the same to bump steer.
#[test]
fn rod_ends_trade_height_for_bump_steer() {
    for (name, inner, outer, step) in [
        (TOURING_CAR, "Inner rod spacers", "Outer rod spacers", 1.0),
        (BUGGY, "Cross-link packing", "Outer rod spacers", 1.0),
        (FORMULA_CAR, "Rack height packing", "Outer rod spacers", 3.0),
    ] {
        let base = car(name);
        let stepped = |names: &[&str]| {
            let mut setup = base.clone();
            for adjustment in names {
                let index = common::index_of(&setup, adjustment);
                let Chosen::Stack(total) = setup.value(index) else {
                    panic!("{adjustment} is a stack");
                };
                setup.set(index, Chosen::Stack(total + step)).unwrap();
            }
            bump_steer(&setup) - bump_steer(&base)
        };
        let raised_inner = stepped(&[inner]);
        let raised_outer = stepped(&[outer]);
        assert!(raised_inner > 0.0 && raised_outer < 0.0, "{name}");
        let both = stepped(&[inner, outer]).abs();
        assert!(both < 0.4 * raised_inner, "{name}: {both}");
    }
}

#[test]
fn cross_link_holes_off_the_cranks_line_make_left_and_right_turns_differ() {
    let unlike = |setup: &Setup| {
        let assembly = assembled(setup);
        let inner = |input: f64| angles_at(&assembly, input).inner.to_degrees();
        (inner(25.0) - inner(-25.0)).abs()
    };
    let outer = unlike(&car(TOURING_CAR));
    let inner = unlike(&with_option(TOURING_CAR, "Cross-link hole", "inner hole"));
    assert!(inner > outer + 0.5, "{inner} against {outer}");
}

#[test]
fn spacers_between_hub_and_wheel_add_to_the_scrub_radius() {
    for (name, adjustment, total, base) in [
        (TOURING_CAR, "Axle spacers", 1.0, 0.0),
        (BUGGY, "Axle spacers", 2.0, 0.0),
        (KART, "Hub spacers", 40.0, 10.0),
        (FORMULA_CAR, "Wheel spacers", 8.0, 0.0),
        (STRUT, "Wheel spacers", 8.0, 0.0),
    ] {
        let scrub = |setup: &Setup| left_figures(setup).scrub_radius;
        let more = scrub(&with_stack(name, adjustment, total)) - scrub(&car(name));
        assert_abs_diff_eq!(more, total - base, epsilon = 0.05);
    }
}

#[test]
fn washers_under_a_karts_spindles_lower_its_frame_and_leave_its_wheels_on_the_ground() {
    let over_ground =
        |setup: &Setup| left_figures(setup).contact_centre.z + setup_ride_height(setup);
    let base = car(KART);
    for total in [0.0, 10.0] {
        let setup = with_stack(KART, "Spindle washers", total);
        assert_abs_diff_eq!(over_ground(&setup), over_ground(&base), epsilon = 0.05);
        let lower = setup_ride_height(&base) - setup_ride_height(&setup);
        assert_relative_eq!(lower, 0.96 * (total - 4.0), epsilon = 1e-9);
    }
}

fn setup_ride_height(setup: &Setup) -> f64 {
    assembled(setup).axle().road.ride_height
}
