//! The studs of the tie rods' balls.

use steerloft_setup::car::{Car, Position};
use steerloft_setup::edit::CarEdit;
use steerloft_solver::frame::Side;

/// An end of a tie rod.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RodEnd {
    /// On the steering arm.
    Outer,
    /// On the steering drive.
    Inner,
}

impl RodEnd {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Outer, Self::Inner];

    /// What its stud is called.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Outer => "Outer stud",
            Self::Inner => "Inner stud",
        }
    }
}

/// Direction of a ball's stud; nothing where the car does not give its joints, and for a right one that mirrors the left.
#[must_use]
pub fn stud(car: &Car, end: RodEnd, side: Side) -> Option<Position> {
    let joints = car.joints?;
    match (end, side) {
        (RodEnd::Outer, Side::Left) => Some(joints.outer_stud),
        (RodEnd::Inner, Side::Left) => Some(joints.inner_stud),
        (RodEnd::Outer, Side::Right) => joints.outer_stud_right,
        (RodEnd::Inner, Side::Right) => joints.inner_stud_right,
    }
}

/// The edit that turns a ball's stud.
#[must_use]
pub fn with_stud(car: &Car, end: RodEnd, side: Side, to: Position) -> Option<CarEdit> {
    let mut joints = car.joints?;
    match (end, side) {
        (RodEnd::Outer, Side::Left) => joints.outer_stud = to,
        (RodEnd::Inner, Side::Left) => joints.inner_stud = to,
        (RodEnd::Outer, Side::Right) => joints.outer_stud_right = Some(to),
        (RodEnd::Inner, Side::Right) => joints.inner_stud_right = Some(to),
    }
    Some(CarEdit::Joints(Some(joints)))
}

/// Whether the right studs have directions of their own.
#[must_use]
pub fn are_apart(car: &Car) -> bool {
    car.joints.is_some_and(|joints| {
        joints.outer_stud_right.is_some() || joints.inner_stud_right.is_some()
    })
}

/// The edit that gives the right studs directions of their own, at first the mirror images, or lets them mirror the left ones.
#[must_use]
pub fn set_apart(car: &Car, apart: bool) -> Option<CarEdit> {
    let mut joints = car.joints?;
    let mirrored = |Position(x, y, z): Position| Position(x, -y, z);
    let right =
        |left, right: Option<Position>| apart.then(|| right.unwrap_or_else(|| mirrored(left)));
    joints.outer_stud_right = right(joints.outer_stud, joints.outer_stud_right);
    joints.inner_stud_right = right(joints.inner_stud, joints.inner_stud_right);
    Some(CarEdit::Joints(Some(joints)))
}
