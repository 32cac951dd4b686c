//! Wants as they are typed.

use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::{Measure, Target, Want, Wheel};

use crate::state::search::WantedCurve;

/// Angle of the inner wheel at which an Ackermann share is wanted where none is told, degrees.
const INNER: f64 = 20.0;

/// Reads `NAME[.left|.right][@ANGLE]=VALUE[..MOST][*WEIGHT]`, or a whole curve as
/// `NAME[.left|.right]=AT:VALUE AT:VALUE... [+-TOLERANCE] [*WEIGHT]`.
pub(super) fn read(text: &str) -> Result<Want, String> {
    let wrong = |what: &str| {
        format!(
            "--want \"{text}\": {what}; write NAME=VALUE or NAME=LEAST..MOST, such as bump-steer=0 or ackermann@20=90..110, or a \
             curve such as \"toe-travel=-1:0.1 0:0 2:-0.1 +-0.02\""
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
    if let Some(curve) = WantedCurve::ALL.into_iter().find(|curve| {
        let name = left.trim();
        name.split_once('.').map_or(name, |(name, _)| name) == curve.kind().name()
    }) {
        let wheel = wheel_of(left.trim()).ok_or_else(|| wrong(AFTER_THE_DOT))?.1;
        let (points, tolerance) = curve_points(value).map_err(|what| wrong(&what))?;
        return Ok(Want {
            measure: curve.measure(wheel, points, tolerance),
            target: Target::Value(0.0),
            weight,
        });
    }
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
    let (name, wheel) = wheel_of(name.trim()).ok_or_else(|| wrong(AFTER_THE_DOT))?;
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

/// What is wrong where neither side is named.
const AFTER_THE_DOT: &str = "after the dot comes left or right";

/// A name and whose it is.
fn wheel_of(name: &str) -> Option<(&str, Wheel)> {
    match name.rsplit_once('.') {
        Some((name, "left")) => Some((name, Wheel::Left)),
        Some((name, "right")) => Some((name, Wheel::Right)),
        Some(_) => None,
        None => Some((name, Wheel::Both)),
    }
}

/// Points of a curve and how far it may be off them: `AT:VALUE` with spaces or semicolons between, and `+-TOLERANCE` at the end.
fn curve_points(text: &str) -> Result<(Vec<[f64; 2]>, f64), String> {
    let (points, tolerance) = match text.split_once("+-") {
        Some((points, tolerance)) => {
            let tolerance = number(tolerance).filter(|tolerance| *tolerance >= 0.0);
            let tolerance = tolerance.ok_or("the tolerance is no number of 0 or more")?;
            (points, tolerance)
        }
        None => (text, 0.0),
    };
    let pairs = points.split([' ', ';']).filter(|pair| !pair.is_empty());
    let point = |pair: &str| {
        let (at, value) = pair.split_once(':')?;
        Some([number(at)?, number(value)?])
    };
    let points: Vec<[f64; 2]> = pairs
        .map(|pair| point(pair).ok_or_else(|| format!("\"{pair}\" is no AT:VALUE")))
        .collect::<Result<_, _>>()?;
    if points.is_empty() {
        return Err("the curve has no points".to_owned());
    }
    Ok((points, tolerance))
}

/// The names of what can be wanted.
fn names() -> String {
    let kinds = FigureKind::ALL.into_iter();
    let curves = WantedCurve::ALL.map(|curve| curve.kind().name());
    let names: Vec<&str> = kinds
        .filter(|kind| Measure::of_figure(*kind, Wheel::Both, INNER).is_some())
        .map(|kind| kind.facts().name)
        .chain(curves)
        .collect();
    names.join(", ")
}

/// A finite number, with point or comma.
pub(super) fn number(text: &str) -> Option<f64> {
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
    fn curves_are_read_with_tolerance_and_weight() {
        let want = read("toe-travel.left=-1:0,1 0:0;2:-0.1 +-0.02 *3").unwrap();
        let expected = Measure::ToeCurve {
            wheel: Wheel::Left,
            points: vec![[-1.0, 0.1], [0.0, 0.0], [2.0, -0.1]],
            tolerance: 0.02,
        };
        assert_eq!((want.measure, want.weight), (expected, 3.0));
        let want = read("inner-outer=10:9.5 20:18").unwrap();
        let expected = Measure::InnerOuterCurve {
            turn: Wheel::Both,
            points: vec![[10.0, 9.5], [20.0, 18.0]],
            tolerance: 0.0,
        };
        assert_eq!(want.measure, expected);
    }

    #[test]
    fn what_cannot_be_read_says_what_is_wrong() {
        for (text, word) in [
            ("bump-steer", "no ="),
            ("bump-steer=x", "no number"),
            ("handling=1", "cannot be wanted"),
            ("camber.front=1", "left or right"),
            ("camber=1*inf", "weight"),
            ("toe-travel=0", "no AT:VALUE"),
            ("toe-travel=", "no points"),
            ("toe-travel.front=0:0", "left or right"),
            ("inner-outer=10:9 +-x", "tolerance"),
        ] {
            let problem = read(text).unwrap_err();
            assert!(problem.contains(word), "{problem}");
        }
    }
}
