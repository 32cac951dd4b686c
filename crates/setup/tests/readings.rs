//! Gauge readings: their file and what is refused.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

use steerloft_setup::adjustment::PointName;
use steerloft_setup::dimension::{Axis, Dimension, Whose};
use steerloft_setup::file::{
    FileError, read_readings, read_readings_text, readings_to_text, write_readings,
};
use steerloft_setup::readings::{AtHeight, Height, Quantity, Readings, Turned};
use steerloft_solver::frame::Side;

const TEXT: &str = "Readings(
    format: 1,
    notes: \"gauges on the bench\", // Thursday
    toe: [(at: Travel(0.0), left: Some(0.5), right: Some(0.25), uncertainty: 0.1)],
    camber: [(at: RideHeight(4.5), left: Some(-1.0), uncertainty: 0.2)],
    turned: [(input: -10.0, left: Some(-11.5), right: Some(-12.5), uncertainty: 0.25)],
    uncertain: [Point(point: steering_arm, side: Left, axis: Z), Rod(side: Right), Centre],
)
";

fn readings() -> Readings {
    Readings {
        notes: "gauges on the bench".to_owned(),
        toe: vec![AtHeight {
            at: Height::Travel(0.0),
            left: Some(0.5),
            right: Some(0.25),
            uncertainty: 0.1,
        }],
        camber: vec![AtHeight {
            at: Height::RideHeight(4.5),
            left: Some(-1.0),
            right: None,
            uncertainty: 0.2,
        }],
        turned: vec![Turned {
            input: -10.0,
            left: Some(-11.5),
            right: Some(-12.5),
            uncertainty: 0.25,
        }],
        uncertain: vec![
            Dimension::Point {
                point: PointName::SteeringArm,
                side: Whose::Left,
                axis: Axis::Z,
            },
            Dimension::Rod { side: Whose::Right },
            Dimension::Centre,
        ],
    }
}

#[test]
fn a_text_is_read_and_written_back() {
    let read = read_readings_text(TEXT).unwrap();
    assert_eq!(read, readings());
    assert_eq!(read_readings_text(&readings_to_text(&read)), Ok(read));
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("gauges.readings");
    write_readings(&path, &readings()).unwrap();
    assert_eq!(read_readings(&path), Ok(readings()));
}

#[test]
fn every_number_is_a_reading() {
    let all: Vec<_> = readings().all().collect();
    let sides: Vec<Side> = all.iter().map(|one| one.side).collect();
    assert_eq!(
        sides,
        [Side::Left, Side::Right, Side::Left, Side::Left, Side::Right]
    );
    assert_eq!(all[2].what, Quantity::Camber(Height::RideHeight(4.5)));
    assert_eq!(all[0].to_string(), "left toe at 0 mm of travel");
    assert_eq!(
        all[4].to_string(),
        "right wheel's angle at a steering input of -10"
    );
}

fn refused(from: &str, to: &str, word: &str) {
    let text = TEXT.replacen(from, to, 1);
    assert_ne!(text, TEXT, "{from}");
    let error = read_readings_text(&text).unwrap_err();
    assert!(matches!(error, FileError::Text { .. }), "{error}");
    let said = error.to_string();
    assert!(said.contains(word), "{said}");
}

#[test]
fn what_is_wrong_is_refused_at_its_place_with_what_would_be_right() {
    for (from, to, word) in [
        ("uncertainty: 0.1", "uncertainty: 0.0", "4:"),
        ("uncertainty: 0.1", "uncertainty: inf", "finite"),
        (", uncertainty: 0.1", "", "`uncertainty` is missing"),
        ("Some(0.5)", "Some(720.0)", "4:40"),
        ("Some(0.5)", "Some(NaN)", "4:"),
        ("left: Some(-1.0), ", "", "nothing is read here"),
        ("notes", "remarks", "no field `remarks`"),
        ("format: 1", "format: 2", "newer than this program"),
        ("format: 1", "format: 0", "this program reads format 1"),
        ("Readings", "Setup", "this is not a file of readings"),
        (
            "side: Right",
            "side: Both), Centre, Rod(side: Both",
            "named twice",
        ),
        ("steering_arm", "steering_leg", "no `steering_leg`"),
        ("Travel(0.0)", "Depth(0.0)", "no `Depth`"),
    ] {
        refused(from, to, word);
    }
    assert!(
        read_readings_text("")
            .unwrap_err()
            .to_string()
            .contains("empty")
    );
}
