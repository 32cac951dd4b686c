//! Numbers as text: one way for the whole program. What is typed is read by [`crate::entry`].
//!
//! The window writes a true minus sign; [`plain`] turns that into what a terminal and a script expect.

use steerloft_setup::adjustment::Adjustment;
use steerloft_setup::setup::Chosen;

pub use steerloft_analysis::text::{number, short, signed, with_unit};

/// A value of an adjustment in words, with a true minus sign, such as "\u{2212}1.5 mm" or "rear hole".
#[must_use]
pub fn value(adjustment: &Adjustment, value: &Chosen) -> String {
    let label = adjustment.label_of(value);
    match (value, label.strip_prefix('-')) {
        (Chosen::Slide(_) | Chosen::Stack(_), Some(amount)) => format!("\u{2212}{amount}"),
        _ => label,
    }
}

/// A text of numbers and units in the characters of a plain terminal: an ASCII hyphen for minus and for no value, "deg".
#[must_use]
pub fn plain(text: &str) -> String {
    text.chars()
        .fold(String::with_capacity(text.len()), |mut plain, c| {
            match c {
                '\u{2212}' | '\u{2013}' => plain.push('-'),
                '\u{b0}' if plain.ends_with(|last: char| last.is_ascii_digit()) => {
                    plain.push_str(" deg");
                }
                '\u{b0}' => plain.push_str("deg"),
                other => plain.push(other),
            }
            plain
        })
}

/// A value moved by keys without the dust that decimals leave in binary fractions, to a millionth.
#[must_use]
pub fn without_dust(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn a_terminal_gets_plain_characters() {
        assert_eq!(plain(&number(-2.5, 1)), "-2.5");
        assert_eq!(plain("\u{2212}2.5\u{b0}"), "-2.5 deg");
        assert_eq!(plain("\u{b0}/mm"), "deg/mm");
        assert_eq!(plain("\u{2013}"), "-");
    }

    #[test]
    fn values_of_adjustments_have_a_true_minus() {
        let adjustments = steerloft_setup::supplied::SUPPLIED[0]
            .setup()
            .car
            .adjustments;
        let slide = adjustments
            .iter()
            .find(|one| matches!(one.base(), Chosen::Slide(_)));
        let slide = slide.unwrap();
        assert!(value(slide, &Chosen::Slide(-1.5)).starts_with("\u{2212}1.5"));
        let name = Chosen::Choice("-3 hole".to_owned());
        assert_eq!(value(slide, &name), "-3 hole", "a name is left as it is");
    }
}
