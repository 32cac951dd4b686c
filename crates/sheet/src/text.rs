//! Size of writing, and breaking it into lines.

use crate::font;

/// Height of capitals and ascenders over the base line, in font sizes.
pub(crate) const ASCENT: f64 = 0.76;

/// Depth of descenders under the base line, in font sizes.
pub(crate) const DESCENT: f64 = 0.24;

/// Width of a line of writing, mm, at a font size in mm: the sum of its glyphs' advances.
pub(crate) fn width(content: &str, size: f64, bold: bool) -> f64 {
    let face = font::face(bold);
    let ems: f64 = content
        .chars()
        .map(|character| face.advance(face.glyph(character)))
        .sum();
    ems * size
}

/// The writing on one line: every run of blanks and control characters becomes one blank. Marks that turn the
/// direction of writing are dropped, since they would carry on into what stands beside, and so are those that only
/// say how letters join.
pub(crate) fn on_one_line(content: &str) -> String {
    let mut line = String::with_capacity(content.len());
    for character in content
        .chars()
        .filter(|&character| !is_mark_without_shape(character))
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

fn is_mark_without_shape(character: char) -> bool {
    matches!(
        character,
        '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}'
            | '\u{fe00}'..='\u{fe0f}' | '\u{feff}'
    )
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
        if lines.len() > most {
            break;
        }
        if let Some(last) = lines.last_mut() {
            let joined = format!("{last} {word}");
            if fits(&joined) {
                *last = joined;
                continue;
            }
        }
        lines.extend(pieces(word, size, bold, room));
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
fn pieces(word: &str, size: f64, bold: bool, room: f64) -> Vec<String> {
    let face = font::face(bold);
    let mut pieces: Vec<String> = Vec::new();
    let mut taken = 0.0;
    for character in word.chars() {
        let advance = face.advance(face.glyph(character)) * size;
        match pieces.last_mut() {
            // Rounding apart, the width of the whole piece.
            Some(piece) if taken + advance <= room - 1e-9 => {
                piece.push(character);
                taken += advance;
            }
            _ => {
                pieces.push(character.to_string());
                taken = advance;
            }
        }
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
        assert_eq!(
            on_one_line("  a\n\tb\u{0} \u{202e}c\u{200d}\u{ad}  "),
            "a b c"
        );
        assert!(wrap(" \n ", 3.0, false, 30.0, 3).is_empty());
    }

    #[test]
    fn widths_are_those_of_the_font_files() {
        // Advances in font units of 1/2048, read from the font files' metric tables with fontTools.
        for (letter, regular, bold) in [
            (' ', 508, 510),
            ('0', 1151, 1175),
            ('W', 1817, 1792),
            ('i', 498, 543),
        ] {
            for (units, is_bold) in [(regular, false), (bold, true)] {
                let measured = width(&letter.to_string(), 2048.0, is_bold);
                assert!(
                    (measured - f64::from(units)).abs() < 1e-9,
                    "{letter} {measured}"
                );
            }
        }
        assert!((width("00", 3.0, false) - 2.0 * 3.0 * 1151.0 / 2048.0).abs() < 1e-12);
    }
}
