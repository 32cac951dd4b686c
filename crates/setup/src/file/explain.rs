//! What the RON reader complains of, in this program's words and at the very place.

use ron::error::{Error, SpannedError};

use super::FileError;
use super::locate::{line_and_column, locate};
use crate::check::Fault;
use crate::limits::MAX_NESTING;

/// An error at a byte offset.
pub(super) fn text_error(text: &str, offset: usize, wrong: &str, right: &str) -> FileError {
    let (line, column) = line_and_column(text, offset);
    FileError::Text {
        file: None,
        line,
        column,
        wrong: wrong.to_owned(),
        right: right.to_owned(),
    }
}

/// A fault of the document, at the place of the value.
pub(super) fn fault_error(text: &str, fault: &Fault) -> FileError {
    text_error(text, locate(text, &fault.path), &fault.wrong, &fault.right)
}

/// An error of the RON reader.
pub(super) fn explain(text: &str, error: SpannedError) -> FileError {
    let SpannedError { code, span } = error;
    // What was read and not understood begins where the span does; what was missed was missed at its end.
    let place = match &code {
        Error::NoSuchStructField { .. }
        | Error::NoSuchEnumVariant { .. }
        | Error::DuplicateStructField { .. }
        | Error::ExpectedDifferentStructName { .. }
        | Error::ExpectedStringEnd
        | Error::IntegerOutOfBounds
        | Error::UnclosedBlockComment
        | Error::TrailingCharacters => span.start,
        _ => span.end,
    };
    let ended = ends_before(text, span.end.line, span.end.col);
    let (wrong, right) = if ended && !matches!(code, Error::UnclosedBlockComment) {
        (
            "the file ends here, in the middle of a value".to_owned(),
            "it may have been cut short: take it again from where it came".to_owned(),
        )
    } else {
        words(&code)
    };
    FileError::Text {
        file: None,
        line: place.line,
        column: place.col,
        wrong,
        right,
    }
}

/// Whether nothing of the text is left at a line and column.
fn ends_before(text: &str, line: usize, column: usize) -> bool {
    text.trim_end().len() <= offset_of(text, line, column)
}

/// Byte offset of a line and column, both from 1; the text's end for what lies behind it.
fn offset_of(text: &str, line: usize, column: usize) -> usize {
    let starts = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1));
    let start = starts
        .into_iter()
        .nth(line.saturating_sub(1))
        .unwrap_or(text.len());
    let in_line = text[start..].char_indices().nth(column.saturating_sub(1));
    in_line.map_or(text.len(), |(at, _)| start + at)
}

/// What is wrong, and what would be right.
fn words(code: &Error) -> (String, String) {
    match code {
        Error::NoSuchStructField {
            expected, found, ..
        } => (
            format!("there is no field `{found}` here"),
            format!("the fields are {}", names(expected)),
        ),
        Error::MissingStructField { field, .. } => (
            format!("the field `{field}` is missing here"),
            format!("add `{field}: {}`", example(field)),
        ),
        Error::DuplicateStructField { field, .. } => (
            format!("the field `{field}` is given twice"),
            "give it once".to_owned(),
        ),
        Error::NoSuchEnumVariant {
            expected, found, ..
        } => (
            format!("there is no `{found}` here"),
            format!("write one of {}", names(expected)),
        ),
        Error::ExpectedDifferentStructName { expected, found } => (
            format!("`{found}` does not belong here"),
            format!("write `{expected}(` or only `(`"),
        ),
        Error::ExpectedDifferentLength { .. } => (
            "there are too few values in these brackets".to_owned(),
            "a point or direction is (x, y, z), a range (least, greatest)".to_owned(),
        ),
        Error::ExceededRecursionLimit => (
            "brackets are nested too deeply here".to_owned(),
            format!("such a file nests no deeper than {MAX_NESTING}"),
        ),
        Error::UnclosedBlockComment => (
            "this comment has no end".to_owned(),
            "close it with `*/`".to_owned(),
        ),
        Error::InvalidEscape(_) => (
            "this escape in a text is unknown".to_owned(),
            r#"write \\ for a backslash, \" for a quote, \n for a new line"#.to_owned(),
        ),
        Error::IntegerOutOfBounds => (
            "this whole number is too large or negative".to_owned(),
            "give a whole number from 0 on".to_owned(),
        ),
        Error::TrailingCharacters => (
            "something follows after the file's closing bracket".to_owned(),
            "remove it, or the bracket that closes the file too early".to_owned(),
        ),
        Error::SuggestRawIdentifier(found) | Error::InvalidIdentifier(found) => (
            format!("`{found}` is no name"),
            "write a name such as `Slide(1.0)` or `Stack(1.0)`".to_owned(),
        ),
        other => ("this cannot be read".to_owned(), expectation(other)),
    }
}

