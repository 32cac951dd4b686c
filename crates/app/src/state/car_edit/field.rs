//! The numbers that describe a car, each by a name of its own.

use steerloft_setup::adjustment::{PointName, Scalar};
use steerloft_setup::car::{Car, Position, Ranges, TieRodParts};
use steerloft_setup::edit::CarEdit;
use steerloft_solver::frame::Side;

use super::super::InputUnit;

/// A coordinate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Axis {
    /// Forward.
    X,
    /// To the left.
    Y,
    /// Up.
    Z,
}

impl Axis {
    /// In their order.
    pub const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];

    /// Its letter.
    #[must_use]
    pub const fn letter(self) -> &'static str {
        match self {
            Self::X => "x",
            Self::Y => "y",
            Self::Z => "z",
        }
    }

    /// The coordinate of a position.
    #[must_use]
    pub const fn of(self, position: Position) -> f64 {
        match self {
            Self::X => position.0,
            Self::Y => position.1,
            Self::Z => position.2,
        }
    }

    /// The position with another value of this coordinate.
    #[must_use]
    pub const fn with(self, position: Position, value: f64) -> Position {
        let Position(x, y, z) = position;
        match self {
            Self::X => Position(value, y, z),
            Self::Y => Position(x, value, z),
            Self::Z => Position(x, y, value),
        }
    }
}

/// A number of the car other than a coordinate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum NumberField {
    /// One that an adjustment can change too.
    Scalar(Scalar),
    /// Least steering input.
    LeastInput,
    /// Greatest steering input.
    GreatestInput,
    /// Full droop.
    Droop,
    /// Full bump.
    Bump,
    /// Length of a rod's cup.
    Cup,
    /// Shortest rod.
    ShortestRod,
    /// Longest rod.
    LongestRod,
}

/// The numbers of a car, as listed: a heading, and what stands below it.
pub const NUMBERS: [(&str, &[NumberField]); 4] = [
    (
        "Chassis",
        &[
            NumberField::Scalar(Scalar::Wheelbase),
            NumberField::Scalar(Scalar::RideHeight),
            NumberField::Scalar(Scalar::Pitch),
            NumberField::Scalar(Scalar::Roll),
        ],
    ),
    (
        "Wheels",
        &[
            NumberField::Scalar(Scalar::TyreRadius),
            NumberField::Scalar(Scalar::TyreWidth),
            NumberField::Scalar(Scalar::Camber),
        ],
    ),
    (
        "How far things move",
        &[
            NumberField::LeastInput,
            NumberField::GreatestInput,
            NumberField::Droop,
            NumberField::Bump,
        ],
    ),
    (
        "Tie rods",
        &[
            NumberField::Cup,
            NumberField::ShortestRod,
            NumberField::LongestRod,
        ],
    ),
];

/// A number that describes the car.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Field {
    /// A coordinate of a point, or a part of a direction.
    Point(PointName, Side, Axis),
    /// Another number.
    Number(NumberField),
}

impl Field {
    /// Its value in the car, mm or degrees; none where the car has no such point.
    #[must_use]
    pub fn value(self, car: &Car) -> Option<f64> {
        match self {
            Self::Point(point, side, axis) => Some(axis.of(car.point(point, side)?)),
            Self::Number(number) => Some(number.value(car)),
        }
    }

    /// The edit that gives it another value.
    #[must_use]
    pub fn edit(self, car: &Car, value: f64) -> Option<CarEdit> {
        match self {
            Self::Point(point, side, axis) => {
                let to = axis.with(car.point(point, side)?, value);
                Some(CarEdit::Point { point, side, to })
            }
            Self::Number(number) => Some(number.edit(car, value)),
        }
    }

    /// Unit in which its value is held: "mm" or the degree sign; none for a part of a direction.
    #[must_use]
    pub fn unit(self, car: &Car) -> &'static str {
        match self {
            Self::Point(point, ..) if point.is_direction() => "",
            Self::Point(..) => "mm",
            Self::Number(number) => number.unit(car),
        }
    }
}

