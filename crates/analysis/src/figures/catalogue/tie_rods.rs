//! The tie rods.

use super::{Facts, Scope, Unit};

pub(in crate::figures) const ROD_LENGTH: Facts = Facts::new(
    "rod-length",
    "Rod length",
    (Unit::Millimetres, 2),
    Scope::Wheels,
    "Tie rod from ball centre to ball centre: what to dial in.",
)
.headline();

pub(in crate::figures) const CUP_GAP: Facts = Facts::new(
    "cup-gap",
    "Cup gap",
    (Unit::Millimetres, 2),
    Scope::Wheels,
    "Gap between the open ends of the rod's two ball cups: the same length, as callipers measure it on the rod.",
)
.headline();

pub(in crate::figures) const ROD_RESERVE: Facts = Facts::new(
    "rod-reserve",
    "Rod thread reserve",
    (Unit::Millimetres, 2),
    Scope::Wheels,
    "How far the rod's length is from the nearer of the shortest and the longest that its parts can be screwed to. Negative: beyond it.",
)
.brief("Rod reserve")
.signed();

pub(in crate::figures) const ROD_ANGLE_TOP: Facts = Facts::new(
    "rod-angle-top",
    "Rod angle, top",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Slope of the tie rod seen from above, in the pose shown. Positive: its outer ball lies ahead of the inner one.",
)
.signed();

pub(in crate::figures) const ROD_ANGLE_FRONT: Facts = Facts::new(
    "rod-angle-front",
    "Rod angle, front",
    (Unit::Degrees, 2),
    Scope::Wheels,
    "Slope of the tie rod seen from the front, in the pose shown. Positive: its outer ball lies higher than the inner one.",
)
.signed();

pub(in crate::figures) const OUTER_BALL: Facts = Facts::new(
    "outer-ball",
    "Outer ball misalignment",
    (Unit::Degrees, 1),
    Scope::Wheels,
    "Angle between the rod and the plane square to the outer ball's stud. Less is better; at the joint's limit it binds. A dash: the car's file says nothing of its studs.",
)
.brief("Outer ball");

pub(in crate::figures) const INNER_BALL: Facts = Facts::new(
    "inner-ball",
    "Inner ball misalignment",
    (Unit::Degrees, 1),
    Scope::Wheels,
    "Angle between the rod and the plane square to the inner ball's stud. Less is better; at the joint's limit it binds. A dash: the car's file says nothing of its studs.",
)
.brief("Inner ball");
