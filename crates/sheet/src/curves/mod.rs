//! Curves of a front axle as plain series, for the window, for paper and for tables.
//!
//! [`Sweeps`] poses the axle along steering input, wheel travel and roll once; [`Sweeps::curve`] reads any curve off
//! those poses with the solver's figures. Millimetres and degrees; signs are those of the solver.

mod kind;
mod of_roll;
mod of_steer;
mod of_travel;
mod range;
mod sweeps;

pub use kind::CurveKind;
pub use range::Range;
pub use sweeps::{SAMPLES, Sweeps, Turn, TurnSample};

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
    pub sign: String,
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

    /// Adds the series of the same curve of a setup to compare with, under its own lines. Lines that belong to no setup,
    /// such as parallel steering, are there already.
    pub fn add_reference(&mut self, reference: Self) {
        let own = reference
            .series
            .into_iter()
            .filter(|series| !matches!(series.trace, Trace::Ideal | Trace::Parallel))
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
}
