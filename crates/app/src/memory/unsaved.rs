//! Unsaved work as a file: a setup file with a few lines before it that say what it belongs to.
//!
//! The lines are comments, so the file also opens like any other setup file.

use std::fmt::Write as _;
use std::fs::File;
use std::io::Read as _;
use std::path::{Path, PathBuf};

use steerloft_setup::file;
use steerloft_setup::setup::Setup;

/// Most bytes read of such a file: a setup file of the greatest size with its lines.
const MOST_BYTES: u64 = 2_000_000;

const INTRODUCTION: &str = "// Unsaved work of Steerloft. It opens like any setup file.";
const NAME: &str = "// name: ";
const FILE: &str = "// file: ";

/// A setup with changes that are in no file of the user's.
#[derive(Debug, Clone, PartialEq)]
pub struct Unsaved {
    /// What it was called in the window.
    pub name: String,
    /// The user's file that it belongs to, if there is one with a name that is text.
    pub file: Option<PathBuf>,
    /// The setup.
    pub setup: Setup,
}

impl Unsaved {
    /// The text of its file.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut text = format!("{INTRODUCTION}\n{NAME}{}\n", quoted(&self.name));
        if let Some(path) = self.file.as_deref().and_then(Path::to_str) {
            // A string can always be written to.
            let _ = writeln!(text, "{FILE}{}", quoted(path));
        }
        text.push_str(&file::to_text(&self.setup));
        text
    }

    /// Reads its file, or says in plain words why that cannot be done.
    pub fn read(path: &Path) -> Result<Self, String> {
        let mut text = String::new();
        File::open(path)
            .and_then(|file| file.take(MOST_BYTES).read_to_string(&mut text))
            .map_err(|error| error.to_string())?;
        let (mut name, mut user_file) = (String::new(), None);
        let mut rest = text.as_str();
        while rest.starts_with("//") {
            let (line, after) = rest.split_once('\n').unwrap_or((rest, ""));
            if let Some(value) = line.strip_prefix(NAME) {
                name = unquoted(value).unwrap_or_default();
            } else if let Some(value) = line.strip_prefix(FILE) {
                user_file = unquoted(value).map(PathBuf::from);
            }
            rest = after;
        }
        let setup = file::read_text(rest).map_err(|error| error.to_string())?;
        Ok(Self {
            name,
            file: user_file,
            setup,
        })
    }
}

/// A text in quotes, in one line whatever is in it.
fn quoted(text: &str) -> String {
    ron::Options::default()
        .to_string(text)
        .unwrap_or_else(|_| "\"\"".to_owned())
}

fn unquoted(text: &str) -> Option<String> {
    ron::Options::default().from_str(text.trim()).ok()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use steerloft_setup::supplied::SUPPLIED;

    #[test]
    fn it_reads_as_it_was_written_and_opens_like_a_setup_file() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("0.ron");
        for (name, file) in [
            ("Base setup", None),
            (
                "a \"b\" \\ c\n// name: \"d\"",
                Some("/tmp/\u{e4}\u{1f697} \n.ron"),
            ),
        ] {
            let unsaved = Unsaved {
                name: name.to_owned(),
                file: file.map(PathBuf::from),
                setup: SUPPLIED[0].setup(),
            };
            std::fs::write(&path, unsaved.to_text()).unwrap();
            assert_eq!(Unsaved::read(&path).unwrap(), unsaved);
            assert_eq!(file::read(&path).unwrap(), unsaved.setup);
        }
    }

    #[test]
    fn a_damaged_one_is_told() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("0.ron");
        for text in ["", "//", "// name: \"a", "// name: \"a\"\nSetup(format: 1,"] {
            std::fs::write(&path, text).unwrap();
            assert!(Unsaved::read(&path).is_err(), "{text}");
        }
    }
}
