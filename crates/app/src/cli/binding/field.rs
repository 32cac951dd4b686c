//! The field of steer and travel as characters and as a table.

use std::io::{Result, Write};

use steerloft_analysis::InputUnit;
use steerloft_analysis::binding::{BindingMap, Cell, Concern};
use steerloft_solver::SolveError;

use crate::cli::told;
use crate::format;

/// The letter of a concern whose limit is passed.
const fn letter(concern: Concern) -> char {
    match concern {
        Concern::BallJoint => 'J',
        Concern::DeadCentre => 'D',
        Concern::Rim => 'R',
        Concern::Chassis => 'C',
    }
}

fn sign(cell: &std::result::Result<Cell, SolveError>) -> char {
    let Ok(cell) = cell else {
        return 'x';
    };
    let passed = Concern::ALL
        .into_iter()
        .find(|concern| cell.margin(*concern).is_some_and(|margin| margin < 0.0));
    passed.map_or('.', letter)
}

/// Prints the field: a line for each travel, full bump on top; a letter where something binds.
pub(super) fn print(map: &BindingMap, unit: InputUnit, out: &mut impl Write) -> Result<()> {
    let number = |value: f64, decimals| format::plain(&format::signed(value, decimals));
    let (from, to) = ends(&map.inputs);
    writeln!(
        out,
        "Steering {} to {} {} from left to right, wheel travel in mm; . free, J ball joint, D dead centre, R rim,\n\
         C chassis, x out of reach",
        number(from, 1),
        number(to, 1),
        unit.word()
    )?;
    writeln!(out)?;
    for (row, travel) in map.travels.iter().enumerate().rev() {
        let signs: String = (0..map.inputs.len())
            .filter_map(|column| map.cell(column, row).map(sign))
            .collect();
        writeln!(out, "{:>8}  {signs}", number(*travel, 2))?;
    }
    Ok(())
}

fn ends(values: &[f64]) -> (f64, f64) {
    let first = values.first().copied().unwrap_or_default();
    (first, values.last().copied().unwrap_or(first))
}

/// Writes every pose: values and what is left to each limit; empty where a pose or a value is not there.
pub(super) fn write_csv(map: &BindingMap, unit: InputUnit, out: &mut impl Write) -> Result<()> {
    let mut writer = csv::Writer::from_writer(out);
    writer
        .write_record([
            &format!("input_{}", unit.word()),
            "travel_mm",
            "ball_joint_deg",
            "ball_joint_left_deg",
            "share",
            "share_left",
            "rim_gap_mm",
            "chassis_gap_mm",
            "reason",
        ])
        .map_err(told)?;
    for (index, cell) in map.cells.iter().enumerate() {
        let columns = map.inputs.len();
        let place = [map.inputs[index % columns], map.travels[index / columns]];
        let text = |value: Option<f64>| value.map_or(String::new(), |value| value.to_string());
        let (values, reason) = match cell {
            Ok(cell) => (
                [
                    cell.value(Concern::BallJoint),
                    cell.margin(Concern::BallJoint),
                    cell.value(Concern::DeadCentre),
                    cell.margin(Concern::DeadCentre),
                    cell.rim,
                    cell.chassis,
                ],
                String::new(),
            ),
            Err(error) => ([None; 6], error.to_string()),
        };
        let cells = place.into_iter().map(Some).chain(values).map(text);
        writer.write_record(cells.chain([reason])).map_err(told)?;
    }
    writer.flush()
}
