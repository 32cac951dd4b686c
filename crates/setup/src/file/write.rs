//! Writing: beside the old file first, over it when all is on the disk.

use std::fs::{self, File, Permissions};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::time::Duration;

use ron::ser::PrettyConfig;
use tempfile::NamedTempFile;

use super::document::WrittenDocument;
use super::error::{FileError, plain_reason};
use crate::setup::Setup;

/// Most symbolic links followed one after the other.
const MOST_LINKS: usize = 32;

/// How the name of a temporary file begins and ends.
const TEMPORARY_PREFIX: &str = ".steerloft-";
const TEMPORARY_SUFFIX: &str = ".tmp";

/// Age from which a temporary file belongs to no save that still goes on.
const LEFT_OVER: Duration = Duration::from_hours(1);

/// The setup as the text of a file in the newest format. Reading it gives an equal setup.
#[must_use]
#[allow(
    clippy::expect_used,
    clippy::missing_panics_doc,
    reason = "a string can always be written to, and a document holds nothing that RON cannot write"
)]
pub fn to_text(setup: &Setup) -> String {
    let pretty = PrettyConfig::new().new_line("\n").struct_names(false);
    let written = ron::Options::default().to_string_pretty(&WrittenDocument::of(setup), pretty);
    let body = written.expect("a setup has a text");
    format!("Setup{body}\n")
}

/// Writes the setup to a file.
///
/// The text goes to a temporary file in the same folder, which is synced and renamed over the old one, so that
/// a failure at any point leaves the old file whole. The old file's permissions stay; a symbolic link stays
/// and what it points to is written.
pub fn write(path: &Path, setup: &Setup) -> Result<(), FileError> {
    write_text(path, &to_text(setup))
}

/// Writes any text to a file as [`write()`] does a setup.
pub fn write_text(path: &Path, text: &str) -> Result<(), FileError> {
    replace(path, text).map_err(|failure| FileError::Write {
        file: path.to_owned(),
        reason: failure.reason,
        right: failure.right.to_owned(),
    })
}

/// Why a text was not written, and what to do.
struct Failure {
    reason: String,
    right: &'static str,
}

const ANOTHER_NAME: &str = "save under another name";

impl Failure {
    fn new(reason: &str, right: &'static str) -> Self {
        Self {
            reason: reason.to_owned(),
            right,
        }
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        Self {
            reason: plain_reason(&error),
            right: what_to_do(&error),
        }
    }
}

fn replace(path: &Path, text: &str) -> Result<(), Failure> {
    let target = follow_links(path)?;
    let rights = rights_of_old(&target)?;
    let folder = match target.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    clear_leftovers(folder);
    let temporary = written_beside(folder, text, rights)?;
    temporary.persist(&target).map_err(|error| error.error)?;
    sync_folder(folder);
    Ok(())
}

/// The rights of the file that is to be replaced, if there is one; refuses what must not be replaced.
fn rights_of_old(target: &Path) -> Result<Option<Permissions>, Failure> {
    match fs::metadata(target) {
        Ok(metadata) if !metadata.is_file() => {
            Err(Failure::new("something there is not a file", ANOTHER_NAME))
        }
        Ok(metadata) if metadata.permissions().readonly() => {
            Err(Failure::new("the file is read-only", ANOTHER_NAME))
        }
        Ok(metadata) => Ok(Some(metadata.permissions())),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
        Err(error) => Err(error.into()),
    }
}

/// Removes temporary files of saves that were cut short by the end of their process.
fn clear_leftovers(folder: &Path) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        let name = name.to_string_lossy();
        let is_ours = name.starts_with(TEMPORARY_PREFIX) && name.ends_with(TEMPORARY_SUFFIX);
        if is_ours && age(&entry).is_some_and(|age| age >= LEFT_OVER) {
            // What cannot be removed does no harm.
            let _ = fs::remove_file(entry.path());
        }
    }
}

fn age(entry: &fs::DirEntry) -> Option<Duration> {
    entry.metadata().ok()?.modified().ok()?.elapsed().ok()
}

/// A temporary file in the folder with the text, on the disk; it goes away unless it is renamed.
fn written_beside(
    folder: &Path,
    text: &str,
    rights: Option<Permissions>,
) -> io::Result<NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(TEMPORARY_PREFIX).suffix(TEMPORARY_SUFFIX);
    match &rights {
        Some(rights) => builder.permissions(rights.clone()),
        None => with_default_permissions(&mut builder),
    };
    let mut temporary = builder.tempfile_in(folder)?;
    temporary.write_all(text.as_bytes())?;
    if let Some(rights) = rights {
        // The process's mask may have taken rights away when the file was made. Where a file system knows no
        // rights there are none to keep.
        let _ = temporary.as_file().set_permissions(rights);
    }
    temporary.as_file().sync_all()?;
    Ok(temporary)
}

/// The file that a path leads to through symbolic links, whether it exists or not.
fn follow_links(path: &Path) -> Result<PathBuf, Failure> {
    let mut target = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::symlink_metadata(&target) {
            Ok(metadata) if metadata.file_type().is_symlink() => {
                let to = fs::read_link(&target)?;
                target = match target.parent() {
                    Some(folder) => folder.join(to),
                    None => to,
                };
            }
            _ => return Ok(target),
        }
    }
    Err(Failure::new(
        "the symbolic links go round in circles",
        ANOTHER_NAME,
    ))
}

/// A new file is readable as any new file is: the mask of the process takes away what it should.
#[cfg(unix)]
fn with_default_permissions<'a, 'b, 'c>(
    builder: &'a mut tempfile::Builder<'b, 'c>,
) -> &'a mut tempfile::Builder<'b, 'c> {
    use std::os::unix::fs::PermissionsExt as _;
    builder.permissions(Permissions::from_mode(0o666))
}

/// A new file takes the folder's rights by itself.
#[cfg(not(unix))]
fn with_default_permissions<'a, 'b, 'c>(
    builder: &'a mut tempfile::Builder<'b, 'c>,
) -> &'a mut tempfile::Builder<'b, 'c> {
    builder
}

/// Asks the system to keep the renaming through a loss of power. The file itself is complete either way, so a
/// system that cannot do this is no reason to call the save failed.
fn sync_folder(folder: &Path) {
    if cfg!(unix) {
        let _ = File::open(folder).and_then(|folder| folder.sync_all());
    }
}

fn what_to_do(error: &io::Error) -> &'static str {
    match error.kind() {
        io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
            "save under another name, in a folder you may write to"
        }
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
            "free some space, or save in another place"
        }
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => "save in a folder that exists",
        _ => "try again, or save in another place",
    }
}
