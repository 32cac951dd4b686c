//! Machines that lack what is usually there: a display, a home, a language.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;
use std::process::{Command, Output};

use steerloft_setup::supplied::SUPPLIED;

fn bare() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_steerloft"));
    command.env_clear();
    command
}

/// Everything that the command line prints and writes about a car.
fn answers(prepare: impl Fn(&mut Command), folder: &Path) -> Vec<Output> {
    let car = folder.join("car.ron");
    std::fs::write(&car, SUPPLIED[0].text).unwrap();
    let car = car.to_str().unwrap();
    let drawing = folder.join("car.svg");
    let drawing = drawing.to_str().unwrap();
    let missing = folder.join("missing.ron");
    let calls: [&[&str]; 5] = [
        &["check", car],
        &["report", car],
        &["drawing", car, "-o", drawing, "--force"],
        &["check", missing.to_str().unwrap()],
        &["--version"],
    ];
    calls
        .into_iter()
        .map(|arguments| {
            let mut command = bare();
            prepare(&mut command);
            command.args(arguments).output().unwrap()
        })
        .collect()
}

#[test]
fn the_command_line_needs_no_home_and_no_language() {
    let folder = tempfile::tempdir().unwrap();
    let home = tempfile::tempdir().unwrap();
    let usual = answers(
        |command| {
            command.env("HOME", home.path()).env("LANG", "C.UTF-8");
        },
        folder.path(),
    );
    let codes: Vec<_> = usual.iter().map(|output| output.status.code()).collect();
    assert_eq!(codes, [Some(0), Some(0), Some(0), Some(1), Some(0)]);
    assert_eq!(
        std::fs::read_dir(home.path()).unwrap().count(),
        0,
        "it leaves nothing at home"
    );
    let odd: [(&str, &str); 6] = [
        ("HOME", ""),
        ("HOME", "/nonexistent"),
        ("HOME", "/proc"),
        ("LC_ALL", "tlh_QX.KOI-7"),
        ("LANG", "\u{fffd}"),
        ("XDG_CONFIG_HOME", "not/absolute"),
    ];
    assert_eq!(
        answers(|_| {}, folder.path()),
        usual,
        "with no variable at all"
    );
    for (name, value) in odd {
        let found = answers(
            |command| {
                command.env(name, value);
            },
            folder.path(),
        );
        assert_eq!(found, usual, "{name}={value}");
    }
}

/// One line on the error output, code 2 and nothing on the output.
fn refused(output: &Output) -> String {
    let said = String::from_utf8(output.stderr.clone()).unwrap();
    assert_eq!(output.status.code(), Some(2), "{said}");
    assert!(output.stdout.is_empty());
    said
}

#[test]
#[cfg(target_os = "linux")]
fn without_a_display_one_line_says_what_is_missing() {
    let home = tempfile::tempdir().unwrap();
    let output = bare().env("HOME", home.path()).output().unwrap();
    let said = refused(&output);
    assert_eq!(said.lines().count(), 1, "{said}");
    assert!(
        said.contains("neither DISPLAY nor WAYLAND_DISPLAY is set"),
        "{said}"
    );
    assert!(said.contains("steerloft report FILE"), "{said}");

    let output = bare()
        .env("HOME", home.path())
        .env("DISPLAY", ":4711")
        .output()
        .unwrap();
    let said = refused(&output);
    assert_eq!(said.lines().count(), 1, "{said}");
    assert!(said.contains("does not answer"), "{said}");
}

#[test]
#[cfg(target_os = "linux")]
fn without_a_place_to_remember_it_is_said_once() {
    let output = bare().env("HOME", "/proc/nothing").output().unwrap();
    let said = refused(&output);
    assert_eq!(said.lines().count(), 2, "{said}");
    assert_eq!(said.matches("Nothing is remembered").count(), 1, "{said}");
}
