//! Noticing that a file was changed by another program.

use std::fs::File;
use std::hash::{DefaultHasher, Hash as _, Hasher as _};
use std::io::{self, Read as _};
use std::path::Path;

use crate::limits::MAX_FILE_BYTES;

/// What a file held when it was read or written. It is of use while the program runs and means nothing to another run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp(u64);

/// How a file stands to what it held before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// It holds the same, or it cannot be told.
    Same,
    /// It holds something else.
    Changed,
    /// It is not there any more.
    Gone,
}

impl Stamp {
    /// The stamp of these contents.
    #[must_use]
    pub fn of(contents: &[u8]) -> Self {
        let mut hasher = DefaultHasher::new();
        contents.hash(&mut hasher);
        Self(hasher.finish())
    }

    /// The stamp of what a file holds now.
    pub fn of_file(path: &Path) -> io::Result<Self> {
        read_limited(path).map(|contents| Self::of(&contents))
    }

    /// How a file stands now to what it held then.
    #[must_use]
    pub fn standing(self, path: &Path) -> Standing {
        match Self::of_file(path) {
            Ok(now) if now == self => Standing::Same,
            Ok(_) => Standing::Changed,
            Err(error) if error.kind() == io::ErrorKind::NotFound => Standing::Gone,
            Err(_) => Standing::Same,
        }
    }
}

/// A file's contents, of one that is too large for a setup file as much as shows that.
fn read_limited(path: &Path) -> io::Result<Vec<u8>> {
    if !std::fs::metadata(path)?.is_file() {
        return Err(io::ErrorKind::InvalidInput.into());
    }
    let mut contents = Vec::new();
    File::open(path)?
        .take(MAX_FILE_BYTES + 1)
        .read_to_end(&mut contents)?;
    Ok(contents)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use std::fs;

    #[test]
    fn a_file_is_the_same_changed_or_gone() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.ron");
        fs::write(&path, "one").unwrap();
        let stamp = Stamp::of(b"one");
        assert_eq!(stamp.standing(&path), Standing::Same);
        // Written anew with the same contents it is the same; with others of the same length it is not.
        fs::write(&path, "one").unwrap();
        assert_eq!(stamp.standing(&path), Standing::Same);
        fs::write(&path, "two").unwrap();
        assert_eq!(stamp.standing(&path), Standing::Changed);
        fs::remove_file(&path).unwrap();
        assert_eq!(stamp.standing(&path), Standing::Gone);
        fs::create_dir(&path).unwrap();
        assert_eq!(stamp.standing(&path), Standing::Same, "it cannot be told");
    }
}
