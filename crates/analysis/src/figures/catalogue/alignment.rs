//! How the wheels and steering axes stand.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const TOE: Facts = Facts::new(
    "toe",
    "Toe",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Toe of each wheel with the steering straight ahead, at the wheel travel shown. Positive is toe-in: the fronts of the wheels closer together.",
)
.positive("in +")
.headline()
.gauged();

pub(in crate::figures) const TOTAL_TOE: Facts = Facts::new(
    "total-toe",
    "Total toe",
    (Unit::Millimetres, 2),
    Scope::Axle,
    "Gap between the wheels behind less the gap in front, across the diameter of the tyres, steering straight ahead. Positive is toe-in.",
)
.positive("in +");

pub(in crate::figures) const CAMBER: Facts = Facts::new(
    "camber",
    "Camber",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Lean of the wheel against the road. Negative: the top leans towards the car.",
)
.positive("top out +")
.headline()
.gauged();

pub(in crate::figures) const CASTER: Facts = Facts::new(
    "caster",
    "Caster",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Lean of the steering axis seen from the side. Positive: its top leans back.",
)
.positive("top back +")
.headline()
.gauged();

pub(in crate::figures) const INCLINATION: Facts = Facts::new(
    "kingpin-inclination",
    "Kingpin inclination",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Kingpin inclination: lean of the steering axis seen from the front. Positive: its top leans towards the car.",
)
.brief("Kingpin incl.")
.positive("top in +")
.headline();

pub(in crate::figures) const SCRUB_RADIUS: Facts = Facts::new(
    "scrub-radius",
    "Scrub radius",
    (Unit::Millimetres, 2),
    Scope::Wheels,
    "Scrub radius: from where the steering axis meets the ground to the middle of the tyre. Positive: the tyre stands outboard of the axis.",
)
.brief("Scrub")
.signed()
.headline();

pub(in crate::figures) const TRAIL: Facts = Facts::new(
    "trail",
    "Trail",
    (Unit::Millimetres, 2),
    Scope::Wheels,
    "Mechanical trail: how far the tyre's middle stands behind where the steering axis meets the ground. More of it centres the steering more.",
)
.signed()
.headline();

pub(in crate::figures) const HUB_OFFSET: Facts = Facts::new(
    "hub-offset",
    "Hub offset",
    (Unit::Millimetres, 2),
    Scope::Wheels,
    "From the steering axis out to the wheel centre, at the height of the hub. More of it lets bumps pull harder at the steering.",
)
.signed();

pub(in crate::figures) const HUB_TRAIL: Facts = Facts::new(
    "hub-trail",
    "Hub trail",
    (Unit::Millimetres, 2),
    Scope::Wheels,
    "How far the wheel centre stands behind the steering axis, at the height of the hub. Negative: ahead of it.",
)
.signed();

pub(in crate::figures) const TRACK: Facts = Facts::new(
    "track",
    "Track at the contacts",
    (Unit::Millimetres, 1),
    Scope::Axle,
    "From the middle of one tyre to that of the other on the road, across the car.",
)
.brief("Track")
.gauged();

pub(in crate::figures) const WHEELBASE: Facts = Facts::new(
    "wheelbase",
    "Wheelbase",
    (Unit::Millimetres, 1),
    Scope::Axle,
    "From the front-axle station to the rear axle. Longer: the same angles turn a wider circle.",
)
.gauged();
