//! Numbers as text, one way for window, paper and command line.
//!
//! The minus is a true minus sign; a terminal is given an ASCII one by whoever writes to it.

/// Text for a value that a setup does not have in a pose.
pub const NONE: &str = "\u{2013}";

/// A number with a fixed count of decimals and a true minus sign; never "-0".
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.chars().all(|digit| matches!(digit, '0' | '.')) => digits.to_owned(),
        Some(digits) => format!("\u{2212}{digits}"),
        None => text,
    }
}

/// A number with its sign always shown, zero without one.
#[must_use]
pub fn signed(value: f64, decimals: usize) -> String {
    let text = number(value, decimals);
    let zero = text.chars().all(|digit| matches!(digit, '0' | '.'));
    if zero || text.starts_with('\u{2212}') {
        text
    } else {
        format!("+{text}")
    }
}

/// A number with as few decimals as say it exactly, at most `most`.
#[must_use]
pub fn short(value: f64, most: usize) -> String {
    let text = number(value, most);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// A number with its unit: the degree sign close to it, other units after a space.
#[must_use]
pub fn with_unit(number: &str, unit: &str) -> String {
    match unit {
        "" | "\u{b0}" => format!("{number}{unit}"),
        _ => format!("{number} {unit}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minus_zero_is_written_as_zero() {
        assert_eq!(number(-0.0, 2), "0.00");
        assert_eq!(number(-0.004, 2), "0.00");
        assert_eq!(number(-0.006, 2), "\u{2212}0.01");
        assert_eq!(number(3.0, 0), "3");
    }

    #[test]
    fn signs_are_shown_but_of_zero() {
        assert_eq!(signed(0.001, 2), "0.00");
        assert_eq!(signed(1.5, 1), "+1.5");
        assert_eq!(signed(-1.5, 1), "\u{2212}1.5");
    }

    #[test]
    fn short_numbers_lose_only_zeros() {
        assert_eq!(short(2.0, 3), "2");
        assert_eq!(short(2.50, 3), "2.5");
        assert_eq!(short(100.0, 0), "100");
    }
}
