//! How the wheels turn against each other.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const STEER: Facts = Facts::new(
    "steer",
    "Steer angle",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Angle of each wheel from the car's centre line in the pose shown. Positive: to the left.",
)
.positive("left +")
.headline();

pub(in crate::figures) const ACKERMANN: Facts = Facts::new(
    "ackermann",
    "Ackermann share",
    (Unit::Percent, 0),
    Scope::Axle,
    "Ackermann share of the pose shown: how much more the inner wheel turns than the outer one. 0 % is parallel, 100 % the ideal pair without scrubbing, negative reversed. It has no value straight ahead.",
)
.brief("Ackermann")
.headline();

pub(in crate::figures) const IDEAL_OUTER: Facts = Facts::new(
    "ideal-outer",
    "Ideal outer angle",
    (Unit::Degrees, 2),
    Scope::Axle,
    "Angle at which the outer wheel would not scrub, with the inner wheel where it is. Turn it less for more Ackermann.",
);

pub(in crate::figures) const TURN_RADIUS: Facts = Facts::new(
    "turn-radius",
    "Turn radius",
    (Unit::Millimetres, 0),
    Scope::Wheels,
    "From each tyre's middle to the point of the rear-axle line about which that wheel alone would roll. Less turns tighter.",
);

pub(in crate::figures) const TURN_SPREAD: Facts = Facts::new(
    "turn-spread",
    "Turn-centre spread",
    (Unit::Millimetres, 1),
    Scope::Axle,
    "Distance of the two wheels' turn centres on the rear-axle line. Zero for the ideal pair; more means more scrubbing.",
);

pub(in crate::figures) const SWEPT_CIRCLE: Facts = Facts::new(
    "swept-circle",
    "Swept circle",
    (Unit::Millimetres, 0),
    Scope::Axle,
    "Diameter of the circle that the outer front tyre's outer edge sweeps in this pose, without slip. Less turns tighter.",
);
