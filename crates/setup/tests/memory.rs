//! A file as large as is read takes 64 MB at most while it is, whatever it holds.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::base_car;
use steerloft_setup::adjustment::Adjustment;
use steerloft_setup::file::{FileError, read_readings_text, read_text, readings_to_text, to_text};
use steerloft_setup::limits::{MAX_ADJUSTMENTS, MAX_FILE_BYTES, MAX_READINGS, MAX_RUNS, MAX_TEXT};
use steerloft_setup::readings::{AtHeight, Height, Readings, Turned};
use steerloft_setup::setup::{Run, Setup};

/// Greatest memory while a file is read, bytes.
const MOST: u64 = 64 << 20;

fn largest() -> usize {
    usize::try_from(MAX_FILE_BYTES).unwrap()
}

/// A text of the largest size, of as many pieces as fit between its head and its tail.
fn filled(head: &str, piece: &str, tail: &str) -> String {
    let room = largest() - head.len() - tail.len();
    let body = piece.repeat(room / piece.len());
    let text = format!("{head}{body}{tail}");
    assert!(text.len() > largest() - 1_000, "{head}{piece}{tail}");
    text
}

/// Reads a text in no more memory than is allowed.
fn read_in_bounds<T>(
    text: &str,
    read: impl Fn(&str) -> Result<T, FileError>,
) -> Result<T, FileError> {
    let mut answer = None;
    let start: String = text.chars().take(60).collect();
    let taken = allocation_counter::measure(|| answer = Some(read(text)));
    assert!(
        taken.bytes_max <= MOST,
        "{} bytes for {start}",
        taken.bytes_max
    );
    answer.unwrap()
}

/// A text that is none of what is read, and is not refused for its size.
fn refused<T: std::fmt::Debug>(text: &str, read: impl Fn(&str) -> Result<T, FileError>) {
    let error = read_in_bounds(text, read).unwrap_err().to_string();
    assert!(!error.contains("more than the"), "{error}");
}

/// The text of a car with something put at the beginning of one of its lists, which the car may not have yet.
fn among(list: &str, piece: &str) -> String {
    let car = to_text(&base_car());
    if let Some((before, after)) = car.split_once(list) {
        return filled(&format!("{before}{list}"), piece, after);
    }
    let (before, after) = car.split_once("adjustments: [").unwrap();
    let tail = format!("], adjustments: [{after}");
    filled(&format!("{before}{list}"), piece, &tail)
}

fn among_adjustments(piece: &str) -> String {
    among("adjustments: [", piece)
}

#[test]
fn setups_of_any_shape_that_are_none() {
    let texts = [
        filled("", "(", ""),
        filled("", "[", ""),
        filled("", "{", ""),
        filled("", "Some(", ""),
        filled("Setup(format: 2, car: ", "[", ""),
        filled("Setup(format: 2, car: (name: \"", "a", "\"))"),
        filled("Setup(format: 2, car: (name: \"", "\\u{41}", "\"))"),
        filled("Setup(format: 2, car: (name: r##\"", "\"#", "\"##))"),
        filled("Setup(format: 2, ", "a: 1, ", ")"),
        filled("Setup(format: 2, car: (", "name: \"a\", ", "))"),
        filled("Setup(format: 2, car: (adjustments: [", "(),", "]))"),
        filled("Setup(format: 1, chosen: {", "\"a\": Slide(1.0),", "})"),
        filled("Setup(format: 2, chosen: {", "\"a\": Slide(1.0),", "})"),
        filled("Setup(format: 2, record: (runs: [", "(),", "]))"),
        filled("Setup(format: ", "9", ")"),
        filled("", "/*", ""),
        filled("", "// \u{e9}\n", ""),
        filled("\"", "\\\"", ""),
        among_adjustments("(name: \"a\", place: Chassis, kind: Slide(unit: Millimetres)),"),
        among_adjustments("(name:\"\",place:Wheel,kind:Choice(options:[],base:\"\")),"),
        among(
            "obstacles: [",
            "(name:\"\",shape:Plane(point:(0,0,0),normal:(0,0,1))),",
        ),
        among("stock: [", "(name:\"\",parts:[]),"),
        among("options: [", "(name:\"\"),"),
        among("parts: [", "(thickness:1,count:1),"),
        among("effects: [", "Add(scalar:pitch,by:1),"),
        among("points: [", "spin_axis,"),
        among_adjustments("(name: \"a\", place: Chassis, kind: Choice(options: [], base: \"\")),"),
    ];
    for text in &texts {
        refused(text, read_text);
    }
}

/// The text with a comment behind it, as long as a file may be.
fn padded(text: &str) -> String {
    filled(&format!("{text}//"), "-", "\n")
}

/// Reads a setup from as long a text of it as there may be.
fn reads(setup: &Setup) {
    let text = padded(&to_text(setup));
    assert_eq!(read_in_bounds(&text, read_text).as_ref(), Ok(setup));
}

#[test]
fn setups_as_large_as_they_may_be() {
    let note = "n".repeat(12_000);
    let mut many_adjustments = base_car();
    let adjustments = &mut many_adjustments.car.adjustments;
    let first = adjustments[0].clone();
    for index in adjustments.len()..MAX_ADJUSTMENTS {
        adjustments.push(Adjustment {
            name: format!("Another {index}"),
            notes: note.clone(),
            ..first.clone()
        });
    }
    reads(&many_adjustments);

    let mut many_runs = base_car();
    many_runs.record.notes = "n".repeat(MAX_TEXT);
    many_runs.record.runs = vec![
        Run {
            notes: "n".repeat(350),
            ..Run::default()
        };
        MAX_RUNS
    ];
    reads(&many_runs);
}

#[test]
fn readings_of_any_shape() {
    let at_rest = "(at: Travel(0.0), left: Some(0.5), uncertainty: 0.1),";
    let texts = [
        filled("Readings(format: 1, toe: ", "[", ""),
        filled("Readings(format: 1, toe: [", at_rest, "])"),
        filled("Readings(format: 1, toe: [", "(),", "])"),
        filled("Readings(format: 1, notes: \"", "a", "\")"),
        filled("Readings(format: 1, notes: \"", "\\u{41}", "\")"),
        filled("Readings(format: 1, uncertain: [", "Centre,", "])"),
        filled("Readings(format: 1, ", "toe: [], ", ")"),
        filled("Readings(format: 1, a: ", "Some(", ""),
    ];
    for text in &texts {
        refused(text, read_readings_text);
    }
    let at_height = AtHeight {
        at: Height::RideHeight(4.5),
        left: Some(-1.0),
        right: Some(-1.25),
        uncertainty: 0.2,
    };
    let turned = Turned {
        input: -10.0,
        left: Some(-11.5),
        right: Some(-12.5),
        uncertainty: 0.25,
    };
    let readings = Readings {
        notes: "n".repeat(MAX_TEXT),
        toe: vec![at_height; MAX_READINGS],
        camber: vec![at_height; MAX_READINGS],
        turned: vec![turned; MAX_READINGS],
        uncertain: Vec::new(),
    };
    let text = padded(&readings_to_text(&readings));
    assert_eq!(read_in_bounds(&text, read_readings_text), Ok(readings));
}
