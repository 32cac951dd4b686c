#![allow(clippy::unwrap_used, clippy::expect_used)]

use proptest::prelude::*;

use super::{EntryError, Measure, is_reckoned, read};
use crate::units::Units;

fn mm(text: &str) -> Result<f64, EntryError> {
    read(text, Measure::Length, Units::Millimetres)
}

fn inches(text: &str) -> Result<f64, EntryError> {
    read(text, Measure::Length, Units::Inches)
}

fn close(got: Result<f64, EntryError>, wanted: f64) {
    let got = got.unwrap();
    assert!((got - wanted).abs() < 1e-9, "{got}, not {wanted}");
}

#[test]
fn commas_points_and_true_minus_signs_are_read() {
    close(mm("2,5"), 2.5);
    close(mm(" 2.5 mm"), 2.5);
    close(mm(",5"), 0.5);
    close(mm("3."), 3.0);
    close(mm("\u{2212}3"), -3.0);
    close(read("-1,25 deg", Measure::Angle, Units::Inches), -1.25);
    close(read("3\u{b0}", Measure::Angle, Units::Millimetres), 3.0);
    close(read("40 %", Measure::Plain("%"), Units::Millimetres), 40.0);
}

#[test]
fn sums_and_products_are_reckoned() {
    close(mm("2+0.5"), 2.5);
    close(mm("2 - 0,5 + 1"), 2.5);
    close(mm("2*1.5+0.5"), 3.5);
    close(mm("3 x 0.5"), 1.5);
    close(mm("10/4"), 2.5);
    close(mm("(2+0.5)*-2"), -5.0);
    close(mm("2--1"), 3.0);
}

#[test]
fn units_belong_to_what_they_follow() {
    close(mm("1/8 in"), 3.175);
    close(mm("1 1/2 in"), 38.1);
    close(mm("-1 1/2\""), -38.1);
    close(mm("2 in + 0,5"), 51.3);
    close(mm("(2 + 0.5) in"), 63.5);
    close(mm("2 * 3 mm"), 6.0);
    close(mm("6 mm / 2"), 3.0);
    close(mm("20 thou"), 0.508);
    close(mm("1.2 cm"), 12.0);
    close(inches("0.5"), 12.7);
    close(inches("1 + 10 mm"), 35.4);
    close(inches("3 mm"), 3.0);
    close(
        read("1 rad", Measure::Angle, Units::Millimetres),
        57.295_779_513,
    );
}

#[test]
fn what_is_wrong_is_said_in_words() {
    let words = |text: &str| mm(text).unwrap_err().to_string();
    assert_eq!(words(""), "type a number");
    assert_eq!(words("  "), "type a number");
    assert!(words("1.234,5").contains("more than one comma or point"));
    assert!(words("2+").contains("missing after \u{201c}+\u{201d}"));
    assert!(words("*2").contains("missing before \u{201c}\u{d7}\u{201d}"));
    assert!(words("2 furlong").contains("\u{201c}furlong\u{201d} is no unit; mm, cm"));
    assert!(words("2 deg").contains("measures something else"));
    assert!(words("2 3").contains("sign is missing before \u{201c}3\u{201d}"));
    assert!(words("2 mm * 3 mm").contains("only one part of a product"));
    assert!(words("6/2 mm/3 mm").contains("only one part of a product"));
    assert_eq!(words("1/0"), "nothing can be divided by 0");
    assert!(words("(2").contains("bracket"));
    assert!(words("2)").contains("bracket"));
    assert!(words("2 ? 3").contains("\u{201c}?\u{201d}"));
    assert!(words(&"(".repeat(60)).contains("too many brackets"));
    assert!(words(&"1".repeat(121)).contains("longer than"));
    assert!(mm("inf").is_err() && mm("NaN").is_err() && mm("1e5").is_err());
    assert!(read("3 mm", Measure::Plain(""), Units::Millimetres).is_err());
}

#[test]
fn numbers_beyond_all_bounds_are_refused() {
    let large = "9".repeat(40);
    let product = format!("{large}*{large}");
    close(mm(&large).map(|value| value / 1e40), 1.0);
    assert!(mm(&product).is_ok());
    let nested = vec!["9".repeat(28); 4].join("*");
    assert!(mm(&nested).is_ok(), "10 to the 112 is finite");
    assert_eq!(mm("."), mm(",").map_err(|_| mm(".").unwrap_err()));
}

#[test]
fn only_sums_and_units_are_worth_a_result() {
    assert!(!is_reckoned("2,5") && !is_reckoned("-3.") && !is_reckoned(" 2 "));
    assert!(is_reckoned("2+0.5") && is_reckoned("1/8 in") && is_reckoned("3 mm"));
}

/// A typed sum with its value, plain numbers only.
fn typed() -> impl Strategy<Value = (String, f64)> {
    let number = (0_u32..10_000, any::<bool>()).prop_map(|(hundredths, comma)| {
        let value = f64::from(hundredths) / 100.0;
        let text = format!("{value}");
        (if comma { text.replace('.', ",") } else { text }, value)
    });
    number.prop_recursive(3, 12, 2, |inner| {
        (inner.clone(), inner, 0_u8..3).prop_map(|((a, x), (b, y), sign)| match sign {
            0 => (format!("({a}+{b})"), x + y),
            1 => (format!("({a} - {b})"), x - y),
            _ => (format!("({a}*{b})"), x * y),
        })
    })
}

proptest! {
    #[test]
    fn no_text_panics_or_gives_what_is_not_finite(text in "\\PC{0,140}") {
        for units in Units::ALL {
            for measure in [Measure::Length, Measure::Angle, Measure::Plain("%")] {
                if let Ok(value) = read(&text, measure, units) {
                    prop_assert!(value.is_finite());
                }
            }
        }
    }

    #[test]
    fn no_text_of_our_own_characters_panics(text in "[-+*/x0-9.,() minchdegthou\"\u{b0}%]{0,130}") {
        if let Ok(value) = read(&text, Measure::Length, Units::Inches) {
            prop_assert!(value.is_finite());
        }
    }

    #[test]
    fn sums_have_the_value_of_their_parts((text, value) in typed()) {
        prop_assume!(text.len() <= super::LONGEST);
        let got = mm(&text).unwrap();
        prop_assert!((got - value).abs() <= 1e-9 * value.abs().max(1.0), "{text}: {got}, not {value}");
    }

    #[test]
    fn an_inch_is_an_inch_whatever_is_shown(value in -1_000.0..1_000.0_f64) {
        let text = format!("{value} in");
        let (a, b) = (mm(&text).unwrap(), inches(&text).unwrap());
        prop_assert!((a - b).abs() < 1e-12);
        prop_assert!((a - value * 25.4).abs() < 1e-9);
    }

    #[test]
    fn what_is_shown_is_read_again(value in -1_000.0..1_000.0_f64, decimals in 0_usize..5) {
        for units in Units::ALL {
            let shown = units.short_length(value, decimals);
            let got = read(&shown, Measure::Length, units).unwrap();
            let finest = units.millimetres(10_f64.powi(-i32::try_from(units.unit("mm", decimals).decimals).unwrap()));
            prop_assert!((got - value).abs() <= 0.51 * finest, "{shown}: {got}, not {value}");
        }
    }
}
