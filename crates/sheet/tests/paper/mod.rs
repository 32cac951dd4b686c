//! What is written on a page, and that nothing of it overlaps.
#![allow(dead_code, reason = "each test file uses some of these")]

use std::collections::BTreeMap;

use steerloft_setup::adjustment::{Adjustment, ChoiceOption, Kind, Place};
use steerloft_setup::setup::{Chosen, Record, Setup};
use steerloft_sheet::{Bounds, Outline, Page, Placed, Role};

/// The drawings of the car, from above downwards.
pub(crate) fn views(page: &Page) -> Vec<&Placed> {
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
pub(crate) fn writing(page: &Page) -> Vec<(String, Bounds)> {
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

/// Everything on the paper, no two lines of writing over one another, none over a drawing of the car.
pub(crate) fn check_nothing_overlaps(page: &Page) {
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
                "\"{content}\" and \"{other}\": {bounds:?} {other_bounds:?}"
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
    for placed in &page.placed {
        if let Some(bounds) = placed.bounds() {
            assert_eq!(paper.union(bounds), paper, "a drawing is on the paper");
        }
    }
}

/// All writing, a line each.
pub(crate) fn all_writing(page: &Page) -> String {
    let lines: Vec<String> = writing(page)
        .into_iter()
        .map(|(content, _)| content)
        .collect();
    lines.join("\n")
}

/// All writing of all pages on one line, for texts that may have been wrapped.
pub(crate) fn all_words(pages: &[Page]) -> String {
    let texts: Vec<String> = pages.iter().map(all_writing).collect();
    texts.join("\n").replace('\n', " ")
}

/// A car with so many adjustments with names as long as a file may hold, written with the given letters.
pub(crate) fn extreme(mut setup: Setup, letters: &str, adjustments: usize) -> Setup {
    let long = |count: usize| letters.chars().cycle().take(count).collect::<String>();
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
        ..Record::default()
    };
    setup
}

/// Letters of which extreme contents are made.
pub(crate) const EXTREME_LETTERS: [&str; 7] = [
    "W",
    "w o r d s ",
    "前輪",
    "i",
    "\u{202e}<&>\"\u{0}\n",
    " ",
    "🏁",
];
