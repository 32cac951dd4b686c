//! The table: figures across, steps down.

use steerloft_setup::layout::assemble;
use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;

use super::alike::{Alike, alike};
use super::step::{Step, steps};
use crate::find::{Gauge, Measure, Wheel};

/// Angle of the inner wheel at which the Ackermann share is compared where none is told, degrees.
pub const INNER: f64 = 15.0;

/// Changes smaller than this share of a noticeable difference are none.
const NOTHING: f64 = 1e-6;

/// A figure of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// What is measured; of both wheels where they do the same in every row.
    pub measure: Measure,
    /// Its value now; none where the setup has none.
    pub now: Option<f64>,
    /// The row that changes it most; none where no row changes it.
    pub strongest: Option<usize>,
}

/// A step of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The step.
    pub step: Step,
    /// Change of each column's figure, in its unit; none where it has no value before or after. The error is why the setup
    /// cannot be assembled after the step.
    pub changes: Result<Vec<Option<f64>>, SolveError>,
}

impl Row {
    /// The change of a column's figure; none where there is none.
    #[must_use]
    pub fn change(&self, column: usize) -> Option<f64> {
        *self.changes.as_ref().ok()?.get(column)?
    }
}

/// What one step of each adjustment does to each figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Effects {
    /// The figures.
    pub columns: Vec<Column>,
    /// The steps.
    pub rows: Vec<Row>,
    /// Adjustments that do nearly the same, or undo each other.
    pub alike: Vec<Alike>,
}

impl Effects {
    /// The table of a setup, the Ackermann share taken with the inner wheel at an angle, degrees. It has the servo torque where
    /// the car says how its front wheels are loaded.
    ///
    /// # Errors
    /// Why the setup itself cannot be assembled.
    pub fn of(setup: &Setup, inner: f64) -> Result<Self, SolveError> {
        let gauge = Gauge::of(setup);
        let mut measures = measures(inner);
        if setup.car.loads.is_some() {
            let effort = measures.iter().position(|one| *one == Measure::DriveEffort);
            let beside = effort.map_or(measures.len(), |effort| effort + 1);
            measures.insert(beside, Measure::ServoTorque);
        }
        let now = gauge.values(&assemble(setup)?, &measures);
        let rows = steps(setup)
            .into_iter()
            .map(|step| Row {
                changes: changes(&gauge, &step, &measures, &now),
                step,
            })
            .collect();
        Ok(Self::finished(measures, now, rows))
    }

    fn finished(measures: Vec<Measure>, now: Vec<Option<f64>>, mut rows: Vec<Row>) -> Self {
        let mut columns = measures
            .into_iter()
            .zip(now)
            .map(|(measure, now)| Column {
                measure,
                now,
                strongest: None,
            })
            .collect();
        join_sides(&mut columns, &mut rows);
        for (index, column) in columns.iter_mut().enumerate() {
            column.strongest = strongest(&rows, index, &column.measure);
        }
        let alike = alike(&columns, &rows);
        Self {
            columns,
            rows,
            alike,
        }
    }
}

/// Change of measures (each of one wheel or of the axle) by a step from a setup, in their units; none where the step or the
/// setup itself cannot be assembled.
#[must_use]
pub fn change(setup: &Setup, step: &Step, measures: &[Measure]) -> Option<Vec<Option<f64>>> {
    let gauge = Gauge::of(setup);
    let now = gauge.values(&assemble(setup).ok()?, measures);
    changes(&gauge, step, measures, &now).ok()
}

fn changes(
    gauge: &Gauge,
    step: &Step,
    measures: &[Measure],
    now: &[Option<f64>],
) -> Result<Vec<Option<f64>>, SolveError> {
    let after = gauge.values(&assemble(&step.setup)?, measures);
    let pairs = after.into_iter().zip(now);
    Ok(pairs.map(|(after, now)| Some(after? - (*now)?)).collect())
}

/// What the table shows, the left wheel or turn before the right one.
pub(crate) fn measures(inner: f64) -> Vec<Measure> {
    let of_wheels: [fn(Wheel) -> Measure; 4] = [
        Measure::BumpSteer,
        Measure::ToeAtBump,
        Measure::Camber,
        Measure::Caster,
    ];
    let both = |measure: &dyn Fn(Wheel) -> Measure| [Wheel::Left, Wheel::Right].map(measure);
    let mut all: Vec<Measure> = of_wheels.iter().flat_map(|one| both(one)).collect();
    all.extend(both(&|turn| Measure::Ackermann { turn, inner }));
    all.extend([
        Measure::LockLeft(Wheel::Left),
        Measure::LockRight(Wheel::Right),
        Measure::Ratio,
        Measure::DriveEffort,
    ]);
    all.extend(both(&Measure::CupGap));
    all
}

/// Makes one column of two that differ only in the wheel and say the same in every row.
fn join_sides(columns: &mut Vec<Column>, rows: &mut [Row]) {
    let mut index = 0;
    while index + 1 < columns.len() {
        let joined = columns[index].measure.with_wheel(Wheel::Both);
        let is_pair = joined == columns[index + 1].measure.with_wheel(Wheel::Both);
        let grain = joined.noticeable() * NOTHING;
        let same = |one: Option<f64>, other: Option<f64>| match (one, other) {
            (Some(one), Some(other)) => (one - other).abs() <= grain,
            (one, other) => one == other,
        };
        let alike = is_pair
            && same(columns[index].now, columns[index + 1].now)
            && rows
                .iter()
                .all(|row| same(row.change(index), row.change(index + 1)));
        index += 1;
        if alike {
            columns[index - 1].measure = joined;
            columns.remove(index);
            for changes in rows.iter_mut().filter_map(|row| row.changes.as_mut().ok()) {
                changes.remove(index);
            }
        }
    }
}

fn strongest(rows: &[Row], column: usize, measure: &Measure) -> Option<usize> {
    let sizes = rows.iter().enumerate().filter_map(|(index, row)| {
        let size = row.change(column)?.abs();
        (size > measure.noticeable() * NOTHING).then_some((index, size))
    });
    // Of equal ones the first.
    let grain = measure.noticeable() * NOTHING;
    let first = sizes.reduce(|best, next| if next.1 > best.1 + grain { next } else { best });
    first.map(|(index, _)| index)
}
