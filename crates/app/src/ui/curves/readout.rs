//! What the pointer reads off a curve.

use steerloft_analysis::curves::{Curve, value_at};

use super::axis::ShownAxis;

/// What the pointer reads off at a place: every line of the curve, and of the reference.
pub(super) fn readout<'a>(
    curve: &'a Curve,
    reference: Option<&'a Curve>,
    [x, y]: [ShownAxis; 2],
) -> impl Fn(f64) -> Option<String> + 'a {
    move |place| {
        let own = curve.series.iter().rev().map(|series| ("", series));
        let compared = reference.into_iter().flat_map(Curve::of_setup);
        let all = own.chain(compared.map(|series| ("ref. ", series)));
        let lines: Vec<String> = all
            .filter_map(|(whose, series)| {
                let value = value_at(&series.points, place)?;
                Some(format!("{whose}{} {}", series.name, y.value(value)))
            })
            .collect();
        (!lines.is_empty()).then(|| format!("{}\n{}", x.place(place), lines.join("\n")))
    }
}
