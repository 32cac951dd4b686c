//! The open setup with its file.

use std::path::{Path, PathBuf};

use steerloft_setup::file::{self, FileError, Stamp, Standing};
use steerloft_setup::setup::Setup;

/// A setup, where it is kept, and what was last kept there.
#[derive(Debug, Clone)]
pub struct Document {
    setup: Setup,
    kept: Setup,
    path: Option<PathBuf>,
    /// What the file held when it was read or written last.
    stamp: Option<Stamp>,
    /// Whether the file holds something else than what was kept there, or is gone.
    adrift: bool,
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
            stamp: None,
            adrift: false,
            revision: 0,
            edition: 0,
        }
    }

    /// Reads a setup from a file.
    pub fn read(path: &Path) -> Result<Self, FileError> {
        let (setup, stamp) = file::read_stamped(path)?;
        Ok(Self {
            path: Some(path.to_owned()),
            stamp: Some(stamp),
            ..Self::unnamed(setup)
        })
    }

    /// Unsaved work that comes back, with the file it belongs to, which is not touched.
    #[must_use]
    pub fn restored(setup: Setup, path: Option<PathBuf>) -> Self {
        match path.map(|path| (Self::read(&path), path)) {
            Some((Ok(document), _)) => Self { setup, ..document },
            Some((Err(_), path)) => Self {
                path: Some(path),
                adrift: true,
                ..Self::unnamed(setup)
            },
            None => Self {
                adrift: true,
                ..Self::unnamed(setup)
            },
        }
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
        self.adrift || self.setup != self.kept
    }

    /// How the file stands to what was read from it or written to it last.
    #[must_use]
    pub fn standing(&self) -> Standing {
        match (&self.path, self.stamp) {
            (Some(path), Some(stamp)) => stamp.standing(path),
            // What is there has never been seen.
            (Some(path), None) if path.exists() => Standing::Changed,
            _ => Standing::Same,
        }
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
    pub(super) fn mark_kept(&mut self, path: PathBuf, stamp: Stamp) {
        self.path = Some(path);
        self.kept = self.setup.clone();
        self.stamp = Some(stamp);
        self.adrift = false;
    }

    /// Notes that the file holds something else now, which has been seen and is not wanted.
    pub(super) fn mark_adrift(&mut self) {
        self.adrift = true;
        self.stamp = self
            .path
            .as_deref()
            .and_then(|path| Stamp::of_file(path).ok());
    }
}
