//! What can go wrong with a setup file.

use std::io;
use std::path::PathBuf;

/// A setup file that cannot be read or written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum FileError {
    /// The text is wrong at a place. Shown as `FILE:LINE:COLUMN: what is wrong; what would be right`, without
    /// the file if the text came from none.
    #[error("{}{line}:{column}: {wrong}; {right}", file_prefix(file.as_ref()))]
    Text {
        /// The file, if the text came from one.
        file: Option<PathBuf>,
        /// Line, from 1.
        line: usize,
        /// Column in characters, from 1.
        column: usize,
        /// What is wrong.
        wrong: String,
        /// What would be right.
        right: String,
    },
    /// The file cannot be read.
    #[error("{}: cannot be read: {reason}; {right}", file.display())]
    Read {
        /// The file.
        file: PathBuf,
        /// Why, in plain words.
        reason: String,
        /// What to do.
        right: String,
    },
    /// The file cannot be written; what was there before is as it was.
    #[error("{}: cannot be saved: {reason}; the file is as it was before: {right}", file.display())]
    Write {
        /// The file.
        file: PathBuf,
        /// Why, in plain words.
        reason: String,
        /// What to do.
        right: String,
    },
}

impl FileError {
    /// The same error, of a text that came from this file.
    pub(super) fn in_file(self, path: &std::path::Path) -> Self {
        match self {
            Self::Text {
                line,
                column,
                wrong,
                right,
                ..
            } => Self::Text {
                file: Some(path.to_owned()),
                line,
                column,
                wrong,
                right,
            },
            other => other,
        }
    }
}

fn file_prefix(file: Option<&PathBuf>) -> String {
    file.map_or_else(String::new, |file| format!("{}:", file.display()))
}

/// The system's reason in plain words where it is a usual one.
pub(crate) fn plain_reason(error: &io::Error) -> String {
    let plain = match error.kind() {
        io::ErrorKind::NotFound => "there is no such file or folder",
        io::ErrorKind::NotADirectory => "what should be its folder is a file",
        io::ErrorKind::PermissionDenied => "the system does not permit it",
        io::ErrorKind::ReadOnlyFilesystem => "its place is read-only",
        io::ErrorKind::StorageFull => "the disk is full",
        io::ErrorKind::QuotaExceeded => "the space allowed to you is used up",
        _ => return error.to_string(),
    };
    plain.to_owned()
}
