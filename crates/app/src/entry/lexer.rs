//! The words of a typed number: numbers, signs, brackets, units.

use super::EntryError;

/// One word.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Word {
    /// A number without sign.
    Number(f64),
    /// Plus.
    Plus,
    /// Minus.
    Minus,
    /// Times.
    Times,
    /// Divided by.
    Over,
    /// Opening bracket.
    Open,
    /// Closing bracket.
    Close,
    /// Letters or a sign that stand for a unit.
    Unit(String),
}

impl Word {
    /// The word as it may be quoted.
    pub(super) fn quoted(&self) -> String {
        match self {
            Self::Number(value) => value.to_string(),
            Self::Plus => "+".to_owned(),
            Self::Minus => "\u{2212}".to_owned(),
            Self::Times => "\u{d7}".to_owned(),
            Self::Over => "/".to_owned(),
            Self::Open => "(".to_owned(),
            Self::Close => ")".to_owned(),
            Self::Unit(word) => word.clone(),
        }
    }
}

/// Splits a text into words.
pub(super) fn words(text: &str) -> Result<Vec<Word>, EntryError> {
    let mut words = Vec::new();
    let mut rest = text.chars().peekable();
    while let Some(&next) = rest.peek() {
        if next.is_whitespace() {
            rest.next();
        } else if next.is_ascii_digit() || matches!(next, '.' | ',') {
            words.push(number(&mut rest)?);
        } else if is_letter(next) {
            words.push(Word::Unit(run(&mut rest, is_letter)));
        } else {
            rest.next();
            words.push(sign(next)?);
        }
    }
    Ok(words)
}

/// A letter of a unit. The times sign is one of its own even where it is typed as the letter x.
fn is_letter(c: char) -> bool {
    c.is_alphabetic() && !matches!(c, 'x' | 'X')
}

fn sign(c: char) -> Result<Word, EntryError> {
    Ok(match c {
        '+' => Word::Plus,
        '-' | '\u{2212}' | '\u{2013}' => Word::Minus,
        '*' | 'x' | 'X' | '\u{d7}' | '\u{b7}' => Word::Times,
        '/' | ':' | '\u{f7}' => Word::Over,
        '(' => Word::Open,
        ')' => Word::Close,
        '"' | '\u{2033}' | '\u{201d}' | '\u{b0}' | '%' => Word::Unit(c.to_string()),
        character => return Err(EntryError::Stranger { character }),
    })
}

fn number(rest: &mut std::iter::Peekable<std::str::Chars<'_>>) -> Result<Word, EntryError> {
    let typed = run(rest, |c| c.is_ascii_digit() || matches!(c, '.' | ','));
    let plain = typed.replace(',', ".");
    if plain.matches('.').count() > 1 {
        return Err(EntryError::TwoSeparators { number: typed });
    }
    match plain.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(Word::Number(value)),
        Ok(_) => Err(EntryError::TooLarge),
        // A separator without digits.
        Err(_) => Err(EntryError::NumberMissing {
            place: format!("at \u{201c}{typed}\u{201d}"),
        }),
    }
}

fn run(
    rest: &mut std::iter::Peekable<std::str::Chars<'_>>,
    belongs: impl Fn(char) -> bool,
) -> String {
    let mut word = String::new();
    while let Some(c) = rest.next_if(|c| belongs(*c)) {
        word.push(c);
    }
    word
}
