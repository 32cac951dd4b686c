//! What each line of a chart stands for.

use crate::drawing::{Outline, Role};
use crate::page::Ink;
use crate::page::furniture::{Block, Writing, lines_height};
use crate::text::{width, wrap};
use steerloft_analysis::curves::Series;

/// Length of the sample of a line, mm.
const SAMPLE: f64 = 7.0;
/// From the sample to its name, and from a name to the next sample, mm.
const TO_NAME: f64 = 1.2;
const BETWEEN: f64 = 3.5;
pub(super) const SIZE: f64 = 2.3;

/// The ink of a series.
pub(super) fn ink(series: &Series) -> Ink {
    if series.is_reference {
        Ink::ReferenceCurve(series.trace)
    } else {
        Ink::Curve(series.trace)
    }
}

/// Samples with names, flowed into lines of a width, mm.
pub(super) fn lay_out(series: &[Series], room: f64) -> Block {
    let mut block = Block::default();
    let line = lines_height(1, SIZE);
    let mut left = 0.0;
    let mut top = 0.0;
    // The setup's own lines first, whatever lies over what.
    let (others, own): (Vec<_>, Vec<_>) = series.iter().partition(|series| series.is_reference);
    for series in own.into_iter().chain(others) {
        let most = room - SAMPLE - TO_NAME;
        let name = wrap(&series.name, SIZE, false, most, 1);
        let long = name.first().map_or(0.0, |name| width(name, SIZE, false));
        if left > 0.0 && left + SAMPLE + TO_NAME + long > room {
            left = 0.0;
            top -= line;
        }
        let middle = top - line / 2.0;
        let sample = Outline::Line([[left, middle], [left + SAMPLE, middle]]);
        block.push_inked(ink(series), Role::Rule, sample);
        block.write_lines(
            &name,
            [left + SAMPLE + TO_NAME, top - (line - SIZE) / 2.0],
            &Writing::plain(SIZE),
        );
        left += SAMPLE + TO_NAME + long + BETWEEN;
        block.height = line - top;
    }
    block
}
