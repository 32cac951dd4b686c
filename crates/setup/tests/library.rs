//! A folder of setups: reading, the tree of where each came from, search.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use std::fs;
use std::path::Path;

use common::{base_car, choose};
use steerloft_setup::file::{FileError, write};
use steerloft_setup::library::Library;
use steerloft_setup::setup::{Chosen, Felt, Parent, Run, Setup};

fn save(folder: &Path, name: &str, setup: &Setup) {
    write(&folder.join(name), setup).unwrap();
}

/// A base, a change of it, a change of that, and one whose parent is elsewhere.
fn family() -> [Setup; 4] {
    let mut base = base_car();
    "Base".clone_into(&mut base.record.name);
    base.give_id();
    let mut second = base.child("More outer spacers");
    choose(&mut second, "Outer rod spacers", Chosen::Stack(4.0));
    let mut third = second.child("Servo back");
    choose(&mut third, "Servo station", Chosen::Slide(-1.0));
    third.record.runs.push(Run {
        date: "Friday".to_owned(),
        felt: Felt {
            entry: "Pushes wide\nthen grips".to_owned(),
            ..Felt::default()
        },
        ..Run::default()
    });
    let mut stray = base_car();
    stray.give_id();
    stray.record.parent = Some(Parent {
        id: "0a".to_owned(),
        name: "Lost one".to_owned(),
    });
    [base, second, third, stray]
}

fn library(setups: &[Setup]) -> Library {
    let folder = tempfile::tempdir().unwrap();
    for (index, setup) in setups.iter().enumerate() {
        save(folder.path(), &format!("{index}.ron"), setup);
    }
    Library::read(folder.path()).unwrap()
}

#[test]
fn ids_are_given_once_and_never_twice() {
    let [base, second, third, _] = family();
    let mut again = base.clone();
    again.give_id();
    assert_eq!(again.record.id, base.record.id);
    assert_eq!(base.record.id.len(), 32);
    assert_ne!(second.record.id, third.record.id);
    let parent = second.record.parent.unwrap();
    assert_eq!(
        (parent.id, parent.name),
        (base.record.id, "Base".to_owned())
    );
}

#[test]
fn a_folder_is_read_and_damaged_files_are_told() {
    let folder = tempfile::tempdir().unwrap();
    save(folder.path(), "b.ron", &base_car());
    save(folder.path(), "a.RON", &base_car());
    fs::write(folder.path().join("broken.ron"), "Setup(format: 9)").unwrap();
    fs::write(folder.path().join("notes.txt"), "no setup").unwrap();
    fs::create_dir(folder.path().join("older.ron")).unwrap();
    let library = Library::read(folder.path()).unwrap();
    let names: Vec<_> = library
        .entries
        .iter()
        .map(|entry| entry.file.file_name().unwrap().to_str().unwrap())
        .collect();
    assert_eq!(names, ["a.RON", "b.ron"]);
    assert_eq!(library.skipped.len(), 1);
    assert!(matches!(library.skipped[0].error, FileError::Text { .. }));
    assert!(!library.is_cut);
}

#[test]
fn a_folder_that_is_not_there_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let missing = folder.path().join("nothing");
    let message = Library::read(&missing).unwrap_err().to_string();
    assert_eq!(
        message,
        format!(
            "{}: the folder cannot be read: there is no such file or folder; \
             choose one that exists and that you may read",
            missing.display()
        )
    );
}

#[test]
fn the_tree_shows_what_came_from_what() {
    let library = library(&family());
    let tree = library.tree();
    assert_eq!(tree.roots, [0, 3]);
    assert_eq!(tree.nodes[0].children, [1]);
    assert_eq!(tree.nodes[2].parent, Some(1));
    assert_eq!(tree.nodes[3].missing_parent.as_deref(), Some("Lost one"));
    assert_eq!(tree.in_order(), [(0, 0), (1, 1), (2, 2), (3, 0)]);
    let change = library.change_from_parent(&tree, 2).unwrap();
    assert_eq!(change.adjustments.len(), 1);
    assert_eq!(change.adjustments[0].name, "Servo station");
    assert_eq!(library.change_from_parent(&tree, 0), None);
}

#[test]
fn copies_and_rings_do_no_harm() {
    let [mut base, second, _, _] = family();
    base.record.parent = Some(Parent {
        id: second.record.id.clone(),
        name: String::new(),
    });
    let library = library(&[base.clone(), second, base]);
    let tree = library.tree();
    assert_eq!(tree.nodes[2].copy_of, Some(0));
    assert_eq!(tree.in_order().len(), 3);
    assert!(!tree.roots.is_empty());
}

#[test]
fn search_wants_every_word_and_shows_the_line() {
    let library = library(&family());
    let hits = library.search("PUSHES friday");
    assert_eq!(hits.len(), 1);
    assert_eq!(hits[0].entry, 2);
    let felt = hits[0]
        .passages
        .iter()
        .find(|passage| passage.place == "run 1, felt at entry")
        .unwrap();
    assert_eq!(felt.line, "Pushes wide");
    assert!(library.search("pushes saturday").is_empty());
    assert!(library.search("  ").is_empty());
    assert_eq!(library.search("Servo station: -1 mm").len(), 1);
}
