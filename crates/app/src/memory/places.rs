//! Where on the disk the program keeps what it remembers.

use std::path::{Path, PathBuf};

use etcetera::BaseStrategy as _;

/// The name of the program's folders.
const FOLDER: &str = "steerloft";

/// A file and a folder for what is remembered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Places {
    /// The file with the settings.
    pub settings: PathBuf,
    /// The folder that holds unsaved work.
    pub unsaved: PathBuf,
}

impl Places {
    /// The places that the platform gives the user for settings and for data; none if the user has no home.
    #[must_use]
    pub fn of_user() -> Option<Self> {
        let platform = etcetera::base_strategy::choose_native_strategy().ok()?;
        let (settings, data) = (platform.config_dir(), platform.data_dir());
        let places = Self {
            settings: settings.join(FOLDER).join("settings.ron"),
            unsaved: data.join(FOLDER).join("unsaved"),
        };
        // A path from the folder the program was started in would be a place that nobody finds again.
        (places.settings.is_absolute() && places.unsaved.is_absolute()).then_some(places)
    }

    /// Places in a folder of the caller's choice.
    #[must_use]
    pub fn within(folder: &Path) -> Self {
        Self {
            settings: folder.join("settings.ron"),
            unsaved: folder.join("unsaved"),
        }
    }
}
