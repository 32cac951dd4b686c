//! Checks of the numbers given.

use crate::axle::{FrontAxle, Knuckle, Rod};
use crate::drive::{Drive, TwinCrank};
use crate::error::SolveError;
use crate::frame::{Point, Side, Vector};
use crate::suspension::{Arm, Suspension};

/// Steepest pitch and roll of the road that are let in, rad: 25 degrees.
const STEEPEST_ROAD: f64 = 25.0 * std::f64::consts::PI / 180.0;

/// Farthest coordinate that is let in, mm. Up to here sums of squares stay far from overflow; the closure keeps
/// nine decimals of a millimetre up to about 4 m, and rounding alone limits it beyond.
const FARTHEST: f64 = 1e6;

/// Refuses an input or a travel so far off that what is missing to reach it could not be told, or that is not finite.
pub(crate) fn asked(what: &'static str, value: f64) -> Result<(), SolveError> {
    within(
        what,
        "a number from -1,000,000 to 1,000,000",
        value,
        value.abs() <= FARTHEST,
    )
}

fn within(
    what: &'static str,
    allowed: &'static str,
    value: f64,
    good: bool,
) -> Result<(), SolveError> {
    if good {
        Ok(())
    } else {
        Err(SolveError::BadNumber {
            what,
            allowed,
            value,
        })
    }
}

fn positive(what: &'static str, value: f64) -> Result<(), SolveError> {
    let good = value > 0.0 && value <= FARTHEST;
    within(what, "more than 0 mm and at most 1,000,000 mm", value, good)
}

fn vector(what: &'static str, vector: &Vector) -> Result<(), SolveError> {
    vector.iter().try_for_each(|value| {
        within(
            what,
            "a number from -1,000,000 to 1,000,000",
            *value,
            value.abs() <= FARTHEST,
        )
    })
}

fn point(what: &'static str, point: &Point) -> Result<(), SolveError> {
    vector(what, &point.coords)
}

impl FrontAxle {
    /// Refuses numbers that are not finite or out of bounds.
    pub(crate) fn check(&self) -> Result<(), SolveError> {
        positive("the wheelbase", self.wheelbase)?;
        within(
            "the place of the front-axle station",
            "a number from -1,000,000 to 1,000,000 mm",
            self.station,
            self.station.abs() <= FARTHEST,
        )?;
        let road = &self.road;
        within(
            "the ride height",
            "a number from -1,000,000 to 1,000,000 mm",
            road.ride_height,
            road.ride_height.abs() <= FARTHEST,
        )?;
        for (what, angle) in [("the pitch", road.pitch), ("the roll", road.roll)] {
            let good = angle.abs() <= STEEPEST_ROAD;
            within(
                what,
                "at most 25 degrees (0.436 rad) either way",
                angle,
                good,
            )?;
        }
        for side in Side::BOTH {
            let corner = self.corners.get(side);
            corner.knuckle.check()?;
            corner.suspension.check()?;
            self.rods.get(side).check()?;
        }
        self.drive.check()
    }
}

impl Knuckle {
    fn check(&self) -> Result<(), SolveError> {
        point("a coordinate of the wheel centre", &self.wheel_centre)?;
        point(
            "a coordinate of the lower kingpin point",
            &self.kingpin_lower,
        )?;
        point(
            "a coordinate of the upper kingpin point",
            &self.kingpin_upper,
        )?;
        point("a coordinate of the outer rod ball", &self.steering_arm)?;
        vector("the spin axis", &self.spin_axis)?;
        positive("the tyre radius", self.tyre_radius)?;
        positive("the tyre width", self.tyre_width)
    }
}

impl Suspension {
    fn check(&self) -> Result<(), SolveError> {
        match self {
            Self::FixedKingpin | Self::SlidingKingpin => Ok(()),
            Self::SwingingUpperArm(arm) => arm.check(),
            Self::DoubleWishbone { lower, upper } => {
                lower.check()?;
                upper.check()
            }
            Self::Strut {
                lower,
                slide_direction,
            } => {
                lower.check()?;
                vector("the direction of the strut's slide line", slide_direction)
            }
        }
    }
}

impl Arm {
    fn check(&self) -> Result<(), SolveError> {
        point("a coordinate of an arm's ball", &self.ball)?;
        self.hinge
            .iter()
            .try_for_each(|hinge| point("a coordinate of an arm's hinge", hinge))
    }
}

impl Rod {
    fn check(&self) -> Result<(), SolveError> {
        match *self {
            Self::HoldToe(toe) => within(
                "the toe held",
                "less than 60 degrees (1.047 rad) either way",
                toe,
                toe.abs() < std::f64::consts::FRAC_PI_3,
            ),
            Self::FixedLength(length) => positive("the length of a tie rod", length),
        }
    }
}

impl Drive {
    fn check(&self) -> Result<(), SolveError> {
        let rod_inner = match self {
            Self::SwingArm(drive) => {
                axis(&drive.axis_point, &drive.axis_direction)?;
                &drive.rod_inner
            }
            Self::TwinCrank(drive) => {
                drive.check_links()?;
                &drive.rod_inner
            }
            Self::Slider(drive) => {
                vector("the direction of the rack", &drive.direction)?;
                &drive.rod_inner
            }
        };
        point("a coordinate of the left inner ball", &rod_inner.left)?;
        point("a coordinate of the right inner ball", &rod_inner.right)
    }
}

fn axis(axis_point: &Point, direction: &Vector) -> Result<(), SolveError> {
    point("a coordinate of the steering drive's axis", axis_point)?;
    vector("the direction of the steering drive's axis", direction)
}

impl TwinCrank {
    fn check_links(&self) -> Result<(), SolveError> {
        for crank in [&self.cranks.left, &self.cranks.right, &self.servo] {
            axis(&crank.axis_point, &crank.axis_direction)?;
        }
        for ball in [
            &self.cross_balls.left,
            &self.cross_balls.right,
            &self.drag_servo,
            &self.drag_crank,
        ] {
            point("a coordinate of a link's ball", ball)?;
        }
        for length in [self.drag_length, self.cross_length].into_iter().flatten() {
            positive("the length of a link", length)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::asked;

    #[test]
    fn what_is_asked_for_lies_within_a_kilometre() {
        for good in [0.0, -1e6, 1e6] {
            assert!(asked("the travel", good).is_ok());
        }
        for bad in [1.1e6, -1e160, f64::NAN, f64::INFINITY] {
            let refused = asked("the travel", bad);
            let words = refused.map_err(|error| error.to_string());
            let wanted =
                format!("the travel must be a number from -1,000,000 to 1,000,000, but is {bad}");
            assert_eq!(words, Err(wanted));
        }
    }
}
