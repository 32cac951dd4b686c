//! Both ends of steering.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const LOCK_LEFT: Facts = Facts::new(
    "lock-left",
    "Wheels at left lock",
    (Unit::Degrees, 1),
    Scope::Wheels,
    "Angles of the wheels from straight ahead at the end of steering to the left.",
)
.brief("Lock left")
.headline()
.gauged();

pub(in crate::figures) const LOCK_RIGHT: Facts = Facts::new(
    "lock-right",
    "Wheels at right lock",
    (Unit::Degrees, 1),
    Scope::Wheels,
    "Angles of the wheels from straight ahead at the end of steering to the right.",
)
.brief("Lock right")
.headline()
.gauged();

pub(in crate::figures) const LOCK_INPUT: Facts = Facts::new(
    "lock-input",
    "Steering input at lock",
    (Unit::Input, 1),
    Scope::Turns,
    "Steering input at the end of steering: in the left column turning left, in the right one turning right. Alike but for the sign: both ways the drive moves as far.",
)
.brief("Input at lock")
.signed();

pub(in crate::figures) const LOCK_ACKERMANN: Facts = Facts::new(
    "lock-ackermann",
    "Ackermann share at lock",
    (Unit::Percent, 0),
    Scope::Turns,
    "Ackermann share at the end of steering: in the left column turning left, in the right one turning right. 0 % is parallel, 100 % the ideal pair.",
)
.brief("Ackermann at lock");

pub(in crate::figures) const LOCK_CIRCLE: Facts = Facts::new(
    "lock-circle",
    "Turning circle at lock",
    (Unit::Millimetres, 0),
    Scope::Turns,
    "Diameter of the smallest circle that the outer front tyre sweeps: in the left column turning left, in the right one turning right.",
)
.brief("Circle at lock");

pub(in crate::figures) const LOCK_RADIUS: Facts = Facts::new(
    "lock-radius",
    "Swept radius at lock",
    (Unit::Millimetres, 0),
    Scope::Turns,
    "Half the turning circle: in the left column turning left, in the right one turning right. Less turns tighter.",
)
.brief("Radius at lock");

pub(in crate::figures) const LEAST_TRANSMISSION: Facts = Facts::new(
    "least-transmission",
    "Least transmission angle",
    (Unit::Degrees, 0),
    Scope::Wheels,
    "Angle between tie rod and steering arm where it is farthest from a right angle over the whole steering. Nearer to 90° is better.",
)
.brief("Least transmission");
