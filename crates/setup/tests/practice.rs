//! Rules of the trade, on the supplied pan car with swinging upper arms.
//!
//! Every rule here is common practice, no source. Each is checked in the form in which true geometry shows it;
//! where that is narrower than the rule as it is told, the test says so and measures by how much.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::{assert_abs_diff_eq, assert_relative_eq};
use common::axle::{
    angles_at, assembled, bump_steer, bump_steer_at, difference_at_mean, pose_at, steer,
    sweep_of_rod,
};
use common::{base_car, choose, choose_option, index_of};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::Side;

const HOLE: &str = "Steering-arm hole";
const STATION: &str = "Servo station";
const OUTER_SPACERS: &str = "Outer rod spacers";
const PACKING: &str = "Servo height packing";
const WHEELBASE: &str = "Front wheelbase";

/// Mean steer, degrees, from the first of it to near lock.
const MEANS: [f64; 4] = [3.0, 8.0, 15.0, 22.0];

fn with_hole(option: &str) -> Setup {
    let mut setup = base_car();
    choose_option(&mut setup, HOLE, option);
    setup
}

fn with_station(setup: &Setup, station: f64) -> Setup {
    let mut setup = setup.clone();
    choose(&mut setup, STATION, Chosen::Slide(station));
    setup
}

fn with_stack(setup: &Setup, name: &str, change: f64) -> Setup {
    let mut setup = setup.clone();
    let index = index_of(&setup, name);
    let Chosen::Stack(total) = setup.value(index) else {
        panic!("\"{name}\" is a stack");
    };
    setup.set(index, Chosen::Stack(total + change)).unwrap();
    setup
}

/// Common practice, no source: of two steering-arm holes the rearward one, whose rod is about 5 mm shorter, gives
/// more difference between inner and outer wheel at the same mean steer; the forward one gives less.
#[test]
fn the_rearward_hole_gives_more_difference_between_the_wheels() {
    let (forward, rearward) = (with_hole("forward hole"), with_hole("rearward hole"));
    let shorter = assembled(&forward).rod_lengths().left - assembled(&rearward).rod_lengths().left;
    assert_abs_diff_eq!(shorter, 5.0, epsilon = 1.0);
    for mean in MEANS {
        assert!(
            difference_at_mean(&rearward, mean) > 1.2 * difference_at_mean(&forward, mean),
            "at a mean of {mean} degrees"
        );
    }
}

/// Common practice, no source: moving front axle and servo together by 2 mm leaves the curves of inner and outer
/// angle as they were; moving the axle alone does not.
#[test]
fn axle_and_servo_moved_together_leave_the_curves_as_they_were() {
    let base = base_car();
    let mut axle_alone = base.clone();
    choose_option(&mut axle_alone, WHEELBASE, "long");
    let together = with_station(&axle_alone, 2.0);
    for input in [-20.0, -5.0, 5.0, 12.0, 20.0] {
        let angles = |setup: &Setup| {
            let angles = angles_at(&assembled(setup), input);
            (angles.inner.to_degrees(), angles.outer.to_degrees())
        };
        let (was, is, alone) = (angles(&base), angles(&together), angles(&axle_alone));
        assert_relative_eq!(is.0, was.0, epsilon = 1e-9);
        assert_relative_eq!(is.1, was.1, epsilon = 1e-9);
        let moved = (alone.0 - alone.1) - (was.0 - was.1);
        assert!(
            moved.abs() > 0.04 * (was.0 - was.1),
            "at {input} degrees: {moved}"
        );
    }
}

/// Common practice, no source: the sweep of the rods sets how much the servo's place adds to the difference
/// between the wheels, so with the rearward hole the servo sits further back to keep the sweep.
///
/// The rule's limits: sweep is one of three sources. The steering arm's own angle and the circle of the servo arm
/// add to it, and the rearward hole changes the first. So at equal sweep what a step of the servo does is nearly
/// the same with both holes, but the whole difference between the wheels is not: that is what the hole is for.
#[test]
fn the_same_sweep_puts_the_servo_further_back_with_the_rearward_hole() {
    let (forward, rearward) = (with_hole("forward hole"), with_hole("rearward hole"));
    let sweep = sweep_of_rod(&forward);
    let station_of_same_sweep = (-10..=10)
        .map(|half_steps| f64::from(half_steps) / 2.0)
        .min_by(|a, b| {
            let miss =
                |&station: &f64| (sweep_of_rod(&with_station(&rearward, station)) - sweep).abs();
            miss(a).total_cmp(&miss(b))
        })
        .unwrap();
    assert!(
        (-5.0..=-2.0).contains(&station_of_same_sweep),
        "{station_of_same_sweep}"
    );
    // A servo further back adds difference with either hole, by nearly the same for a millimetre.
    let mean = 20.0;
    let per_millimetre = |setup: &Setup, station: f64| {
        difference_at_mean(&with_station(setup, station - 0.5), mean)
            - difference_at_mean(&with_station(setup, station + 0.5), mean)
    };
    let with_forward = per_millimetre(&forward, 0.0);
    let with_rearward = per_millimetre(&rearward, station_of_same_sweep);
    assert!(with_forward > 0.0 && with_rearward > 0.0);
    assert_relative_eq!(with_rearward / with_forward, 1.0, epsilon = 0.35);
    // What no servo station can undo is the arm's own angle.
    let at_same_sweep = with_station(&rearward, station_of_same_sweep);
    let from_the_hole =
        difference_at_mean(&at_same_sweep, mean) - difference_at_mean(&forward, mean);
    assert!(from_the_hole > 10.0 * with_forward, "{from_the_hole}");
}

