//! A scanner over the brackets, names and literals of a RON text, to tell where things stand.
//!
//! It reads no values: that is the RON reader's work. On text that is not well formed it stops early or lands
//! beside the mark, but always ends.

/// A place in a text, read from left to right.
#[derive(Debug, Clone)]
pub(super) struct Scanner<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Scanner<'a> {
    pub(super) fn new(text: &'a str, at: usize) -> Self {
        Self { text, at }
    }

    /// Byte offset of the place.
    pub(super) fn offset(&self) -> usize {
        self.at
    }

    /// What is left.
    pub(super) fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    pub(super) fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    /// Goes past a character if it is the next one.
    pub(super) fn take(&mut self, wanted: char) -> bool {
        let found = self.peek() == Some(wanted);
        if found {
            self.at += wanted.len_utf8();
        }
        found
    }

    /// Goes past blanks and comments.
    pub(super) fn skip_blanks(&mut self) {
        loop {
            let rest = self.rest();
            let blanks = rest.len() - rest.trim_start_matches(is_blank).len();
            self.at += blanks;
            if self.rest().starts_with("//") {
                self.at += self.rest().find('\n').unwrap_or(self.rest().len());
            } else if self.rest().starts_with("/*") {
                self.skip_block_comment();
            } else if blanks == 0 {
                return;
            }
        }
    }

    /// Goes past a name, raw ones included, and returns it.
    pub(super) fn name(&mut self) -> Option<&'a str> {
        let rest = self.rest();
        let name_at = if rest.starts_with("r#") && !rest.starts_with("r#\"") {
            2
        } else {
            0
        };
        let name = &rest[name_at..];
        let name = &name[..word_length(name)];
        if name.is_empty() || name.starts_with(|c: char| c.is_ascii_digit()) {
            return None;
        }
        self.at += name_at + name.len();
        Some(name)
    }

    /// Goes past a value: a literal, a name, or a name and what its brackets hold.
    pub(super) fn skip_value(&mut self) {
        self.skip_blanks();
        let mut depth = 0_usize;
        while let Some(next) = self.peek() {
            match next {
                '(' | '[' | '{' => {
                    depth += 1;
                    self.at += 1;
                }
                ')' | ']' | '}' => {
                    if depth == 0 {
                        return;
                    }
                    depth -= 1;
                    self.at += 1;
                }
                ',' | ':' if depth == 0 => return,
                _ => self.skip_token(),
            }
            self.skip_blanks();
        }
    }

    /// Goes past a string, a character, a name, a number's digits, or one character of anything else.
    fn skip_token(&mut self) {
        let rest = self.rest();
        if let Some(hashes) = raw_string_hashes(rest) {
            self.skip_raw_string(hashes);
        } else if rest.starts_with('"') || rest.starts_with("b\"") {
            self.at += rest.find('"').unwrap_or(0) + 1;
            self.skip_past_quote('"');
        } else if rest.starts_with('\'') {
            self.at += 1;
            self.skip_past_quote('\'');
        } else if rest.starts_with(|c: char| c.is_ascii_digit()) {
            self.at += word_length(rest);
        } else if self.name().is_none() {
            self.at += self.peek().map_or(0, char::len_utf8);
        }
    }

    /// From inside a quoted literal to behind its closing quote.
    fn skip_past_quote(&mut self, quote: char) {
        let mut escaped = false;
        for (offset, c) in self.rest().char_indices() {
            if c == quote && !escaped {
                self.at += offset + 1;
                return;
            }
            escaped = c == '\\' && !escaped;
        }
        self.at = self.text.len();
    }

    fn skip_raw_string(&mut self, hashes: usize) {
        let rest = self.rest();
        let close = format!("\"{}", "#".repeat(hashes));
        let open = rest.find('"').unwrap_or(rest.len());
        let body = rest.get(open + 1..).unwrap_or_default();
        self.at = match body.find(&close) {
            Some(length) => self.at + open + 1 + length + close.len(),
            None => self.text.len(),
        };
    }

    /// Block comments nest.
    fn skip_block_comment(&mut self) {
        let mut depth = 0_usize;
        while !self.rest().is_empty() {
            if self.rest().starts_with("/*") {
                depth += 1;
                self.at += 2;
            } else if self.rest().starts_with("*/") {
                depth = depth.saturating_sub(1);
                self.at += 2;
                if depth == 0 {
                    return;
                }
            } else {
                self.at += self.peek().map_or(0, char::len_utf8);
            }
        }
    }
}

/// Bytes of the letters, digits and underscores at the beginning of a text.
fn word_length(text: &str) -> usize {
    text.find(|c: char| !(c.is_alphanumeric() || c == '_'))
        .unwrap_or(text.len())
}

/// What RON takes for a blank: white space and the marks of writing direction.
fn is_blank(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{200e}' | '\u{200f}')
}

/// How many hashes a raw string that begins here has.
fn raw_string_hashes(text: &str) -> Option<usize> {
    let after = text.strip_prefix("br").or_else(|| text.strip_prefix('r'))?;
    let hashes = after.len() - after.trim_start_matches('#').len();
    after[hashes..].starts_with('"').then_some(hashes)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after_value(text: &str) -> &str {
        let mut scanner = Scanner::new(text, 0);
        scanner.skip_value();
        scanner.rest()
    }

    #[test]
    fn a_value_ends_at_its_comma() {
        assert_eq!(after_value("1.5, rest"), ", rest");
        assert_eq!(
            after_value("Slide(range: (1, 2), x: [3, 4]), rest"),
            ", rest"
        );
        assert_eq!(after_value("{\"a\": (1, 2)}, rest"), ", rest");
    }

    #[test]
    fn strings_and_comments_hide_brackets() {
        assert_eq!(after_value(r#""a ) , \" b" , rest"#), ", rest");
        assert_eq!(after_value("r##\"a \"# ) , b\"## , rest"), ", rest");
        assert_eq!(
            after_value("( /* /* ] */ ) , */ 1 // )\n ), rest"),
            ", rest"
        );
        assert_eq!(after_value("'\\'', rest"), ", rest");
        assert_eq!(after_value("b\"a)\", rest"), ", rest");
        assert_eq!(after_value("br#\"a)\"#, rest"), ", rest");
    }

    #[test]
    fn names_may_be_raw() {
        let mut scanner = Scanner::new("r#type: 1", 0);
        assert_eq!(scanner.name(), Some("type"));
        assert_eq!(scanner.rest(), ": 1");
        assert_eq!(Scanner::new("1a", 0).name(), None);
    }

    #[test]
    fn what_never_closes_ends_at_the_end() {
        for text in ["(", "\"abc", "r#\"abc", "/* abc", "'", "[[[", "// abc"] {
            assert_eq!(after_value(text), "", "{text}");
        }
    }
}
