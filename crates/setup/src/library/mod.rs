//! A folder of setups: read as a whole, put in a tree by where each came from, searched.

mod search;
mod tree;

pub use search::{Hit, Passage};
pub use tree::{Node, Tree};

use std::path::{Path, PathBuf};

use crate::file::{self, FileError};
use crate::limits::{MAX_LIBRARY_ENTRIES, MAX_LIBRARY_FILES};
use crate::setup::Setup;

/// Ending of the files that a library looks at.
pub const ENDING: &str = "ron";

/// The setups of a folder.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Library {
    /// The setups, in the order of their files' names.
    pub entries: Vec<Entry>,
    /// Files that could not be read, and why.
    pub skipped: Vec<Skipped>,
    /// Whether the folder holds more files than are looked at.
    pub is_cut: bool,
}

/// A setup of a library.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Its file.
    pub file: PathBuf,
    /// The setup.
    pub setup: Setup,
}

/// A file of a library that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Skipped {
    /// The file.
    pub file: PathBuf,
    /// Why.
    pub error: FileError,
}

/// A folder that cannot be read at all.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}: the folder cannot be read: {reason}; choose one that exists and that you may read", folder.display())]
pub struct LibraryError {
    /// The folder.
    pub folder: PathBuf,
    /// Why.
    pub reason: String,
}

impl Library {
    /// Reads every setup file of a folder, not of the folders in it. A file that cannot be read is skipped and told.
    ///
    /// No more than [`MAX_LIBRARY_ENTRIES`] names are looked at and [`MAX_LIBRARY_FILES`] files read, the first by name.
    ///
    /// # Errors
    /// Where the folder itself cannot be read.
    pub fn read(folder: &Path) -> Result<Self, LibraryError> {
        let (mut files, mut is_cut) = setup_files(folder)?;
        if files.len() > MAX_LIBRARY_FILES {
            files.truncate(MAX_LIBRARY_FILES);
            is_cut = true;
        }
        let mut library = Self {
            is_cut,
            ..Self::default()
        };
        for file in files {
            match file::read(&file) {
                Ok(setup) => library.entries.push(Entry { file, setup }),
                Err(error) => library.skipped.push(Skipped { file, error }),
            }
        }
        Ok(library)
    }
}

/// The setup files of a folder by name, and whether there are more than were looked at.
fn setup_files(folder: &Path) -> Result<(Vec<PathBuf>, bool), LibraryError> {
    let unreadable = |error: std::io::Error| LibraryError {
        folder: folder.to_owned(),
        reason: file::plain_reason(&error),
    };
    let mut files = Vec::new();
    let mut looked_at = 0;
    for entry in std::fs::read_dir(folder).map_err(unreadable)? {
        looked_at += 1;
        if looked_at > MAX_LIBRARY_ENTRIES {
            files.sort();
            return Ok((files, true));
        }
        let path = entry.map_err(unreadable)?.path();
        let ends_so = path
            .extension()
            .is_some_and(|ending| ending.eq_ignore_ascii_case(ENDING));
        if ends_so && path.is_file() {
            files.push(path);
        }
    }
    files.sort();
    Ok((files, false))
}
