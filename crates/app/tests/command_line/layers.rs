//! Which crate may know what: data flows one way, and no crate knows a later one.

#![allow(clippy::unwrap_used)]

use std::path::{Path, PathBuf};
use std::process::Command;

/// Names of all packages that a package is built with, its development dependencies left out.
fn built_with(package: &str) -> Vec<String> {
    let output = Command::new(env!("CARGO"))
        .args([
            "tree",
            "--offline",
            "--locked",
            "--edges",
            "normal,build",
            "--prefix",
            "none",
        ])
        .args(["--format", "{p}", "--package", package])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let text = String::from_utf8(output.stdout).unwrap();
    text.lines()
        .filter_map(|line| line.split_whitespace().next())
        .map(str::to_owned)
        .collect()
}

fn assert_without(package: &str, forbidden: &[&str]) {
    let packages = built_with(package);
    assert!(packages.contains(&package.to_owned()), "{packages:?}");
    for name in forbidden {
        assert!(
            !packages.iter().any(|package| package == name),
            "{package} must be built without {name}"
        );
    }
}

#[test]
fn solver_knows_geometry_only() {
    let later = [
        "steerloft-setup",
        "steerloft-analysis",
        "steerloft-sheet",
        "steerloft",
    ];
    assert_without("steerloft-solver", &later);
    assert_without("steerloft-solver", &["serde", "ron", "egui", "eframe"]);
}

#[test]
fn setup_knows_no_drawing_and_no_screen() {
    assert_without(
        "steerloft-setup",
        &[
            "steerloft-analysis",
            "steerloft-sheet",
            "steerloft",
            "egui",
            "eframe",
        ],
    );
}

#[test]
fn analysis_knows_no_drawing_and_no_screen() {
    assert_without(
        "steerloft-analysis",
        &["steerloft-sheet", "steerloft", "egui", "eframe"],
    );
}

#[test]
fn sheet_knows_no_screen() {
    assert_without(
        "steerloft-sheet",
        &["steerloft", "egui", "eframe", "egui_plot"],
    );
}

/// Every source file in a folder and the folders in it.
fn sources(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).unwrap();
    let paths = entries.map(|entry| entry.unwrap().path());
    paths
        .flat_map(|path| {
            if path.is_dir() {
                sources(&path)
            } else {
                vec![path]
            }
        })
        .collect()
}

#[test]
fn state_and_memory_know_nothing_of_the_window_that_draws_them() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let files = ["state", "memory"].map(|folder| sources(&source.join(folder)));
    assert!(files.iter().all(|files| files.len() > 3), "{files:?}");
    for path in files.iter().flatten() {
        let text = std::fs::read_to_string(path).unwrap();
        for later in [
            "egui",
            "eframe",
            "crate::ui",
            "crate::app",
            "crate::commands",
        ] {
            assert!(
                !text.contains(later),
                "{} must not know {later}",
                path.display()
            );
        }
    }
}
