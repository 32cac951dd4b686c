//! From what was felt on the track to adjustments worth trying, with what one step of each does on this very car.
//!
//! The tendencies are common practice, without a source. They say what such a change usually feels like; the numbers beside
//! them are geometry, which is no promise of how a car drives.

mod effects;
mod symptoms;

pub use effects::{Advice, PitFigure, Try, advice};
pub use symptoms::{Aim, Direction, Symptom};

/// What stands beside every piece of advice.
pub const CAUTION: &str = "A tendency, common practice, that tyres, grip and driver can turn round: the numbers are this \
     car's geometry, and geometry is no promise. Change one thing at a time and write down what you felt.";
