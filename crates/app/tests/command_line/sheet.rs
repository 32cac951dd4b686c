//! Sheets and drawings written from the command line.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;

use crate::common::{folder_of_cars, good, refused};
use steerloft_setup::supplied::SUPPLIED;

const CAR: &str = SUPPLIED[0].file_name;

fn size(folder: &Path, file: &str) -> u64 {
    std::fs::metadata(folder.join(file)).unwrap().len()
}

fn bytes(folder: &Path, file: &str) -> Vec<u8> {
    std::fs::read(folder.join(file)).unwrap()
}

#[test]
fn the_name_decides_the_format_and_the_same_setup_gives_the_same_bytes() {
    let folder = folder_of_cars();
    let folder = folder.path();
    for (file, magic) in [
        ("s.pdf", &b"%PDF-"[..]),
        ("s.svg", b"<?xml"),
        ("s.png", b"\x89PNG"),
    ] {
        let said = good(folder, &["sheet", CAR, "-o", file]);
        assert!(said.contains(&format!("{file} written")), "{said}");
        let first = bytes(folder, file);
        assert!(first.starts_with(magic), "{file}");
        good(folder, &["sheet", CAR, "-o", file, "--force"]);
        assert!(bytes(folder, file) == first, "{file} differs");
    }
    let errors = refused(folder, &["sheet", CAR, "-o", "s.doc"], 1);
    assert!(errors.contains(".pdf, .svg or .png"), "{errors}");
}

#[test]
fn every_supplied_car_has_its_three_pages_to_print() {
    let folder = folder_of_cars();
    for car in SUPPLIED {
        for (index, form) in [&[][..], &["--blank"], &["--measuring"]].iter().enumerate() {
            let out = format!("{index}-{}.pdf", car.file_name);
            let mut arguments = vec!["sheet", car.file_name, "-o", &out, "--paper", "letter"];
            arguments.extend(form.iter());
            good(folder.path(), &arguments);
            assert!(size(folder.path(), &out) > 10_000, "{out}");
        }
    }
}

#[test]
fn further_curves_go_on_further_pages() {
    let folder = folder_of_cars();
    let folder = folder.path();
    let said = good(
        folder,
        &["sheet", CAR, "-o", "s.svg", "--curves", "ackermann,ratio"],
    );
    assert!(said.contains("s-2.svg written"), "{said}");
    let page = String::from_utf8(bytes(folder, "s-2.svg")).unwrap();
    assert!(page.contains("Ackermann share against inner angle"));
    assert!(!page.contains("Camber against travel"));
    good(folder, &["sheet", CAR, "-o", "all.pdf", "--curves", "all"]);
    good(folder, &["sheet", CAR, "-o", "none.pdf"]);
    assert!(size(folder, "all.pdf") > size(folder, "none.pdf"));
    let errors = refused(folder, &["sheet", CAR, "-o", "x.pdf", "--curves", "tea"], 2);
    assert!(
        errors.contains("toe-travel"),
        "the names are listed: {errors}"
    );
}

#[test]
fn nothing_is_written_where_one_page_is_there_already() {
    let folder = folder_of_cars();
    let folder = folder.path();
    std::fs::write(folder.join("s-2.svg"), "mine").unwrap();
    let arguments = ["sheet", CAR, "-o", "s.svg", "--curves", "ratio"];
    let errors = refused(folder, &arguments, 1);
    assert!(
        errors.contains("s-2.svg") && errors.contains("--force"),
        "{errors}"
    );
    assert!(!folder.join("s.svg").exists());
    assert_eq!(bytes(folder, "s-2.svg"), b"mine");
}

