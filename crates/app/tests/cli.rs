//! The command line, as a shell sees it.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;
use std::process::{Command, Output};

use steerloft_setup::supplied::SUPPLIED;

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

/// A supplied car in a file, with one part of its text replaced.
fn file(folder: &Path, from: &str, to: &str) -> String {
    let path = folder.join("car.ron");
    let car = SUPPLIED[0].text;
    assert!(car.contains(from), "{from}");
    std::fs::write(&path, car.replacen(from, to, 1)).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn check_says_ok_for_every_supplied_car() {
    let folder = tempfile::tempdir().unwrap();
    let files: Vec<String> = SUPPLIED
        .iter()
        .map(|car| {
            let path = folder.path().join(car.file_name);
            std::fs::write(&path, car.text).unwrap();
            path.to_str().unwrap().to_owned()
        })
        .collect();
    let mut arguments = vec!["check"];
    arguments.extend(files.iter().map(String::as_str));
    let output = steerloft(&arguments);
    assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
    assert_eq!(text(&output.stdout).lines().count(), SUPPLIED.len());
    assert!(
        text(&output.stdout)
            .lines()
            .all(|line| line.ends_with(": ok"))
    );
}

#[test]
fn check_names_the_place_of_a_fault() {
    let folder = tempfile::tempdir().unwrap();
    let car = file(folder.path(), "wheelbase: ", "wheelbase: about ");
    let output = steerloft(&["check", &car]);
    assert_eq!(output.status.code(), Some(1));
    assert!(text(&output.stdout).is_empty());
    let line = SUPPLIED[0]
        .text
        .lines()
        .position(|line| line.contains("wheelbase: "))
        .unwrap()
        + 1;
    let place = format!("car.ron:{line}:");
    assert!(
        text(&output.stderr).contains(&place),
        "{place} in {}",
        text(&output.stderr)
    );
}

#[test]
fn check_names_the_member_that_cannot_reach() {
    let folder = tempfile::tempdir().unwrap();
    let car = file(folder.path(), "HoldToe(0.0)", "FixedLength(31.0)");
    let output = steerloft(&["check", &car]);
    assert_eq!(output.status.code(), Some(1));
    let errors = text(&output.stderr);
    assert!(
        errors.contains("tie rod") && errors.contains("mm too short"),
        "{errors}"
    );
    assert!(
        errors.contains("Open it with"),
        "it says what to do next: {errors}"
    );
}

#[test]
fn check_goes_on_after_a_bad_file() {
    let folder = tempfile::tempdir().unwrap();
    let car = file(folder.path(), "wheelbase", "wheelbase");
    let output = steerloft(&["check", "no-such-file.ron", &car]);
    assert_eq!(output.status.code(), Some(1));
    assert!(text(&output.stderr).contains("no-such-file.ron"));
    assert!(text(&output.stdout).contains(": ok"));
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
    assert_eq!(output.status.code(), Some(1));
    let errors = text(&output.stderr);
    assert!(errors.contains("no-such-file.ron"), "{errors}");
    assert!(errors.contains("No window could be opened"), "{errors}");
}
