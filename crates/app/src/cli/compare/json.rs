//! A comparison for programs: every value as a number, in full precision.

use serde::Serialize;
use steerloft_analysis::figures::{Figure, FigureKind, Values};
use steerloft_setup::adjustment::Unit;
use steerloft_setup::compare::{AdjustmentDifference, Comparison, Work};
use steerloft_solver::frame::Side;

use super::CompareArguments;
use crate::format;
use crate::state::Shown;

/// A comparison as JSON holds it.
#[derive(Serialize)]
pub(super) struct JsonComparison {
    from: String,
    to: String,
    adjustments: Vec<JsonAdjustment>,
    rods: Vec<JsonRod>,
    only_in_one: Vec<JsonOnly>,
    car: Vec<JsonData>,
    figures: Vec<JsonFigure>,
}

#[derive(Serialize)]
struct JsonAdjustment {
    name: String,
    from: String,
    to: String,
    #[serde(flatten)]
    work: JsonWork,
}

#[derive(Serialize)]
#[serde(tag = "work", rename_all = "snake_case")]
enum JsonWork {
    Slide {
        by: f64,
        unit: &'static str,
    },
    Spacers {
        add_mm: Vec<f64>,
        remove_mm: Vec<f64>,
    },
    Choose,
}

#[derive(Serialize)]
struct JsonRod {
    side: String,
    from_mm: f64,
    to_mm: f64,
    gap_mm: f64,
    turns: Option<f64>,
}

#[derive(Serialize)]
struct JsonOnly {
    name: String,
    value: String,
    in_first: bool,
}

#[derive(Serialize)]
struct JsonData {
    at: String,
    from: Option<String>,
    to: Option<String>,
}

#[derive(Serialize)]
struct JsonFigure {
    name: &'static str,
    unit: String,
    /// Left and right, or one value of the axle.
    from: Vec<Option<f64>>,
    to: Vec<Option<f64>>,
}

impl JsonComparison {
    pub(super) fn of(
        arguments: &CompareArguments,
        comparison: &Comparison,
        from: &Shown,
        to: &Shown,
    ) -> Self {
        let only = comparison.only_in_one.iter().map(|only| JsonOnly {
            name: only.name.clone(),
            value: only.value.clone(),
            in_first: only.in_first,
        });
        let car = comparison.data.iter().map(|data| JsonData {
            at: data.at.clone(),
            from: data.from.clone(),
            to: data.to.clone(),
        });
        let figures =
            FigureKind::ALL.map(|kind| JsonFigure::of(from.figure(kind), to.figure(kind)));
        Self {
            from: arguments.from.display().to_string(),
            to: arguments.to.display().to_string(),
            adjustments: comparison
                .adjustments
                .iter()
                .map(JsonAdjustment::of)
                .collect(),
            rods: rods(comparison),
            only_in_one: only.collect(),
            car: car.collect(),
            figures: figures.into(),
        }
    }
}

impl JsonAdjustment {
    fn of(difference: &AdjustmentDifference) -> Self {
        Self {
            name: difference.name.clone(),
            from: difference.from.clone(),
            to: difference.to.clone(),
            work: match &difference.work {
                Work::Slide { by, unit } => JsonWork::Slide {
                    by: *by,
                    unit: match unit {
                        Unit::Degrees => "deg",
                        Unit::Millimetres => "mm",
                    },
                },
                Work::Spacers { add, remove, .. } => JsonWork::Spacers {
                    add_mm: add.clone(),
                    remove_mm: remove.clone(),
                },
                Work::Choose => JsonWork::Choose,
            },
        }
    }
}

fn rods(comparison: &Comparison) -> Vec<JsonRod> {
    let Some(lengths) = comparison.rods.as_ref().and_then(|rods| rods.lengths) else {
        return Vec::new();
    };
    Side::BOTH
        .map(|side| {
            let rod = lengths.get(side);
            JsonRod {
                side: side.to_string(),
                from_mm: rod.from,
                to_mm: rod.to,
                gap_mm: rod.gap,
                turns: rod.turns,
            }
        })
        .into()
}

impl JsonFigure {
    fn of(from: &Figure, to: &Figure) -> Self {
        Self {
            name: to.facts().name,
            unit: format::plain(to.unit),
            from: numbers(from),
            to: numbers(to),
        }
    }
}

fn numbers(figure: &Figure) -> Vec<Option<f64>> {
    match figure.values {
        Values::Sides(sides) => vec![sides.left, sides.right],
        Values::Axle(value) => vec![value],
    }
}
