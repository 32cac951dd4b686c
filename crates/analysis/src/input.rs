//! The steering input as people give it, and as the solver takes it: the one place where the two meet.

use steerloft_setup::adjustment::Unit;
use steerloft_setup::car::Car;

use steerloft_solver::drive::Drive;

use crate::text;

/// Unit of a car's steering input: degrees of an arm, or mm of a rack.
///
/// Files, controls and curves hold the input in this unit; the solver takes radians and mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct InputUnit(Unit);

impl InputUnit {
    /// The unit in which a car's steering is turned.
    #[must_use]
    pub fn of(car: &Car) -> Self {
        Self(car.drive.input_unit())
    }

    /// The unit in which a drive is turned.
    #[must_use]
    pub const fn of_drive(drive: &Drive) -> Self {
        Self(match drive {
            Drive::SwingArm(_) | Drive::TwinCrank(_) => Unit::Degrees,
            Drive::Slider(_) => Unit::Millimetres,
        })
    }

    /// An input as the solver takes it: rad or mm.
    #[must_use]
    pub fn to_solver(self, input: f64) -> f64 {
        match self.0 {
            Unit::Degrees => input.to_radians(),
            Unit::Millimetres => input,
        }
    }

    /// An input of the solver as people give it: degrees or mm.
    #[must_use]
    pub fn from_solver(self, input: f64) -> f64 {
        match self.0 {
            Unit::Degrees => input.to_degrees(),
            Unit::Millimetres => input,
        }
    }

    /// The unit's sign, such as "°".
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self.0 {
            Unit::Degrees => "\u{b0}",
            Unit::Millimetres => "mm",
        }
    }

    /// The unit's name in running text, such as "deg".
    #[must_use]
    pub fn word(self) -> &'static str {
        match self.0 {
            Unit::Degrees => "deg",
            Unit::Millimetres => "mm",
        }
    }

    /// An input with its unit, such as "14.5°" or "12 mm", with at most so many decimals.
    #[must_use]
    pub fn amount(self, input: f64, decimals: usize) -> String {
        text::with_unit(&text::short(input, decimals), self.sign())
    }

    /// Unit of the steering ratio: input for each degree of the wheels.
    #[must_use]
    pub fn per_degree(self) -> &'static str {
        match self.0 {
            Unit::Degrees => "\u{b0}/\u{b0}",
            Unit::Millimetres => "mm/\u{b0}",
        }
    }

    /// Steering ratio from the solver's (input per rad of the wheels) as people give it: input per degree, without sign.
    #[must_use]
    pub fn ratio(self, ratio: f64) -> f64 {
        (self.from_solver(ratio) / 1_f64.to_degrees()).abs()
    }

    /// Unit of the effort at the drive for a moment at the kingpins.
    #[must_use]
    pub fn effort_unit(self) -> &'static str {
        match self.0 {
            Unit::Degrees => "Nm/Nm",
            Unit::Millimetres => "N/Nm",
        }
    }

    /// Unit of the effort at the drive that turns loaded wheels.
    #[must_use]
    pub fn standing_effort_unit(self) -> &'static str {
        match self.0 {
            Unit::Degrees => "N mm",
            Unit::Millimetres => "N",
        }
    }

    /// Effort at the drive for a moment of 1 N mm at the kingpins (N mm at an arm, N at a rack) as people give it: for
    /// 1 N m there, in N m or N.
    #[must_use]
    pub fn effort(self, effort: f64) -> f64 {
        match self.0 {
            Unit::Degrees => effort,
            Unit::Millimetres => effort * 1_000.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ARM: InputUnit = InputUnit(Unit::Degrees);
    const RACK: InputUnit = InputUnit(Unit::Millimetres);

    #[test]
    fn an_arm_is_given_in_degrees_and_a_rack_in_mm() {
        assert!((ARM.to_solver(180.0) - std::f64::consts::PI).abs() < 1e-12);
        assert!((ARM.from_solver(ARM.to_solver(12.5)) - 12.5).abs() < 1e-12);
        assert!((RACK.to_solver(12.5) - 12.5).abs() < 1e-12);
        assert_eq!(ARM.amount(-14.5, 1), "\u{2212}14.5\u{b0}");
        assert_eq!(RACK.amount(12.0, 1), "12 mm");
    }

    #[test]
    fn a_ratio_is_input_for_each_degree_of_the_wheels() {
        // An arm that turns as fast as the wheels; a rack that moves 57.3 mm for each rad of them, so 1 mm a degree.
        assert!((ARM.ratio(-1.0) - 1.0).abs() < 1e-12);
        assert!((RACK.ratio(1_f64.to_degrees()) - 1.0).abs() < 1e-12);
    }
}
