//! The program as a shell runs it, and files for it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "shared by several tests"
)]

use std::path::Path;
use std::process::{Command, Output};

use steerloft_setup::supplied::SUPPLIED;

/// Runs the program without a desktop, in a folder.
pub(crate) fn steerloft_in(folder: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_steerloft"))
        .args(arguments)
        .current_dir(folder)
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .output()
        .unwrap()
}

/// What the program wrote.
pub(crate) fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

/// What the program wrote when it was used rightly and all was good.
pub(crate) fn good(folder: &Path, arguments: &[&str]) -> String {
    let output = steerloft_in(folder, arguments);
    assert_eq!(
        output.status.code(),
        Some(0),
        "{arguments:?}: {}",
        text(&output.stderr)
    );
    text(&output.stdout)
}

/// What the program complains of when it ends with this code.
pub(crate) fn refused(folder: &Path, arguments: &[&str], code: i32) -> String {
    let output = steerloft_in(folder, arguments);
    assert_eq!(output.status.code(), Some(code), "{arguments:?}");
    let errors = text(&output.stderr);
    assert!(!errors.is_empty(), "{arguments:?}");
    errors
}

/// A folder with every supplied car in a file of its own.
pub(crate) fn folder_of_cars() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for car in SUPPLIED {
        std::fs::write(folder.path().join(car.file_name), car.text).unwrap();
    }
    folder
}
