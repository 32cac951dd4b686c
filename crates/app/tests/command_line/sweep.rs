//! Sweeps as tables.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{folder_of_cars, good, refused};
use serde_json::Value;
use steerloft_setup::supplied::SUPPLIED;

const CAR: &str = SUPPLIED[0].file_name;
const KART: &str = "kart.ron";
const RACK: &str = "formula-corner.ron";

/// The columns of a table in CSV: a name and its cells.
fn columns(csv: &str) -> Vec<(String, Vec<f64>)> {
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let names: Vec<String> = reader
        .headers()
        .unwrap()
        .iter()
        .map(str::to_owned)
        .collect();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let column = |index: usize| {
        let cells = rows.iter().map(move |row| &row[index]);
        cells.map(|cell| {
            if cell.is_empty() {
                f64::NAN
            } else {
                cell.parse().unwrap()
            }
        })
    };
    names
        .into_iter()
        .enumerate()
        .map(|(index, name)| (name, column(index).collect()))
        .collect()
}

fn column<'a>(columns: &'a [(String, Vec<f64>)], name: &str) -> &'a [f64] {
    let found = columns.iter().find(|(other, _)| other == name);
    &found.unwrap_or_else(|| panic!("{name} in {columns:?}")).1
}

#[test]
fn rows_go_from_one_value_to_the_other_in_even_steps() {
    let folder = folder_of_cars();
    let arguments = [
        "sweep", CAR, "--along", "bump", "--from", "-1", "--to", "1", "--steps", "8", "--csv",
    ];
    let table = columns(&good(folder.path(), &arguments));
    let travel = column(&table, "wheel_travel_left_mm");
    assert_eq!(travel.len(), 9);
    for (index, value) in (0_i32..).zip(travel) {
        assert!(
            (value - (f64::from(index) / 4.0 - 1.0)).abs() < 1e-12,
            "{value}"
        );
    }
    assert!(
        column(&table, "steering_input_deg")
            .iter()
            .all(|value| value.abs() < 1e-12)
    );
}

#[test]
fn csv_and_json_hold_the_same_numbers_in_full() {
    let folder = folder_of_cars();
    for along in ["steer", "bump", "roll"] {
        let sweep = |format| {
            good(
                folder.path(),
                &["sweep", CAR, "--along", along, "--steps", "6", format],
            )
        };
        let table = columns(&sweep("--csv"));
        let json: Value = serde_json::from_str(&sweep("--json")).unwrap();
        let sweep = &json[0];
        assert_eq!(sweep["along"], along);
        for (index, (name, cells)) in table.iter().enumerate() {
            assert_eq!(sweep["columns"][index], name.as_str());
            for (row, cell) in cells.iter().enumerate() {
                let value = &sweep["rows"][row][index];
                match value.as_f64() {
                    Some(value) => assert_eq!(value.to_bits(), cell.to_bits(), "{name}"),
                    None => assert!(value.is_null() && cell.is_nan(), "{name} {value}"),
                }
            }
        }
        let digits = table
            .iter()
            .flat_map(|(_, cells)| cells)
            .map(|cell| cell.to_string().len());
        assert!(digits.max().unwrap() > 15, "full precision");
    }
}

#[test]
fn a_slope_along_bump_is_the_gradient_that_the_table_states() {
    let folder = folder_of_cars();
    let arguments = [
        "sweep",
        "touring-car.ron",
        "--along",
        "bump",
        "--from=-0.01",
        "--to=0.01",
        "--steps",
        "2",
        "--csv",
    ];
    let table = columns(&good(folder.path(), &arguments));
    for (figure, gradient) in [("toe", "bump_steer"), ("camber", "camber_gain")] {
        for side in ["left", "right"] {
            let values = column(&table, &format!("{figure}_{side}_deg"));
            let stated = column(&table, &format!("{gradient}_{side}_deg_per_mm"))[1];
            // A central difference is off by the third derivative only.
            assert!(
                ((values[2] - values[0]) / 0.02 - stated).abs() < 1e-6,
                "{figure} {side}"
            );
        }
    }
}

#[test]
fn the_unit_of_a_racks_input_is_in_the_name_of_its_column() {
    let folder = folder_of_cars();
    let table = columns(&good(
        folder.path(),
        &["sweep", RACK, "--along", "steer", "--csv"],
    ));
    assert_eq!(table[0].0, "steering_input_mm");
    assert!(
        table
            .iter()
            .any(|(name, _)| name == "steering_ratio_mm_per_deg")
    );
    for (name, _) in &table {
        let unit = name.rsplit('_').next().unwrap();
        assert!(["deg", "mm", "percent"].contains(&unit), "{name}");
    }
}

