//! The process killed hard while it saves and keeps unsaved work, again and again: the file is always the whole old or the
//! whole new one, nothing that was reported as saved is lost, and the unsaved work can be restored.
//!
//! `STEERLOFT_KILLS=N` sets how often; 1,000 take about a minute on a quiet machine.

#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::io::{BufRead as _, BufReader, Write as _};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::Duration;

use steerloft::memory::{Keeper, LeftBehind, Session, Unsaved};
use steerloft::state::{Bench, Document};
use steerloft_setup::file;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;

/// Tells the child that it is one, and where it is to work.
const FOLDER: &str = "STEERLOFT_KILLED_CHILD_FOLDER";

/// How often the child is killed when nothing else is asked for.
const KILLS: usize = 60;

/// How many reports of the child are awaited at most: on a busy machine, too, it gets somewhere.
const MOST_REPORTS: u64 = 6;

/// Greatest time from the last awaited report to the kill, ms.
const LONGEST: u64 = 15;

/// A generator of equally spread numbers: `SplitMix64`, after G. L. Steele, D. Lea and C. H. Flood, "Fast splittable
/// pseudorandom number generators", 2014.
struct Random(u64);

impl Random {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (mixed ^ (mixed >> 31)) % limit
    }
}

/// A setup that carries a number, as a note long enough to be written in more than one piece.
fn numbered(number: u64) -> Setup {
    let mut setup = SUPPLIED[0].setup();
    setup.record.notes = format!("{number} ").repeat(2_000);
    setup
}

/// The number a whole setup carries; the test ends where only part of one is there.
fn number_of(setup: &Setup) -> u64 {
    let notes = &setup.record.notes;
    let first = notes.split(' ').next().unwrap();
    let number: u64 = first.parse().unwrap();
    assert!(*setup == numbered(number), "a setup in pieces: {first}");
    number
}

/// Saves and keeps until it is killed, and says after each what is safe by now.
#[test]
#[ignore = "is the child that the test below kills"]
fn a_child_that_saves_and_keeps_for_ever() {
    let Some(folder) = std::env::var_os(FOLDER) else {
        return;
    };
    let folder = Path::new(&folder);
    let path = folder.join("car.ron");
    let first = std::fs::read_to_string(folder.join("next")).unwrap();
    let mut number: u64 = first.trim().parse().unwrap();
    let unsaved = folder.join("unsaved");
    let session = Session::begin(&unsaved).unwrap();
    let no_pace = Duration::ZERO;
    let keeper = Keeper::start(Some(session), None, no_pace, Arc::new(|| {})).unwrap();
    let id = Bench::new(Document::unnamed(numbered(0))).current().id();
    let mut out = std::io::stdout();
    writeln!(out, "\nready").unwrap();
    loop {
        number += 1;
        keeper.keep(
            id,
            Unsaved {
                name: "car.ron".to_owned(),
                file: Some(path.clone()),
                setup: numbered(number),
            },
        );
        if (number / 2).is_multiple_of(2) {
            keeper.flush();
            writeln!(out, "kept {number}").unwrap();
        }
        number += 1;
        file::write(&path, &numbered(number)).unwrap();
        writeln!(out, "saved {number}").unwrap();
    }
}

/// What the child said last before it was killed.
#[derive(Debug, Default)]
struct Said {
    saved: Option<u64>,
    kept: Option<u64>,
}

impl Said {
    fn take(&mut self, line: &str) {
        let number = |word: &str| line.strip_prefix(word).and_then(|rest| rest.parse().ok());
        self.saved = number("saved ").or(self.saved);
        self.kept = number("kept ").or(self.kept);
    }
}

/// Lets a child work until it has reported so often, and for a time from then on, and kills it.
fn kill_one(folder: &Path, reports: usize, time: Duration) -> Said {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--ignored", "--exact", "--nocapture"])
        .arg("kills::a_child_that_saves_and_keeps_for_ever")
        .env(FOLDER, folder)
        .stdout(Stdio::piped())
        .stderr(Stdio::inherit())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
    assert!(
        lines.by_ref().any(|line| line.unwrap() == "ready"),
        "the child begins"
    );
    let mut said = Said::default();
    for line in lines.by_ref().take(reports) {
        said.take(&line.unwrap());
    }
    std::thread::sleep(time);
    // On unix this is SIGKILL, which cannot be caught.
    child.kill().unwrap();
    child.wait().unwrap();
    for line in lines.map_while(Result::ok) {
        said.take(&line);
    }
    said
}

#[test]
fn a_process_killed_at_any_moment_loses_nothing() {
    let kills = std::env::var("STEERLOFT_KILLS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(KILLS);
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let path = folder.join("car.ron");
    let mut random = Random(20_260_701);
    let mut last = 0;
    file::write(&path, &numbered(last)).unwrap();
    let (mut saves, mut restored) = (0, 0);
    for kill in 0..kills {
        // The numbers of each child are above all before.
        let first = last + 10;
        std::fs::write(folder.join("next"), first.to_string()).unwrap();
        let reports = usize::try_from(random.below(MOST_REPORTS + 1)).unwrap();
        let time = Duration::from_micros(random.below(LONGEST * 1000));
        let said = kill_one(folder, reports, time);

        let found = number_of(&file::read(&path).unwrap());
        match said.saved {
            // A save may have been complete but not been reported any more.
            Some(saved) => assert!(
                found == saved || found == saved + 2,
                "kill {kill}: {found} in the file, {saved} was saved"
            ),
            None => assert!(
                found == last || found == first + 2,
                "kill {kill}: {found} in the file, {last} before"
            ),
        }
        saves += u64::from(found != last);

        let left = LeftBehind::find(&folder.join("unsaved"));
        let works: Vec<u64> = left
            .iter()
            .flat_map(|run| &run.works)
            .map(|left| number_of(&left.work.as_ref().unwrap().setup))
            .collect();
        if let Some(kept) = said.kept {
            let newest = works.iter().max();
            assert!(
                newest.is_some_and(|newest| *newest >= kept),
                "kill {kill}: {works:?} was left, {kept} was kept"
            );
        }
        restored += u64::from(!works.is_empty());
        last = found.max(works.into_iter().max().unwrap_or(0)).max(first);
        for mut run in left {
            while !run.works.is_empty() {
                run.clear(0);
            }
            run.end();
        }
        file::write(&path, &numbered(last)).unwrap();
    }
    assert!(
        saves > 0 && restored > 0,
        "the child got somewhere: {saves} saves, {restored} restored"
    );
    let runs = std::fs::read_dir(folder.join("unsaved")).unwrap().count();
    assert_eq!(runs, 1, "no run's folder is left, the lock only");
}
