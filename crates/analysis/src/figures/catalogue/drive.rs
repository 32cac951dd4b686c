//! How the linkage passes on.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const RATIO: Facts = Facts::new(
    "ratio",
    "Steering ratio",
    (Unit::Ratio, 3),
    Scope::Axle,
    "Steering input for each degree that the wheels turn on average. More is slower and finer.",
);

pub(in crate::figures) const OUTER_TRANSMISSION: Facts = Facts::new(
    "outer-transmission",
    "Outer transmission",
    (Unit::Degrees, 1),
    Scope::Wheels,
    "Angle between tie rod and steering arm. 90° passes on most; near 0° or 180° the steering locks.",
);

pub(in crate::figures) const OUTER_SHARE: Facts = Facts::new(
    "outer-share",
    "Outer share",
    (Unit::Percent, 1),
    Scope::Wheels,
    "How much of the rod's pull turns the wheel: 100 % is best, 0 % locks.",
);

pub(in crate::figures) const INNER_TRANSMISSION: Facts = Facts::new(
    "inner-transmission",
    "Inner transmission",
    (Unit::Degrees, 1),
    Scope::Wheels,
    "Angle between tie rod and the arm or crank that carries its inner ball. 90° passes on most; near 0° or 180° the steering locks. A dash: the ball sits on a rack or a link.",
);

pub(in crate::figures) const INNER_SHARE: Facts = Facts::new(
    "inner-share",
    "Inner share",
    (Unit::Percent, 1),
    Scope::Wheels,
    "How much of the inner ball's motion goes along the rod: 100 % is best, 0 % locks.",
);

pub(in crate::figures) const DRIVE_EFFORT: Facts = Facts::new(
    "drive-effort",
    "Drive effort",
    (Unit::Effort, 2),
    Scope::Axle,
    "What the servo, column or rack must hold against a moment of 1 Nm at each kingpin. Less is easier, and slower.",
);

pub(in crate::figures) const SERVO_TORQUE: Facts = Facts::new(
    "servo-torque",
    "Servo torque at a standstill",
    (Unit::StandingEffort, 1),
    Scope::Axle,
    "Torque at servo or column, or force at a rack, that turns the loaded wheels of a car that stands still. A dash: the car does not say how its front wheels are loaded.",
)
.brief("Servo torque");
