//! The desktop's own file dialogs.

use std::path::PathBuf;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::{Duration, Instant};

use rfd::AsyncFileDialog;

use super::{FileAnswer, FileDialogs, FileRequest, Wake};

/// An answer quicker than this is not a person's.
const QUICKEST_ANSWER: Duration = Duration::from_millis(250);

/// File dialogs of the desktop. The dialog is made on the thread of the window, as some systems want it, and awaited
/// on another, so that the window goes on.
#[derive(Debug, Default)]
pub struct NativeDialogs {
    open: Option<Receiver<FileAnswer>>,
}

impl FileDialogs for NativeDialogs {
    fn ask(&mut self, request: FileRequest, window: &eframe::Frame, wake: Wake) {
        if self.open.is_some() {
            return;
        }
        let dialog = AsyncFileDialog::new().set_parent(window);
        let of_setups = |dialog: AsyncFileDialog| dialog.add_filter("Setup files", &["ron"]);
        let (send, receive) = channel();
        let asked_at = Instant::now();
        let answer_with = move |path: Option<PathBuf>| {
            let answer = match path {
                Some(path) => FileAnswer::Chosen(path),
                // Nobody closes a dialog that fast: it was never shown.
                None if asked_at.elapsed() < QUICKEST_ANSWER => FileAnswer::Unavailable,
                None => FileAnswer::Closed,
            };
            // The receiver is gone only when the window is.
            let _ = send.send(answer);
            wake();
        };
        match request {
            FileRequest::Open { folder } => {
                let asked = in_folder(of_setups(dialog), folder)
                    .add_filter("All files", &["*"])
                    .set_title("Open a setup")
                    .pick_file();
                std::thread::spawn(move || {
                    answer_with(pollster::block_on(asked).map(|file| file.path().to_owned()));
                });
            }
            FileRequest::OpenReadings { folder } => {
                let asked = in_folder(dialog, folder)
                    .add_filter("Readings", &["readings"])
                    .add_filter("All files", &["*"])
                    .set_title("Read gauge readings")
                    .pick_file();
                std::thread::spawn(move || {
                    answer_with(pollster::block_on(asked).map(|file| file.path().to_owned()));
                });
            }
            FileRequest::SaveReadings { folder, name } => {
                let asked = in_folder(dialog, folder)
                    .add_filter("Readings", &["readings"])
                    .set_title("Save the readings")
                    .set_file_name(name)
                    .save_file();
                std::thread::spawn(move || {
                    answer_with(pollster::block_on(asked).map(|file| file.path().to_owned()));
                });
            }
            FileRequest::SavePage { folder, name } => {
                let asked = in_folder(dialog, folder)
                    .add_filter("PDF, SVG or PNG", &["pdf", "svg", "png"])
                    .set_title("Save the page")
                    .set_file_name(name)
                    .save_file();
                std::thread::spawn(move || {
                    answer_with(pollster::block_on(asked).map(|file| file.path().to_owned()));
                });
            }
            FileRequest::Save { folder, name } => {
                let asked = in_folder(of_setups(dialog), folder)
                    .set_title("Save the setup")
                    .set_file_name(name)
                    .save_file();
                std::thread::spawn(move || {
                    answer_with(pollster::block_on(asked).map(|file| file.path().to_owned()));
                });
            }
        }
        self.open = Some(receive);
    }

    fn answer(&mut self) -> Option<FileAnswer> {
        let answer = match self.open.as_ref()?.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Empty) => return None,
            // The thread ended without an answer: as good as a closed dialog.
            Err(TryRecvError::Disconnected) => FileAnswer::Closed,
        };
        self.open = None;
        Some(answer)
    }

    fn is_open(&self) -> bool {
        self.open.is_some()
    }
}

fn in_folder(dialog: AsyncFileDialog, folder: Option<PathBuf>) -> AsyncFileDialog {
    match folder {
        Some(folder) => dialog.set_directory(folder),
        None => dialog,
    }
}
