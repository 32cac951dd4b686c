//! The fields that describe a car, each by a name of its own.

mod number;
mod obstacle;
mod text;

pub use number::{Group, NumberField, further_groups, groups};
pub use obstacle::ObstacleField;
pub use text::TextField;

use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::{Car, Position};
use steerloft_setup::edit::CarEdit;
use steerloft_solver::frame::Side;

use super::studs::{self, RodEnd};

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

/// Something that is typed to describe the car.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Field {
    /// A coordinate of a point, or a part of a direction.
    Point(PointName, Side, Axis),
    /// A part of the direction of a ball's stud.
    Stud(RodEnd, Side, Axis),
    /// A number of the obstacle at this place of the list.
    Obstacle(usize, ObstacleField),
    /// Another number.
    Number(NumberField),
    /// A text.
    Text(TextField),
}

impl Field {
    /// Its value in the car, mm or degrees; none where the car has no such part, and for a text.
    #[must_use]
    pub fn value(self, car: &Car) -> Option<f64> {
        match self {
            Self::Point(point, side, axis) => Some(axis.of(car.point(point, side)?)),
            Self::Stud(end, side, axis) => Some(axis.of(studs::stud(car, end, side)?)),
            Self::Obstacle(index, number) => number.value(car, index),
            Self::Number(number) => number.value(car),
            Self::Text(_) => None,
        }
    }

    /// The edit that gives it another value; none where the car has no such part, and for a text.
    #[must_use]
    pub fn edit(self, car: &Car, value: f64) -> Option<CarEdit> {
        match self {
            Self::Point(point, side, axis) => {
                let to = axis.with(car.point(point, side)?, value);
                Some(CarEdit::Point { point, side, to })
            }
            Self::Stud(end, side, axis) => {
                let to = axis.with(studs::stud(car, end, side)?, value);
                studs::with_stud(car, end, side, to)
            }
            Self::Obstacle(index, number) => number.edit(car, index, value),
            Self::Number(number) => number.edit(car, value),
            Self::Text(_) => None,
        }
    }

    /// Unit in which its value is held: "mm" or the degree sign; none for a part of a direction.
    #[must_use]
    pub fn unit(self, car: &Car) -> &'static str {
        match self {
            Self::Point(point, ..) if point.is_direction() => "",
            Self::Point(..) => "mm",
            Self::Obstacle(index, number) => number.unit(car, index),
            Self::Number(number) => number.unit(car),
            Self::Stud(..) | Self::Text(_) => "",
        }
    }

    /// Whether it belongs to something in a list, so that it means another thing when the list gets shorter.
    #[must_use]
    pub const fn is_of_list(self) -> bool {
        matches!(self, Self::Obstacle(..) | Self::Text(_))
    }
}
