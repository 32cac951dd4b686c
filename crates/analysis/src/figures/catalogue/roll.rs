//! What the wheels do when the chassis rolls.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const ROLL_STEER: Facts = Facts::new(
    "roll-steer",
    "Roll steer",
    (Unit::DegreesPerDegree, 3),
    Scope::Wheels,
    "Steer of each wheel for each degree of roll with both tyres on the road. Positive: roll to the right steers the wheel to the left. Both alike and positive: the front steers further into the turn that causes the roll.",
)
.positive("left +");

pub(in crate::figures) const ROLL_CAMBER: Facts = Facts::new(
    "roll-camber",
    "Camber in roll",
    (Unit::DegreesPerDegree, 3),
    Scope::Wheels,
    "Change of camber against the road for each degree of roll to the right. Nearer to zero: the wheel stays more upright.",
)
.signed();

pub(in crate::figures) const ROLL_TRAVEL: Facts = Facts::new(
    "roll-travel",
    "Travel in roll",
    (Unit::MillimetresPerDegree, 2),
    Scope::Wheels,
    "Wheel travel for each degree of roll to the right. Positive: the wheel is pushed up.",
)
.signed();

pub(in crate::figures) const ROLL_CENTRE_HEIGHT: Facts = Facts::new(
    "roll-centre-height",
    "Roll centre height",
    (Unit::Millimetres, 1),
    Scope::Axle,
    "Height over the road of the point about which the front rolls at first. Higher: less roll and more jacking.",
);

pub(in crate::figures) const ROLL_CENTRE_OFFSET: Facts = Facts::new(
    "roll-centre-offset",
    "Roll centre offset",
    (Unit::Millimetres, 1),
    Scope::Axle,
    "How far the roll centre lies left of the centre line; zero for a car whose sides are alike.",
)
.positive("left +");
