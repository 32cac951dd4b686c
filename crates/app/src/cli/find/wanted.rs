//! Wants as they are typed.

use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::{Measure, Target, Want, Wheel};

/// Angle of the inner wheel at which an Ackermann share is wanted where none is told, degrees.
const INNER: f64 = 20.0;

/// Reads `NAME[.left|.right][@ANGLE]=VALUE[..MOST][*WEIGHT]`.
pub(super) fn read(text: &str) -> Result<Want, String> {
    let wrong = |what: &str| {
        format!(
            "--want \"{text}\": {what}; write NAME=VALUE or NAME=LEAST..MOST, such as bump-steer=0 or ackermann@20=90..110"
        )
    };
    let (left, right) = text.split_once('=').ok_or_else(|| wrong("there is no ="))?;
    let (value, weight) = match right.rsplit_once('*') {
        Some((value, weight)) => (
            value,
            number(weight).ok_or_else(|| wrong("the weight is no number"))?,
        ),
        None => (right, 1.0),
    };
    let target = match value.split_once("..") {
        Some((least, most)) => Target::Range(
            number(least).ok_or_else(|| wrong("the least value is no number"))?,
            number(most).ok_or_else(|| wrong("the greatest value is no number"))?,
        ),
        None => Target::Value(number(value).ok_or_else(|| wrong("the value is no number"))?),
    };
    let (name, inner) = match left.split_once('@') {
        Some((name, angle)) => (
            name,
            number(angle).ok_or_else(|| wrong("the angle is no number"))?,
        ),
        None => (left, INNER),
    };
    let (name, wheel) = match name.trim().rsplit_once('.') {
        Some((name, "left")) => (name, Wheel::Left),
        Some((name, "right")) => (name, Wheel::Right),
        Some(_) => return Err(wrong("after the dot comes left or right")),
        None => (name.trim(), Wheel::Both),
    };
    let measure = FigureKind::from_name(name)
        .and_then(|kind| Measure::of_figure(kind, wheel, inner))
        .ok_or_else(|| {
            format!(
                "--want \"{text}\": \"{name}\" cannot be wanted; there are {}",
                names()
            )
        })?;
    Ok(Want {
        measure,
        target,
        weight,
    })
}

/// The names of what can be wanted.
fn names() -> String {
    let kinds = FigureKind::ALL.into_iter();
    let names: Vec<&str> = kinds
        .filter(|kind| Measure::of_figure(*kind, Wheel::Both, INNER).is_some())
        .map(|kind| kind.facts().name)
        .collect();
    names.join(", ")
}

fn number(text: &str) -> Option<f64> {
    let text = text.trim().replace(',', ".");
    text.parse().ok().filter(|value: &f64| value.is_finite())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn values_ranges_sides_angles_and_weights_are_read() {
        let want = read("bump-steer=0").unwrap();
        assert_eq!(want.measure, Measure::BumpSteer(Wheel::Both));
        assert_eq!((want.target, want.weight), (Target::Value(0.0), 1.0));
        let want = read("camber.left=-1,5..-1*2").unwrap();
        assert_eq!(want.measure, Measure::Camber(Wheel::Left));
        assert_eq!((want.target, want.weight), (Target::Range(-1.5, -1.0), 2.0));
        let want = read("ackermann@15=90").unwrap();
        let (turn, inner) = (Wheel::Both, 15.0);
        assert_eq!(want.measure, Measure::Ackermann { turn, inner });
    }

    #[test]
    fn what_cannot_be_read_says_what_is_wrong() {
        for (text, word) in [
            ("bump-steer", "no ="),
            ("bump-steer=x", "no number"),
            ("handling=1", "cannot be wanted"),
            ("camber.front=1", "left or right"),
            ("camber=1*inf", "weight"),
        ] {
            let problem = read(text).unwrap_err();
            assert!(problem.contains(word), "{problem}");
        }
    }
}
