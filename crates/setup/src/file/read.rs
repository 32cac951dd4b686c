//! Reading.

use std::fs::File;
use std::io::{self, Read as _};
use std::path::Path;

use super::error::{FileError, plain_reason};
use super::explain::{fault_error, text_error};
use super::locate::repeated_key;
use super::stamp::Stamp;
use super::version::{Versioned, read_document};
use crate::check::{self, check};
use crate::limits::MAX_FILE_BYTES;
use crate::setup::Setup;
use crate::values::same_value;

/// Mark that some programs put before a UTF-8 text.
const BYTE_ORDER_MARK: char = '\u{feff}';

/// Reads a setup from a file of up to [`MAX_FILE_BYTES`].
pub fn read(path: &Path) -> Result<Setup, FileError> {
    read_stamped(path).map(|(setup, _)| setup)
}

/// Reads a setup from a file of up to [`MAX_FILE_BYTES`], with a stamp of what the file held.
pub fn read_stamped(path: &Path) -> Result<(Setup, Stamp), FileError> {
    let bytes = read_bytes(path)?;
    let setup = decode(&bytes)
        .and_then(read_text)
        .map_err(|error| error.in_file(path))?;
    Ok((setup, Stamp::of(&bytes)))
}

/// Reads a setup from a text.
///
/// A value chosen that is the base value is taken as not chosen, so that equal setups read from different
/// texts are equal.
pub fn read_text(text: &str) -> Result<Setup, FileError> {
    let text = without_mark(text)?;
    let Versioned { mut setup, place } = read_document(text)?;
    if let Some((offset, key)) = repeated_key(text, &check::Path::root().field("chosen")) {
        return Err(text_error(
            text,
            offset,
            &format!("a value for \"{key}\" is chosen twice"),
            "choose it once",
        ));
    }
    check(&setup).map_err(|mut fault| {
        fault.path = place(fault.path);
        fault_error(text, &fault)
    })?;
    let adjustments = &setup.car.adjustments;
    setup.chosen.retain(|name, value| {
        let mut named = adjustments
            .iter()
            .filter(|adjustment| adjustment.name == *name);
        !named.any(|adjustment| same_value(value, &adjustment.base()))
    });
    Ok(setup)
}

/// A text of an allowed size without the mark that some programs put before it.
pub(super) fn without_mark(text: &str) -> Result<&str, FileError> {
    let text = text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text);
    if text.len() as u64 > MAX_FILE_BYTES {
        return Err(text_error(
            text,
            0,
            &too_large(text.len() as u64),
            KEEP_SMALL,
        ));
    }
    Ok(text)
}

pub(super) fn read_bytes(path: &Path) -> Result<Vec<u8>, FileError> {
    let metadata = std::fs::metadata(path).map_err(|error| unreadable(path, &error))?;
    if !metadata.is_file() {
        return Err(FileError::Read {
            file: path.to_owned(),
            reason: "it is not a file".to_owned(),
            right: "give a setup file".to_owned(),
        });
    }
    if metadata.len() > MAX_FILE_BYTES {
        return Err(FileError::Read {
            file: path.to_owned(),
            reason: too_large(metadata.len()),
            right: KEEP_SMALL.to_owned(),
        });
    }
    let mut bytes = Vec::new();
    // The file may grow while it is read; one byte more than allowed is enough to be refused below.
    let result =
        File::open(path).and_then(|file| file.take(MAX_FILE_BYTES + 1).read_to_end(&mut bytes));
    match result {
        Ok(_) => Ok(bytes),
        Err(error) => Err(unreadable(path, &error)),
    }
}

pub(super) fn decode(bytes: &[u8]) -> Result<&str, FileError> {
    std::str::from_utf8(bytes).map_err(|error| {
        let valid = &bytes[..error.valid_up_to()];
        let before = String::from_utf8_lossy(valid);
        text_error(
            &before,
            before.len(),
            "this byte is not part of a UTF-8 text",
            "give a setup file, a plain text saved as UTF-8",
        )
    })
}

const KEEP_SMALL: &str = "a setup file has a few thousand lines at most: check that this is one";

fn too_large(bytes: u64) -> String {
    format!("it has {bytes} bytes, more than the {MAX_FILE_BYTES} a setup file may have")
}

fn unreadable(path: &Path, error: &io::Error) -> FileError {
    let right = match error.kind() {
        io::ErrorKind::NotFound => "check the name and the folder",
        io::ErrorKind::PermissionDenied => "ask for the right to read it",
        _ => "try again, or take the file from another place",
    };
    FileError::Read {
        file: path.to_owned(),
        reason: plain_reason(error),
        right: right.to_owned(),
    }
}
