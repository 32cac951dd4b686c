//! The sheet: scale, common axis, and that nothing overlaps whatever the contents.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;
mod paper;

use paper::{EXTREME_LETTERS, all_writing, check_nothing_overlaps, extreme, views};
use steerloft_setup::setup::{Record, Setup};
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::{Bounds, Page, Placed, Role, drawing_page, svg};

fn page_of(setup: Setup, input: f64) -> Page {
    let car = cars::posed(setup, input, 0.0);
    drawing_page(&car.setup, &car.layout, &car.pose)
}

#[test]
fn both_views_share_their_lateral_axis_and_scale() {
    for input in [0.0, 20.0] {
        let page = page_of(cars::pan_car(), input);
        let views = views(&page);
        assert_eq!(views.len(), 2);
        assert_eq!(views[0].at[0].to_bits(), views[1].at[0].to_bits());
        assert_eq!(views[0].scale.to_bits(), views[1].scale.to_bits());
        assert!(views[0].bounds().unwrap().min[1] > views[1].bounds().unwrap().max[1]);
    }
}

#[test]
fn the_largest_usual_scale_that_fits_is_chosen() {
    // 165 mm wide: twice that does not go on A4. 1.3 m wide: a fifth of it goes on A4 across only.
    let pan_car = page_of(cars::pan_car(), 0.0);
    assert_eq!(views(&pan_car)[0].scale.to_bits(), 1.0_f64.to_bits());
    assert!(pan_car.size[0] < pan_car.size[1]);
    assert!(all_writing(&pan_car).contains("Scale 1:1\n"));
    let kart = page_of(cars::kart(), 0.0);
    assert_eq!(views(&kart)[0].scale.to_bits(), 0.2_f64.to_bits());
    assert!(kart.size[0] > kart.size[1]);
    assert!(all_writing(&kart).contains("Scale 1:5\n"));
}

#[test]
fn the_scale_bar_is_as_long_as_it_says() {
    for (setup, real) in [(cars::pan_car(), 50.0), (cars::kart(), 250.0)] {
        let page = page_of(setup, 0.0);
        let has_bar = |placed: &&Placed| {
            placed
                .drawing
                .shapes
                .iter()
                .any(|shape| shape.role == Role::Bar)
        };
        let bar = page.placed.iter().find(has_bar).unwrap();
        let fields = bar
            .drawing
            .shapes
            .iter()
            .filter(|shape| shape.role == Role::Bar);
        let extent = fields
            .filter_map(|shape| shape.outline.bounds())
            .reduce(Bounds::union)
            .unwrap();
        assert!((extent.width() - real * views(&page)[0].scale).abs() < 1e-9);
        assert!(all_writing(&page).contains(&format!("\n{real}\n")));
    }
}

#[test]
fn the_sheet_names_every_value_the_parts_to_fit_and_the_cautions() {
    let text = all_writing(&page_of(cars::pan_car(), 0.0)).replace('\n', " ");
    for expected in [
        "Carpet, first run",
        "1:12 pan car",
        "2026-11-21",
        "Club evening",
        "Servo packing",
        "1 mm",
        "rear hole",
        "3 mm (2 + 1)",
        "Ball to ball, left",
        "Steering drive",
        "Wheels off the ground and power off",
        "Check full lock by hand for binding",
        "not a promise",
        "Values in bold differ",
    ] {
        assert!(text.contains(expected), "{expected} in {text}");
    }
}

#[test]
fn the_rod_length_on_the_sheet_is_the_distance_of_its_balls() {
    let car = cars::posed(cars::pan_car(), 0.0, 0.0);
    let corner = &car.pose.corners.left;
    let length = (corner.steering_arm - corner.rod_inner).norm();
    let text = all_writing(&drawing_page(&car.setup, &car.layout, &car.pose));
    assert!(text.contains(&format!("{length:.2} mm")));
    // Two cups of 9 mm take their share of the rod.
    assert!(text.contains(&format!("{:.2} mm", length - 18.0)));
}

#[test]
fn nothing_overlaps_on_the_sheets_of_all_cars() {
    let setups = SUPPLIED
        .iter()
        .map(Supplied::setup)
        .chain([cars::pan_car(), cars::kart()]);
    for setup in setups {
        for input in [0.0, 20.0] {
            check_nothing_overlaps(&page_of(setup.clone(), input));
        }
    }
}

#[test]
fn extreme_contents_do_not_overlap() {
    for letters in EXTREME_LETTERS {
        for adjustments in [0, 1, 5, 20, 64] {
            let page = page_of(extreme(cars::pan_car(), letters, adjustments), 0.0);
            check_nothing_overlaps(&page);
            roxmltree::Document::parse(&svg::page(&page)).unwrap();
        }
    }
}

#[test]
fn what_does_not_go_on_the_sheet_is_counted() {
    let text = all_writing(&page_of(extreme(cars::pan_car(), "W", 64), 0.0));
    let lines: Vec<&str> = text.lines().collect();
    let shown = (0..64)
        .filter(|index| lines.contains(&format!("#{index}").as_str()))
        .count();
    assert!(shown > 20);
    let of_the_rods = [
        "Tie rods set to",
        "Ball to ball, left",
        "Between cups, left",
        "Ball to ball, right",
        "Between cups, right",
    ];
    let shown_of_the_rods = of_the_rods.iter().filter(|row| lines.contains(row)).count();
    let rest = text.lines().find_map(|line| {
        line.strip_prefix("and ")?
            .strip_suffix(" more, which the setup file holds")
    });
    let counted: usize = rest.map_or(0, |count| count.parse().unwrap());
    assert_eq!(shown + shown_of_the_rods + counted, 64 + of_the_rods.len());
}

#[test]
fn a_setup_without_a_name_has_a_title() {
    let mut setup = cars::pan_car();
    setup.record = Record::default();
    let page = page_of(setup, 0.0);
    assert_eq!(page.title, "Setup without a name, 1:12 pan car");
}
