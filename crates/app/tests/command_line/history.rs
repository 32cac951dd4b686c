//! A folder of setups, asked for from a shell.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use serde_json::Value;
use steerloft_setup::file::write;
use steerloft_setup::setup::{Chosen, Felt, Run};
use steerloft_setup::supplied::SUPPLIED;

use crate::common::{good, refused, steerloft_in, text};

/// A base, and a setup made from it with another spacer and a run.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let mut base = SUPPLIED[0].setup();
    "Base".clone_into(&mut base.record.name);
    base.give_id();
    let mut second = base.child("More outer spacers");
    let index = second
        .car
        .adjustments
        .iter()
        .position(|one| one.name == "Outer rod spacers")
        .unwrap();
    second.set(index, Chosen::Stack(4.0)).unwrap();
    second.record.runs.push(Run {
        date: "Friday".to_owned(),
        felt: Felt {
            entry: "Pushes wide".to_owned(),
            ..Felt::default()
        },
        ..Run::default()
    });
    write(&folder.path().join("base.ron"), &base).unwrap();
    write(&folder.path().join("second.ron"), &second).unwrap();
    folder
}

#[test]
fn the_tree_tells_what_each_setup_changed() {
    let folder = folder();
    let answer = good(folder.path(), &["history", "."]);
    assert!(answer.is_ascii(), "{answer}");
    let lines: Vec<&str> = answer.lines().collect();
    assert!(lines[0].starts_with("Base"), "{answer}");
    let child = lines
        .iter()
        .position(|line| line.starts_with("  More outer spacers"))
        .unwrap();
    assert!(
        lines[child + 1].contains("Outer rod spacers: from 3 mm to 4 mm"),
        "{answer}"
    );
    assert!(answer.contains("1 run"), "{answer}");
    let answer: Value =
        serde_json::from_str(&good(folder.path(), &["history", ".", "--json"])).unwrap();
    assert_eq!(answer["setups"][1]["depth"], 1);
    assert!(
        answer["setups"][1]["parent"]
            .as_str()
            .unwrap()
            .ends_with("base.ron")
    );
    assert_eq!(answer["setups"][1]["record"]["runs"][0]["date"], "Friday");
}

#[test]
fn a_search_tells_where_the_words_stand() {
    let folder = folder();
    let answer = good(
        folder.path(),
        &["history", ".", "--search", "friday PUSHES"],
    );
    assert!(!answer.contains("base.ron"), "{answer}");
    assert!(
        answer.contains("run 1, felt at entry: Pushes wide"),
        "{answer}"
    );
    let none = good(folder.path(), &["history", ".", "--search", "saturday"]);
    assert!(
        none.contains("No setup in . holds all these words"),
        "{none}"
    );
    refused(folder.path(), &["history", ".", "--search", " "], 2);
}

#[test]
fn damaged_files_are_told_and_the_rest_is_shown() {
    let folder = folder();
    std::fs::write(folder.path().join("broken.ron"), "Setup(").unwrap();
    let output = steerloft_in(folder.path(), &["history", "."]);
    assert_eq!(output.status.code(), Some(1));
    assert!(text(&output.stdout).contains("Base"));
    assert!(text(&output.stderr).contains("broken.ron"));
    refused(folder.path(), &["history", "nowhere"], 1);
}
