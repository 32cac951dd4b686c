//! Where a value stands in a well-formed text, and line and column of a place.

use super::scan::Scanner;
use crate::check::{Path, Step};

/// Byte offset of the value at a path; of the nearest value around it if the text leaves it out.
pub(super) fn locate(text: &str, path: &Path) -> usize {
    let mut scanner = Scanner::new(text, 0);
    scanner.skip_blanks();
    let mut found = scanner.offset();
    for step in path.steps() {
        match enter(text, found, step) {
            Some(inner) => found = inner,
            None => return found,
        }
    }
    found
}

/// Byte offset of the first key of a map that stands in it twice; the map is the value at the path.
pub(super) fn repeated_key(text: &str, path: &Path) -> Option<(usize, String)> {
    let mut seen: Vec<String> = Vec::new();
    for (offset, key) in keys(text, locate(text, path)) {
        if seen.contains(&key) {
            return Some((offset, key));
        }
        seen.push(key);
    }
    None
}

/// Line and column of a byte offset, both from 1; columns count characters.
pub(super) fn line_and_column(text: &str, offset: usize) -> (usize, usize) {
    let before: String = text
        .char_indices()
        .take_while(|(at, _)| *at < offset)
        .map(|(_, c)| c)
        .collect();
    let line = 1 + before.matches('\n').count();
    let column = 1 + before.chars().rev().take_while(|c| *c != '\n').count();
    (line, column)
}

/// Offset of what one step leads to from the value at `from`.
fn enter(text: &str, from: usize, step: &Step) -> Option<usize> {
    let mut scanner = Scanner::new(text, from);
    // A struct's or variant's name stands before its brackets.
    if scanner.peek() != Some('[') && scanner.peek() != Some('{') {
        scanner.name();
        scanner.skip_blanks();
    }
    match step {
        Step::Field(name) => field(scanner, name),
        Step::Item(index) => item(scanner, *index),
        Step::Key(key) => {
            let offset = scanner.offset();
            let entries = keys(text, offset);
            let (key_at, _) = entries.into_iter().find(|(_, found)| found == key)?;
            let mut scanner = Scanner::new(text, key_at);
            scanner.skip_value();
            past_colon(scanner)
        }
    }
}

fn field(mut scanner: Scanner<'_>, wanted: &str) -> Option<usize> {
    if !scanner.take('(') {
        return None;
    }
    loop {
        scanner.skip_blanks();
        let name = scanner.name()?;
        let mut value = scanner.clone();
        if name == wanted {
            return past_colon(value);
        }
        value.skip_blanks();
        if !value.take(':') {
            return None;
        }
        value.skip_value();
        if !value.take(',') {
            return None;
        }
        scanner = value;
    }
}

fn item(mut scanner: Scanner<'_>, index: usize) -> Option<usize> {
    if !scanner.take('(') && !scanner.take('[') {
        return None;
    }
    for _ in 0..index {
        scanner.skip_value();
        if !scanner.take(',') {
            return None;
        }
    }
    scanner.skip_blanks();
    Some(scanner.offset())
}

/// The keys of the map at an offset, each with its own offset.
fn keys(text: &str, map: usize) -> Vec<(usize, String)> {
    let mut keys = Vec::new();
    let mut scanner = Scanner::new(text, map);
    if !scanner.take('{') {
        return keys;
    }
    loop {
        scanner.skip_blanks();
        let from = scanner.offset();
        scanner.skip_value();
        let key = text[from..scanner.offset()].trim_end();
        let Ok(key) = ron::from_str::<String>(key) else {
            return keys;
        };
        keys.push((from, key));
        if !scanner.take(':') {
            return keys;
        }
        scanner.skip_value();
        if !scanner.take(',') {
            return keys;
        }
    }
}

fn past_colon(mut scanner: Scanner<'_>) -> Option<usize> {
    scanner.skip_blanks();
    if !scanner.take(':') {
        return None;
    }
    scanner.skip_blanks();
    Some(scanner.offset())
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = r##"// a note (with brackets
Setup(
    format: 1,
    car: (name: "a: b, )", /* left: 3 */ right: Given(( x: 1.0 )),
        list: [Stack(most: 2, parts: [(t: 1), (t: 2)],), Slide(base: 7)],
        servo: Some((size: (1.0, 2.0, 3.0)))),
    chosen: { "first" : Slide(1.0), r#"sec"ond"#: Stack(2.0), "a\nb": Choice("x") },
)"##;

    fn at(path: &Path) -> &'static str {
        let rest = &TEXT[locate(TEXT, path)..];
        &rest[..rest.find([',', ')', '(']).unwrap_or(rest.len())]
    }

    #[test]
    fn fields_items_and_keys_are_found() {
        let car = Path::root().field("car");
        assert_eq!(at(&Path::root().field("format")), "1");
        assert_eq!(at(&car.field("right").item(0).field("x")), "1.0 ");
        assert_eq!(at(&car.field("list").item(0).field("most")), "2");
        assert_eq!(
            at(&car.field("list").item(0).field("parts").item(1).field("t")),
            "2"
        );
        assert_eq!(at(&car.field("list").item(1).field("base")), "7");
        assert_eq!(at(&car.field("servo").item(0).field("size").item(2)), "3.0");
        let chosen = Path::root().field("chosen");
        assert_eq!(at(&chosen.key("first").item(0)), "1.0");
        assert_eq!(at(&chosen.key("sec\"ond").item(0)), "2.0");
        assert_eq!(at(&chosen.key("a\nb")), "Choice");
    }

    #[test]
    fn what_the_text_leaves_out_is_placed_around() {
        let car = Path::root().field("car");
        assert_eq!(at(&car.field("list").item(1).field("step")), "Slide");
        assert_eq!(at(&car.field("list").item(5)), "[Stack");
        assert_eq!(at(&Path::root().field("record")), "Setup");
    }

    #[test]
    fn lines_and_columns_count_from_one_in_characters() {
        assert_eq!(line_and_column("ab\nçd", 0), (1, 1));
        assert_eq!(line_and_column("ab\nçd", 3), (2, 1));
        assert_eq!(line_and_column("ab\nçd", 5), (2, 2));
        assert_eq!(line_and_column("ab", 99), (1, 3));
    }

    #[test]
    fn a_repeated_key_is_found() {
        let chosen = Path::root().field("c");
        let text = r#"(c: {"a": 1, "b": 2, r"a": 3})"#;
        assert_eq!(
            repeated_key(text, &chosen).map(|(offset, key)| (&text[offset..offset + 4], key)),
            Some(("r\"a\"", "a".to_owned()))
        );
        assert_eq!(repeated_key(r#"(c: {"a": 1})"#, &chosen), None);
    }
}
