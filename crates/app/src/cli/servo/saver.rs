//! What the servo saver does to a blow on one wheel.

use std::io::{Result, Write};

use steerloft_analysis::saver::{Opening, SaverError, opening};
use steerloft_setup::car::ServoSaver;
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::{Side, Sides};

use super::number;

/// By how much the blow that is tried passes what opens the saver, where none is given.
const OVER: f64 = 1.5;

/// Blows on either wheel, straight ahead, that turn it to the left.
pub(super) struct Blows {
    pub(super) saver: ServoSaver,
    /// Moment about the struck wheel's kingpin, N mm.
    pub(super) moments: Sides<f64>,
    pub(super) openings: Sides<Opening>,
}

impl Blows {
    /// Blows of a moment (N mm) on either wheel; nothing for a car without a saver.
    pub(super) fn of(
        setup: &Setup,
        moment: Option<f64>,
    ) -> std::result::Result<Option<Self>, SaverError> {
        let Some(saver) = setup.car.saver else {
            return Ok(None);
        };
        let struck = |side: Side| -> std::result::Result<(f64, Opening), SaverError> {
            let moment = match moment {
                Some(moment) => moment.abs(),
                None => OVER * opening(setup, 0.0, side, 0.0)?.opens_at,
            };
            Ok((moment, opening(setup, 0.0, side, moment)?))
        };
        let (left, right) = (struck(Side::Left)?, struck(Side::Right)?);
        Ok(Some(Self {
            saver,
            moments: Sides::new(left.0, right.0),
            openings: Sides::new(left.1, right.1),
        }))
    }

    pub(super) fn print(&self, out: &mut impl Write) -> Result<()> {
        writeln!(out)?;
        writeln!(
            out,
            "Servo saver: breakaway {} N mm at the arm, then {} N mm more for each degree",
            self.saver.breakaway, self.saver.rate
        )?;
        for side in Side::BOTH {
            let (moment, opening) = (self.moments.get(side), self.openings.get(side));
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
}
