//! The same blow on either wheel.

use steerloft_setup::car::ServoSaver;
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::{Side, Sides};

use super::{Opening, SaverError, opening};

/// By how much a blow passes what opens the saver, where none is given.
const OVER: f64 = 1.5;

/// Blows on either wheel, straight ahead, that turn it to the left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blows {
    /// The saver.
    pub saver: ServoSaver,
    /// Moment about the struck wheel's kingpin, N mm.
    pub moments: Sides<f64>,
    /// What the saver does, by the wheel that is struck.
    pub openings: Sides<Opening>,
}

/// Blows of a moment (N mm, without sign) on either wheel; without one, half more than opens the saver. Nothing for a car
/// without a saver.
///
/// # Errors
/// Where the setup cannot be assembled.
pub fn blows(setup: &Setup, moment: Option<f64>) -> Result<Option<Blows>, SaverError> {
    let Some(saver) = setup.car.saver else {
        return Ok(None);
    };
    let struck = |side: Side| -> Result<(f64, Opening), SaverError> {
        let moment = match moment {
            Some(moment) => moment.abs(),
            None => OVER * opening(setup, 0.0, side, 0.0)?.opens_at,
        };
        Ok((moment, opening(setup, 0.0, side, moment)?))
    };
    let (left, right) = (struck(Side::Left)?, struck(Side::Right)?);
    Ok(Some(Blows {
        saver,
        moments: Sides::new(left.0, right.0),
        openings: Sides::new(left.1, right.1),
    }))
}
