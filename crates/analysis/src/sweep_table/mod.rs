//! A sweep as a table, for spreadsheets and scripts: one pose a row, one figure a column.

mod columns;
mod poses;

use steerloft_setup::car::Car;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::error::SolveError;
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::pose::AxlePose;

use crate::InputUnit;

/// What is moved from row to row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// The steering input, wheel travel held.
    Steer,
    /// The travel of both wheels, steering input held.
    Bump,
    /// The roll of the chassis with both tyres on the road, steering input held.
    Roll,
}

impl Along {
    /// The word for it: "steer", "bump" or "roll".
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Steer => "steer",
            Self::Bump => "bump",
            Self::Roll => "roll",
        }
    }
}

/// What is asked of a sweep. Values are in the car's own units: degrees or, for a rack's input, mm; travel in mm; roll in
/// degrees, right side down positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SweepRequest {
    /// What is moved.
    pub along: Along,
    /// The first value; that of the car's range if none is given.
    pub from: Option<f64>,
    /// The last value; that of the car's range if none is given.
    pub to: Option<f64>,
    /// Steps between the two; there is one row more.
    pub steps: usize,
    /// The steering input held along bump and roll.
    pub steer: f64,
    /// The travel of both wheels held along steer.
    pub travel: f64,
}

/// A column: a figure of one wheel or of the axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Column {
    /// What it holds, such as "kingpin inclination".
    pub quantity: &'static str,
    /// The wheel it is of; none for the axle.
    pub side: Option<Side>,
    /// Its unit, such as "deg" or "deg/mm"; empty if it has none.
    pub unit: &'static str,
    /// Decimals that can be built or measured.
    pub decimals: usize,
    /// Whether it belongs into a table that is read by eye.
    pub is_main: bool,
}

impl Column {
    /// The name for programs, with its unit: `bump_steer_left_deg_per_mm`.
    #[must_use]
    pub fn name(&self) -> String {
        let mut name = self.quantity.replace(' ', "_");
        if let Some(side) = self.side {
            name = format!("{name}_{side}");
        }
        if !self.unit.is_empty() {
            let unit = self.unit.replace('/', "_per_").replace('%', "percent");
            name = format!("{name}_{unit}");
        }
        name
    }
}

/// The poses of a sweep as a table.
#[derive(Debug, Clone, PartialEq)]
pub struct SweepTable {
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows in order of the value that is moved: a value for each column, none where that pose has no such figure.
    pub rows: Vec<Vec<Option<f64>>>,
    /// Where the sweep ends before the range does, and why, in sentences.
    pub ends: Vec<String>,
}

/// A pose with the road its figures are taken against.
struct Posed {
    pose: AxlePose,
    road: Road,
    /// Roll from the road at rest, degrees.
    roll: f64,
}

/// Poses an axle along a range and reads its figures off.
///
/// # Errors
/// [`SolveError::NoTravel`] along bump and roll for fixed kingpins, and for a travel held; any error of the pose that is
/// held, such as a steering input beyond the lock.
pub fn sweep_table(
    assembly: &Assembly,
    car: &Car,
    request: &SweepRequest,
) -> Result<SweepTable, SolveError> {
    let unit = InputUnit::of(car);
    let (poses, ends) = poses::poses(assembly, car, request)?;
    let figures = columns::columns(request.along, unit);
    let rows = poses
        .iter()
        .map(|posed| {
            figures
                .iter()
                .map(|figure| figure.value(assembly, posed))
                .collect()
        })
        .collect();
    Ok(SweepTable {
        columns: figures.iter().map(|figure| figure.column).collect(),
        rows,
        ends,
    })
}
