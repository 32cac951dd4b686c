//! Every command that README and guide show is run as it stands there.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::{Path, PathBuf};

use crate::common::{folder_of_cars, steerloft_in, text};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::dimension::{Axis, Dimension, Whose};
use steerloft_setup::file::write;
use steerloft_setup::supplied::SUPPLIED;

/// The words that stand for a file or a number to be put in, and what is put in.
const PUT_IN: [(&str, &str); 15] = [
    ("FILE...", "pan-car-swinging-arm.ron kart.ron"),
    ("FILE", "pan-car-swinging-arm.ron"),
    ("REFERENCE", "pan-car-swinging-arm.ron"),
    ("OTHER", "pan-car-sliding-kingpin.ron"),
    ("FOLDER", "."),
    ("FELT", "pushes-at-entry"),
    ("READINGS", "gauges.readings"),
    ("FITTED.ron", "fitted.ron"),
    ("FOUND.ron", "found.ron"),
    ("OUT.pdf", "out.pdf"),
    ("OUT.svg", "out.svg"),
    ("OUT.png", "out.png"),
    ("SHELL", "bash"),
    ("my-car.ron", "my-car.ron"),
    ("wet.ron", "wet.ron"),
];

fn documents() -> Vec<PathBuf> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut files = vec![top.join("README.md"), top.join("docs/guide.md")];
    for entry in std::fs::read_dir(top.join("docs/guide")).unwrap() {
        files.push(entry.unwrap().path());
    }
    files.retain(|file| file.extension().is_some_and(|end| end == "md"));
    files.sort();
    files
}

/// The commands of a document: indented lines that begin with the program's name, without their remark.
fn commands(document: &str) -> Vec<String> {
    let lines = document
        .lines()
        .filter_map(|line| line.strip_prefix("    "));
    let commands = lines.filter(|line| line.starts_with("steerloft "));
    commands
        .map(|line| line.split(" #").next().unwrap().trim().to_owned())
        .collect()
}

#[test]
fn every_command_shown_works() {
    let mut count = 0;
    for document in documents() {
        let text_of = std::fs::read_to_string(&document).unwrap();
        let is_story = document.ends_with("evening.md");
        let evening = evening(&text_of);
        for command in commands(&text_of) {
            // Each stands for itself, but in a story each goes on where the last one ended.
            if is_story {
                run(&command, &document, evening.path());
            } else {
                run(&command, &document, folder().path());
            }
            count += 1;
        }
    }
    assert!(count >= 12, "only {count} commands were found");
}

/// A folder with the files that commands name.
fn folder() -> tempfile::TempDir {
    let folder = folder_of_cars();
    for name in ["my-car.ron", "wet.ron"] {
        std::fs::write(folder.path().join(name), SUPPLIED[1].text).unwrap();
    }
    std::fs::write(folder.path().join("gauges.readings"), READINGS).unwrap();
    folder
}

/// The folder of the worked evening as it begins: the car before, the same with the new servo, and the gauge readings that
/// stand in the text.
fn evening(text: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let before = SUPPLIED[0].setup();
    let mut after = before.clone();
    for (axis, by) in [(Axis::X, 2.0), (Axis::Z, -1.0)] {
        for point in [PointName::DriveAxis, PointName::RodInner] {
            let side = Whose::Both;
            let place = Dimension::Point { point, side, axis };
            place.add(&mut after, by).unwrap();
        }
    }
    write(&folder.path().join("before.ron"), &before).unwrap();
    write(&folder.path().join("new-servo.ron"), &after).unwrap();
    let indented = text.lines().filter_map(|line| line.strip_prefix("    "));
    let from = indented.skip_while(|line| !line.starts_with("Readings("));
    let readings: Vec<&str> = from
        .take_while(|line| !line.starts_with("steerloft"))
        .collect();
    std::fs::write(folder.path().join("gauges.readings"), readings.join("\n")).unwrap();
    folder
}

/// Gauge readings, made up.
const READINGS: &str = "Readings(
    format: 1,
    toe: [
        (at: Travel(0.0), left: Some(0.1), right: Some(0.0), uncertainty: 0.1),
        (at: Travel(2.0), left: Some(0.4), right: Some(0.2), uncertainty: 0.1),
    ],
    uncertain: [Point(point: steering_arm, side: Left, axis: Z), Rod(side: Left)],
)";

fn run(command: &str, document: &Path, folder: &Path) {
    let mut words: Vec<String> = Vec::new();
    // What stands between quotes is one word, as for a shell.
    for (index, part) in command.split('"').enumerate() {
        if index % 2 == 1 {
            words.push(part.to_owned());
            continue;
        }
        for word in part.split_whitespace() {
            match PUT_IN.iter().find(|(shown, _)| *shown == word) {
                Some((_, put_in)) => words.extend(put_in.split(' ').map(str::to_owned)),
                None => words.push(word.to_owned()),
            }
        }
    }
    words.remove(0);
    // `> FILE` is the shell's: the answer is looked at instead.
    if let Some(at) = words.iter().position(|word| word == ">") {
        words.truncate(at);
    }
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let output = steerloft_in(folder, &words);
    assert_eq!(
        output.status.code(),
        Some(0),
        "{}: {command}: {}",
        document.display(),
        text(&output.stderr)
    );
}