#[test]
fn a_reference_is_compared_with_and_its_faults_are_its_own() {
    let folder = folder_of_cars();
    let folder = folder.path();
    let changed = SUPPLIED[0]
        .text
        .replacen("HoldToe(0.0)", "HoldToe(-0.5)", 1);
    std::fs::write(folder.join("changed.ron"), changed).unwrap();
    good(
        folder,
        &["sheet", "changed.ron", "--reference", CAR, "-o", "s.svg"],
    );
    let page = String::from_utf8(bytes(folder, "s.svg")).unwrap();
    assert!(page.contains("Compared with") && page.contains("ref. left"));
    let apart = SUPPLIED[0]
        .text
        .replacen("HoldToe(0.0)", "FixedLength(31.0)", 1);
    std::fs::write(folder.join("apart.ron"), apart).unwrap();
    let errors = refused(
        folder,
        &["sheet", CAR, "--reference", "apart.ron", "-o", "x.pdf"],
        1,
    );
    assert!(
        errors.contains("apart.ron") && errors.contains("mm too short"),
        "{errors}"
    );
    assert!(!folder.join("x.pdf").exists());
}

#[test]
fn options_that_do_not_go_together_are_wrong_use() {
    let folder = folder_of_cars();
    for extra in [
        &["--blank", "--measuring"][..],
        &["--blank", "--reference", CAR],
        &["--measuring", "--curves", "ratio"],
        &["--paper", "a3"],
        &["--resolution", "fine"],
    ] {
        let mut arguments = vec!["sheet", CAR, "-o", "x.pdf"];
        arguments.extend(extra);
        refused(folder.path(), &arguments, 2);
    }
    refused(folder.path(), &["sheet", CAR], 2);
}

#[test]
fn a_picture_has_the_resolution_asked_for_within_limits() {
    let folder = folder_of_cars();
    let folder = folder.path();
    good(
        folder,
        &["sheet", CAR, "-o", "s.png", "--resolution", "50.8"],
    );
    let picture = bytes(folder, "s.png");
    // Width and height stand in the first chunk of a PNG file, big end first (W3C PNG specification, clause 11.2.2).
    let number = |at: usize| u32::from_be_bytes(picture[at..at + 4].try_into().unwrap());
    assert_eq!(
        (number(16), number(20)),
        (420, 594),
        "210 by 297 mm, two dots a mm"
    );
    let errors = refused(
        folder,
        &["sheet", CAR, "-o", "x.png", "--resolution", "1e9"],
        1,
    );
    assert!(errors.contains("1200"), "{errors}");
}

#[test]
fn a_place_that_cannot_be_written_to_is_named() {
    let folder = folder_of_cars();
    let folder = folder.path();
    let errors = refused(folder, &["sheet", CAR, "-o", "no/such/folder/s.pdf"], 1);
    assert!(
        errors.contains("no/such/folder/s.pdf cannot be written"),
        "{errors}"
    );
    std::fs::create_dir(folder.join("folder.pdf")).unwrap();
    let arguments = ["drawing", CAR, "-o", "folder.pdf", "--force"];
    let errors = refused(folder, &arguments, 1);
    assert!(errors.contains("folder.pdf cannot be written"), "{errors}");
    let left = std::fs::read_dir(folder).unwrap().filter(|entry| {
        let name = entry.as_ref().unwrap().file_name();
        name.to_string_lossy().starts_with(".steerloft")
    });
    assert_eq!(left.count(), 0, "no temporary file stays");
}

#[cfg(unix)]
#[test]
fn what_a_symbolic_link_leads_to_is_replaced_and_the_link_stays() {
    let folder = folder_of_cars();
    let folder = folder.path();
    std::fs::create_dir(folder.join("elsewhere")).unwrap();
    std::fs::write(folder.join("elsewhere/page.svg"), "old").unwrap();
    std::os::unix::fs::symlink("elsewhere/page.svg", folder.join("s.svg")).unwrap();
    refused(folder, &["drawing", CAR, "-o", "s.svg"], 1);
    good(folder, &["drawing", CAR, "-o", "s.svg", "--force"]);
    assert!(
        folder
            .join("s.svg")
            .symlink_metadata()
            .unwrap()
            .is_symlink()
    );
    assert!(bytes(folder, "elsewhere/page.svg").starts_with(b"<?xml"));
}
