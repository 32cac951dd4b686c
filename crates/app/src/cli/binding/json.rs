//! The field for programs: every value as a number, in full precision.

use std::path::Path;

use serde::Serialize;
use steerloft_analysis::InputUnit;
use steerloft_analysis::binding::{BindingMap, Cell, Concern, ThreadCheck};
use steerloft_solver::SolveError;

/// The field as JSON holds it; `cells` row by row, a row for each travel.
#[derive(Serialize)]
pub(super) struct JsonBinding<'a> {
    file: String,
    car: &'a str,
    is_free: bool,
    input_unit: &'static str,
    inputs: &'a [f64],
    travels_mm: &'a [f64],
    joint_limit_deg: Option<f64>,
    worst: Vec<JsonWorst>,
    rods: JsonRods,
    cells: Vec<JsonCell>,
}

#[derive(Serialize)]
struct JsonWorst {
    concern: &'static str,
    meaning: &'static str,
    value: f64,
    margin: f64,
    input: f64,
    travel_mm: f64,
}

#[derive(Serialize)]
struct JsonRods {
    left: JsonRod,
    right: JsonRod,
}

#[derive(Serialize)]
struct JsonRod {
    length_mm: f64,
    to_longest_mm: f64,
    to_shortest_mm: f64,
    thread_in_each_cup_mm: Option<f64>,
    spare_thread_mm: Option<f64>,
    holds: bool,
}

#[derive(Serialize)]
#[serde(untagged)]
enum JsonCell {
    Posed {
        ball_joint_deg: Option<f64>,
        share: f64,
        rim_gap_mm: Option<f64>,
        chassis_gap_mm: Option<f64>,
    },
    Apart {
        reason: String,
    },
}

impl<'a> JsonBinding<'a> {
    pub(super) fn of(file: &Path, car: &'a str, unit: InputUnit, map: &'a BindingMap) -> Self {
        let worst = Concern::ALL.into_iter().filter_map(|concern| {
            let worst = map.worst(concern)?;
            Some(JsonWorst {
                concern: concern.label(),
                meaning: concern.meaning(),
                value: worst.value,
                margin: worst.margin,
                input: worst.input,
                travel_mm: worst.travel,
            })
        });
        Self {
            file: file.display().to_string(),
            car,
            is_free: map.is_free(),
            input_unit: unit.word(),
            inputs: &map.inputs,
            travels_mm: &map.travels,
            joint_limit_deg: map.joint_limit,
            worst: worst.collect(),
            rods: JsonRods {
                left: JsonRod::of(&map.threads.left),
                right: JsonRod::of(&map.threads.right),
            },
            cells: map.cells.iter().map(JsonCell::of).collect(),
        }
    }
}

impl JsonRod {
    fn of(thread: &ThreadCheck) -> Self {
        Self {
            length_mm: thread.length,
            to_longest_mm: thread.to_longest,
            to_shortest_mm: thread.to_shortest,
            thread_in_each_cup_mm: thread.engagement,
            spare_thread_mm: thread.spare_engagement,
            holds: thread.holds(),
        }
    }
}

impl JsonCell {
    fn of(cell: &Result<Cell, SolveError>) -> Self {
        match cell {
            Ok(cell) => Self::Posed {
                ball_joint_deg: cell.value(Concern::BallJoint),
                share: cell.share,
                rim_gap_mm: cell.rim,
                chassis_gap_mm: cell.chassis,
            },
            Err(error) => Self::Apart {
                reason: error.to_string(),
            },
        }
    }
}
