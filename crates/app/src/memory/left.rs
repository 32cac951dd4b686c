//! What runs that ended without warning have left.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use steerloft_setup::file;

use super::{Session, Unsaved, fault};

/// What one such run has left.
#[derive(Debug)]
pub struct LeftBehind {
    session: Session,
    /// What made it stop, if the program could still note it.
    pub fault: Option<String>,
    /// Its unsaved work.
    pub works: Vec<LeftWork>,
}

/// Unsaved work of a run that has ended.
#[derive(Debug)]
pub struct LeftWork {
    /// Where it lies.
    pub path: PathBuf,
    /// When it was kept last.
    pub kept_on: Option<SystemTime>,
    /// What it is, or why it cannot be read.
    pub work: Result<Unsaved, String>,
}

impl LeftBehind {
    /// Looks for what other runs have left, and clears away what needs no attention.
    #[must_use]
    pub fn find(unsaved: &Path) -> Vec<Self> {
        let sessions = Session::left_behind(unsaved).into_iter();
        sessions.filter_map(Self::of).collect()
    }

    fn of(session: Session) -> Option<Self> {
        let works: Vec<LeftWork> = session
            .kept()
            .into_iter()
            .filter_map(LeftWork::of)
            .collect();
        let fault = fault::read_note(session.folder());
        if works.is_empty() && fault.is_none() {
            session.end();
            return None;
        }
        Some(Self {
            session,
            fault,
            works,
        })
    }

    /// Throws one work away: it is kept elsewhere, or not wanted.
    pub fn clear(&mut self, index: usize) {
        if index < self.works.len() {
            let work = self.works.remove(index);
            let _ = fs::remove_file(work.path);
        }
    }

    /// Has done with the run: the note of its fault goes away, work that is still there stays for the next start.
    pub fn end(self) {
        fault::clear_note(self.session.folder());
        self.session.end();
    }
}

impl LeftWork {
    /// What lies in a file; nothing, and the file goes away, if the user's own file holds the same.
    fn of(path: PathBuf) -> Option<Self> {
        let work = Unsaved::read(&path);
        if let Ok(unsaved) = &work
            && let Some(user_file) = &unsaved.file
            && file::read(user_file).is_ok_and(|setup| setup == unsaved.setup)
        {
            let _ = fs::remove_file(&path);
            return None;
        }
        let kept_on = fs::metadata(&path)
            .and_then(|metadata| metadata.modified())
            .ok();
        Some(Self {
            path,
            kept_on,
            work,
        })
    }
}
