//! The open setup with its file.

use std::path::{Path, PathBuf};

use steerloft_setup::file::{self, FileError};
use steerloft_setup::setup::Setup;

/// A setup, where it is kept, and what was last kept there.
#[derive(Debug, Clone)]
pub struct Document {
    setup: Setup,
    kept: Setup,
    path: Option<PathBuf>,
    revision: u64,
    edition: u64,
}

impl Document {
    /// A setup that is in no file yet.
    #[must_use]
    pub fn unnamed(setup: Setup) -> Self {
        Self {
            kept: setup.clone(),
            setup,
            path: None,
            revision: 0,
            edition: 0,
        }
    }

    /// Reads a setup from a file.
    pub fn read(path: &Path) -> Result<Self, FileError> {
        Ok(Self {
            path: Some(path.to_owned()),
            ..Self::unnamed(file::read(path)?)
        })
    }

    /// The setup.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        &self.setup
    }

    /// The file it is kept in, if it is in one.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// A number that changes with everything that may move a point of the car.
    #[must_use]
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// A number that changes with everything in the setup, its record included.
    #[must_use]
    pub fn edition(&self) -> u64 {
        self.edition
    }

    /// Whether there are changes that are in no file.
    #[must_use]
    pub fn is_changed(&self) -> bool {
        self.setup != self.kept
    }

    /// The setup as it was last kept in its file, if it is in one.
    #[must_use]
    pub fn kept(&self) -> Option<&Setup> {
        self.path.as_ref().map(|_| &self.kept)
    }

    /// Name for titles: the file's name, or else the record's or the car's.
    #[must_use]
    pub fn name(&self) -> String {
        if let Some(name) = self.path.as_deref().and_then(Path::file_name) {
            return name.to_string_lossy().into_owned();
        }
        let record = self.setup.record.name.trim();
        if record.is_empty() {
            self.setup.car.name.clone()
        } else {
            record.to_owned()
        }
    }

    /// A file name to suggest for a setup that is in no file.
    #[must_use]
    pub fn suggested_file_name(&self) -> String {
        let stem: String = self
            .name()
            .trim_end_matches(".ron")
            .chars()
            .map(|c| if c.is_alphanumeric() { c } else { '-' })
            .collect();
        let stem = stem
            .split('-')
            .filter(|part| !part.is_empty())
            .collect::<Vec<_>>()
            .join("-");
        let stem = if stem.is_empty() {
            "setup".to_owned()
        } else {
            stem
        };
        format!("{stem}.ron")
    }

    /// Replaces the setup.
    pub(super) fn replace(&mut self, setup: Setup) {
        if self.setup.car != setup.car
            || self.setup.chosen != setup.chosen
            || self.setup.rods != setup.rods
        {
            self.revision += 1;
        }
        self.edition += 1;
        self.setup = setup;
    }

    /// Notes that the setup as it stands is in this file.
    pub(super) fn mark_kept(&mut self, path: PathBuf) {
        self.path = Some(path);
        self.kept = self.setup.clone();
    }
}
