//! Which crate may know what: data flows one way, and no crate knows a later one.

#![allow(clippy::unwrap_used)]

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
