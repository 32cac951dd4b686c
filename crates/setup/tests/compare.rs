//! What to change to come from one setup to another.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_abs_diff_eq;
use common::{base_car, choose, choose_option, sliding_car};
use steerloft_setup::adjustment::{Place, Unit};
use steerloft_setup::car::Position;
use steerloft_setup::compare::{Work, compare};
use steerloft_setup::setup::{Chosen, Rods};

#[test]
fn a_setup_does_not_differ_from_itself_nor_by_its_record() {
    let setup = base_car();
    let mut noted = setup.clone();
    noted.record.notes = "wet".to_owned();
    assert!(compare(&setup, &noted).is_empty());
}

#[test]
fn parts_to_change_come_in_the_order_of_places() {
    let from = base_car();
    let mut to = from.clone();
    choose(&mut to, "Outer rod spacers", Chosen::Stack(2.5));
    choose(&mut to, "Servo station", Chosen::Slide(-2.0));
    choose_option(&mut to, "Steering-arm hole", "rearward hole");
    let comparison = compare(&from, &to);
    let places: Vec<Place> = comparison.adjustments.iter().map(|one| one.place).collect();
    assert_eq!(places, [Place::Servo, Place::TieRod, Place::Knuckle]);
    let words: Vec<String> = comparison
        .adjustments
        .iter()
        .map(|one| format!("{}: {one}", one.name))
        .collect();
    assert_eq!(
        words,
        [
            "Servo station: from 0 mm to -2 mm, by -2 mm",
            "Outer rod spacers: from 3 mm to 2.5 mm, put in 0.5 mm, take out 1 mm, in 2 places",
            "Steering-arm hole: rearward hole instead of forward hole",
        ]
    );
    assert_eq!(
        comparison.adjustments[0].work,
        Work::Slide {
            by: -2.0,
            unit: Unit::Millimetres
        }
    );
    assert!(comparison.data.is_empty() && comparison.only_in_one.is_empty());
}

#[test]
fn pieces_that_stay_are_not_touched() {
    let mut from = base_car();
    let mut to = base_car();
    choose(&mut from, "Outer rod spacers", Chosen::Stack(2.0));
    choose(&mut to, "Outer rod spacers", Chosen::Stack(4.5));
    let difference = compare(&from, &to).adjustments.remove(0);
    assert_eq!(
        difference.work,
        Work::Spacers {
            add: vec![1.0, 1.0, 0.5],
            remove: Vec::new(),
            places: Some(2),
        }
    );
    assert_eq!(
        difference.to_string(),
        "from 2 mm to 4.5 mm, put in 2 × 1 mm and 0.5 mm, in 2 places"
    );
}

#[test]
fn rods_are_told_in_turns() {
    let mut from = base_car();
    let mut to = base_car();
    from.rods = Rods::FixedLength(42.0);
    to.rods = Rods::FixedLength(41.5);
    let rods = compare(&from, &to).rods.unwrap();
    let left = rods.lengths.unwrap().left;
    // Opposite threads of 0.5 mm pitch: half a turn for half a millimetre.
    assert_abs_diff_eq!(left.turns.unwrap(), -0.5, epsilon = 1e-9);
    assert_abs_diff_eq!(left.gap, 41.5 - 14.0, epsilon = 1e-9);
}

#[test]
fn toe_held_after_a_change_turns_the_rods_too() {
    let from = base_car();
    let mut to = base_car();
    choose_option(&mut to, "Steering-arm hole", "rearward hole");
    let rods = compare(&from, &to).rods.unwrap();
    assert_eq!(rods.from, rods.to);
    let left = rods.lengths.unwrap().left;
    assert!(left.to < left.from - 3.0);
}

#[test]
fn other_data_is_told_field_by_field() {
    let from = base_car();
    let mut to = base_car();
    to.car.left.steering_arm = Position(-12.0, 50.2, 22.3);
    to.car.wheelbase = 199.0;
    to.car.servo.as_mut().unwrap().spline = None;
    to.car.adjustments[2].notes = "another".to_owned();
    let told: Vec<(String, Option<String>, Option<String>)> = compare(&from, &to)
        .data
        .into_iter()
        .map(|one| (one.at, one.from, one.to))
        .collect();
    let text = |text: &str| Some(text.to_owned());
    assert!(told.contains(&(
        "left.steering_arm".to_owned(),
        text("(-11.8, 50.2, 22.3)"),
        text("(-12.0, 50.2, 22.3)")
    )));
    assert!(told.contains(&("wheelbase".to_owned(), text("198.0"), text("199.0"))));
    assert!(
        told.iter()
            .any(|(at, _, to)| at == "servo.spline" && to.is_none())
    );
    assert!(
        told.iter()
            .any(|(at, _, to)| at == "adjustments[\"Servo station\"].notes"
                && *to == text("another"))
    );
    assert_eq!(told.len(), 4);
}

#[test]
fn cars_of_another_kind_are_compared_as_far_as_they_go() {
    let comparison = compare(&base_car(), &sliding_car());
    assert!(
        comparison
            .only_in_one
            .iter()
            .any(|one| one.name == "Upper arm length" && one.in_first)
    );
    assert!(
        comparison
            .data
            .iter()
            .any(|one| one.at == "left.suspension")
    );
}
