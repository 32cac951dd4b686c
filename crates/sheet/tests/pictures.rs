//! Single views and charts as pictures of their own.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;
mod paper;

use paper::{EXTREME_LETTERS, all_words, check_nothing_overlaps, extreme, views};
use steerloft_analysis::curves::CurveKind;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::{Ink, Page, View, ViewPicture, picture_of_chart, picture_of_view, svg};

fn picture(setup: &Setup, view: View, input: f64) -> Page {
    let car = cars::posed(setup.clone(), input, 0.0);
    picture_of_view(&ViewPicture {
        setup: &car.setup,
        layout: &car.layout,
        pose: &car.pose,
        reference: None,
        view,
    })
}

#[test]
fn a_view_carries_name_title_pose_and_scale() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        for view in View::ALL {
            let page = picture(&setup, view, 10.0);
            check_nothing_overlaps(&page);
            assert_eq!(views(&page).len(), 1);
            let words = all_words(&[page]);
            for expected in ["Base setup", view.title(), "steering input +10.0", "Scale "] {
                assert!(words.contains(expected), "{expected} in {words}");
            }
        }
    }
}

#[test]
fn a_view_at_rest_says_nothing_of_a_pose() {
    let words = all_words(&[picture(&cars::pan_car(), View::Top, 0.0)]);
    assert!(!words.contains("steering input"), "{words}");
}

#[test]
fn a_reference_is_drawn_over_the_car_in_its_own_ink() {
    let now = cars::posed(cars::pan_car(), 0.0, 0.0);
    let old = cars::posed(cars::pan_car(), 20.0, 0.0);
    let page = picture_of_view(&ViewPicture {
        setup: &now.setup,
        layout: &now.layout,
        pose: &now.pose,
        reference: Some((&old.layout, &old.pose)),
        view: View::Top,
    });
    check_nothing_overlaps(&page);
    let [current, reference] = views(&page)[..] else {
        panic!("two drawings");
    };
    assert_eq!((current.ink, reference.ink), (Ink::Current, Ink::Reference));
    assert_eq!(current.at.map(f64::to_bits), reference.at.map(f64::to_bits));
    assert!(all_words(&[page]).contains("the reference dashed"));
}

#[test]
fn a_chart_carries_name_title_axes_and_legend() {
    let car = cars::pan_car();
    let mut other = car.clone();
    other.record.name = "Before".to_owned();
    for kind in CurveKind::ALL {
        let page = picture_of_chart(&car, Some(&other), kind).unwrap();
        check_nothing_overlaps(&page);
        roxmltree::Document::parse(&svg::document(&page)).unwrap();
        let words = all_words(&[page]);
        for expected in ["Carpet, first run", "1:12 pan car", "Before", kind.title()] {
            assert!(words.contains(expected), "{expected} in {words}");
        }
    }
    let page = picture_of_chart(&car, None, CurveKind::ToeTravel).unwrap();
    let words = all_words(&[page]);
    for expected in [
        "toe, deg (toe-in +)",
        "wheel travel, mm (bump +)",
        "left",
        "right",
    ] {
        assert!(words.contains(expected), "{expected} in {words}");
    }
}

#[test]
fn a_chart_that_a_car_does_not_have_says_why() {
    let page = picture_of_chart(&cars::kart(), None, CurveKind::ToeTravel).unwrap();
    check_nothing_overlaps(&page);
    assert!(all_words(&[page]).contains("This suspension has no travel"));
}

#[test]
fn extreme_names_do_not_overlap() {
    for letters in EXTREME_LETTERS {
        let setup = extreme(cars::pan_car(), letters, 3);
        check_nothing_overlaps(&picture(&setup, View::Side, 5.0));
        let chart = picture_of_chart(&setup, Some(&setup), CurveKind::InnerOuter);
        check_nothing_overlaps(&chart.unwrap());
    }
}
