//! What the reader says of wrong servos, threads, joints, loads, obstacles, stock and runs, word for word and place.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::wrong_text::{self, Case, case};
use steerloft_setup::supplied::SUPPLIED;

fn check(cases: &[Case]) {
    wrong_text::check(SUPPLIED[0].text, cases);
}

#[test]
fn servo() {
    check(&[
        case(
            "class: Small",
            "class: §Tiny",
            "there is no `Tiny` here; write one of `Standard`, `LowProfile`, `Small`, `Other`",
        ),
        case(
            "lug_height: Some(16.0)",
            "lug_height: Some(§27.0)",
            "the lugs seat 27 mm up a case that is 26 mm high along the arm's axis; \
             measure it from the case's bottom, the end away from the arm",
        ),
        case(
            "teeth: 25",
            "teeth: §3",
            "3 teeth is not a sensible number here; give 4 to 100",
        ),
        case(
            "teeth: 25",
            "teeth: 25, tooth: §-26",
            "tooth -26 lies more than a turn away on a spline of 25; give -25 to 25",
        ),
        case(
            "teeth: 25",
            "teeth: 25, trim: §200.0",
            "200 degrees is not a sensible value here; give -180 to 180 degrees",
        ),
        case(
            "speed: 0.08",
            "speed: §0.0",
            "0 s is not a sensible value here; give 0.001 to 100 s",
        ),
        case(
            "side: 450.0",
            "side: §1500.0",
            "the shortest pulse would be 0 microseconds; give less than `centre`",
        ),
        case(
            "breakaway: 250.0",
            "breakaway: §-1.0",
            "-1 N mm is not a sensible value here; give 0 to 1000000 N mm",
        ),
        case(
            "rate: 25.0",
            "rate: §0.0",
            "0 N mm per degree is not a sensible value here; give 0.001 to 1000000 N mm per degree",
        ),
    ]);
}

#[test]
fn tie_rods_and_joints() {
    check(&[
        case(
            "longest: 45.0",
            "longest: §45.1",
            "at this length the thread no longer sits deep enough in the cups; \
             the thread and its cups allow 36 to 45 mm",
        ),
        case(
            "shortest: 36.0",
            "shortest: §35.0",
            "at this length the cups would have to go on farther than the thread; \
             the thread and its cups allow 36 to 45 mm",
        ),
        case(
            "least_engagement: 2.5",
            "least_engagement: §8.0",
            "8 mm is not a sensible value here; give 0 to 7 mm",
        ),
        case(
            "outer_stud: (0.0, 0.0, 1.0)",
            "outer_stud: §(0.0, 0.0, 0.0)",
            "this direction has no length; give a vector such as (1.0, 0.0, 0.0)",
        ),
        case(
            "most: 25.0",
            "most: §90.0",
            "90 degrees is not a sensible value here; give 0.1 to 60 degrees",
        ),
    ]);
}

#[test]
fn surroundings() {
    check(&[
        case(
            "friction: 0.9",
            "friction: §0.0",
            "0 is not a sensible value here; give 0.001 to 5",
        ),
        case(
            "front_axle: 3.8",
            "front_axle: §-3.8",
            "-3.8 N is not a sensible value here; give 0.001 to 20000 N",
        ),
        case(
            "disc: 2.0",
            "disc: §12.0",
            "the wheel's disc lies inboard of its bore's edge; \
             give less than `inboard`; outboard of the wheel centre is negative",
        ),
        case(
            "rod_diameter: Some(5.0)",
            "rod_diameter: Some(§0.0)",
            "0 mm is not a sensible value here; give 0.001 to 10000 mm",
        ),
        case(
            "name: \"servo post\"",
            "name: §\"battery\"",
            "the name \"battery\" is used twice, by obstacles 1 and 2; give each its own name",
        ),
        case(
            "free: (1.0, 0.0, 0.0)",
            "free: §(0.0, 0.0, 0.0)",
            "this direction has no length; give a vector such as (1.0, 0.0, 0.0)",
        ),
        case(
            "size: (8.0, 8.0, 16.0)",
            "size: (8.0, §0.0, 16.0)",
            "0 mm is not a sensible value here; give 0.001 to 10000 mm",
        ),
        case(
            "stock: [",
            "build_errors: (points: §60.0),\n        stock: [",
            "60 mm is not a sensible value here; give 0 to 50 mm",
        ),
        case(
            "stock: [",
            "build_errors: (own: [(point: rod_inner, error: 0.1), (point: §rod_inner, error: 0.2)]),\n        stock: [",
            "an error of the inner tie-rod ball is given twice; give it once",
        ),
        case(
            "stock: [",
            "build_errors: (own: [(point: §spin_axis, error: 0.1)]),\n        stock: [",
            "the spin axis is no point and has no place to be off; name a point; `angles` holds for directions",
        ),
    ]);
}

#[test]
fn stock() {
    check(&[
        case(
            "stock: Some((name: \"M3 washers\", places: 2))",
            "stock: Some((name: §\"M4 washers\", places: 2))",
            "\"M4 washers\" names no stock of this car; choose one of \"M3 washers\"",
        ),
        case(
            "stock: Some((name: \"M3 washers\", places: 2))",
            "stock: Some((name: \"M3 washers\", places: §0))",
            "0 places is not a sensible number here; give 1 to 16",
        ),
        case(
            "parts: [(thickness: 0.5, count: 6), (thickness: 1.0, count: 12)]",
            "parts: §[]",
            "this stock has no spacers; give at least one, such as (thickness: 1.0, count: 8)",
        ),
        case(
            "parts: [(thickness: 0.5, count: 1), (thickness: 1.0, count: 2)],",
            "parts: [(thickness: 0.5, count: 1), (thickness: §0.8, count: 2)],",
            "the stock \"M3 washers\" has no spacers of 0.8 mm; list them in the stock, or leave them out here",
        ),
    ]);
}

#[test]
fn record() {
    const NAME: &str = "name: \"Base setup\",";
    check(&[
        case(
            NAME,
            "name: \"Base setup\", id: §\"a b\",",
            "this id holds something else than letters, digits and hyphens; leave the id as the program gave it",
        ),
        case(
            NAME,
            "name: \"Base setup\", id: \"a1\", parent: Some((id: §\"a1\")),",
            "this setup names itself as its parent; \
             give the id of the setup that it was made from, or leave `parent` out",
        ),
        case(
            NAME,
            "name: \"Base setup\", runs: [(temperature: Some(§200.0))],",
            "200 degrees Celsius is not a sensible value here; give -60 to 100 degrees Celsius",
        ),
        case(
            NAME,
            "name: \"Base setup\", runs: [(laps: (best: Some(12.0), mean: Some(§11.0)))],",
            "the mean lap is quicker than the best; give the mean of all laps, and the quickest as `best`",
        ),
        case(
            NAME,
            "name: \"Base setup\", runs: [(laps: (count: Some(§100001)))],",
            "100001 laps is not a sensible number here; give 0 to 100000",
        ),
    ]);
}

#[test]
fn stacks() {
    check(&[
        case(
            "parts: [(thickness: 0.5, count: 2), (thickness: 1.0, count: 3)]",
            "parts: §[]",
            "this stack has no spacers; give at least one, such as (thickness: 1.0, count: 4)",
        ),
        case(
            "most: 3.0",
            "most: §0.25",
            "no spacer fits under this greatest total; give at least the thickness of the thinnest spacer",
        ),
    ]);
}
