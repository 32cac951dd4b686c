//! Asking the user for a file, behind one trait so that tests answer without a desktop.

mod native;
mod scripted;

use std::path::PathBuf;
use std::sync::Arc;

pub use native::NativeDialogs;
pub use scripted::{ScriptedAnswers, ScriptedDialogs};

/// Called when an answer has come, from whichever thread it came on.
pub type Wake = Arc<dyn Fn() + Send + Sync>;

/// What is asked of the user.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileRequest {
    /// Which file to open.
    Open {
        /// The folder to start in, if one is known.
        folder: Option<PathBuf>,
    },
    /// Which file of gauge readings to read.
    OpenReadings {
        /// The folder to start in, if one is known.
        folder: Option<PathBuf>,
    },
    /// Where to save gauge readings.
    SaveReadings {
        /// The folder to start in, if one is known.
        folder: Option<PathBuf>,
        /// The file name to suggest.
        name: String,
    },
    /// Where to save a sheet or a picture.
    SavePage {
        /// The folder to start in, if one is known.
        folder: Option<PathBuf>,
        /// The file name to suggest; its end tells the format.
        name: String,
    },
    /// Where to save a setup.
    Save {
        /// The folder to start in, if one is known.
        folder: Option<PathBuf>,
        /// The file name to suggest.
        name: String,
    },
}

/// What came of a question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileAnswer {
    /// The user chose this file.
    Chosen(PathBuf),
    /// The user closed the question.
    Closed,
    /// The desktop has no file dialogs to show.
    Unavailable,
}

/// Asks the user for files without holding up the window.
pub trait FileDialogs {
    /// Asks. While a question is open, another one is not asked.
    fn ask(&mut self, request: FileRequest, window: &eframe::Frame, wake: Wake);

    /// The answer, once it has come.
    fn answer(&mut self) -> Option<FileAnswer>;

    /// Whether a question is open.
    fn is_open(&self) -> bool;
}
