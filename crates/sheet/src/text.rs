//! Estimated size of writing, and breaking it into lines.
//!
//! A document does not say which sans-serif face its reader has, so widths are estimated from above: hardly a
//! letter of the usual faces, wide ones among them, is wider than its class here.

/// Height of capitals and ascenders over the base line, in font sizes.
pub(crate) const ASCENT: f64 = 0.76;

/// Depth of descenders under the base line, in font sizes.
pub(crate) const DESCENT: f64 = 0.24;

/// A bold face is wider than the regular one by at most this factor.
const BOLD: f64 = 1.15;

/// Estimated width of a line of writing, mm, at a font size in mm.
pub(crate) fn width(content: &str, size: f64, bold: bool) -> f64 {
    let ems: f64 = content.chars().map(advance).sum();
    ems * size * if bold { BOLD } else { 1.0 }
}

/// Advance of a character, in font sizes.
fn advance(character: char) -> f64 {
    match character {
        ' ' | '!' | '\'' | '(' | ')' | ',' | '-' | '.' | '/' | ':' | ';' | 'I' | '[' | '\\'
        | ']' | 'f' | 'i' | 'j' | 'l' | '|' => 0.4,
        'r' | 't' | '"' | '`' | '*' | '°' => 0.5,
        'a'..='e' | 'g' | 'h' | 'k' | 'n'..='q' | 's' | 'u' | 'v' | 'x'..='z' | '0'..='9' => 0.64,
        'A'..='L' | 'N'..='V' | 'X'..='Z' | '&' => 0.8,
        'w' | '#'..='$' | '+' | '<'..='?' | '^' | '_' | '{' | '}' | '~' => 0.84,
        'm' | 'M' | 'W' | '%' | '@' | '–' | '—' | '…' => 1.0,
        '\u{80}'..='\u{2ff}' => 1.1,
        _ => 1.3,
    }
}

/// The writing on one line: every run of blanks and control characters becomes one blank, and marks that turn
/// the direction of writing are dropped, since they would carry on into what stands beside.
pub(crate) fn on_one_line(content: &str) -> String {
    let mut line = String::with_capacity(content.len());
    for character in content
        .chars()
        .filter(|&character| !turns_direction(character))
    {
        if !character.is_control() && !character.is_whitespace() {
            line.push(character);
        } else if !line.is_empty() && !line.ends_with(' ') {
            line.push(' ');
        }
    }
    line.truncate(line.trim_end().len());
    line
}

fn turns_direction(character: char) -> bool {
    matches!(character, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// Breaks writing into lines no wider than `room` mm, at blanks where there are any, else inside a word.
///
/// What does not go into `most` lines ends in an ellipsis. No line for writing without letters.
pub(crate) fn wrap(content: &str, size: f64, bold: bool, room: f64, most: usize) -> Vec<String> {
    let fits = |line: &str| width(line, size, bold) <= room;
    let mut lines: Vec<String> = Vec::new();
    for word in on_one_line(content)
        .split(' ')
        .filter(|word| !word.is_empty())
    {
        if let Some(last) = lines.last_mut() {
            let joined = format!("{last} {word}");
            if fits(&joined) {
                *last = joined;
                continue;
            }
        }
        lines.extend(pieces(word, fits));
    }
    if lines.len() > most {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            *last = cut(last, fits);
        }
    }
    lines
}

/// Splits a word into pieces that fit, of at least one character each.
fn pieces(word: &str, fits: impl Fn(&str) -> bool) -> Vec<String> {
    let mut pieces = vec![String::new()];
    for character in word.chars() {
        if let Some(piece) = pieces.last_mut() {
            piece.push(character);
            if piece.chars().count() == 1 || fits(piece) {
                continue;
            }
            piece.pop();
        }
        pieces.push(character.to_string());
    }
    pieces
}

/// The line with an ellipsis at its end, shortened until it fits.
fn cut(line: &str, fits: impl Fn(&str) -> bool) -> String {
    let mut kept = line.to_owned();
    loop {
        let shown = format!("{}…", kept.trim_end());
        if fits(&shown) || kept.pop().is_none() {
            return shown;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{on_one_line, width, wrap};

    #[test]
    fn lines_fit_and_keep_every_word() {
        let content = "A rather long name of a setup for the wet Wednesday evening club race";
        let lines = wrap(content, 3.0, false, 40.0, 20);
        assert!(lines.len() > 2);
        assert!(lines.iter().all(|line| width(line, 3.0, false) <= 40.0));
        assert_eq!(lines.join(" "), content);
    }

    #[test]
    fn a_word_without_blanks_is_broken() {
        let content = "W".repeat(200);
        let lines = wrap(&content, 3.0, true, 40.0, 50);
        assert!(lines.iter().all(|line| width(line, 3.0, true) <= 40.0));
        assert_eq!(lines.concat(), content);
    }

    #[test]
    fn too_many_lines_end_in_an_ellipsis_that_fits() {
        let lines = wrap(&"many words ".repeat(90), 3.0, false, 30.0, 2);
        assert_eq!(lines.len(), 2);
        assert!(lines[1].ends_with('…'));
        assert!(width(&lines[1], 3.0, false) <= 30.0);
    }

    #[test]
    fn a_room_too_narrow_for_one_letter_still_ends() {
        assert_eq!(wrap("abc", 3.0, false, 0.0, 9), ["a", "b", "c"]);
        assert_eq!(wrap("abc", 3.0, false, 0.0, 1), ["…"]);
    }

    #[test]
    fn blanks_and_control_characters_become_one_blank() {
        assert_eq!(on_one_line("  a\n\tb\u{0} \u{202e}c  "), "a b c");
        assert!(wrap(" \n ", 3.0, false, 30.0, 3).is_empty());
    }

    #[test]
    fn no_letter_of_a_wide_face_is_wider_than_estimated() {
        // Advances, regular and bold, in thousandths of the font size, read from the metric tables of the font files
        // DejaVu Sans 2.37, one of the widest sans-serif faces in common use.
        let advances = [
            (' ', 318, 348),
            ('%', 950, 1002),
            ('(', 390, 457),
            ('+', 838, 838),
            ('-', 361, 415),
            ('0', 636, 696),
            ('1', 636, 696),
            (':', 337, 400),
            ('@', 1000, 1000),
            ('A', 684, 774),
            ('G', 775, 821),
            ('I', 295, 372),
            ('M', 863, 995),
            ('O', 787, 850),
            ('Q', 787, 850),
            ('W', 989, 1103),
            ('a', 613, 675),
            ('b', 635, 716),
            ('f', 352, 435),
            ('i', 278, 343),
            ('j', 278, 343),
            ('l', 278, 343),
            ('m', 974, 1042),
            ('n', 634, 712),
            ('o', 612, 687),
            ('r', 411, 493),
            ('t', 392, 478),
            ('w', 818, 924),
            ('z', 525, 582),
            ('°', 500, 500),
            ('Œ', 1070, 1167),
            ('…', 1000, 1000),
        ];
        for (letter, regular, bold) in advances {
            for (thousandths, is_bold) in [(regular, false), (bold, true)] {
                let estimate = width(&letter.to_string(), 1000.0, is_bold);
                assert!(estimate + 1.0 >= f64::from(thousandths), "{letter}");
            }
        }
    }
}
