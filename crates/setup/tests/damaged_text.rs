//! Whatever bytes the reader is given, it answers with a setup that is sound or with an error that has a place.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

use proptest::prelude::*;
use steerloft_setup::adjustment::PointName;
use steerloft_setup::check::check;
use steerloft_setup::file::{FileError, read_text, to_text};
use steerloft_setup::handles::point_of;
use steerloft_setup::layout::{front_axle, layout};
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_solver::{Assembly, Side, SolveError};

/// Reads a text; a setup read from it must pass its own check, lay out finite, and read again as it was written.
fn read_soundly(text: &str) -> Result<(), TestCaseError> {
    match read_text(text) {
        Ok(setup) => {
            prop_assert_eq!(check(&setup), Ok(()));
            let layout = layout(&setup);
            let corners = &layout.axle.corners;
            for corner in [corners.left, corners.right] {
                let knuckle = corner.knuckle;
                prop_assert!(knuckle.wheel_centre.iter().all(|value| value.is_finite()));
                prop_assert!(knuckle.steering_arm.iter().all(|value| value.is_finite()));
            }
            for name in PointName::ALL {
                let place = Side::BOTH.map(|side| point_of(&layout, name, side));
                let finite = place
                    .into_iter()
                    .flatten()
                    .all(|place| place.iter().all(|value| value.is_finite()));
                prop_assert!(finite, "{:?}", name);
            }
            solvable(&setup)?;
            let again = read_text(&to_text(&setup));
            prop_assert_eq!(again, Ok(setup));
        }
        Err(error) => assert_has_place(text, &error)?,
    }
    Ok(())
}

/// What the reader lets through is a mechanism: it may be out of reach, but not degenerate.
fn solvable(setup: &Setup) -> Result<(), TestCaseError> {
    let mut at_base = setup.clone();
    at_base.chosen.clear();
    match Assembly::new(&front_axle(&at_base)) {
        Err(error @ (SolveError::Degenerate { .. } | SolveError::BadNumber { .. })) => {
            Err(TestCaseError::fail(error.to_string()))
        }
        Ok(_) | Err(_) => Ok(()),
    }
}

/// The error must point into the text or at its end.
fn assert_has_place(text: &str, error: &FileError) -> Result<(), TestCaseError> {
    let FileError::Text {
        line,
        column,
        wrong,
        right,
        ..
    } = error
    else {
        prop_assert!(false, "a text has no other errors: {error}");
        return Ok(());
    };
    let length = text
        .split('\n')
        .nth(line - 1)
        .map(|line| line.chars().count());
    prop_assert!(
        length.is_some_and(|length| *column <= length + 1),
        "{error}"
    );
    prop_assert!(
        *column >= 1 && !wrong.is_empty() && !right.is_empty(),
        "{error}"
    );
    Ok(())
}

#[test]
fn a_supplied_text_cut_anywhere_is_refused_with_its_end() {
    for (car, supplied) in SUPPLIED.iter().enumerate() {
        let whole = supplied.text.trim_end();
        // Every place of one text, and of the others so many that each kind of place is among them.
        let every = if car == 0 { 1 } else { 23 };
        for (cut, _) in whole.char_indices().step_by(every) {
            let text = &whole[..cut];
            let error = read_text(text).expect_err("a cut text is no setup");
            assert_has_place(text, &error).unwrap();
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn changed_bytes_never_panic(
        car in 0..SUPPLIED.len(),
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6),
    ) {
        let mut bytes = SUPPLIED[car].text.as_bytes().to_vec();
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        read_soundly(&String::from_utf8_lossy(&bytes))?;
    }

    #[test]
    fn swapped_tokens_never_panic(
        car in 0..SUPPLIED.len(),
        changes in prop::collection::vec(
            (
                any::<prop::sample::Index>(),
                prop::sample::select(vec![
                    "(", ")", "[", "]", "{", "}", ",", ":", "\"", "/*", "*/", "//", "r#\"", "'", "Some(", "None",
                    "NaN", "-inf", "1e308", "-1e300", "0", "99999999999", "\u{200e}", "\u{feff}", "é", "\n", "\\",
                ]),
                0_usize..4,
            ),
            1..4,
        ),
    ) {
        let mut text = SUPPLIED[car].text.to_owned();
        for (at, token, removed) in changes {
            let boundaries: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
            let from = at.index(boundaries.len());
            let to = (from + removed).min(boundaries.len() - 1);
            text.replace_range(boundaries[from]..boundaries[to], token);
        }
        read_soundly(&text)?;
    }

    #[test]
    fn numbers_of_any_size_never_panic(
        car in 0..SUPPLIED.len(),
        at in any::<prop::sample::Index>(),
        number in prop_oneof![
            prop::num::f64::ANY.prop_map(|number| format!("{number:?}")),
            Just("NaN".to_owned()),
            (-50.0..50.0).prop_map(|number: f64| format!("{number:?}")),
        ],
    ) {
        let text = SUPPLIED[car].text;
        let digits: Vec<usize> = text
            .char_indices()
            .filter(|(at, c)| c.is_ascii_digit() && !text[..*at].ends_with(|c: char| c.is_ascii_digit() || c == '.'))
            .map(|(at, _)| at)
            .collect();
        let from = digits[at.index(digits.len())];
        let length = text[from..].find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap();
        let mut text = text.to_owned();
        text.replace_range(from..from + length, &number);
        read_soundly(&text)?;
    }

    #[test]
    fn any_text_never_panics(text in "\\PC{0,200}") {
        read_soundly(&text)?;
        read_soundly(&format!("Setup(format: 1, {text}"))?;
        read_soundly(&format!("Setup(format: 2, {text}"))?;
        read_soundly(&format!("(format: {text}"))?;
    }
}
