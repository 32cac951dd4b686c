//! What holds straight ahead at rest.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const STRAIGHT_RATIO: Facts = Facts::new(
    "straight-ratio",
    "Steering ratio, straight ahead",
    (Unit::Ratio, 3),
    Scope::Axle,
    "Steering input for each degree that the wheels turn on average, straight ahead at rest. More is slower and finer.",
)
.brief("Ratio at centre");

pub(in crate::figures) const STRAIGHT_ACKERMANN: Facts = Facts::new(
    "straight-ackermann",
    "Ackermann at centre",
    (Unit::Percent, 1),
    Scope::Axle,
    "The value that the Ackermann share comes to as the steering comes to straight ahead: a limit, from derivatives. It exists only where both wheels start to turn alike, as in a car whose sides are alike.",
);

pub(in crate::figures) const ARM_LINES: Facts = Facts::new(
    "arm-lines",
    "Arm lines",
    (Unit::Percent, 1),
    Scope::Axle,
    "A second measure in use: wheelbase over the distance behind the front axle at which the lines from kingpin to outer rod ball meet. 100 % is the old rule that they meet on the rear axle. It looks at the arms alone, not at the rods.",
);

pub(in crate::figures) const ARM_LINES_MEET: Facts = Facts::new(
    "arm-lines-meet",
    "Arm lines meet",
    (Unit::Millimetres, 1),
    Scope::Axle,
    "How far behind the front axle the lines from kingpin to outer rod ball meet. Negative: ahead of it.",
)
.signed();

pub(in crate::figures) const KINGPIN_DISTANCE: Facts = Facts::new(
    "kingpin-distance",
    "Kingpin distance",
    (Unit::Millimetres, 2),
    Scope::Axle,
    "Distance of the points where the steering axes meet the road: with the wheelbase it gives the ideal pair of angles. More asks for more difference between the wheels.",
);
