//! Teeth, trim, centring, end points and the fit of the body.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_abs_diff_eq;
use common::{car, cars, choose, pan_car};
use steerloft_analysis::servo::{
    end_points_for_equal_circles, end_points_for_lock, equal_lock_centre, lock_asymmetry,
    servo_fit, teeth_near,
};
use steerloft_setup::car::Spline;
use steerloft_setup::setup::Chosen;
use steerloft_solver::Side;

fn spline(teeth: u32) -> Spline {
    Spline {
        teeth,
        tooth: 0,
        stands_at: 0.0,
        trim: 0.0,
    }
}

/// Steps of 360/N: 15.6522, 15 and 14.4 degrees for 23, 24 and 25 teeth (arithmetic).
#[test]
fn the_nearest_tooth_comes_first_and_the_next_by_what_they_leave() {
    // 20 degrees on 25 teeth: tooth 1 stands at 14.4 and leaves -5.6, tooth 2 at 28.8 leaves 8.8, tooth 0 leaves -20.
    let action = pan_car().car.servo.unwrap().action.unwrap();
    let teeth = teeth_near(&spline(25), Some(&action), 20.0, 2);
    let errors: Vec<(i32, f64)> = teeth
        .iter()
        .map(|tooth| (tooth.tooth, tooth.error))
        .collect();
    assert_eq!(errors.len(), 3);
    for (found, (tooth, error)) in errors.iter().zip([(1, -5.6), (2, 8.8), (0, -20.0)]) {
        assert_eq!(found.0, tooth);
        assert_abs_diff_eq!(found.1, error, epsilon = 1e-9);
    }
    // 450 microseconds for 50 degrees: 9 a degree.
    assert_abs_diff_eq!(teeth[0].trim, 5.6, epsilon = 1e-9);
    assert_abs_diff_eq!(teeth[0].trim_microseconds.unwrap(), 50.4, epsilon = 1e-9);
    for (count, step) in [(23, 15.6522), (24, 15.0), (25, 14.4)] {
        let teeth = teeth_near(&spline(count), None, 0.0, 1);
        assert_abs_diff_eq!(teeth[0].error, 0.0);
        assert_abs_diff_eq!(teeth[1].error.abs(), step, epsilon = 1e-4);
        assert_eq!(teeth[1].trim_microseconds, None);
    }
}

/// A two-sided arm turned by half a turn comes to stand between teeth where their number is odd: 7.2 degrees of 25; on 24
/// it stands as before. Argument published in a maker's questions and answers (name withheld); numbers are arithmetic.
#[test]
fn half_a_turn_of_a_two_sided_arm_is_half_a_tooth_on_an_odd_spline() {
    for (count, left_over) in [(25, 7.2), (24, 0.0)] {
        let nearest = teeth_near(&spline(count), None, 180.0, 0)[0];
        assert_abs_diff_eq!(nearest.error.abs(), left_over, epsilon = 1e-9);
    }
}

#[test]
fn no_tooth_leaves_more_than_half_a_step() {
    for wanted in -40..40 {
        let wanted = f64::from(wanted) * 1.3;
        let reading = Spline {
            stands_at: 3.7,
            ..spline(24)
        };
        let tooth = teeth_near(&reading, None, wanted, 0)[0];
        assert!(tooth.error.abs() <= 7.5 + 1e-9, "{wanted}: {}", tooth.error);
        assert_abs_diff_eq!(tooth.stands_at + tooth.trim, wanted, epsilon = 1e-9);
    }
}

#[test]
fn a_centred_arm_locks_alike_and_one_off_centre_does_not() {
    let setup = pan_car();
    let even = lock_asymmetry(&setup, 0.0, 15.0).unwrap();
    assert_abs_diff_eq!(even.difference(), 0.0, epsilon = 1e-9);
    let off = lock_asymmetry(&setup, 2.0, 15.0).unwrap();
    assert!(off.left > even.left && off.right < even.right);
    assert!(off.difference() > 2.0);
    let centre = equal_lock_centre(&setup, 15.0).unwrap().unwrap();
    assert_abs_diff_eq!(centre, 0.0, epsilon = 1e-9);
}

