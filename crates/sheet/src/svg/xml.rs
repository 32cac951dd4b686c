//! Text and numbers as XML takes them.

use std::fmt::Write as _;

/// The content with what XML reserves escaped, and what XML 1.0 forbids replaced by U+FFFD.
pub(super) fn escape(content: &str) -> String {
    let mut escaped = String::with_capacity(content.len());
    for character in content.chars() {
        match character {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\t' | '\n' | '\r' => escaped.push(' '),
            '\u{fffe}' | '\u{ffff}' => escaped.push('\u{fffd}'),
            control if control.is_control() => escaped.push('\u{fffd}'),
            other => escaped.push(other),
        }
    }
    escaped
}

/// A number with at most three decimals (micrometres on paper), no trailing zeros and no negative zero.
pub(super) fn number(value: f64) -> String {
    let fixed = format!("{value:.3}");
    let trimmed = fixed.trim_end_matches('0').trim_end_matches('.');
    if trimmed == "-0" {
        "0".to_owned()
    } else {
        trimmed.to_owned()
    }
}

/// Appends ` name="value"` for a number.
pub(super) fn push_number(element: &mut String, name: &str, value: f64) {
    push(element, name, &number(value));
}

/// Appends ` name="value"`; the value holds nothing that needs escaping.
pub(super) fn push(element: &mut String, name: &str, value: &str) {
    // Writing to a string cannot fail.
    let _ = write!(element, " {name}=\"{value}\"");
}

#[cfg(test)]
mod tests {
    use super::{escape, number};

    #[test]
    fn numbers_are_short_and_never_negative_zero() {
        let cases = [
            (0.0, "0"),
            (-0.0, "0"),
            (-0.0004, "0"),
            (0.0005, "0.001"),
            (12.0, "12"),
            (100.0, "100"),
            (-1.25, "-1.25"),
            (1.0 / 3.0, "0.333"),
            (-2.9996, "-3"),
        ];
        for (value, written) in cases {
            assert_eq!(number(value), written, "{value}");
        }
    }

    #[test]
    fn reserved_and_forbidden_characters_do_not_get_through() {
        assert_eq!(escape("a<b>&\"c\"'"), "a&lt;b&gt;&amp;&quot;c&quot;'");
        assert_eq!(
            escape("a\u{0}\u{1b}b\nc\u{ffff}"),
            "a\u{fffd}\u{fffd}b c\u{fffd}"
        );
    }
}