/// What should stand here.
fn expectation(code: &Error) -> String {
    let expected = match code {
        Error::ExpectedArray => "a list should begin here with `[`",
        Error::ExpectedArrayEnd => "the list should end here with `]`, or go on after a comma",
        Error::ExpectedComma => "a comma or a closing bracket should stand here",
        Error::ExpectedFloat | Error::FloatUnderscore | Error::UnderscoreAtBeginning => {
            "a number such as 12.5 should stand here"
        }
        Error::ExpectedInteger | Error::InvalidIntegerDigit { .. } => {
            "a whole number should stand here"
        }
        Error::ExpectedOption => "write `Some(...)` around the value, or `None`",
        Error::ExpectedOptionEnd | Error::ExpectedStructLikeEnd => {
            "a closing `)` should stand here; decimals are written with a point"
        }
        Error::ExpectedMap => "a table should begin here with `{`",
        Error::ExpectedMapColon => "a colon should stand here, between a name and its value",
        Error::ExpectedMapEnd => "the table should end here with `}`, or go on after a comma",
        Error::ExpectedStructLike | Error::ExpectedNamedStructLike(_) => {
            "an opening `(` should stand here"
        }
        Error::ExpectedString => "a text in double quotes should stand here",
        Error::ExpectedStringEnd => "the text that begins here lacks its closing double quote",
        Error::ExpectedIdentifier => "a name should stand here",
        _ => return format!("the reader says: {code}"),
    };
    expected.to_owned()
}

/// What a field's value looks like.
fn example(field: &str) -> &'static str {
    match field {
        "wheel_centre" | "kingpin_lower" | "kingpin_upper" | "steering_arm" | "axis_point"
        | "axis_direction" | "rod_inner_left" | "rod_inner_right" | "cross_left"
        | "cross_right" | "drag_servo" | "drag_crank" | "direction" | "lower_hinge_front"
        | "lower_hinge_rear" | "upper_hinge_front" | "upper_hinge_rear" | "centre" | "size"
        | "by" | "about" | "normal" | "outer_stud" | "inner_stud" | "point" | "free" => "(x, y, z)",
        "crank_left" | "crank_right" | "servo_arm" => {
            "(axis_point: (x, y, z), axis_direction: (x, y, z))"
        }
        "driven" => "Left",
        "range" | "input" | "travel" => "(least, greatest)",
        "name" | "id" => "\"...\"",
        "case" => "(size: (x, y, z), centre: (x, y, z))",
        "pulse" => "(centre: 1500.0, side: 450.0)",
        "shape" => "Box(centre: (x, y, z), size: (x, y, z))",
        "adjustments" | "effects" | "parts" | "options" | "points" => "[...]",
        "car" | "left" | "ranges" | "tie_rod" => "(...)",
        "at" => "Travel(0.0)",
        "uncertainty" => "0.1",
        "axis" => "Z",
        "rods" => "HoldToe(0.0)",
        "right" => "Mirrored",
        "drive" => "SwingArm(...)",
        "suspension" => "SlidingKingpin",
        _ => "...",
    }
}

fn names(names: &[&str]) -> String {
    let quoted: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    quoted.join(", ")
}
