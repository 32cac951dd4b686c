//! Files of format 1 are read as they were meant, and written in the newest format.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::wrong_text::{assert_says, marked};
use steerloft_setup::adjustment::Kind;
use steerloft_setup::car::{BuildErrors, ServoClass};
use steerloft_setup::file::{read_text, to_text};
use steerloft_setup::setup::{Record, Setup};

/// Files written in format 1, each with the car of today that it was.
const FILES: [(&str, &str); 3] = [
    (
        include_str!("format_1/pan-car-swinging-arm.ron"),
        "pan-car-swinging-arm.ron",
    ),
    (include_str!("format_1/touring-car.ron"), "touring-car.ron"),
    (include_str!("format_1/kart.ron"), "kart.ron"),
];

/// A setup without what format 1 did not know.
fn as_format_1_knew(mut setup: Setup, read: &Setup) -> Setup {
    let car = &mut setup.car;
    if let Some(servo) = &mut car.servo {
        *servo = servo.case.into();
    }
    car.saver = None;
    car.tie_rod = read.car.tie_rod;
    car.joints = None;
    car.loads = None;
    car.clearances = None;
    car.obstacles.clear();
    car.build_errors = BuildErrors::default();
    car.stock.clear();
    for adjustment in &mut car.adjustments {
        if let Kind::Stack { stock, .. } = &mut adjustment.kind {
            *stock = None;
        }
    }
    setup
}

#[test]
fn every_value_is_read_as_it_was() {
    for (text, file_name) in FILES {
        let read = read_text(text).unwrap();
        assert_eq!(read.car.tie_rod.thread, None);
        if let Some(servo) = &read.car.servo {
            assert_eq!(servo.class, ServoClass::Other);
        }
        assert_eq!(
            as_format_1_knew(common::car(file_name), &read),
            read,
            "{file_name}"
        );
    }
}

#[test]
fn it_is_written_in_the_newest_format_and_stays_as_it_is() {
    for (text, file_name) in FILES {
        let read = read_text(text).unwrap();
        let written = to_text(&read);
        assert!(
            written.starts_with("Setup(\n    format: 2,\n"),
            "{file_name}"
        );
        assert_eq!(read_text(&written).as_ref(), Ok(&read));
        assert_eq!(to_text(&read_text(&written).unwrap()), written);
    }
}

#[test]
fn a_record_with_runs_comes_along() {
    let record = "record: (
        name: \"Winter\",
        runs: [(date: \"12:00\", notes: \"pushes\"), (notes: \"better\")],
    ),\n)";
    let (head, _) = FILES[0].0.split_once("record: (").unwrap();
    let read = read_text(&format!("{head}{record}")).unwrap();
    let Record { name, runs, .. } = &read.record;
    assert_eq!(name, "Winter");
    assert_eq!(read.record.id, "");
    let notes: Vec<&str> = runs.iter().map(|run| run.notes.as_str()).collect();
    assert_eq!(notes, ["pushes", "better"]);
    assert_eq!(runs[0].date, "12:00");
    assert!(runs[0].felt.is_empty() && runs[0].laps.is_empty());
}

#[test]
fn complaints_point_into_the_old_text() {
    for (find, replace, says) in [
        (
            "size: (26.0, 34.0, 12.5)",
            "size: (26.0, §0.0, 12.5)",
            "0 mm is not a sensible value here; give 0.001 to 10000 mm",
        ),
        (
            "longest: 50.0",
            "longest: 50.0, §thread: None",
            "there is no field `thread` here; the fields are `cup_length`, `shortest`, `longest`",
        ),
        (
            "name: \"Base setup\",",
            "name: \"Base setup\", §id: \"a\",",
            "there is no field `id` here; the fields are `name`, `date`, `event`, `surface`, `grip`, `notes`, `runs`",
        ),
    ] {
        let text = FILES[0].0;
        assert!(text.contains(find));
        let (text, expected) = marked(&text.replacen(find, replace, 1), says);
        assert_says(&text, &expected);
    }
}
