//! What the program remembers from one start to the next: settings, and work that is in no file of the user's.
//!
//! Nothing here touches a user's file. A thread does the writing ([`keeper`]), each run has a folder of its own (`session`),
//! and the next start finds what a run has left that ended without warning (`left`).

mod fault;
pub mod keeper;
mod left;
mod places;
mod session;
mod settings;
mod unsaved;

use std::time::Duration;

pub use keeper::{Keeper, Wake};
pub use left::{LeftBehind, LeftWork};
pub use places::Places;
pub use session::Session;
pub use settings::{Layout, MOST_RECENT, Settings, WindowPlace};
pub use unsaved::Unsaved;

/// All that is remembered, and the way to remember more.
#[derive(Debug, Default)]
pub struct Memory {
    /// The settings of the last run.
    pub settings: Settings,
    /// What runs have left that ended without warning.
    pub left: Vec<LeftBehind>,
    /// What is to be said about remembering itself.
    pub notices: Vec<String>,
    places: Option<Places>,
    session: Option<Session>,
}

impl Memory {
    /// Reads what is remembered in the user's places. Where something cannot be, the notices say so and the rest works.
    #[must_use]
    pub fn of_user() -> Self {
        match Places::of_user() {
            Some(places) => Self::at(places),
            None => Self {
                notices: vec![
                    "Nothing is remembered: you have no home folder, so there is no place for settings and unsaved work.".to_owned(),
                ],
                ..Self::default()
            },
        }
    }

    /// Reads what is remembered in these places.
    #[must_use]
    pub fn at(places: Places) -> Self {
        let (settings, damaged) = Settings::read(&places.settings);
        let mut notices: Vec<String> = damaged.into_iter().collect();
        let left = LeftBehind::find(&places.unsaved);
        let session = Session::begin(&places.unsaved)
            .map_err(|error| {
                notices.push(format!(
                    "Nothing is remembered: {} cannot be written to ({error}). Save your work yourself, and often.",
                    places.unsaved.display()
                ));
            })
            .ok();
        Self {
            settings,
            left,
            notices,
            // Settings go to a folder beside it; where that one cannot be written to, this one cannot either, or is told.
            places: session.is_some().then_some(places),
            session,
        }
    }

    /// Starts the thread that remembers, if there is a place for it.
    pub fn keeper(&mut self, pace: Duration, wake: Wake) -> Option<Keeper> {
        let session = self.session.take()?;
        let settings = self.places.take().map(|places| places.settings);
        Keeper::start(Some(session), settings, pace, wake)
            .map_err(|error| {
                self.notices.push(format!(
                    "Nothing is remembered: the system starts no thread for it ({error})."
                ));
            })
            .ok()
    }
}
