//! A report for programs: every value as a number, in full precision.

use std::path::Path;

use serde::Serialize;
use steerloft_analysis::figures::{Figure, FigureKind, Values};
use steerloft_setup::adjustment::{Adjustment, Kind, Unit};
use steerloft_setup::setup::{Chosen, Setup};

use crate::format;
use crate::state::Shown;

/// A report as JSON holds it.
#[derive(Serialize)]
pub(super) struct JsonReport {
    file: String,
    car: String,
    setup: String,
    adjustments: Vec<JsonAdjustment>,
    figures: Vec<JsonFigure>,
}

#[derive(Serialize)]
struct JsonAdjustment {
    name: String,
    value: JsonValue,
    /// Unit of an amount; empty for a choice.
    unit: &'static str,
    /// Spacers to fit, mm, thickest first; none but for a stack.
    #[serde(skip_serializing_if = "Option::is_none")]
    spacers: Option<Vec<f64>>,
    is_base: bool,
}

#[derive(Serialize)]
#[serde(untagged)]
enum JsonValue {
    Amount(f64),
    Name(String),
}

#[derive(Serialize)]
struct JsonFigure {
    name: &'static str,
    title: &'static str,
    unit: String,
    #[serde(flatten)]
    values: JsonFigureValues,
}

#[derive(Serialize)]
#[serde(untagged)]
enum JsonFigureValues {
    Sides {
        left: Option<f64>,
        right: Option<f64>,
    },
    Axle {
        value: Option<f64>,
    },
}

impl JsonReport {
    /// The report of a setup that was read from a file.
    pub(super) fn of(file: &Path, setup: &Setup, shown: &Shown) -> Self {
        let figures = FigureKind::ALL.map(|kind| JsonFigure::of(shown.figure(kind)));
        Self {
            file: file.display().to_string(),
            car: setup.car.name.clone(),
            setup: setup.record.name.clone(),
            adjustments: adjustments(setup),
            figures: figures.into(),
        }
    }
}

fn adjustments(setup: &Setup) -> Vec<JsonAdjustment> {
    let adjustments = setup.car.adjustments.iter();
    adjustments
        .map(|adjustment| {
            let chosen = setup.value_of(adjustment);
            let is_base = chosen == adjustment.base();
            let (value, unit, spacers) = match chosen {
                Chosen::Choice(name) => (JsonValue::Name(name), "", None),
                Chosen::Slide(amount) => (JsonValue::Amount(amount), slide_unit(adjustment), None),
                Chosen::Stack(total) => {
                    let spacers = adjustment.spacers_for(total);
                    (JsonValue::Amount(total), "mm", spacers)
                }
            };
            JsonAdjustment {
                name: adjustment.name.clone(),
                value,
                unit,
                spacers,
                is_base,
            }
        })
        .collect()
}

fn slide_unit(adjustment: &Adjustment) -> &'static str {
    match &adjustment.kind {
        Kind::Slide {
            unit: Unit::Degrees,
            ..
        } => "deg",
        _ => "mm",
    }
}

impl JsonFigure {
    fn of(figure: &Figure) -> Self {
        let facts = figure.facts();
        Self {
            name: facts.name,
            title: facts.title,
            unit: format::plain(figure.unit),
            values: match figure.values {
                Values::Sides(sides) => JsonFigureValues::Sides {
                    left: sides.left,
                    right: sides.right,
                },
                Values::Axle(value) => JsonFigureValues::Axle { value },
            },
        }
    }
}
