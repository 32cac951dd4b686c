//! The file's format number, and the way from each older format to the present one.
//!
//! A format's number goes up when a file written before would read wrongly or not at all. The reader of the
//! old format then stays here, beside the step that makes its document one of the next format.

use serde::de::DeserializeOwned;

use super::FileError;
use super::document::Document;
use super::explain::{explain, text_error};
use super::format_1::{self, Document1};
use super::scan::Scanner;
use crate::check::Path;
use crate::limits::MAX_NESTING;
use crate::setup::Setup;

/// The format this program writes, and the newest it reads.
pub const NEWEST_FORMAT: u32 = 2;

const HEAD: Head = Head {
    name: "Setup",
    what: "a setup file",
    beginning: "a setup file begins with `Setup(format: 2,`",
    newest: NEWEST_FORMAT,
};

/// What a kind of file begins with.
pub(super) struct Head {
    /// The name before its first bracket.
    pub(super) name: &'static str,
    /// What such a file is, such as "a setup file".
    pub(super) what: &'static str,
    /// What it begins with, as advice.
    pub(super) beginning: &'static str,
    /// The newest format there is.
    pub(super) newest: u32,
}

impl Head {
    /// Which formats this program reads.
    fn formats(&self) -> String {
        match self.newest {
            1 => "this program reads format 1".to_owned(),
            newest => format!("this program reads formats 1 to {newest}"),
        }
    }
}

/// A setup read from a text of any format.
pub(super) struct Versioned {
    /// The setup as it is now.
    pub(super) setup: Setup,
    /// Where a value of it stands in a text of that format.
    pub(super) place: fn(Path) -> Path,
}

/// Reads a document of any format this program knows, as the setup that it is now.
pub(super) fn read_document(text: &str) -> Result<Versioned, FileError> {
    match format_of(text, &HEAD)? {
        1 => Ok(Versioned {
            setup: parse::<Document1>(text)?.into_setup(),
            place: format_1::place,
        }),
        2 => Ok(Versioned {
            setup: parse::<Document>(text)?.into_setup(),
            place: |path| path,
        }),
        other => Err(unknown_format(text, other, &HEAD)),
    }
}

pub(super) fn parse<T: DeserializeOwned>(text: &str) -> Result<T, FileError> {
    ron::Options::default()
        .with_recursion_limit(MAX_NESTING)
        .from_str(text)
        .map_err(|error| explain(text, error))
}

/// The number in the text's first field, which must be `format`; nothing behind it is looked at.
pub(super) fn format_of(text: &str, head: &Head) -> Result<u64, FileError> {
    let mut scanner = Scanner::new(text, 0);
    scanner.skip_blanks();
    let beginning = scanner.offset();
    if scanner.rest().is_empty() {
        return Err(text_error(
            text,
            beginning,
            "this file is empty",
            head.beginning,
        ));
    }
    let name = scanner.name();
    scanner.skip_blanks();
    if name.is_some_and(|name| name != head.name) || !scanner.take('(') {
        return Err(text_error(
            text,
            beginning,
            &format!("this is not {}", head.what),
            head.beginning,
        ));
    }
    scanner.skip_blanks();
    let first = scanner.offset();
    let name = scanner.name();
    scanner.skip_blanks();
    if name != Some("format") || !scanner.take(':') {
        return Err(text_error(
            text,
            first,
            "the format number is missing here",
            head.beginning,
        ));
    }
    scanner.skip_blanks();
    let number = scanner.offset();
    scanner.skip_value();
    let found = text[number..scanner.offset()].trim_end();
    found.parse().map_err(|_| {
        text_error(
            text,
            number,
            "the format is not a whole number",
            &head.formats(),
        )
    })
}

pub(super) fn unknown_format(text: &str, format: u64, head: &Head) -> FileError {
    let at = super::locate::locate(text, &Path::root().field("format"));
    if format > u64::from(head.newest) {
        text_error(
            text,
            at,
            &format!("this file has format {format}, which is newer than this program"),
            &format!("{}: use a newer version of it", head.formats()),
        )
    } else {
        text_error(
            text,
            at,
            &format!("there is no format {format}"),
            &head.formats(),
        )
    }
}
