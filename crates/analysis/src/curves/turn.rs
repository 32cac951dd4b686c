//! Turns to the left and to the right.

use steerloft_solver::figures::InnerOuter;
use steerloft_solver::frame::Side;

/// Direction of a turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// To the left: the left wheel is the inner one.
    Left,
    /// To the right: the right wheel is the inner one.
    Right,
}

impl Turn {
    /// Left, then right.
    pub const BOTH: [Self; 2] = [Self::Left, Self::Right];

    /// The turn whose inner wheel is on this side.
    #[must_use]
    pub const fn with_inner(side: Side) -> Self {
        match side {
            Side::Left => Self::Left,
            Side::Right => Self::Right,
        }
    }
}

/// A pose of the steering sweep in which the wheels turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TurnSample {
    /// Steering input, rad (mm of a rack).
    pub input: f64,
    /// Direction of the turn.
    pub turn: Turn,
    /// Inner and outer wheel, rad.
    pub angles: InnerOuter,
}
