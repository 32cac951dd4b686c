//! How alike the two sides are.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const STEER_DIFFERENCE: Facts = Facts::new(
    "steer-difference",
    "Difference of turns",
    (Unit::Degrees, 2),
    Scope::Axle,
    "Greatest difference between the wheel angles of a left turn and those of the mirrored right turn, over the steering that both have. Zero: both turns alike.",
);

pub(in crate::figures) const TOE_DIFFERENCE: Facts = Facts::new(
    "toe-difference",
    "Toe difference in travel",
    (Unit::Degrees, 2),
    Scope::Axle,
    "Greatest difference between the toe of the left and of the right wheel over the wheel travel. Zero: both sides alike.",
)
.brief("Toe difference");

pub(in crate::figures) const CAMBER_DIFFERENCE: Facts = Facts::new(
    "camber-difference",
    "Camber difference in travel",
    (Unit::Degrees, 2),
    Scope::Axle,
    "Greatest difference between the camber of the left and of the right wheel over the wheel travel. Zero: both sides alike.",
)
.brief("Camber difference");
