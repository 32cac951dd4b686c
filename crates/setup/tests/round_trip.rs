//! Any sound setup is written as a text that reads as the same setup and is written the same again.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

use proptest::prelude::*;
use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::{Drive, Position, RightCorner, Suspension};
use steerloft_setup::check::check;
use steerloft_setup::file::{read_text, to_text};
use steerloft_setup::handles::point_of;
use steerloft_setup::layout::layout;
use steerloft_setup::limits::MAX_ADJUSTMENTS;
use steerloft_setup::setup::{Chosen, Felt, Laps, Record, Rods, Run, Setup};
use steerloft_setup::supplied::SUPPLIED;
use steerloft_solver::frame::{Side, mirrored_point};

/// Free text with everything a keyboard and a clipboard can bring.
fn free_text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[ -~äöüß°\\n\\r\\t\"\\\\#]{0,40}",
        "\\PC{0,20}",
        any::<String>()
    ]
}

fn name() -> impl Strategy<Value = String> {
    "[!-~äöü°][ -~äöü°]{0,20}[!-~äöü°]"
}

fn record() -> impl Strategy<Value = Record> {
    let runs = prop::collection::vec((free_text(), free_text()), 0..4);
    (free_text(), free_text(), free_text(), runs).prop_map(|(name, date, notes, runs)| Record {
        name,
        date,
        notes,
        runs: runs
            .into_iter()
            .map(|(date, notes)| Run {
                date,
                felt: Felt {
                    middle: notes.clone(),
                    ..Felt::default()
                },
                laps: Laps {
                    count: u32::try_from(notes.len()).ok(),
                    best: Some(12.345),
                    mean: None,
                },
                temperature: (!notes.is_empty()).then_some(21.5),
                notes,
                ..Run::default()
            })
            .collect(),
        ..Record::default()
    })
}

fn rods() -> impl Strategy<Value = Rods> {
    prop_oneof![
        (-5.0..5.0).prop_map(Rods::HoldToe),
        (20.0..60.0).prop_map(Rods::FixedLength),
        (20.0..60.0, 20.0..60.0).prop_map(|(left, right)| Rods::FixedLengths { left, right }),
    ]
}

/// A supplied car with other places, names and values.
fn setup() -> impl Strategy<Value = Setup> {
    let shifts = prop::collection::vec(-1.0..1.0, 8);
    let choices = prop::collection::vec(any::<prop::sample::Index>(), MAX_ADJUSTMENTS);
    let free = prop::collection::vec(0.0..1.0, MAX_ADJUSTMENTS);
    let parts = (
        0..SUPPLIED.len(),
        shifts,
        choices,
        free,
        rods(),
        record(),
        name(),
        any::<bool>(),
    );
    parts.prop_map(|(car, shifts, choices, free, rods, record, name, given)| {
        let mut setup = SUPPLIED[car].setup();
        let left = &mut setup.car.left;
        left.wheel_centre.1 += shifts[0];
        left.kingpin_upper.0 += shifts[1];
        left.steering_arm.2 += shifts[2];
        setup.car.wheelbase += 10.0 * shifts[3];
        setup.car.pitch = shifts[4];
        setup.car.name = name;
        setup.car.adjustments[0].name.push_str(" ü \"quoted\" \\ #");
        change_options(&mut setup, shifts[6], given);
        if given {
            give_right_corner(&mut setup, shifts[5]);
        }
        for index in 0..setup.car.adjustments.len() {
            let value = match setup.car.adjustments[index].values() {
                Some(values) => values[choices[index].index(values.len())].clone(),
                None => Chosen::Slide(free[index] - 0.5),
            };
            setup.set(index, value).unwrap();
        }
        setup.set_rods(rods).unwrap();
        setup.record = record;
        setup
    })
}