#[test]
fn steering_and_travel_are_held_where_that_is_asked() {
    let folder = folder_of_cars();
    let folder = folder.path();
    let held = columns(&good(
        folder,
        &["sweep", CAR, "--along", "bump", "--steer", "10", "--csv"],
    ));
    assert!(
        column(&held, "steering_input_deg")
            .iter()
            .all(|input| (input - 10.0).abs() < 1e-12)
    );
    let held = columns(&good(
        folder,
        &[
            "sweep", CAR, "--along", "steer", "--travel", "-0.5", "--csv",
        ],
    ));
    assert!(
        column(&held, "wheel_travel_right_mm")
            .iter()
            .all(|travel| (travel + 0.5).abs() < 1e-12)
    );
    for wrong in [
        &["--along", "steer", "--steer", "3"][..],
        &["--along", "bump", "--travel", "1"],
        &["--along", "roll", "--travel", "1"],
        &["--along", "bump", "--from", "1", "--to", "1"],
        &["--along", "bump", "--from", "1,5"],
        &["--along", "bump", "--steps", "0"],
        &["--along", "bump", "--csv", "--json"],
        &["--along", "heave"],
        &[],
    ] {
        let mut arguments = vec!["sweep", CAR];
        arguments.extend(wrong);
        refused(folder, &arguments, 2);
    }
}

#[test]
fn a_car_without_travel_has_no_sweep_along_it() {
    let folder = folder_of_cars();
    for along in ["bump", "roll"] {
        let errors = refused(folder.path(), &["sweep", KART, "--along", along], 1);
        assert!(
            errors.contains(KART) && errors.contains("travel"),
            "{errors}"
        );
    }
    good(folder.path(), &["sweep", KART, "--along", "steer"]);
}

#[test]
fn a_sweep_beyond_a_lock_ends_there_and_says_why() {
    let folder = folder_of_cars();
    let arguments = [
        "sweep", KART, "--along", "steer", "--from", "-170", "--to", "170", "--json",
    ];
    let json: Value = serde_json::from_str(&good(folder.path(), &arguments)).unwrap();
    assert!(json[0]["rows"].as_array().unwrap().len() < 21);
    let ends = json[0]["ends"].as_array().unwrap();
    assert_eq!(ends.len(), 2);
    assert!(
        ends[0].as_str().unwrap().contains("steering ends at"),
        "{ends:?}"
    );
}

#[test]
fn a_roll_without_a_range_goes_to_the_end_of_the_travel_and_no_step_less() {
    let folder = folder_of_cars();
    for car in SUPPLIED.iter().filter(|car| car.file_name != KART) {
        let travel = car.setup().car.ranges.travel;
        for steer in ["0", "4"] {
            let arguments = [
                "sweep",
                car.file_name,
                "--along",
                "roll",
                "--steer",
                steer,
                "--json",
            ];
            let json: Value = serde_json::from_str(&good(folder.path(), &arguments)).unwrap();
            let sweep = &json[0];
            assert_eq!(sweep["ends"].as_array().map(Vec::len), Some(0), "{sweep}");
            let rows = sweep["rows"].as_array().unwrap();
            assert_eq!(rows.len(), 21, "{}", car.file_name);
            let place = |name: &str| {
                let columns = sweep["columns"].as_array().unwrap();
                columns.iter().position(|column| column == name).unwrap()
            };
            for row in [&rows[0], &rows[20]] {
                let value = |name: &str| row[place(name)].as_f64().unwrap();
                let left_over = ["wheel_travel_left_mm", "wheel_travel_right_mm"]
                    .map(value)
                    .map(|at| (at - travel.0).min(travel.1 - at));
                let least = left_over[0].min(left_over[1]);
                let rolled = value("roll_deg").abs();
                assert!(
                    (0.0..1e-6).contains(&least) || (rolled - 5.0).abs() < 1e-9,
                    "{} at {rolled} deg has {least} mm left",
                    car.file_name
                );
            }
        }
    }
}

#[test]
fn several_files_make_one_table() {
    let folder = folder_of_cars();
    let folder = folder.path();
    let cars = ["touring-car.ron", "buggy-front-end.ron"];
    let arguments = [
        "sweep", cars[0], "no.ron", cars[1], "--along", "roll", "--steps", "4", "--csv",
    ];
    let output = crate::common::steerloft_in(folder, &arguments);
    assert_eq!(output.status.code(), Some(1), "one of them is not there");
    assert!(String::from_utf8_lossy(&output.stderr).contains("no.ron"));
    let table = String::from_utf8(output.stdout).unwrap();
    let mut lines = table.lines();
    assert!(lines.next().unwrap().starts_with("file,roll_deg,"));
    let firsts: Vec<&str> = lines.map(|line| line.split(',').next().unwrap()).collect();
    assert!(firsts.iter().all(|first| cars.contains(first)));
    assert!(cars.iter().all(|car| firsts.contains(car)));
}

#[test]
fn text_is_aligned_and_plain() {
    let folder = folder_of_cars();
    for (along, range) in [
        ("steer", &[][..]),
        ("bump", &[]),
        ("roll", &["--from", "-0.6", "--to", "0.6"]),
    ] {
        let arguments = ["sweep", CAR, "--along", along, "--steps", "4"];
        let text = good(folder.path(), &[&arguments[..], range].concat());
        assert!(text.is_ascii(), "{text}");
        let lines: Vec<&str> = text.lines().skip(1).collect();
        assert_eq!(lines.len(), 3 + 5, "{text}");
        let ends: Vec<usize> = lines[2..].iter().map(|line| line.len()).collect();
        assert!(ends.iter().all(|end| *end == ends[0]), "{text}");
        assert!(ends[0] < 130, "{text}");
    }
}