/// Common practice, no source: a servo that sits 1 mm lower, with 1 mm fewer spacers at the outer balls, leaves bump
/// steer as it was, within what the tilt of the rod explains. Either change alone does not.
#[test]
fn a_lower_servo_and_fewer_outer_spacers_leave_bump_steer_as_it_was() {
    let base = base_car();
    let lower_servo = with_stack(&base, PACKING, -1.0);
    let fewer_spacers = with_stack(&base, OUTER_SPACERS, -1.0);
    let both = with_stack(&lower_servo, OUTER_SPACERS, -1.0);
    let change = |setup: &Setup| bump_steer(setup) - bump_steer(&base);
    assert!(change(&lower_servo) < -0.08, "{}", change(&lower_servo));
    assert!(change(&fewer_spacers) > 0.08, "{}", change(&fewer_spacers));
    assert!(
        change(&both).abs() < 0.15 * change(&lower_servo).abs(),
        "{}",
        change(&both)
    );
}

/// Common practice, no source: fewer spacers at the outer balls give more bump steer; 2 to 4 mm is the usual range.
#[test]
fn fewer_outer_spacers_give_more_bump_steer() {
    let with_total = |total: f64| {
        let mut setup = base_car();
        choose(&mut setup, OUTER_SPACERS, Chosen::Stack(total));
        bump_steer(&setup).abs()
    };
    let gradients = [0.0, 1.0, 2.0, 3.0].map(with_total);
    assert!(
        gradients.is_sorted_by(|more, less| more > less),
        "{gradients:?}"
    );
    let usual = [2.0, 2.5, 3.0, 3.5, 4.0].map(with_total);
    assert!(usual.iter().all(|gradient| *gradient < 0.3), "{usual:?}");
    let least = (0..=10).map(|halves| f64::from(halves) / 2.0);
    let least = least
        .min_by(|a, b| with_total(*a).total_cmp(&with_total(*b)))
        .unwrap();
    assert!((2.0..=4.0).contains(&least), "{least}");
}

/// Common practice, no source: bump steer shows from the first degrees of steering, while the Ackermann difference
/// grows with the square of the angle and matters near lock.
#[test]
fn bump_steer_comes_at_once_and_the_ackermann_difference_near_lock() {
    let base = base_car();
    // Twice the steer, four times the difference.
    let quadratic = difference_at_mean(&base, 8.0) / difference_at_mean(&base, 4.0);
    assert_relative_eq!(quadratic, 4.0, epsilon = 0.2);
    // Bump steer changes from straight ahead on, in proportion to the input.
    let change = |input: f64| bump_steer_at(&base, input) - bump_steer(&base);
    assert_relative_eq!(change(4.0) / change(2.0), 2.0, epsilon = 0.1);
    // Two degrees of steer: the toe of 1 mm of bump outweighs the difference; near lock it is the other way.
    let two_degrees = bump_steer_at(&base, 1.6).abs();
    assert!(two_degrees > 2.0 * difference_at_mean(&base, 2.0));
    let near_lock = bump_steer_at(&base, 18.0).abs();
    assert!(near_lock < 0.2 * difference_at_mean(&base, 24.0));
}

/// Common practice, no source: an arm in the middle of the chassis centre line steers both sides alike, one off
/// centre does not.
#[test]
fn an_arm_on_the_centre_line_steers_both_sides_alike() {
    let base = base_car();
    let mut off_centre = base.clone();
    choose(&mut off_centre, "Servo sideways", Chosen::Slide(2.0));
    let unlike = |setup: &Setup, input: f64| {
        let assembly = assembled(setup);
        let left_turn = steer(&assembly, &pose_at(&assembly, input), Side::Left);
        let right_turn = steer(&assembly, &pose_at(&assembly, -input), Side::Right);
        (left_turn + right_turn).abs()
    };
    for input in [2.0, 10.0, 20.0] {
        assert!(unlike(&base, input) < 1e-9, "at {input} degrees");
        assert!(unlike(&off_centre, input) > 1e-3, "at {input} degrees");
    }
    assert!(unlike(&off_centre, 20.0) > 0.1);
}
