//! What the servo saver does to a blow on one wheel, in words.

use std::io::{Result, Write};

use steerloft_analysis::saver::Blows;
use steerloft_solver::frame::Side;

use super::number;

pub(super) fn print(blows: &Blows, out: &mut impl Write) -> Result<()> {
    writeln!(out)?;
    writeln!(
        out,
        "Servo saver: breakaway {} N mm at the arm, then {} N mm more for each degree",
        blows.saver.breakaway, blows.saver.rate
    )?;
    for side in Side::BOTH {
        let (moment, opening) = (blows.moments.get(side), blows.openings.get(side));
        let end = if opening.at_lock { ", to the lock" } else { "" };
        writeln!(
            out,
            "  {side} wheel struck: opens at {} N mm about its kingpin; under {} N mm the arm gives way by {} deg, \
             the wheels by {} and {} deg{end}",
            number(opening.opens_at, 0),
            number(*moment, 0),
            number(opening.arm, 1),
            number(opening.wheels.left.abs(), 1),
            number(opening.wheels.right.abs(), 1),
        )?;
    }
    Ok(())
}
