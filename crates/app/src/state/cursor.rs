//! The two inputs that pose the car on screen.

use steerloft_setup::car::Ranges;
use steerloft_solver::frame::Sides;

/// Where the steering and the suspension stand on screen. It is no part of the document.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Cursor {
    /// Steering input in the unit of the car's drive: degrees or mm.
    pub input: f64,
    /// Travel of both wheels, mm, bump positive.
    pub travel: f64,
}

impl Cursor {
    /// Straight ahead at rest.
    pub const STATIC: Self = Self {
        input: 0.0,
        travel: 0.0,
    };

    /// The wheel travel as the solver takes it, mm.
    #[must_use]
    pub fn solver_travel(&self) -> Sides<f64> {
        Sides::both(self.travel)
    }

    /// The cursor kept within how far the car's parts go.
    #[must_use]
    pub fn within(&self, ranges: &Ranges, has_travel: bool) -> Self {
        let travel = if has_travel {
            clamp(self.travel, ranges.travel)
        } else {
            0.0
        };
        Self {
            input: clamp(self.input, ranges.input),
            travel,
        }
    }
}

/// Clamps to a pair of limits in whichever order they stand; a number that is none becomes 0 first.
fn clamp(value: f64, limits: (f64, f64)) -> f64 {
    let (low, high) = (limits.0.min(limits.1), limits.0.max(limits.1));
    let value = if value.is_finite() { value } else { 0.0 };
    value.max(low).min(high)
}
