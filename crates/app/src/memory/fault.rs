//! A fault of the program itself: the unsaved work is put on the disk, and where it is gets said and noted.

use std::fs;
use std::io::Write as _;
use std::panic::PanicHookInfo;
use std::path::{Path, PathBuf};

use super::keeper::Flusher;

/// The file with the note.
const NOTE: &str = "fault.txt";

/// From now on, a fault on this thread puts the unsaved work on the disk before the program stops.
pub(super) fn take_care(flusher: Flusher, folder: PathBuf) {
    let before = std::panic::take_hook();
    let thread = std::thread::current().id();
    std::panic::set_hook(Box::new(move |info| {
        before(info);
        if std::thread::current().id() == thread {
            flusher.flush();
            write_note(&folder, info);
            // Nothing is left to be done if the error output is closed.
            let _ = writeln!(
                std::io::stderr(),
                "Steerloft stopped by a fault of its own. Unsaved work is in {}; the next start offers to open it.",
                folder.display()
            );
        }
    }));
}

fn write_note(folder: &Path, info: &PanicHookInfo<'_>) {
    let reason = info.payload_as_str().unwrap_or("no reason given");
    let place = info
        .location()
        .map_or_else(String::new, |location| format!(" ({location})"));
    let _ = fs::write(folder.join(NOTE), format!("{reason}{place}"));
}

/// The note in a run's folder, if there is one.
pub(super) fn read_note(folder: &Path) -> Option<String> {
    let note = fs::read_to_string(folder.join(NOTE)).ok()?;
    Some(note.trim().to_owned())
}

pub(super) fn clear_note(folder: &Path) {
    let _ = fs::remove_file(folder.join(NOTE));
}
