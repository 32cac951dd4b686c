//! A fault of the program itself: unsaved work is put on the disk, and it is said where.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stderr
)]

use std::path::Path;
use std::process::Command;
use std::sync::Arc;
use std::time::Duration;

use steerloft::memory::{Keeper, LeftBehind, Session, Unsaved};
use steerloft::state::{Bench, Document};
use steerloft_setup::supplied::SUPPLIED;

/// Tells the child that it is one, and where it is to work.
const FOLDER: &str = "STEERLOFT_FAULTY_CHILD_FOLDER";

fn work() -> Unsaved {
    let mut setup = SUPPLIED[0].setup();
    "just now".clone_into(&mut setup.record.notes);
    Unsaved {
        name: "car.ron".to_owned(),
        file: None,
        setup,
    }
}

/// Unsaved work that can no longer be written for want of room: it is said, and what was kept before is whole.
#[test]
#[cfg(unix)]
fn a_full_disk_leaves_the_unsaved_work_kept_before() {
    let folder = tempfile::tempdir().unwrap();
    let mounted = Command::new("mount")
        .args(["-t", "tmpfs", "-o", "size=128k", "tmpfs"])
        .arg(folder.path())
        .output();
    if !mounted.is_ok_and(|output| output.status.success()) {
        eprintln!("left out: no right to mount a small file system");
        return;
    }
    let unmount = Unmount(folder.path());
    let session = Session::begin(folder.path()).unwrap();
    let keeper = Keeper::start(Some(session), None, Duration::ZERO, Arc::new(|| {})).unwrap();
    let id = Bench::new(Document::unnamed(work().setup)).current().id();
    keeper.keep(id, work());
    keeper.flush();
    assert_eq!(keeper.trouble(), None);
    let mut larger = work();
    larger.setup.record.notes = "n".repeat(200_000);
    keeper.keep(id, larger);
    keeper.flush();
    let trouble = keeper.trouble().expect("it is said");
    assert!(trouble.contains("Unsaved work is not kept"), "{trouble}");
    assert!(trouble.contains("the disk is full"), "{trouble}");
    // The process ends without another write, as if it were killed.
    std::mem::forget(keeper);
    let sessions = std::fs::read_dir(folder.path()).unwrap();
    let kept = sessions
        .flat_map(|session| {
            std::fs::read_dir(session.unwrap().path())
                .into_iter()
                .flatten()
        })
        .map(|file| std::fs::read_to_string(file.unwrap().path()).unwrap())
        .filter(|text| text.contains("just now"))
        .count();
    assert_eq!(
        kept, 1,
        "the work kept before is there, and nothing in part"
    );
    drop(unmount);
}

/// A small file system, taken away at the end.
#[cfg(unix)]
struct Unmount<'a>(&'a Path);

#[cfg(unix)]
impl Drop for Unmount<'_> {
    fn drop(&mut self) {
        let _ = Command::new("umount").args(["-l"]).arg(self.0).status();
    }
}

#[test]
#[ignore = "is the child of the test below"]
fn a_child_with_a_fault() {
    let Some(folder) = std::env::var_os(FOLDER) else {
        return;
    };
    let session = Session::begin(Path::new(&folder)).unwrap();
    // It would be written in an hour, were it not for the fault.
    let hour = Duration::from_hours(1);
    let keeper = Keeper::start(Some(session), None, hour, Arc::new(|| {})).unwrap();
    keeper.take_care_of_faults();
    let id = Bench::new(Document::unnamed(work().setup)).current().id();
    keeper.keep(id, work());
    panic!("the floor gives way");
}

#[test]
fn a_fault_saves_the_work_and_says_where() {
    let folder = tempfile::tempdir().unwrap();
    let output = Command::new(std::env::current_exe().unwrap())
        .args(["--ignored", "--exact", "--nocapture"])
        .arg("faults::a_child_with_a_fault")
        .env(FOLDER, folder.path())
        .output()
        .unwrap();
    assert!(!output.status.success());
    let said = String::from_utf8_lossy(&output.stderr);
    let left = LeftBehind::find(folder.path());
    assert_eq!(left.len(), 1, "{said}");
    let works: Vec<_> = left[0].works.iter().collect();
    assert_eq!(works.len(), 1, "{said}");
    assert_eq!(works[0].work, Ok(work()));
    let place = works[0].path.parent().unwrap().display().to_string();
    assert!(said.contains(&place), "{place} in {said}");
    let fault = left[0].fault.as_deref().expect("a note");
    assert!(fault.contains("the floor gives way"), "{fault}");
    assert!(fault.contains("faults.rs"), "{fault}");
}
