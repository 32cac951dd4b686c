//! How far a batch of files is, on a terminal only.

use std::io::{IsTerminal, Write};
use std::path::Path;

/// From how many files on progress is shown.
const LEAST: usize = 4;

/// A line on the error output that is written over and over; silent where that is no terminal.
#[derive(Debug)]
pub(super) struct Progress {
    total: usize,
    done: usize,
    shown: bool,
}

impl Progress {
    /// Progress over so many files.
    pub(super) fn over(total: usize) -> Self {
        Self {
            total,
            done: 0,
            shown: total >= LEAST && std::io::stderr().is_terminal(),
        }
    }

    /// Takes up the next file.
    pub(super) fn next(&mut self, file: &Path) {
        self.done += 1;
        if self.shown {
            let name = file.file_name().unwrap_or(file.as_os_str());
            // Progress that cannot be shown is no reason to stop.
            let _ = write!(
                std::io::stderr(),
                "\r\u{1b}[K{} of {}: {}",
                self.done,
                self.total,
                name.to_string_lossy()
            );
        }
    }

    /// Clears the line, so that other words can be written.
    pub(super) fn clear(&self) {
        if self.shown {
            let _ = write!(std::io::stderr(), "\r\u{1b}[K");
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.clear();
    }
}
