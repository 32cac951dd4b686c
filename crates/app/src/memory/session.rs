//! A run of the program as a folder: unsaved work lies in it, and a lock tells whether the run still goes on.
//!
//! The system lets go of the lock when the process ends, however it ends. A folder that nobody locks belongs to a run that
//! ended without putting its work in order.

use std::ffi::OsString;
use std::fs::{self, File, TryLockError};
use std::io;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use crate::state::SetupId;

const LOCK: &str = "lock";

/// A run's folder, locked.
#[derive(Debug)]
pub struct Session {
    folder: PathBuf,
    /// Holds the lock for as long as it lives.
    lock: Option<File>,
}

impl Session {
    /// Begins a run with a new folder among those of others.
    pub fn begin(unsaved: &Path) -> io::Result<Self> {
        fs::create_dir_all(unsaved)?;
        let _others = hold_off_others(unsaved)?;
        let moment = SystemTime::now()
            .duration_since(UNIX_EPOCH)
            .map_or(0, |since| since.as_millis());
        let mut attempt = 0_u32;
        loop {
            let folder = unsaved.join(format!("{moment}-{}-{attempt}", std::process::id()));
            match fs::create_dir(&folder) {
                Ok(()) => {
                    let lock = File::create(folder.join(LOCK))?;
                    let _ = lock.try_lock();
                    return Ok(Self {
                        folder,
                        lock: Some(lock),
                    });
                }
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => attempt += 1,
                Err(error) => return Err(error),
            }
        }
    }

    /// Takes over the folders of runs that have ended, oldest first.
    #[must_use]
    pub fn left_behind(unsaved: &Path) -> Vec<Self> {
        let Ok(_others) = hold_off_others(unsaved) else {
            return Vec::new();
        };
        let entries = fs::read_dir(unsaved).into_iter().flatten().flatten();
        let mut folders: Vec<PathBuf> = entries
            .map(|entry| entry.path())
            .filter(|path| path.is_dir())
            .collect();
        folders.sort();
        folders.into_iter().filter_map(Self::take_over).collect()
    }

    fn take_over(folder: PathBuf) -> Option<Self> {
        let lock = File::create(folder.join(LOCK)).ok()?;
        match lock.try_lock() {
            Err(TryLockError::WouldBlock) => None,
            Ok(()) | Err(TryLockError::Error(_)) => Some(Self {
                folder,
                lock: Some(lock),
            }),
        }
    }

    /// The folder.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The file for the unsaved work of a setup.
    #[must_use]
    pub fn file_of(&self, id: SetupId) -> PathBuf {
        self.folder.join(format!("{id}.ron"))
    }

    /// The files with unsaved work.
    #[must_use]
    pub fn kept(&self) -> Vec<PathBuf> {
        let entries = fs::read_dir(&self.folder).into_iter().flatten().flatten();
        let mut files: Vec<PathBuf> = entries
            .map(|entry| entry.path())
            .filter(|path| path.extension().is_some_and(|extension| extension == "ron"))
            .collect();
        files.sort();
        files
    }

    /// Ends the run: its folder goes away unless work or a note of a fault lies in it.
    pub fn end(mut self) {
        let entries = fs::read_dir(&self.folder).into_iter().flatten().flatten();
        let names: Vec<OsString> = entries.map(|entry| entry.file_name()).collect();
        // A temporary file is what a save leaves that was cut short by the end of the process.
        let disposable = |name: &OsString| {
            name == LOCK || Path::new(name).extension().is_some_and(|end| end == "tmp")
        };
        if names.iter().all(disposable) {
            self.lock = None;
            for name in names {
                let _ = fs::remove_file(self.folder.join(name));
            }
            let _ = fs::remove_dir(&self.folder);
        }
    }
}

/// Keeps other runs from beginning and looking round at the same moment: between the making of a folder and its lock it would
/// look left behind.
fn hold_off_others(unsaved: &Path) -> io::Result<File> {
    let lock = File::create(unsaved.join("sessions.lock"))?;
    // Where a file system knows no locks, there is nothing to wait for.
    let _ = lock.lock();
    Ok(lock)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn a_run_that_goes_on_is_left_alone_and_one_that_ended_is_taken_over() {
        let folder = tempfile::tempdir().unwrap();
        let unsaved = folder.path().join("deep/unsaved");
        let (one, other) = (
            Session::begin(&unsaved).unwrap(),
            Session::begin(&unsaved).unwrap(),
        );
        assert_ne!(one.folder(), other.folder());
        assert!(Session::left_behind(&unsaved).is_empty());
        let file = one.file_of(SetupId(3));
        fs::write(&file, "work").unwrap();
        fs::write(one.folder().join(".steerloft-1.tmp"), "half").unwrap();
        let place = one.folder().to_owned();
        drop(one);
        let left = Session::left_behind(&unsaved);
        assert_eq!(left.len(), 1);
        assert_eq!(left[0].folder(), place);
        assert_eq!(left[0].kept(), std::slice::from_ref(&file));
        assert!(
            Session::left_behind(&unsaved).is_empty(),
            "it has been taken"
        );
        fs::remove_file(&file).unwrap();
        left.into_iter().for_each(Session::end);
        assert!(!place.exists());
        other.end();
        assert_eq!(fs::read_dir(&unsaved).unwrap().count(), 1, "the lock only");
    }

    #[test]
    fn a_folder_with_work_outlives_the_end_of_its_run() {
        let folder = tempfile::tempdir().unwrap();
        let session = Session::begin(folder.path()).unwrap();
        let file = session.file_of(SetupId(0));
        fs::write(&file, "work").unwrap();
        session.end();
        assert!(file.exists());
    }
}
