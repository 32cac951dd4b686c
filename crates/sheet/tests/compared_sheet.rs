//! The setup sheet beside a reference: what differs is marked, and only that.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;
mod paper;

use paper::{all_words, all_writing, check_nothing_overlaps};
use steerloft_analysis::curves::CurveKind;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::{Ink, Outline, Page, Paper, SheetRequest, setup_sheet};

fn compared(setup: &Setup, reference: &Setup) -> Vec<Page> {
    setup_sheet(&SheetRequest {
        setup,
        reference: Some(reference),
        paper: Paper::A4,
        curves: &[],
    })
    .unwrap()
}

/// The setup with every adjustment one step up where the car can still be assembled.
fn one_step_up(setup: &Setup) -> Setup {
    let mut changed = setup.clone();
    for index in 0..setup.car.adjustments.len() {
        let adjustment = &setup.car.adjustments[index];
        let value = adjustment.step_from(&setup.value(index), 1);
        let mut trial = changed.clone();
        if trial.set(index, value).is_ok()
            && steerloft_solver::Assembly::new(&steerloft_setup::layout::front_axle(&trial)).is_ok()
        {
            changed = trial;
        }
    }
    changed
}

#[test]
fn nothing_overlaps_beside_a_reference() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        let changed = one_step_up(&setup);
        for paper in [Paper::A4, Paper::Letter] {
            let pages = setup_sheet(&SheetRequest {
                setup: &changed,
                reference: Some(&setup),
                paper,
                curves: &CurveKind::ALL,
            })
            .unwrap();
            for page in &pages {
                check_nothing_overlaps(page);
            }
        }
    }
}

#[test]
fn the_writing_of_a_sheet_is_as_it_was() {
    let setup = cars::pan_car();
    let changed = one_step_up(&setup);
    insta::assert_snapshot!(all_writing(&compared(&changed, &setup)[0]));
}

#[test]
fn what_differs_from_the_reference_is_marked_with_its_old_value() {
    let reference = cars::pan_car();
    let mut setup = reference.clone();
    let index = 4;
    assert_eq!(setup.car.adjustments[index].name, "Steering-arm hole");
    setup
        .set(index, Chosen::Choice("front hole".to_owned()))
        .unwrap();
    let page = &compared(&setup, &reference)[0];
    let bold_texts: Vec<String> = page
        .placed
        .iter()
        .flat_map(|placed| &placed.drawing.shapes)
        .filter_map(|shape| match &shape.outline {
            Outline::Text(text) if text.bold => Some(text.content.clone()),
            _ => None,
        })
        .collect();
    let text = all_writing(page);
    for expected in ["Steering-arm hole", "front hole", "Ball to ball, left"] {
        assert!(bold_texts.iter().any(|bold| bold == expected), "{expected}");
    }
    for expected in [
        "was rear hole",
        "Compared with",
        "ref. left",
        "Carpet, first run",
    ] {
        assert!(text.contains(expected), "{expected} in {text}");
    }
    // What is as it was is not marked.
    assert!(!bold_texts.iter().any(|bold| bold == "Servo packing"));
    assert!(!text.contains("was 1 mm"));
    // Both setups' curves are drawn, the reference's in its own ink.
    let inks: Vec<Ink> = page.placed.iter().map(|placed| placed.ink).collect();
    assert!(inks.iter().any(|ink| matches!(ink, Ink::Curve(_))));
    assert!(inks.iter().any(|ink| matches!(ink, Ink::ReferenceCurve(_))));
}

#[test]
fn a_setup_is_no_different_from_itself() {
    let setup = cars::pan_car();
    let text = all_writing(&compared(&setup, &setup)[0]);
    assert!(!text.contains("was "), "{text}");
}

#[test]
fn a_reference_of_another_car_says_what_it_does_not_have() {
    let setup = cars::pan_car();
    let other = SUPPLIED.last().unwrap().setup();
    let pages = compared(&setup, &other);
    assert!(all_words(&pages).contains("not on the reference"));
    pages.iter().for_each(check_nothing_overlaps);
}

#[test]
fn the_same_sheet_comes_out_each_time() {
    let setup = cars::pan_car();
    let reference = one_step_up(&setup);
    assert_eq!(compared(&setup, &reference), compared(&setup, &reference));
}
