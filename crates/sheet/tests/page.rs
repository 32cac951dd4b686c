//! The sheet: scale, common axis, and that nothing overlaps whatever the contents.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;

use std::collections::BTreeMap;

use steerloft_setup::adjustment::{Adjustment, ChoiceOption, Kind, Place};
use steerloft_setup::setup::{Chosen, Record, Setup};
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::{Bounds, Outline, Page, Placed, Role, drawing_page, svg};

fn page_of(setup: Setup, input: f64) -> Page {
    let car = cars::posed(setup, input, 0.0);
    drawing_page(&car.setup, &car.layout, &car.pose)
}

/// The drawings of the car, from above downwards.
fn views(page: &Page) -> Vec<&Placed> {
    let is_view = |placed: &&Placed| {
        placed
            .drawing
            .shapes
            .iter()
            .any(|shape| shape.role == Role::Tyre)
    };
    page.placed.iter().filter(is_view).collect()
}

/// Every line of writing with the rectangle on the page that it takes.
fn writing(page: &Page) -> Vec<(String, Bounds)> {
    let mut lines = Vec::new();
    for placed in &page.placed {
        for shape in &placed.drawing.shapes {
            if let Outline::Text(text) = &shape.outline {
                let bounds = shape.outline.bounds().unwrap();
                let on_page = |point: [f64; 2]| {
                    [0, 1].map(|axis| placed.at[axis] + placed.scale * point[axis])
                };
                lines.push((
                    text.content.clone(),
                    Bounds {
                        min: on_page(bounds.min),
                        max: on_page(bounds.max),
                    },
                ));
            }
        }
    }
    lines
}

fn check_nothing_overlaps(page: &Page) {
    let paper = Bounds {
        min: [0.0; 2],
        max: page.size,
    };
    let lines = writing(page);
    for (index, (content, bounds)) in lines.iter().enumerate() {
        assert_eq!(paper.union(*bounds), paper, "{content} is on the paper");
        for (other, other_bounds) in &lines[index + 1..] {
            assert!(
                !bounds.overlaps(other_bounds),
                "\"{content}\" and \"{other}\""
            );
        }
    }
    for view in views(page) {
        let bounds = view.bounds().unwrap();
        assert_eq!(paper.union(bounds), paper, "the view is on the paper");
        for (content, line) in &lines {
            assert!(!bounds.overlaps(line), "\"{content}\" and a view");
        }
    }
}

fn all_writing(page: &Page) -> String {
    let lines: Vec<String> = writing(page)
        .into_iter()
        .map(|(content, _)| content)
        .collect();
    lines.join("\n")
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

/// A car with so many adjustments with names as long as a file may hold, written with the given letters.
fn extreme(letters: &str, adjustments: usize) -> Setup {
    let long = |count: usize| letters.chars().cycle().take(count).collect::<String>();
    let mut setup = cars::pan_car();
    setup.car.name = long(80);
    setup.chosen = BTreeMap::new();
    setup.car.adjustments = (0..adjustments)
        .map(|index| Adjustment {
            name: format!("#{index} {}", long(76)),
            place: if index % 3 == 0 {
                Place::Servo
            } else {
                Place::Suspension
            },
            notes: String::new(),
            kind: Kind::Choice {
                options: vec![ChoiceOption {
                    name: long(80),
                    effects: Vec::new(),
                }],
                base: long(80),
            },
        })
        .collect();
    for index in (0..adjustments).step_by(4) {
        let name = setup.car.adjustments[index].name.clone();
        setup.chosen.insert(name, Chosen::Choice(long(79)));
    }
    setup.record = Record {
        name: long(300),
        date: long(200),
        event: long(200),
        surface: long(200),
        grip: long(200),
        notes: long(20_000),
        runs: Vec::new(),
    };
    setup
}

#[test]
fn extreme_contents_do_not_overlap() {
    for letters in [
        "W",
        "w o r d s ",
        "前輪",
        "i",
        "\u{202e}<&>\"\u{0}\n",
        " ",
        "🏁",
    ] {
        for adjustments in [0, 1, 5, 20, 64] {
            let page = page_of(extreme(letters, adjustments), 0.0);
            check_nothing_overlaps(&page);
            roxmltree::Document::parse(&svg::page(&page)).unwrap();
        }
    }
}

#[test]
fn what_does_not_go_on_the_sheet_is_counted() {
    let text = all_writing(&page_of(extreme("W", 64), 0.0));
    let lines: Vec<&str> = text.lines().collect();
    let shown = (0..64)
        .filter(|index| lines.contains(&format!("#{index}").as_str()))
        .count();
    assert!(shown > 20);
    let of_the_rods = [
        "Set to toe-in, each wheel",
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
