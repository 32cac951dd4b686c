//! What was read off gauges on a car, and which of its dimensions are uncertain.

use std::fmt;

use serde::{Deserialize, Serialize};
use steerloft_solver::frame::Side;

use crate::dimension::Dimension;
use crate::values::short;

/// Readings taken on one car as it stands, and the dimensions that they are to find.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Readings {
    /// Free text: when and with what they were taken.
    #[serde(default)]
    pub notes: String,
    /// Toe, steering straight ahead, at several heights.
    #[serde(default)]
    pub toe: Vec<AtHeight>,
    /// Camber, steering straight ahead, at several heights.
    #[serde(default)]
    pub camber: Vec<AtHeight>,
    /// Angles of the wheels at several steering inputs, wheels at rest.
    #[serde(default)]
    pub turned: Vec<Turned>,
    /// The dimensions that may differ from the car's file.
    #[serde(default)]
    pub uncertain: Vec<Dimension>,
}

/// A reading of one or both wheels at a height.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AtHeight {
    /// The height.
    pub at: Height,
    /// The left wheel's value, degrees: toe-in positive, camber with the top outboard positive.
    #[serde(default)]
    pub left: Option<f64>,
    /// The right wheel's.
    #[serde(default)]
    pub right: Option<f64>,
    /// Standard uncertainty of each value, degrees: two readings in three are no farther off.
    pub uncertainty: f64,
}

/// How high the chassis stood.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Height {
    /// Travel of both wheels from rest, mm, bump positive.
    Travel(f64),
    /// Height of the chassis' underside over the road, mm.
    RideHeight(f64),
}

/// A reading of one or both wheels at a steering input.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Turned {
    /// Steering input, in the drive's unit: degrees of the servo's arm, or mm of the rack.
    pub input: f64,
    /// Angle of the left wheel from straight ahead, degrees, to the left positive.
    #[serde(default)]
    pub left: Option<f64>,
    /// The right wheel's.
    #[serde(default)]
    pub right: Option<f64>,
    /// Standard uncertainty of each value, degrees.
    pub uncertainty: f64,
}

/// One number that was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// What was read.
    pub what: Quantity,
    /// Of which wheel.
    pub side: Side,
    /// The value, degrees.
    pub value: f64,
    /// Its standard uncertainty, degrees.
    pub uncertainty: f64,
}

/// What is read of a wheel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Quantity {
    /// Toe at a height.
    Toe(Height),
    /// Camber at a height.
    Camber(Height),
    /// Angle from straight ahead at a steering input.
    Turn(f64),
}

impl Readings {
    /// Every number that was read, in the document's order, left before right.
    pub fn all(&self) -> impl Iterator<Item = Reading> {
        let toe = self
            .toe
            .iter()
            .map(|one| (one, Quantity::Toe as fn(Height) -> Quantity));
        let camber = self
            .camber
            .iter()
            .map(|one| (one, Quantity::Camber as fn(Height) -> Quantity));
        let at_heights = toe
            .chain(camber)
            .flat_map(|(one, what)| both(what(one.at), one.left, one.right, one.uncertainty));
        let turned = self.turned.iter();
        at_heights.chain(turned.flat_map(|one| {
            both(
                Quantity::Turn(one.input),
                one.left,
                one.right,
                one.uncertainty,
            )
        }))
    }
}

fn both(
    what: Quantity,
    left: Option<f64>,
    right: Option<f64>,
    uncertainty: f64,
) -> impl Iterator<Item = Reading> {
    let sides = [(Side::Left, left), (Side::Right, right)].into_iter();
    sides.filter_map(move |(side, value)| {
        Some(Reading {
            what,
            side,
            value: value?,
            uncertainty,
        })
    })
}

impl fmt::Display for Reading {
    /// What was read, without its value: "left toe at 2 mm of travel".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let side = self.side;
        match self.what {
            Quantity::Toe(height) => write!(f, "{side} toe {height}"),
            Quantity::Camber(height) => write!(f, "{side} camber {height}"),
            Quantity::Turn(input) => {
                write!(
                    f,
                    "{side} wheel's angle at a steering input of {}",
                    short(input)
                )
            }
        }
    }
}

impl fmt::Display for Height {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Travel(travel) => write!(f, "at {} mm of travel", short(*travel)),
            Self::RideHeight(height) => write!(f, "at a ride height of {} mm", short(*height)),
        }
    }
}
