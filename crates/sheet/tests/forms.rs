//! Sheets to be filled in by hand: boxes instead of values, points numbered and explained.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;
mod paper;

use paper::{EXTREME_LETTERS, all_words, all_writing, check_nothing_overlaps, extreme, views};
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::{Outline, Page, Paper, Role, blank_sheet, measuring_form};

const PAPERS: [Paper; 2] = [Paper::A4, Paper::Letter];

fn setups() -> impl Iterator<Item = Setup> {
    let own = [cars::pan_car(), cars::kart()];
    SUPPLIED.iter().map(Supplied::setup).chain(own)
}

fn supplied(file_name: &str) -> Setup {
    let car = SUPPLIED.iter().find(|car| car.file_name == file_name);
    car.unwrap().setup()
}

/// Empty rectangles.
fn boxes(pages: &[Page]) -> usize {
    let shapes = pages
        .iter()
        .flat_map(|page| &page.placed)
        .flat_map(|placed| &placed.drawing.shapes);
    shapes
        .filter(|shape| {
            let rectangle = matches!(&shape.outline, Outline::Polygon(points) if points.len() == 4);
            shape.role == Role::Rule && rectangle
        })
        .count()
}

#[test]
fn a_blank_sheet_has_a_box_for_every_adjustment_and_no_value() {
    for setup in setups() {
        for paper in PAPERS {
            let pages = blank_sheet(&setup, paper).unwrap();
            pages.iter().for_each(check_nothing_overlaps);
            assert_eq!(views(&pages[0]).len(), 2);
            let words = all_words(&pages);
            for adjustment in &setup.car.adjustments {
                assert!(words.contains(&adjustment.name), "{}", adjustment.name);
            }
            assert!(boxes(&pages) > setup.car.adjustments.len() + 4);
        }
    }
}

#[test]
fn a_blank_sheet_says_what_can_be_chosen() {
    let pages = blank_sheet(&cars::pan_car(), Paper::A4).unwrap();
    let words = all_words(&pages);
    for expected in [
        "−5 to 5 mm",
        "−1 to 2 mm, steps of 0.5",
        "up to 6 mm of 2 × 0.5, 2 × 1",
        "front hole / rear hole",
        "Toe (in +)",
        "Wheels at left lock",
        "Driver",
        "power off",
    ] {
        assert!(words.contains(expected), "{expected} in {words}");
    }
    // The record is for the pen.
    assert!(!words.contains("Carpet, first run"));
}

#[test]
fn a_measuring_form_numbers_every_point_in_every_view() {
    for setup in setups() {
        for paper in PAPERS {
            let pages = measuring_form(&setup, paper).unwrap();
            pages.iter().for_each(check_nothing_overlaps);
            assert_eq!(views(&pages[0]).len(), 3);
            let table = all_writing(&pages[1]);
            let is_number = |line: &&str| line.parse::<usize>().is_ok();
            let last: usize = table.lines().filter(is_number).count();
            let drawn = all_writing(&pages[0]);
            for number in 1..=last {
                let label = number.to_string();
                assert_eq!(
                    drawn.lines().filter(|line| **line == label).count(),
                    3,
                    "{label}"
                );
            }
            assert!(last >= 6, "{}", setup.car.name);
        }
    }
}

#[test]
fn a_measuring_form_asks_for_the_points_that_the_car_has() {
    let points =
        |file_name: &str| all_words(&measuring_form(&supplied(file_name), Paper::A4).unwrap());
    let pan_car = points("pan-car-swinging-arm.ron");
    for expected in [
        "x ahead of the design front-axle station",
        "z above the underside of the chassis plate",
        "Wheel centre",
        "centre of the ball in the chassis that the kingpin slides through",
        "Upper hinge, front",
        "Axis of the steering arm",
        "Ride height, mm",
        "Base values of the adjustments",
    ] {
        assert!(pan_car.contains(expected), "{expected} in {pan_car}");
    }
    assert!(!pan_car.contains("Lower hinge"));
    let touring = points("touring-car.ron");
    for expected in [
        "Lower ball",
        "Upper ball",
        "Cross-link ball",
        "Drag link, at the servo",
    ] {
        assert!(touring.contains(expected), "{expected} in {touring}");
    }
    assert!(points("formula-corner.ron").contains("Left ball, rack moved"));
    let strut = points("strut-corner.ron");
    assert!(strut.contains("Top mount") && strut.contains("Strut, second point"));
    let kart = points("kart.ron");
    assert!(!kart.contains("hinge"), "{kart}");
}

#[test]
fn extreme_contents_do_not_overlap_on_forms() {
    for letters in EXTREME_LETTERS {
        for adjustments in [0, 20, 64] {
            let setup = extreme(cars::pan_car(), letters, adjustments);
            for paper in PAPERS {
                let forms = [blank_sheet(&setup, paper), measuring_form(&setup, paper)];
                for pages in forms {
                    let pages = pages.unwrap();
                    pages.iter().for_each(check_nothing_overlaps);
                    let words = all_words(&pages);
                    for index in 0..adjustments {
                        assert!(words.contains(&format!("#{index}")), "{index}");
                    }
                }
            }
        }
    }
}
