//! A curve: lines over common axes.

use super::{CurveKind, End};
use crate::Range;
use crate::text;

/// A curve: one or more series over common axes.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// What it shows.
    pub kind: CurveKind,
    /// The axis that runs to the right.
    pub x: Axis,
    /// The axis that runs up.
    pub y: Axis,
    /// The series, the one to be drawn first coming first. None for a car that has no such curve.
    pub series: Vec<Series>,
    /// Level lines to compare with.
    pub guides: Vec<Guide>,
    /// Where the sweep ends before the car's range does.
    pub ends: Vec<End>,
    /// What a reader has to know, in sentences: where a curve ends early and why, or why there is none.
    pub notes: Vec<String>,
}

/// What an axis of a curve measures.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// Quantity, such as "toe".
    pub quantity: &'static str,
    /// Unit, such as "deg"; empty if it has none.
    pub unit: &'static str,
    /// Which way is positive, such as "toe-in +"; empty where there is nothing to say.
    pub sign: &'static str,
    /// Decimals with which a value is read off.
    pub decimals: usize,
    /// Range that is shown at least, so that a nearly level curve looks level.
    pub least: Range,
}

impl Axis {
    /// The axis in words: "toe, deg (toe-in +)".
    #[must_use]
    pub fn label(&self) -> String {
        let unit = if self.unit.is_empty() {
            String::new()
        } else {
            format!(", {}", self.unit)
        };
        let sign = if self.sign.is_empty() {
            String::new()
        } else {
            format!(" ({})", self.sign)
        };
        format!("{}{unit}{sign}", self.quantity)
    }

    /// A value of this axis as it is read off, with its unit: "+0.125°". A plus is written where the axis says which way
    /// is positive.
    #[must_use]
    pub fn value(&self, value: f64) -> String {
        let number = if self.sign.ends_with('+') {
            text::signed(value, self.decimals)
        } else {
            text::number(value, self.decimals)
        };
        let unit = if self.unit == "deg" {
            "\u{b0}"
        } else {
            self.unit
        };
        text::with_unit(&number, unit)
    }
}

/// A line of a curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// Name as a legend shows it.
    pub name: String,
    /// What the line stands for; decides its style.
    pub trace: Trace,
    /// Whether it belongs to a setup to compare with.
    pub is_reference: bool,
    /// Points in order of x, in the axes' units; every one is finite.
    pub points: Vec<[f64; 2]>,
}

/// What a line of a curve stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Trace {
    /// The left wheel, or a turn to the left.
    Left,
    /// The right wheel, or a turn to the right.
    Right,
    /// The axle as a whole.
    Axle,
    /// The ideal pair, whose wheel axes meet on the rear-axle line.
    Ideal,
    /// Parallel steering.
    Parallel,
}

impl Trace {
    /// Whether it follows from the setup, and is no line to compare any setup with.
    #[must_use]
    pub const fn is_of_setup(self) -> bool {
        !matches!(self, Self::Ideal | Self::Parallel)
    }
}

/// A level line to compare with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guide {
    /// Name, such as "ideal pair".
    pub name: &'static str,
    /// What it stands for.
    pub trace: Trace,
    /// Where it lies on the axis that runs up.
    pub at: f64,
}

impl Curve {
    /// The ranges of both axes that hold every point and what is shown at least.
    #[must_use]
    pub fn ranges(&self) -> [Range; 2] {
        [0, 1].map(|axis| {
            let least = if axis == 0 { &self.x } else { &self.y }.least;
            let points = self.series.iter().flat_map(|series| &series.points);
            points.fold(least, |range, point| range.with(point[axis]))
        })
    }

    /// The least range that holds the setup's own lines on one axis (0 to the right, 1 up); none without lines.
    #[must_use]
    pub fn extent(&self, axis: usize) -> Option<Range> {
        let points = self.of_setup().flat_map(|series| &series.points);
        Range::of(points.filter_map(|point| point.get(axis).copied()))
    }

    /// The lines that follow from the setup.
    pub fn of_setup(&self) -> impl Iterator<Item = &Series> {
        let own = self.series.iter();
        own.filter(|series| series.trace.is_of_setup())
    }

    /// Adds the series of the same curve of a setup to compare with, under its own lines. Lines that belong to no setup,
    /// such as parallel steering, are there already.
    pub fn add_reference(&mut self, reference: Self) {
        let own = reference
            .series
            .into_iter()
            .filter(|series| series.trace.is_of_setup())
            .map(|series| Series {
                name: format!("ref. {}", series.name),
                is_reference: true,
                ..series
            });
        self.series.splice(0..0, own);
        for note in reference.notes {
            if !self.notes.contains(&note) {
                self.notes.push(format!("Reference: {note}"));
            }
        }
    }

    /// Takes the least range of the upper axis along with the lines where zero is far from them: caster of 8 degrees is not
    /// drawn from zero.
    pub(super) fn levelled(mut self) -> Self {
        let least = self.y.least;
        if let Some(all) = self.extent(1) {
            let middle = f64::midpoint(all.from, all.to);
            if middle.abs() > least.length() {
                let half = least.length() / 2.0;
                self.y.least = Range::new(middle - half, middle + half);
            }
        }
        self
    }
}

/// Value of a line at a place on it; none beyond its ends.
#[must_use]
pub fn value_at(line: &[[f64; 2]], place: f64) -> Option<f64> {
    let after = line.partition_point(|point| point[0] < place);
    let high = line.get(after)?;
    if high[0] <= place {
        return Some(high[1]);
    }
    let low = line.get(after.checked_sub(1)?)?;
    Some(low[1] + (high[1] - low[1]) * (place - low[0]) / (high[0] - low[0]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_are_read_between_points_and_not_beyond() {
        let line = [[-1.0, 2.0], [1.0, 4.0]];
        assert_eq!(value_at(&line, 0.0), Some(3.0));
        assert_eq!(value_at(&line, -1.0), Some(2.0));
        assert_eq!(value_at(&line, 1.0), Some(4.0));
        assert_eq!(value_at(&line, 1.1), None);
        assert_eq!(value_at(&line, -1.1), None);
        assert_eq!(value_at(&[], 0.0), None);
    }

    #[test]
    fn a_value_is_read_off_with_its_unit_and_a_plus_where_it_says_something() {
        let mut axis = Axis {
            quantity: "toe",
            unit: "deg",
            sign: "toe-in +",
            decimals: 2,
            least: Range::around_zero(1.0),
        };
        assert_eq!(axis.value(0.5), "+0.50\u{b0}");
        assert_eq!(axis.label(), "toe, deg (toe-in +)");
        axis.unit = "%";
        axis.sign = "";
        assert_eq!(axis.value(50.0), "50.00 %");
        assert_eq!(axis.label(), "toe, %");
    }
}
