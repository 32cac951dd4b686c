//! The table of effects for programs: every value as a number, in full precision.

use serde::Serialize;
use steerloft_analysis::InputUnit;
use steerloft_analysis::effects::{Alike, Column, Direction, Effects, Row};
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::Wheel;
use steerloft_setup::setup::Setup;

use super::EffectsArguments;
use crate::format;
use crate::state::effects::missing_in_words;

/// A table of effects as JSON holds it.
#[derive(Serialize)]
pub(super) struct JsonEffects {
    file: String,
    inner_deg: f64,
    figures: Vec<JsonColumn>,
    steps: Vec<JsonStep>,
    alike: Vec<JsonAlike>,
    /// What the table lacks, and what would give it.
    missing: Option<String>,
}

#[derive(Serialize)]
struct JsonColumn {
    name: &'static str,
    /// The wheel or the turn; "both" where they do the same, none for the axle.
    side: Option<&'static str>,
    unit: String,
    now: Option<f64>,
    /// Place of the step that changes it most.
    strongest: Option<usize>,
}

#[derive(Serialize)]
struct JsonStep {
    adjustment: String,
    direction: &'static str,
    from: String,
    to: String,
    /// One for each figure; none where the step cannot be assembled.
    changes: Option<Vec<Option<f64>>>,
    problem: Option<String>,
}

#[derive(Serialize)]
struct JsonAlike {
    steps: [usize; 2],
    likeness: f64,
    ratio: f64,
    cancels: bool,
}

impl JsonEffects {
    pub(super) fn of(arguments: &EffectsArguments, setup: &Setup, effects: &Effects) -> Self {
        let unit = InputUnit::of(&setup.car);
        let columns = effects.columns.iter();
        Self {
            file: arguments.file.display().to_string(),
            inner_deg: arguments.steer,
            figures: columns.map(|column| JsonColumn::of(column, unit)).collect(),
            steps: effects.rows.iter().map(JsonStep::of).collect(),
            alike: effects.alike.iter().map(JsonAlike::of).collect(),
            missing: missing_in_words(setup),
        }
    }
}

impl JsonColumn {
    fn of(column: &Column, unit: InputUnit) -> Self {
        let facts = column.measure.figure().map(FigureKind::facts);
        Self {
            name: facts.map_or("", |facts| facts.name),
            side: column.measure.wheel().map(|wheel| match wheel {
                Wheel::Left => "left",
                Wheel::Right => "right",
                Wheel::Both => "both",
            }),
            unit: format::plain(facts.map_or("", |facts| facts.unit(unit))),
            now: column.now,
            strongest: column.strongest,
        }
    }
}

impl JsonStep {
    fn of(row: &Row) -> Self {
        let step = &row.step;
        Self {
            adjustment: step.name.clone(),
            direction: match step.direction {
                Direction::Up => "up",
                Direction::Down => "down",
            },
            from: format::plain(&step.from),
            to: format::plain(&step.to),
            changes: row.changes.as_ref().ok().cloned(),
            problem: row.changes.as_ref().err().map(ToString::to_string),
        }
    }
}

impl JsonAlike {
    fn of(alike: &Alike) -> Self {
        Self {
            steps: alike.rows,
            likeness: alike.likeness,
            ratio: alike.ratio,
            cancels: alike.cancels(),
        }
    }
}
