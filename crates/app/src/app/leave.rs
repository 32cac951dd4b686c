//! Ways to leave the open document.

use std::path::PathBuf;

/// What comes instead of the open document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Leave {
    /// A new setup of a supplied car.
    New(usize),
    /// A file still to be chosen.
    ChooseFile,
    /// This file.
    OpenFile(PathBuf),
    /// Nothing: the window closes.
    Quit,
}