/// Gives the right corner separately, with its outer ball a little off the mirror image of the left one.
fn give_right_corner(setup: &mut Setup, shift: f64) {
    let mut right = setup.car.left.clone();
    let knuckle = [
        &mut right.wheel_centre,
        &mut right.kingpin_lower,
        &mut right.kingpin_upper,
        &mut right.steering_arm,
    ];
    for place in knuckle {
        mirror(place);
    }
    right.steering_arm.0 += shift;
    match &mut right.suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => {}
        Suspension::SwingingUpperArm {
            upper_hinge_front,
            upper_hinge_rear,
        } => [upper_hinge_front, upper_hinge_rear]
            .into_iter()
            .for_each(mirror),
        Suspension::DoubleWishbone {
            lower_hinge_front,
            lower_hinge_rear,
            upper_hinge_front,
            upper_hinge_rear,
        } => [
            lower_hinge_front,
            lower_hinge_rear,
            upper_hinge_front,
            upper_hinge_rear,
        ]
        .into_iter()
        .for_each(mirror),
        Suspension::Strut {
            lower_hinge_front,
            lower_hinge_rear,
            slide_direction,
        } => [lower_hinge_front, lower_hinge_rear]
            .into_iter()
            .chain(slide_direction)
            .for_each(mirror),
    }
    setup.car.right = RightCorner::Given(right);
}

fn mirror(place: &mut Position) {
    place.1 = -place.1;
}

/// Sets what only some cars can leave out or have.
fn change_options(setup: &mut Setup, shift: f64, given: bool) {
    if let Suspension::Strut {
        slide_direction: Some(slide),
        ..
    } = &mut setup.car.left.suspension
    {
        slide.1 += 0.05 * shift;
    }
    if let Drive::TwinCrank {
        drag_length,
        cross_length,
        ..
    } = &mut setup.car.drive
    {
        *drag_length = given.then_some(45.0 + shift);
        *cross_length = (!given).then_some(55.0 + shift);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_sound_setup_comes_back_as_it_was(setup in setup()) {
        prop_assert_eq!(check(&setup), Ok(()));
        let text = to_text(&setup);
        let again = read_text(&text);
        prop_assert_eq!(again.as_ref(), Ok(&setup));
        prop_assert_eq!(to_text(&again.unwrap()), text);
    }

    #[test]
    fn every_value_that_an_adjustment_offers_is_taken_and_given_back(setup in setup()) {
        for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
            for value in adjustment.values().unwrap_or_default() {
                let mut changed = setup.clone();
                changed.set(index, value.clone()).unwrap();
                prop_assert_eq!(changed.value(index), value.clone());
                prop_assert_eq!(adjustment.nearest(&value), value.clone());
                prop_assert!(adjustment.is_buildable(&value));
                if let Chosen::Stack(total) = value {
                    let pieces = adjustment.spacers_for(total).unwrap();
                    prop_assert!((pieces.iter().sum::<f64>() - total).abs() < 1e-9);
                    prop_assert!(pieces.is_sorted_by(|thick, thin| thick >= thin));
                }
            }
        }
    }

    #[test]
    fn a_mirrored_car_stays_mirror_symmetrical(setup in setup()) {
        let mut setup = setup;
        setup.car.right = RightCorner::Mirrored;
        let layout = layout(&setup);
        let corners = &layout.axle.corners;
        let mirrored = corners.get(Side::Left).mirrored().knuckle;
        let right = corners.get(Side::Right).knuckle;
        prop_assert!((mirrored.wheel_centre - right.wheel_centre).norm() < 1e-12);
        prop_assert!((mirrored.kingpin_upper - right.kingpin_upper).norm() < 1e-12);
        prop_assert!((mirrored.steering_arm - right.steering_arm).norm() < 1e-12);
        prop_assert!((mirrored.spin_axis - right.spin_axis).norm() < 1e-12);
        for point in PointName::ALL.into_iter().filter(|point| !point.is_shared()) {
            let (left, right) = (point_of(&layout, point, Side::Left), point_of(&layout, point, Side::Right));
            prop_assert_eq!(left.is_some(), right.is_some());
            let on_corner = !matches!(point, PointName::RodInner | PointName::CrankAxis | PointName::CrossBall);
            if let (true, Some(left), Some(right)) = (on_corner, left, right) {
                prop_assert!((mirrored_point(&left) - right).norm() < 1e-12, "{:?}", point);
            }
        }
    }
}
