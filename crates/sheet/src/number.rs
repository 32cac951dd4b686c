//! Numbers as they are written on paper.

/// A number with a fixed count of decimals and a true minus sign; never "-0".
pub(crate) fn number(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.chars().all(|digit| matches!(digit, '0' | '.')) => digits.to_owned(),
        Some(digits) => format!("\u{2212}{digits}"),
        None => text,
    }
}

/// A number with its sign always shown, zero without one.
pub(crate) fn signed(value: f64, decimals: usize) -> String {
    let text = number(value, decimals);
    let zero = text.chars().all(|digit| matches!(digit, '0' | '.'));
    if zero || text.starts_with('\u{2212}') {
        text
    } else {
        format!("+{text}")
    }
}

#[cfg(test)]
mod tests {
    use super::{number, signed};

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
}
