//! Round numbers along an axis.

use steerloft_analysis::Range;
use steerloft_analysis::text::number;

/// Marks along an axis and the range that they span.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Ticks {
    /// The marks in ascending order.
    pub(super) values: Vec<f64>,
    /// Decimals that tell them apart.
    decimals: usize,
}

/// Most decimals written.
const MOST_DECIMALS: usize = 6;

impl Ticks {
    /// Marks at a round distance, of which at most `most` (two at least) go into the range; the first lies at or below its
    /// start, the last at or above its end.
    ///
    /// Distances are 1, 2 or 5 times a power of ten.
    pub(super) fn over(range: Range, most: u32) -> Self {
        let length = range.length().max(f64::MIN_POSITIVE);
        let rough = length / f64::from(most.max(2));
        let power = 10.0_f64.powf(rough.log10().floor());
        let factors = [1.0, 2.0, 5.0, 10.0];
        let fits = |factor: &f64| factor * power >= rough * (1.0 - 1e-9);
        let step = factors.into_iter().find(fits).unwrap_or(10.0) * power;
        let first = (range.from / step + 1e-6).floor();
        let last = (range.to / step - 1e-6).ceil();
        let mut values = Vec::new();
        let mut count = first;
        while count <= last {
            values.push(count * step);
            count += 1.0;
        }
        Self {
            values,
            decimals: decimals(step),
        }
    }

    /// The range from the first mark to the last.
    pub(super) fn range(&self) -> Range {
        match self.values[..] {
            [first, .., last] => Range::new(first, last),
            _ => Range::new(0.0, 1.0),
        }
    }

    /// A mark as it is written.
    pub(super) fn label(&self, value: f64) -> String {
        number(value, self.decimals)
    }
}

/// Decimals that show a step in full.
fn decimals(step: f64) -> usize {
    let shown = |places: &usize| {
        let text = format!("{step:.places$}");
        let back: f64 = text.parse().unwrap_or(0.0);
        (back - step).abs() <= 1e-6 * step
    };
    (0..MOST_DECIMALS).find(shown).unwrap_or(MOST_DECIMALS)
}

#[cfg(test)]
mod tests {
    use super::Ticks;
    use steerloft_analysis::Range;

    fn labels(from: f64, to: f64, most: u32) -> Vec<String> {
        let ticks = Ticks::over(Range::new(from, to), most);
        ticks
            .values
            .iter()
            .map(|&value| ticks.label(value))
            .collect()
    }

    #[test]
    fn marks_are_round_and_hold_the_range() {
        assert_eq!(labels(0.0, 40.0, 5), ["0", "10", "20", "30", "40"]);
        assert_eq!(
            labels(-1.0, 2.0, 6),
            ["−1.0", "−0.5", "0.0", "0.5", "1.0", "1.5", "2.0"]
        );
        assert_eq!(
            labels(0.013, 0.093, 5),
            ["0.00", "0.02", "0.04", "0.06", "0.08", "0.10"]
        );
        assert_eq!(labels(-130.0, 20.0, 4), ["−150", "−100", "−50", "0", "50"]);
    }

    #[test]
    fn any_finite_range_has_two_marks_or_more_and_not_many() {
        for (from, to) in [
            (0.0, 0.0_f64),
            (1e-9, 2e-9),
            (-1e6, 1e6),
            (99_999.9, 100_000.0),
            (8.0, 8.0),
        ] {
            let ticks = Ticks::over(Range::new(from, to.max(from + 1e-12)), 6);
            assert!(
                (2..=9).contains(&ticks.values.len()),
                "{from} {to} {ticks:?}"
            );
            // To a millionth of a step, within which a mark counts as lying on an end.
            let slack = 1e-5 * ticks.range().length();
            assert!(ticks.range().from <= from + slack && ticks.range().to >= to - slack);
        }
    }
}
