//! Files of gauge readings.

use std::path::Path;

use ron::ser::PrettyConfig;
use serde::{Deserialize, Serialize};

use super::error::FileError;
use super::explain::fault_error;
use super::read::{decode, read_bytes, without_mark};
use super::version::{Head, format_of, parse, unknown_format};
use super::write::write_text;
use crate::check::check_readings;
use crate::dimension::Dimension;
use crate::readings::{AtHeight, Readings, Turned};

/// The format of readings that this program reads and writes.
const FORMAT: u32 = 1;

const HEAD: Head = Head {
    name: "Readings",
    what: "a file of readings",
    beginning: "a file of readings begins with `Readings(format: 1,`",
    newest: FORMAT,
};

/// A file, as read.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "Readings")]
struct Document {
    #[serde(rename = "format")]
    _format: u32,
    #[serde(default)]
    notes: String,
    #[serde(default)]
    toe: Vec<AtHeight>,
    #[serde(default)]
    camber: Vec<AtHeight>,
    #[serde(default)]
    turned: Vec<Turned>,
    #[serde(default)]
    uncertain: Vec<Dimension>,
}

/// A file, to write.
#[derive(Debug, Serialize)]
#[serde(rename = "Readings")]
struct WrittenDocument<'a> {
    format: u32,
    notes: &'a str,
    toe: &'a [AtHeight],
    camber: &'a [AtHeight],
    turned: &'a [Turned],
    uncertain: &'a [Dimension],
}

/// Reads readings from a file.
pub fn read_readings(path: &Path) -> Result<Readings, FileError> {
    let bytes = read_bytes(path)?;
    decode(&bytes)
        .and_then(read_readings_text)
        .map_err(|error| error.in_file(path))
}

/// Reads readings from a text.
pub fn read_readings_text(text: &str) -> Result<Readings, FileError> {
    let text = without_mark(text)?;
    let format = format_of(text, &HEAD)?;
    if format != u64::from(FORMAT) {
        return Err(unknown_format(text, format, &HEAD));
    }
    let Document {
        _format: _,
        notes,
        toe,
        camber,
        turned,
        uncertain,
    } = parse(text)?;
    let readings = Readings {
        notes,
        toe,
        camber,
        turned,
        uncertain,
    };
    check_readings(&readings).map_err(|fault| fault_error(text, &fault))?;
    Ok(readings)
}

/// The readings as the text of a file. Reading it gives equal readings.
#[must_use]
#[allow(
    clippy::expect_used,
    clippy::missing_panics_doc,
    reason = "a string can always be written to, and readings hold nothing that RON cannot write"
)]
pub fn readings_to_text(readings: &Readings) -> String {
    let pretty = PrettyConfig::new().new_line("\n").struct_names(false);
    let document = WrittenDocument {
        format: FORMAT,
        notes: &readings.notes,
        toe: &readings.toe,
        camber: &readings.camber,
        turned: &readings.turned,
        uncertain: &readings.uncertain,
    };
    let written = ron::Options::default().to_string_pretty(&document, pretty);
    let body = written.expect("readings have a text");
    format!("Readings{body}\n")
}

/// Writes readings to a file, as [`super::write()`] does a setup.
pub fn write_readings(path: &Path, readings: &Readings) -> Result<(), FileError> {
    write_text(path, &readings_to_text(readings))
}
