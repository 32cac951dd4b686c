//! Spacers at hand as they are typed: how many times which thickness, such as "4 x 0.5, 2 x 1".

use steerloft_setup::adjustment::Spacer;

use crate::entry::{self, Measure};
use crate::units::Units;

/// Spacers as they are typed, with commas between.
pub(super) fn text(parts: &[Spacer], units: Units) -> String {
    let shown = |thickness: f64| match units {
        Units::Millimetres => thickness.to_string(),
        Units::Inches => units.short(thickness, 3),
    };
    let texts: Vec<String> = parts
        .iter()
        .map(|part| format!("{} x {}", part.count, shown(part.thickness)))
        .collect();
    texts.join(", ")
}

/// The spacers that a text tells of, or what is wrong with it.
///
/// A semicolon stands between two of them, and so does a comma unless it is a decimal one, between two digits.
pub(super) fn read(text: &str, units: Units) -> Result<Vec<Spacer>, String> {
    let parts = split(text).map(str::trim);
    let spacers = parts.filter(|part| !part.is_empty()).map(|part| {
        let (count, thickness) = part.split_once(['x', '\u{d7}', '*']).unwrap_or(("1", part));
        let count = count.trim().parse::<u32>();
        match (count, read_thickness(thickness.trim(), units)) {
            (Ok(count), Ok(thickness)) => Ok(Spacer { thickness, count }),
            _ => Err(format!(
                "\u{201c}{part}\u{201d} is no spacer; write how many of which thickness, such as 4 x 0.5, 2 x 1"
            )),
        }
    });
    spacers.collect()
}

/// Reads a thickness, mm. What was typed in another unit goes to the nearest thousandth, finer than which none is known.
fn read_thickness(text: &str, units: Units) -> Result<f64, String> {
    let read = entry::read(text, Measure::Length, units).map_err(|error| error.to_string())?;
    let is_plain = text.trim().parse::<f64>().is_ok() && units == Units::Millimetres;
    Ok(if is_plain {
        read
    } else {
        (read * 1000.0).round() / 1000.0
    })
}

fn split(text: &str) -> impl Iterator<Item = &str> {
    let mut rest = Some(text);
    std::iter::from_fn(move || {
        let whole = rest?;
        let end = whole.char_indices().find(|(at, character)| {
            *character == ';' || *character == ',' && !is_between_digits(whole, *at)
        });
        let (part, left) = end.map_or((whole, None), |(at, _)| {
            (&whole[..at], Some(&whole[at + 1..]))
        });
        rest = left;
        Some(part)
    })
}

/// Whether the comma at a place stands between two digits.
fn is_between_digits(text: &str, at: usize) -> bool {
    let digit = |at: Option<usize>| {
        at.and_then(|at| text.as_bytes().get(at))
            .is_some_and(u8::is_ascii_digit)
    };
    digit(at.checked_sub(1)) && digit(at.checked_add(1))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{read, text};
    use crate::units::Units;

    const MM: Units = Units::Millimetres;

    #[test]
    fn spacers_are_read_as_they_are_written() {
        let parts = read("4 x 0.5, 2 x 1; 3", MM).unwrap();
        assert_eq!(parts.len(), 3);
        assert_eq!(parts[0].count, 4);
        assert_eq!(parts[2].count, 1);
        assert_eq!(text(&parts, MM), "4 x 0.5, 2 x 1, 1 x 3");
        assert!(read("two of 1", MM).is_err());
    }

    #[test]
    fn a_comma_between_digits_is_a_decimal_one() {
        let parts = read("4 x 0,5, 2 x 1,25; 3 \u{d7} 2", MM).unwrap();
        assert_eq!(text(&parts, MM), "4 x 0.5, 2 x 1.25, 3 x 2");
    }

    #[test]
    fn in_inches_they_come_back_to_a_thousandth_of_a_millimetre() {
        let parts = read("4 x 0.5, 2 x 1", MM).unwrap();
        let shown = text(&parts, Units::Inches);
        assert_eq!(shown, "4 x 0.01969, 2 x 0.03937");
        assert_eq!(read(&shown, Units::Inches).unwrap(), parts);
    }
}
