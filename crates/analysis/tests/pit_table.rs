//! Advice from what was felt, computed on the very car.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::{cars, pan_car};
use steerloft_analysis::pit_table::{Advice, CAUTION, Direction, PitFigure, Symptom, advice};

fn of_figure(found: &[Advice], figure: PitFigure) -> &Advice {
    found
        .iter()
        .find(|one| one.aim.figure == figure)
        .unwrap_or_else(|| panic!("{} is aimed at", figure.label()))
}

/// Common practice, no source: fewer spacers at the outer balls give more bump steer and more steering on entry, used at
/// lower grip; more of them are used at higher grip.
#[test]
fn fewer_outer_spacers_are_advised_for_a_car_that_pushes_at_entry() {
    let setup = pan_car();
    let found = advice(&setup, Symptom::PushesAtEntry).unwrap();
    let bump_steer = of_figure(&found, PitFigure::BumpSteer);
    assert_eq!(bump_steer.aim.direction, Direction::More);
    assert!(bump_steer.aim.tendency.contains("lower grip"));
    let outer = bump_steer
        .tries
        .iter()
        .find(|one| one.name == "Outer rod spacers")
        .unwrap();
    assert_eq!((outer.from.as_str(), outer.to.as_str()), ("3 mm", "2.5 mm"));
    assert!(outer.effect > 0.0);
    let calm = advice(&setup, Symptom::LiftsOver).unwrap();
    let taller = of_figure(&calm, PitFigure::BumpSteer)
        .tries
        .iter()
        .find(|one| one.name == "Outer rod spacers")
        .unwrap();
    assert_eq!(taller.to, "3.5 mm");
}

/// Common practice, no source: more Ackermann is easier to drive and less inclined to lift the car over on high grip, less
/// gives more steering near lock.
#[test]
fn ackermann_goes_up_against_lifting_and_down_for_steering_near_lock() {
    let setup = pan_car();
    for (symptom, sign) in [
        (Symptom::LiftsOver, 1.0),
        (Symptom::NervousAtEntry, 1.0),
        (Symptom::LacksSteeringNearLock, -1.0),
    ] {
        let found = advice(&setup, symptom).unwrap();
        let share = of_figure(&found, PitFigure::AckermannShare);
        assert!(!share.tries.is_empty());
        assert!(share.tries.iter().all(|one| one.effect * sign > 0.0));
    }
}

#[test]
fn effects_are_those_of_the_setup_that_is_offered() {
    let setup = pan_car();
    for one in advice(&setup, Symptom::PushesInTheMiddle).unwrap() {
        let now = one.now.unwrap();
        assert!(
            one.tries
                .is_sorted_by(|strong, weak| strong.effect.abs() >= weak.effect.abs())
        );
        for attempt in &one.tries {
            let then = one.aim.figure.of(&attempt.setup).unwrap().unwrap();
            assert!((then - now - attempt.effect).abs() < 1e-12);
            assert!(attempt.effect * one.aim.direction.sign() > 0.0);
        }
    }
}

#[test]
fn every_symptom_has_advice_that_calls_itself_a_tendency() {
    for symptom in Symptom::ALL {
        assert!(!symptom.label().is_empty());
        for aim in symptom.aims() {
            assert!(!aim.tendency.is_empty());
        }
        let found = advice(&pan_car(), symptom).unwrap();
        assert!(found.iter().any(|one| !one.tries.is_empty()), "{symptom:?}");
    }
    assert!(CAUTION.contains("tendency") && CAUTION.contains("no promise"));
}

#[test]
fn cars_without_a_figure_say_so() {
    let kart = cars().nth(4).unwrap();
    assert!(kart.car.name.starts_with("Kart"));
    let found = advice(&kart, Symptom::UpsetByBumps).unwrap();
    let bump_steer = of_figure(&found, PitFigure::BumpSteer);
    assert_eq!(bump_steer.now, None);
    assert!(bump_steer.tries.is_empty());
}
