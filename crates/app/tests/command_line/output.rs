//! Where answers go: pipes that close, devices that are full.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::process::{Command, Stdio};

use crate::common::{folder_of_cars, text};
use steerloft_setup::supplied::SUPPLIED;

const CAR: &str = SUPPLIED[0].file_name;

/// A sweep too long for the buffer of any pipe.
const LONG: [&str; 7] = ["sweep", CAR, "--along", "bump", "--steps", "20000", "--csv"];

#[test]
fn a_reader_that_has_enough_is_no_fault() {
    let folder = folder_of_cars();
    let mut program = Command::new(env!("CARGO_BIN_EXE_steerloft"))
        .args(LONG)
        .current_dir(folder.path())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(program.stdout.take());
    let output = program.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(text(&output.stderr), "");
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_device_is_a_fault_that_is_told() {
    let folder = folder_of_cars();
    for arguments in [&LONG[..], &["report", CAR], &["manual"]] {
        let full = std::fs::OpenOptions::new()
            .write(true)
            .open("/dev/full")
            .unwrap();
        let output = Command::new(env!("CARGO_BIN_EXE_steerloft"))
            .args(arguments)
            .current_dir(folder.path())
            .stdout(full)
            .output()
            .unwrap();
        assert_eq!(output.status.code(), Some(1), "{arguments:?}");
        let errors = text(&output.stderr);
        assert!(errors.contains("could not be written"), "{errors}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_page_goes_down_a_pipe() {
    let folder = folder_of_cars();
    std::os::unix::fs::symlink("/dev/stdout", folder.path().join("pipe.svg")).unwrap();
    let output = crate::common::steerloft_in(folder.path(), &["drawing", CAR, "-o", "pipe.svg"]);
    assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
    let page = text(&output.stdout);
    assert!(page.starts_with("<?xml") && page.trim_end().ends_with("</svg>"));
}

#[test]
fn no_progress_is_shown_where_nobody_watches() {
    let folder = folder_of_cars();
    let mut arguments = vec!["check"];
    arguments.extend(SUPPLIED.iter().map(|car| car.file_name));
    let output = crate::common::steerloft_in(folder.path(), &arguments);
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(text(&output.stderr), "");
}