#[test]
fn a_servo_off_the_centre_line_has_another_centre_for_equal_locks() {
    let mut setup = pan_car();
    choose(&mut setup, "Servo sideways", Chosen::Slide(2.0));
    let uneven = lock_asymmetry(&setup, 0.0, 15.0).unwrap();
    assert!(uneven.difference().abs() > 0.05, "{uneven:?}");
    let centre = equal_lock_centre(&setup, 15.0).unwrap().unwrap();
    let even = lock_asymmetry(&setup, centre, 15.0).unwrap();
    assert_abs_diff_eq!(even.difference(), 0.0, epsilon = 1e-6);
}

#[test]
fn end_points_reach_the_lock_that_is_wanted() {
    for setup in cars() {
        let ends = end_points_for_lock(&setup, 15.0).unwrap();
        for side in Side::BOTH {
            let end = ends.get(side).unwrap();
            assert_abs_diff_eq!(end.lock, 15.0, epsilon = 1e-6);
            assert_eq!(end.share.is_some(), setup.car.servo.is_some());
        }
    }
    let ends = end_points_for_lock(&pan_car(), 15.0).unwrap();
    let (left, right) = (ends.left.unwrap(), ends.right.unwrap());
    assert_abs_diff_eq!(left.throw, right.throw, epsilon = 1e-6);
    assert_abs_diff_eq!(
        left.pulse.unwrap() - 1500.0,
        9.0 * left.input,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(left.share.unwrap(), 2.0 * left.throw, epsilon = 1e-9);
    assert_eq!(end_points_for_lock(&pan_car(), 89.0).unwrap().left, None);
}

#[test]
fn equal_circles_cut_back_the_tighter_side() {
    let mut setup = pan_car();
    choose(&mut setup, "Servo sideways", Chosen::Slide(2.0));
    let ends = end_points_for_equal_circles(&setup).unwrap();
    let (left, right) = (ends.left.unwrap(), ends.right.unwrap());
    assert_abs_diff_eq!(
        left.swept_radius.unwrap(),
        right.swept_radius.unwrap(),
        epsilon = 1e-4
    );
    let limits = setup.car.ranges.input;
    assert!(left.input < limits.1 - 1e-3 || right.input > limits.0 + 1e-3);
}

/// The pan car's case: x -37 to -11, y -24 to 10, z 1.25 to 13.75, read off its file; the battery line lies at x = -47 and
/// the nearer side of the mirrored posts at y = -32 and 32.
#[test]
fn the_body_is_measured_against_its_surroundings() {
    let fit = servo_fit(&pan_car()).unwrap();
    assert_abs_diff_eq!(fit.centre_line, -10.0, epsilon = 1e-9);
    assert_abs_diff_eq!(fit.over_chassis, 1.25, epsilon = 1e-9);
    let found: Vec<(&str, f64)> = fit
        .obstacles
        .iter()
        .map(|one| (one.obstacle.as_str(), one.clearance))
        .collect();
    assert_eq!(found[0], ("battery", 10.0));
    assert_eq!(found[1], ("servo post", 8.0));
    let mut back = pan_car();
    choose(&mut back, "Servo station", Chosen::Slide(-5.0));
    assert_abs_diff_eq!(
        servo_fit(&back).unwrap().obstacles[0].clearance,
        5.0,
        epsilon = 1e-9
    );
    assert_eq!(servo_fit(&car("kart.ron")), None);
}

#[test]
fn supplied_servos_fit_in_every_place_that_they_can_be_set_to() {
    for setup in cars() {
        for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
            for value in adjustment.values().unwrap_or_default() {
                let mut changed = setup.clone();
                changed.set(index, value).unwrap();
                for fit in servo_fit(&changed)
                    .into_iter()
                    .flat_map(|fit| fit.obstacles)
                {
                    assert!(
                        fit.clearance >= 0.0,
                        "{}, {}: {fit:?}",
                        setup.car.name,
                        adjustment.name
                    );
                }
            }
        }
    }
}
