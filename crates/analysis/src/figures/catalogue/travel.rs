//! What the wheels do when they are pushed up.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const BUMP_STEER: Facts = Facts::new(
    "bump-steer",
    "Bump steer",
    (Unit::DegreesPerMillimetre, 3),
    Scope::Wheels,
    "Change of toe with wheel travel, straight ahead at rest. Positive: the wheel toes in when it is pushed up. Zero: it does not steer.",
)
.positive("bump toes in +")
.headline();

pub(in crate::figures) const TOE_AT_BUMP: Facts = Facts::new(
    "toe-at-bump",
    "Toe at full bump",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Toe of each wheel at full bump, steering straight ahead. Positive is toe-in. A dash: the suspension does not get there.",
)
.positive("in +");

pub(in crate::figures) const TOE_AT_DROOP: Facts = Facts::new(
    "toe-at-droop",
    "Toe at full droop",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Toe of each wheel at full droop, steering straight ahead. Positive is toe-in. A dash: the suspension does not get there.",
)
.positive("in +");

pub(in crate::figures) const TOE_LEAST: Facts = Facts::new(
    "toe-least",
    "Least toe in travel",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Least toe of each wheel over the wheel travel, steering straight ahead. With the greatest it tells how far bump steer goes, whatever its shape.",
)
.brief("Least toe")
.positive("in +");

pub(in crate::figures) const TOE_MOST: Facts = Facts::new(
    "toe-most",
    "Greatest toe in travel",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Greatest toe of each wheel over the wheel travel, steering straight ahead. With the least it tells how far bump steer goes, whatever its shape.",
)
.brief("Greatest toe")
.positive("in +");

pub(in crate::figures) const CAMBER_GAIN: Facts = Facts::new(
    "camber-gain",
    "Camber gain in bump",
    (Unit::DegreesPerMillimetre, 3),
    Scope::Wheels,
    "Change of camber with wheel travel. Negative: the wheel's top leans in as it is pushed up, which makes up for roll.",
)
.brief("Camber gain")
.signed();

pub(in crate::figures) const CASTER_GAIN: Facts = Facts::new(
    "caster-gain",
    "Caster gain in bump",
    (Unit::DegreesPerMillimetre, 3),
    Scope::Wheels,
    "Change of caster with wheel travel. Positive: more caster as the wheel is pushed up.",
)
.brief("Caster gain")
.signed();

pub(in crate::figures) const INCLINATION_GAIN: Facts = Facts::new(
    "inclination-gain",
    "Inclination gain in bump",
    (Unit::DegreesPerMillimetre, 3),
    Scope::Wheels,
    "Change of kingpin inclination with wheel travel. Positive: the axis leans in more as the wheel is pushed up.",
)
.brief("Inclination gain")
.signed();

pub(in crate::figures) const CONTACT_GAIN: Facts = Facts::new(
    "contact-gain",
    "Contact sideways in bump",
    (Unit::MillimetresPerMillimetre, 3),
    Scope::Wheels,
    "How far the tyre's contact moves outboard for each mm of wheel travel. Zero: bumps do not drag the tyre sideways. Both sides together are the change of track.",
)
.brief("Contact sideways")
.positive("outboard +");

pub(in crate::figures) const FRONT_ARM: Facts = Facts::new(
    "front-view-arm",
    "Front-view arm",
    (Unit::Millimetres, 1),
    Scope::Wheels,
    "From the tyre's middle inboard to the front-view instant centre, about which the wheel swings in bumps. Longer: less camber gain. Negative: the centre lies outboard. A dash: so far away that the wheel does not lean.",
)
.signed();

pub(in crate::figures) const FRONT_CENTRE_HEIGHT: Facts = Facts::new(
    "front-centre-height",
    "Front centre height",
    (Unit::Millimetres, 1),
    Scope::Wheels,
    "Height of the front-view instant centre over the road. Higher raises the roll centre.",
)
.signed();

pub(in crate::figures) const SIDE_ARM: Facts = Facts::new(
    "side-view-arm",
    "Side-view arm",
    (Unit::Millimetres, 1),
    Scope::Wheels,
    "From the tyre's middle rearward to the side-view instant centre. Negative: the centre lies ahead. A dash: so far away that the wheel moves without turning seen from the side.",
)
.signed();

pub(in crate::figures) const SIDE_CENTRE_HEIGHT: Facts = Facts::new(
    "side-centre-height",
    "Side centre height",
    (Unit::Millimetres, 1),
    Scope::Wheels,
    "Height of the side-view instant centre over the road.",
)
.signed();