impl NumberField {
    /// Its name.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Scalar(Scalar::Wheelbase) => "Wheelbase",
            Self::Scalar(Scalar::FrontStation) => "Front-axle station",
            Self::Scalar(Scalar::RideHeight) => "Ride height",
            Self::Scalar(Scalar::TyreRadius) => "Tyre radius",
            Self::Scalar(Scalar::TyreWidth) => "Tyre width",
            Self::Scalar(Scalar::Camber) => "Camber",
            Self::Scalar(Scalar::Pitch) => "Chassis pitch",
            Self::Scalar(Scalar::Roll) => "Chassis roll",
            Self::LeastInput => "Least steering input",
            Self::GreatestInput => "Greatest steering input",
            Self::Droop => "Full droop",
            Self::Bump => "Full bump",
            Self::Cup => "Cup length",
            Self::ShortestRod => "Shortest rod",
            Self::LongestRod => "Longest rod",
        }
    }

    /// From where to where it is measured, or what it means and which way is more.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Scalar(Scalar::Wheelbase) => {
                "From the design front-axle station back to the rear axle."
            }
            Self::Scalar(Scalar::FrontStation) => {
                "Where the front-axle station lies ahead of the origin."
            }
            Self::Scalar(Scalar::RideHeight) => {
                "From the road up to the underside of the chassis plate at the front axle, ready to run."
            }
            Self::Scalar(Scalar::TyreRadius) => {
                "From the road up to the wheel centre, with the tyre loaded."
            }
            Self::Scalar(Scalar::TyreWidth) => "Across the tread.",
            Self::Scalar(Scalar::Camber) => {
                "Lean of the wheel against the chassis, steering straight; positive with the top outboard."
            }
            Self::Scalar(Scalar::Pitch) => {
                "Tilt of the chassis against the road; nose down positive."
            }
            Self::Scalar(Scalar::Roll) => {
                "Tilt of the chassis against the road; right side down positive."
            }
            Self::LeastInput => "Where the steering input ends in the negative direction.",
            Self::GreatestInput => "Where the steering input ends in the positive direction.",
            Self::Droop => {
                "Wheel travel down to where the suspension hangs, negative; 0 without travel."
            }
            Self::Bump => "Wheel travel up to where it strikes, positive; 0 without travel.",
            Self::Cup => "From a ball's centre to the open end of its cup.",
            Self::ShortestRod => {
                "Shortest tie rod, ball centre to ball centre, that the parts can be screwed to."
            }
            Self::LongestRod => "Longest tie rod that the thread still holds.",
        }
    }

    fn unit(self, car: &Car) -> &'static str {
        match self {
            Self::Scalar(Scalar::Camber | Scalar::Pitch | Scalar::Roll) => "\u{b0}",
            Self::LeastInput | Self::GreatestInput => InputUnit::of(car).sign(),
            _ => "mm",
        }
    }

    fn value(self, car: &Car) -> f64 {
        match self {
            Self::Scalar(Scalar::Wheelbase) => car.wheelbase,
            Self::Scalar(Scalar::FrontStation) => 0.0,
            Self::Scalar(Scalar::RideHeight) => car.ride_height,
            Self::Scalar(Scalar::TyreRadius) => car.left.tyre_radius,
            Self::Scalar(Scalar::TyreWidth) => car.left.tyre_width,
            Self::Scalar(Scalar::Camber) => car.left.camber,
            Self::Scalar(Scalar::Pitch) => car.pitch,
            Self::Scalar(Scalar::Roll) => car.roll,
            Self::LeastInput => car.ranges.input.0,
            Self::GreatestInput => car.ranges.input.1,
            Self::Droop => car.ranges.travel.0,
            Self::Bump => car.ranges.travel.1,
            Self::Cup => car.tie_rod.cup_length,
            Self::ShortestRod => car.tie_rod.shortest,
            Self::LongestRod => car.tie_rod.longest,
        }
    }

    fn edit(self, car: &Car, value: f64) -> CarEdit {
        let Ranges { input, travel } = car.ranges;
        let ranges = |input, travel| CarEdit::Ranges(Ranges { input, travel });
        let rod = |change: fn(&mut TieRodParts, f64)| {
            let mut parts = car.tie_rod;
            change(&mut parts, value);
            CarEdit::TieRod(parts)
        };
        match self {
            Self::Scalar(scalar) => CarEdit::Number { scalar, to: value },
            Self::LeastInput => ranges((value, input.1), travel),
            Self::GreatestInput => ranges((input.0, value), travel),
            Self::Droop => ranges(input, (value, travel.1)),
            Self::Bump => ranges(input, (travel.0, value)),
            Self::Cup => rod(|parts, value| parts.cup_length = value),
            Self::ShortestRod => rod(|parts, value| parts.shortest = value),
            Self::LongestRod => rod(|parts, value| parts.longest = value),
        }
    }
}
