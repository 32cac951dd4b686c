//! The command line, as a shell sees it.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;
use std::process::{Command, Output};

use steerloft::state::Shown;
use steerloft_analysis::figures::Texts;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::{Outline, Page, Paper, SheetRequest, setup_sheet};

fn steerloft(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_steerloft"))
        .args(arguments)
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .output()
        .unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

/// Every supplied car in a file of its own.
fn all_cars(folder: &Path) -> Vec<String> {
    SUPPLIED
        .iter()
        .map(|car| {
            let path = folder.join(car.file_name);
            std::fs::write(&path, car.text).unwrap();
            path.to_str().unwrap().to_owned()
        })
        .collect()
}

/// A supplied car in a file, with one part of its text replaced.
fn file(folder: &Path, from: &str, to: &str) -> String {
    let path = folder.join("car.ron");
    let car = SUPPLIED[0].text;
    assert!(car.contains(from), "{from}");
    std::fs::write(&path, car.replacen(from, to, 1)).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn report_prints_the_key_figures() {
    let folder = tempfile::tempdir().unwrap();
    let car = file(folder.path(), "wheelbase", "wheelbase");
    let output = steerloft(&["report", &car]);
    assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
    let report = text(&output.stdout);
    for name in [
        "Toe",
        "Camber",
        "Bump steer",
        "Rod length",
        "Lock left",
        "Servo station",
    ] {
        assert!(report.contains(name), "{name} in\n{report}");
    }
}

#[test]
fn report_prints_every_figure_of_every_supplied_car_in_plain_characters() {
    let folder = tempfile::tempdir().unwrap();
    for (file, car) in all_cars(folder.path()).iter().zip(SUPPLIED) {
        let output = steerloft(&["report", file]);
        assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
        let report = text(&output.stdout);
        let (parts, figures) = report.split_once("wheels at rest").unwrap();
        assert!(figures.is_ascii(), "{}:\n{figures}", car.title);
        assert!(!parts.contains('\u{2212}'), "{}:\n{parts}", car.title);
        let lower = figures.to_lowercase();
        assert!(
            !lower.contains("nan") && !lower.contains("inf"),
            "{figures}"
        );
        for name in [
            "Camber gain",
            "Roll steer",
            "Roll centre height",
            "Steering ratio",
            "Ackermann at centre",
            "Arm lines",
            "Outer transmission",
            "Circle at lock",
        ] {
            let line = figures.lines().find(|line| line.starts_with(name));
            assert!(line.is_some(), "{}: {name} in\n{figures}", car.title);
        }
    }
}

#[test]
fn report_and_window_show_the_same_numbers() {
    let folder = tempfile::tempdir().unwrap();
    for (file, car) in all_cars(folder.path()).iter().zip(SUPPLIED) {
        let report = text(&steerloft(&["report", file]).stdout);
        let (_, figures) = report.split_once("wheels at rest").unwrap();
        let shown = Shown::at_rest(&car.setup()).unwrap();
        for figure in &shown.figures {
            let value = match figure.texts() {
                Texts::Sides(sides) => format!("{:>10} {:>10}", sides.left, sides.right),
                Texts::Axle(value) => format!("{value:>10}"),
            };
            let value = value.replace(['\u{2212}', '\u{2013}'], "-");
            let name = figure.facts().brief;
            let line = figures
                .lines()
                .find(|line| line.starts_with(&format!("{name} ")));
            let line = line.unwrap_or_else(|| panic!("{name} in\n{figures}"));
            assert!(line.ends_with(&value), "{}: {line} {value}", car.title);
        }
    }
}

/// Everything written on a page.
fn writing(page: &Page) -> Vec<&str> {
    let shapes = page.placed.iter().flat_map(|placed| &placed.drawing.shapes);
    let texts = shapes.filter_map(|shape| match &shape.outline {
        Outline::Text(text) => Some(text.content.as_str()),
        _ => None,
    });
    texts.collect()
}

#[test]
fn sheet_and_window_show_the_same_numbers() {
    for car in SUPPLIED {
        let setup = car.setup();
        let pages = setup_sheet(&SheetRequest {
            setup: &setup,
            reference: None,
            paper: Paper::A4,
            curves: &[],
        })
        .unwrap();
        let sheet = writing(&pages[0]).join(" ");
        let shown = Shown::at_rest(&setup).unwrap();
        let mut found = 0;
        for figure in &shown.figures {
            let title = figure.facts().title_with_sign();
            let words = match figure.texts() {
                Texts::Sides(sides) => format!("{} {}", sides.left, sides.right),
                Texts::Axle(value) => value,
            };
            let row = format!("{title} {} {words}", figure.unit);
            found += usize::from(sheet.contains(&row));
        }
        assert!(found >= 18, "{}: {found} in {sheet}", car.title);
    }
}

#[test]
fn a_drawing_is_not_written_over_another_file() {
    let folder = tempfile::tempdir().unwrap();
    let car = file(folder.path(), "wheelbase", "wheelbase");
    let page = folder.path().join("page.svg");
    let page = page.to_str().unwrap();
    let first = steerloft(&["drawing", &car, "-o", page]);
    assert_eq!(first.status.code(), Some(0), "{}", text(&first.stderr));
    let written = std::fs::read_to_string(page).unwrap();
    assert!(written.contains("<svg"));
    std::fs::write(page, "something else").unwrap();
    let second = steerloft(&["drawing", &car, "-o", page]);
    assert_eq!(second.status.code(), Some(1));
    assert!(
        text(&second.stderr).contains("--force"),
        "{}",
        text(&second.stderr)
    );
    assert_eq!(std::fs::read_to_string(page).unwrap(), "something else");
    let third = steerloft(&["drawing", &car, "-o", page, "--force"]);
    assert_eq!(third.status.code(), Some(0));
    assert_eq!(std::fs::read_to_string(page).unwrap(), written);
}

#[test]
fn wrong_use_ends_with_two() {
    for arguments in [
        &["check"][..],
        &["report"],
        &["--size", "big"],
        &["--colour"],
    ] {
        let output = steerloft(arguments);
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        assert!(!output.stderr.is_empty());
    }
}

#[test]
fn without_a_desktop_the_window_says_so_and_ends() {
    let output = steerloft(&["no-such-file.ron"]);
    assert_eq!(output.status.code(), Some(2));
    let errors = text(&output.stderr);
    assert!(errors.contains("no-such-file.ron"), "{errors}");
    assert!(errors.contains("No window:"), "{errors}");
}

#[test]
fn a_report_for_programs_has_the_figures_in_full() {
    let folder = tempfile::tempdir().unwrap();
    let files = all_cars(folder.path());
    let mut arguments = vec!["report", "--json"];
    arguments.extend(files.iter().map(String::as_str));
    let output = steerloft(&arguments);
    assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
    let reports: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    for (report, car) in reports.as_array().unwrap().iter().zip(SUPPLIED) {
        let setup = car.setup();
        let study = steerloft_analysis::Study::new(&setup).unwrap();
        let figures = study.figures(study.rest()).all();
        let told = report["figures"].as_array().unwrap();
        assert_eq!(told.len(), figures.len());
        for (told, figure) in told.iter().zip(&figures) {
            assert_eq!(told["name"], figure.facts().name);
            let (shown, own) = match figure.values {
                steerloft_analysis::figures::Values::Sides(sides) => (&told["left"], sides.left),
                steerloft_analysis::figures::Values::Axle(value) => (&told["value"], value),
            };
            match (shown.as_f64(), own) {
                // The one is posed from the file, the other in this test: they may differ by rounding.
                (Some(shown), Some(own)) => {
                    assert!((shown - own).abs() <= 1e-12 * own.abs().max(1.0), "{told}");
                }
                (shown, own) => assert_eq!(shown, own, "{told}"),
            }
        }
        let told = report["adjustments"].as_array().unwrap();
        assert_eq!(told.len(), setup.car.adjustments.len());
        assert!(told.iter().all(|adjustment| adjustment["is_base"] == true));
    }
}
