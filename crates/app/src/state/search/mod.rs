//! The search over the parts at hand as the window runs it: what is asked, how far it is, what it has found.

mod behaviour;
mod curve;
mod form;
mod want;
mod words;

pub use behaviour::behaviour_of;
pub use curve::{CurveDraft, MOST_POINTS, WantedCurve};
pub use form::SearchForm;
pub use want::WantDraft;
pub use words::{changes_in_words, limit_in_words, unmet_in_words};

use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use steerloft_analysis::find::{Finding, Findings, Progress, Search};
use steerloft_setup::setup::Setup;

use super::Bench;

/// The search of the window.
#[derive(Debug, Default)]
pub struct Searching {
    /// What is asked, as it stands in the form.
    pub form: SearchForm,
    run: Option<Run>,
    found: Option<Found>,
}

/// A search that is running.
#[derive(Debug)]
struct Run {
    progress: Arc<Progress>,
    answer: Receiver<Found>,
}

/// A search with what came of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// What was asked; none where it could not be.
    pub search: Option<Search>,
    /// What was found, or why nothing was.
    pub outcome: Result<Findings, String>,
}

impl Searching {
    /// Starts a search for the setup that is worked on, on a thread of its own, which wakes the window when it has ended. One
    /// that is running goes on.
    pub fn start(&mut self, bench: &Bench, wake: impl FnOnce() + Send + 'static) {
        if self.run.is_some() {
            return;
        }
        let search = match self.form.search(bench) {
            Ok(search) => search,
            Err(reason) => return self.found = Some(Found::nothing(&reason)),
        };
        let progress = Arc::new(Progress::default());
        let (sender, answer) = channel();
        let told = Arc::clone(&progress);
        let worker = std::thread::Builder::new().name("search".to_owned());
        let started = worker.spawn(move || {
            let outcome = search.run(&told).map_err(|error| error.to_string());
            let found = Found {
                search: Some(search),
                outcome,
            };
            // Nobody waits any more if the window has been closed.
            let _ = sender.send(found);
            wake();
        });
        match started {
            Ok(_) => self.run = Some(Run { progress, answer }),
            Err(error) => self.found = Some(Found::nothing(&error.to_string())),
        }
    }

    /// Asks the search that is running to stop; it then tells what it has found by then.
    pub fn stop(&self) {
        if let Some(run) = &self.run {
            run.progress.stop();
        }
    }

    /// Takes what a search has found that has ended meanwhile.
    pub fn take(&mut self) {
        let Some(run) = &self.run else {
            return;
        };
        let found = match run.answer.try_recv() {
            Ok(found) => found,
            Err(TryRecvError::Disconnected) => {
                Found::nothing("the search has failed; let other adjustments change")
            }
            Err(TryRecvError::Empty) => return,
        };
        self.run = None;
        self.found = Some(found);
    }

    /// How many combinations the running search has done, and how many there are; none while none runs.
    #[must_use]
    pub fn progress(&self) -> Option<(u64, u64)> {
        let progress = &self.run.as_ref()?.progress;
        Some((progress.done(), progress.all()))
    }

    /// What the last search came to.
    #[must_use]
    pub fn found(&self) -> Option<&Found> {
        self.found.as_ref()
    }
}

impl Found {
    fn nothing(reason: &str) -> Self {
        Self {
            search: None,
            outcome: Err(reason.to_owned()),
        }
    }
}

/// A finding put on a setup: its parts changed, all else as it is. None for a setup of another car than the one searched.
#[must_use]
pub fn with_finding(search: &Search, finding: &Finding, setup: &Setup) -> Option<Setup> {
    if search.setup.car != setup.car {
        return None;
    }
    finding.applied_to(setup).ok()
}
