//! Adjustments that do nearly the same thing, or undo each other.

use super::table::{Column, Row};
use crate::find::Measure;

/// Cosine of the angle between two steps' effects from which on they are told as doing nearly the same thing (or, below
/// its negative, as undoing each other). Derived here: at 0.95 at most a third of the smaller effect is of another kind.
pub const LIKENESS: f64 = 0.95;

/// Size that an effect must have to be compared, in noticeable differences.
pub const LEAST: f64 = 1.0;

/// Two adjustments whose steps do nearly the same thing to the wheels, or undo each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alike {
    /// The rows compared: of each adjustment its step up, or down where it stands at its end.
    pub rows: [usize; 2],
    /// Cosine of the angle between their effects, in noticeable differences: 1 for the same, -1 for the opposite.
    pub likeness: f64,
    /// How many steps of the second make up one of the first, without sign.
    pub ratio: f64,
}

impl Alike {
    /// Whether the steps undo each other rather than do the same.
    #[must_use]
    pub fn cancels(&self) -> bool {
        self.likeness < 0.0
    }
}

/// The pairs, those most alike first.
pub(super) fn alike(columns: &[Column], rows: &[Row]) -> Vec<Alike> {
    let vectors = first_steps(rows)
        .filter_map(|row| Some((row, vector(columns, &rows[row])?)))
        .filter(|(_, vector)| size(vector) >= LEAST);
    let vectors: Vec<(usize, Vec<f64>)> = vectors.collect();
    let mut pairs = Vec::new();
    for (index, (first, one)) in vectors.iter().enumerate() {
        for (second, other) in &vectors[index + 1..] {
            let dot: f64 = one.iter().zip(other).map(|(a, b)| a * b).sum();
            let likeness = dot / (size(one) * size(other));
            if likeness.abs() >= LIKENESS {
                pairs.push(Alike {
                    rows: [*first, *second],
                    likeness,
                    ratio: size(one) / size(other),
                });
            }
        }
    }
    pairs.sort_by(|a, b| b.likeness.abs().total_cmp(&a.likeness.abs()));
    pairs
}

/// The first row of each adjustment.
fn first_steps(rows: &[Row]) -> impl Iterator<Item = usize> {
    (0..rows.len()).filter(|index| {
        let before = index.checked_sub(1).and_then(|before| rows.get(before));
        before.is_none_or(|before| before.step.adjustment != rows[*index].step.adjustment)
    })
}

/// What a step does to the wheels, in noticeable differences. The rods are left out: they are set anew after any step; so is the
/// servo torque, which is the drive effort times a load. None for a step that cannot be assembled or after which a figure has no value.
fn vector(columns: &[Column], row: &Row) -> Option<Vec<f64>> {
    let of_wheels = columns.iter().enumerate().filter(|(_, column)| {
        let of_wheels = !matches!(column.measure, Measure::CupGap(_) | Measure::ServoTorque);
        column.now.is_some() && of_wheels
    });
    of_wheels
        .map(|(index, column)| Some(row.change(index)? / column.measure.noticeable()))
        .collect()
}

fn size(vector: &[f64]) -> f64 {
    vector.iter().map(|part| part * part).sum::<f64>().sqrt()
}
