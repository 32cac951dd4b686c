//! The thread that puts unsaved work and settings on the disk, so that no frame waits for it.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::PathBuf;
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use steerloft_setup::file::{self, FileError};

use super::{Session, Unsaved, fault};
use crate::state::SetupId;

/// How long after a change it is written at the latest. Changes that come meanwhile are written with it.
pub const PACE: Duration = Duration::from_secs(1);

/// How long after a failure the same is tried again.
const RETRY: Duration = Duration::from_secs(15);

/// How long is waited for the disk when the program stops by a fault.
const PATIENCE: Duration = Duration::from_secs(3);

/// Called when there is something to say, from the thread itself.
pub type Wake = Arc<dyn Fn() + Send + Sync>;

/// The near end of the thread.
#[derive(Debug)]
pub struct Keeper {
    jobs: Sender<Job>,
    thread: Option<JoinHandle<()>>,
    folder: Option<PathBuf>,
    trouble: Arc<Mutex<Option<String>>>,
}

/// Lets all that has been handed over be written at once.
#[derive(Debug, Clone)]
pub(super) struct Flusher(Sender<Job>);

#[derive(Debug)]
enum Job {
    Keep(SetupId, Box<Unsaved>),
    Forget(SetupId),
    Settings(String),
    Flush(Sender<()>),
    End,
}

impl Keeper {
    /// Starts the thread. It writes unsaved work to the session and settings to the file, as far as there are such.
    pub fn start(
        session: Option<Session>,
        settings: Option<PathBuf>,
        pace: Duration,
        wake: Wake,
    ) -> io::Result<Self> {
        let (jobs, received) = channel();
        let trouble = Arc::new(Mutex::new(None));
        let folder = session.as_ref().map(|session| session.folder().to_owned());
        let worker = Worker {
            jobs: received,
            session,
            settings,
            pace,
            due: None,
            works: BTreeMap::new(),
            new_settings: None,
            trouble: Arc::clone(&trouble),
            told: None,
            wake,
        };
        let thread = std::thread::Builder::new()
            .name("keeper".to_owned())
            .spawn(move || worker.run())?;
        Ok(Self {
            jobs,
            thread: Some(thread),
            folder,
            trouble,
        })
    }

    /// Hands unsaved work over.
    pub fn keep(&self, id: SetupId, unsaved: Unsaved) {
        self.send(Job::Keep(id, Box::new(unsaved)));
    }

    /// A setup has no unsaved work any more.
    pub fn forget(&self, id: SetupId) {
        self.send(Job::Forget(id));
    }

    /// Hands the text of the settings over.
    pub fn settings(&self, text: String) {
        self.send(Job::Settings(text));
    }

    /// Waits until all that was handed over is on the disk, or could not be written.
    pub fn flush(&self) {
        self.flusher().flush();
    }

    /// From now on, a fault on this thread puts the unsaved work on the disk before the program stops.
    pub fn take_care_of_faults(&self) {
        if let Some(folder) = &self.folder {
            fault::take_care(self.flusher(), folder.clone());
        }
    }

    fn flusher(&self) -> Flusher {
        Flusher(self.jobs.clone())
    }

    /// What could not be written and why, once for each reason.
    #[must_use]
    pub fn trouble(&self) -> Option<String> {
        let mut trouble = self.trouble.lock().unwrap_or_else(PoisonError::into_inner);
        trouble.take()
    }

    fn send(&self, job: Job) {
        // The thread is there until this is dropped.
        let _ = self.jobs.send(job);
    }
}

impl Drop for Keeper {
    fn drop(&mut self) {
        self.send(Job::End);
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

impl Flusher {
    /// Waits until all that was handed over is on the disk, or could not be written; not for ever.
    pub(super) fn flush(&self) {
        let (done, finished) = channel();
        if self.0.send(Job::Flush(done)).is_ok() {
            let _ = finished.recv_timeout(PATIENCE);
        }
    }
}

/// The far end.
struct Worker {
    jobs: Receiver<Job>,
    session: Option<Session>,
    settings: Option<PathBuf>,
    pace: Duration,
    /// When what waits is to be written.
    due: Option<Instant>,
    /// What waits: unsaved work, or that there is none any more.
    works: BTreeMap<SetupId, Option<Box<Unsaved>>>,
    new_settings: Option<String>,
    trouble: Arc<Mutex<Option<String>>>,
    /// What was said last, so that it is not said again.
    told: Option<String>,
    wake: Wake,
}

impl Worker {
    fn run(mut self) {
        loop {
            match self.next() {
                Ok(Job::Keep(id, unsaved)) => self.wait_with(id, Some(unsaved)),
                Ok(Job::Forget(id)) => self.wait_with(id, None),
                Ok(Job::Settings(text)) => {
                    self.new_settings = Some(text);
                    self.due_in(self.pace);
                }
                Ok(Job::Flush(done)) => {
                    self.write();
                    let _ = done.send(());
                }
                Err(RecvTimeoutError::Timeout) => self.write(),
                Ok(Job::End) | Err(RecvTimeoutError::Disconnected) => break,
            }
        }
        self.write();
        if let Some(session) = self.session.take() {
            session.end();
        }
    }

    fn next(&self) -> Result<Job, RecvTimeoutError> {
        match self.due {
            None => self.jobs.recv().map_err(|_| RecvTimeoutError::Disconnected),
            Some(due) => self
                .jobs
                .recv_timeout(due.saturating_duration_since(Instant::now())),
        }
    }

    fn wait_with(&mut self, id: SetupId, work: Option<Box<Unsaved>>) {
        self.works.insert(id, work);
        self.due_in(self.pace);
    }

    /// Sets a time to write, unless there is an earlier one.
    fn due_in(&mut self, time: Duration) {
        let due = Instant::now() + time;
        self.due = Some(self.due.map_or(due, |before| before.min(due)));
    }

    /// Writes all that waits; what fails waits on.
    fn write(&mut self) {
        self.due = None;
        let works = std::mem::take(&mut self.works);
        let mut failure = None;
        for (id, work) in works {
            if let Err(error) = self.write_work(id, work.as_deref()) {
                failure = Some(format!("Unsaved work is not kept: {error}"));
                self.works.insert(id, work);
            }
        }
        if let Some(text) = self.new_settings.take()
            && let Err(error) = self.write_settings(&text)
        {
            failure = failure.or(Some(format!("Settings are not remembered: {error}")));
            self.new_settings = Some(text);
        }
        if failure.is_some() {
            self.due_in(RETRY);
        }
        self.tell(failure);
    }

    fn write_work(&self, id: SetupId, work: Option<&Unsaved>) -> Result<(), String> {
        let Some(session) = &self.session else {
            return Ok(());
        };
        let path = session.file_of(id);
        match work {
            Some(unsaved) => {
                file::write_text(&path, &unsaved.to_text()).map_err(|error| error.to_string())
            }
            None => match fs::remove_file(&path) {
                Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error.to_string()),
                _ => Ok(()),
            },
        }
    }

    fn write_settings(&self, text: &str) -> Result<(), FileError> {
        let Some(path) = &self.settings else {
            return Ok(());
        };
        if let Some(folder) = path.parent() {
            // If it cannot be made, writing says so.
            let _ = fs::create_dir_all(folder);
        }
        file::write_text(path, text)
    }

    fn tell(&mut self, failure: Option<String>) {
        if failure.is_some() && failure != self.told {
            let mut trouble = self.trouble.lock().unwrap_or_else(PoisonError::into_inner);
            trouble.clone_from(&failure);
            drop(trouble);
            (self.wake)();
        }
        self.told = failure;
    }
}
