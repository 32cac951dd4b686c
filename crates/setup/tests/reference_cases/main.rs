//! The supplied cars as cases of the reference tables: the checked-in case files are what the layout makes of the
//! cars, so that the independent solvers, and the tables they make, are about the very cars that are supplied.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

mod case_file;
mod json;
mod rounding;
#[path = "../../../solver/tests/common/mod.rs"]
mod tables;

use std::collections::BTreeSet;
use std::path::PathBuf;

use approx::assert_relative_eq;
use case_file::CaseFile;
use serde_json::Value;
use steerloft_setup::adjustment::{Adjustment, Kind};
use steerloft_setup::car::Ranges;
use steerloft_setup::layout::front_axle;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;
use steerloft_solver::axle::{FrontAxle, Rod};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::{Assembly, Vector};

/// Set to 1, it rewrites the case files of the supplied cars.
const UPDATE: &str = "UPDATE_REFERENCE_CASES";

/// What is to be done when a case file is not what the car is.
const ADVICE: &str = "Rewrite the case files and their tables if the car was meant to change:\n\
    UPDATE_REFERENCE_CASES=1 cargo test -p steerloft-setup --test reference_cases\n\
    python3 tests/reference/axle_reference.py --write";

const PREFIX: &str = "supplied_";

fn case_folder() -> PathBuf {
    tables::reference_folder().join("cases")
}

/// Every supplied car at base and with every adjustment changed, as a case by its file's stem.
fn supplied_cases() -> Vec<CaseFile> {
    let mut cases = Vec::new();
    for supplied in SUPPLIED {
        let stem = supplied.file_name.trim_end_matches(".ron");
        let id = format!("{PREFIX}{}", stem.replace('-', "_"));
        let base = supplied.setup();
        let changed = with_every_adjustment_changed(&base);
        for (id, setup, state) in [
            (id.clone(), base, "every adjustment at base"),
            (
                format!("{id}_changed"),
                changed,
                "every adjustment away from base",
            ),
        ] {
            let note = format!("{}, as supplied, {state}", supplied.title);
            let axle = front_axle(&setup);
            if let Err(error) = Assembly::new(&axle) {
                panic!("{id} cannot be assembled: {error}");
            }
            cases.push(CaseFile::new(&id, &note, &axle, &setup.car.ranges));
        }
    }
    cases
}

fn with_every_adjustment_changed(setup: &Setup) -> Setup {
    let mut changed = setup.clone();
    for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
        changed.set(index, away_from_base(adjustment)).unwrap();
    }
    changed
}

/// A value a few steps up from base, or down where base is the last.
fn away_from_base(adjustment: &Adjustment) -> Chosen {
    let steps = match adjustment.kind {
        Kind::Slide { step: None, .. } => 5,
        Kind::Slide { step: Some(_), .. } => 2,
        Kind::Stack { .. } | Kind::Choice { .. } => 1,
    };
    let base = adjustment.base();
    let up = adjustment.step_from(&base, steps);
    if up == base {
        adjustment.step_from(&base, -steps)
    } else {
        up
    }
}

#[test]
fn case_files_are_the_supplied_cars() {
    let update = std::env::var_os(UPDATE).is_some_and(|value| value == "1");
    let mut known = BTreeSet::new();
    for case in supplied_cases() {
        let path = case_folder().join(format!("{}.json", case.id));
        known.insert(path.clone());
        if update {
            std::fs::write(&path, json::text(&case)).unwrap();
        }
        let kept = std::fs::read_to_string(&path)
            .unwrap_or_else(|error| panic!("{}: {error}\n{ADVICE}", path.display()));
        let fresh = serde_json::to_value(&case).unwrap();
        let kept: Value = serde_json::from_str(&kept).unwrap();
        if let Some(difference) = json::difference(&fresh, &kept) {
            panic!("{}: {difference}\n{ADVICE}", path.display());
        }
    }
    for file in std::fs::read_dir(case_folder()).unwrap() {
        let path = file.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap();
        let stray = name.starts_with(PREFIX) && !known.contains(&path);
        assert!(!stray, "{name} belongs to no supplied car; remove it");
    }
}

/// The other cases know every suspension kind and drive: written anew, they must be read as the same axle.
#[test]
fn a_written_case_is_read_as_the_axle_it_was_written_from() {
    let ranges = Ranges {
        input: (-10.0, 10.0),
        travel: (-1.0, 2.0),
    };
    let mut kinds = BTreeSet::new();
    for file in std::fs::read_dir(case_folder()).unwrap() {
        let name = file.unwrap().file_name().into_string().unwrap();
        let case = tables::table("cases", &name);
        kinds.insert(case["suspension"]["kind"].to_string());
        kinds.insert(case["drive"]["kind"].to_string());
        for axle in [tables::front_axle(&case), disturbed(&case)] {
            let written = json::text(&CaseFile::new("written", "", &axle, &ranges));
            let read = tables::front_axle(&serde_json::from_str(&written).unwrap());
            assert_same(&name, &read, &axle);
        }
    }
    assert_eq!(
        kinds.len(),
        8,
        "five suspension kinds and three drives: {kinds:?}"
    );
}

/// The axle of a case with what no case holds by itself: a spin axis turned away from straight ahead on one side,
/// arms of other lengths, a front axle moved.
fn disturbed(case: &Value) -> FrontAxle {
    let mut case = case.clone();
    let left = &mut case["suspension"]["left"];
    left["spin_axis"] = serde_json::json!([0.05, 0.99, 0.02]);
    for (hinge, ball) in [("lower_hinge", "lower_ball"), ("upper_hinge", "upper_ball")] {
        if left[hinge].is_array() {
            left[ball] = serde_json::json!([1.5, 60.0, 20.0]);
        }
    }
    case["station"] = serde_json::json!(2.5);
    tables::front_axle(&case)
}

/// Points are the same to the last digit; angles and directions go through degrees and back.
fn assert_same(name: &str, read: &FrontAxle, written: &FrontAxle) {
    let mut read = *read;
    for side in Side::BOTH {
        let axis: Vector = written.corners.get(side).knuckle.spin_axis;
        let back = &mut read.corners.get_mut(side).knuckle.spin_axis;
        assert_relative_eq!(*back, axis.normalize(), epsilon = 1e-11);
        *back = axis;
    }
    let angles = |axle: &FrontAxle| {
        let toe = |rod| match rod {
            Rod::HoldToe(toe) => toe,
            Rod::FixedLength(_) => 0.0,
        };
        let Sides { left, right } = axle.rods.map(toe);
        Vector::new(axle.road.pitch, axle.road.roll, left - 2.0 * right)
    };
    assert_relative_eq!(angles(&read), angles(written), epsilon = 1e-12);
    read.road.pitch = written.road.pitch;
    read.road.roll = written.road.roll;
    if let (Rod::HoldToe(_), Rod::HoldToe(_)) = (read.rods.left, written.rods.left) {
        read.rods = written.rods;
    }
    assert_eq!(read, *written, "{name}");
}
