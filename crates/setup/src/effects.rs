//! What effects do to a laid-out axle.

use nalgebra::{Rotation3, Unit};
use solver::axle::{FrontAxle, Knuckle};
use solver::frame::{Point, Side, Vector, mirrored_vector};
use solver::suspension::{Arm, Suspension};
use steerloft_solver as solver;

use crate::adjustment::{Adjustment, Effect, EffectSides, Kind, Member, PointName, Scalar};
use crate::car::Position;
use crate::points::{Motion, move_point, point_of};
use crate::setup::Chosen;

/// Shortest direction that has one, so that a division by its length stays finite.
const LEAST_DIRECTION: f64 = 1e-9;

/// Applies an adjustment at a value. A value of another kind, or an option there is not, leaves it at base.
pub(crate) fn apply(axle: &mut FrontAxle, adjustment: &Adjustment, value: &Chosen) {
    let (effects, amount) = match (&adjustment.kind, value) {
        (Kind::Slide { base, effects, .. }, Chosen::Slide(value)) => (effects, value - base),
        (Kind::Stack { base, effects, .. }, Chosen::Stack(total)) => (effects, total - base),
        (Kind::Choice { options, .. }, Chosen::Choice(name)) => {
            match options.iter().find(|option| option.name == *name) {
                Some(option) => (&option.effects, 1.0),
                None => return,
            }
        }
        _ => return,
    };
    for effect in effects {
        apply_effect(axle, effect, amount);
    }
}

fn apply_effect(axle: &mut FrontAxle, effect: &Effect, amount: f64) {
    match effect {
        Effect::Move { points, by, sides } => {
            move_points(axle, points, *sides, |_, side| {
                Some(Translation(given_for(side, *sides, by) * amount))
            });
        }
        Effect::Turn {
            points,
            through,
            about,
            degrees,
            sides,
        } => {
            let angle = (degrees * amount).to_radians();
            move_points(axle, points, *sides, |axle, side| {
                Rotation::new(
                    point_of(axle, *through, side)?,
                    given_for(side, *sides, about),
                    // The mirror image of a right-handed turn is left-handed about the mirrored axis.
                    if mirrors(side, *sides) { -angle } else { angle },
                )
            });
        }
        Effect::Reflect {
            points,
            through,
            normal,
            sides,
        } => {
            move_points(axle, points, *sides, |axle, side| {
                Reflection::new(
                    point_of(axle, *through, side)?,
                    given_for(side, *sides, normal),
                )
            });
        }
        Effect::Lengthen { member, by, sides } => {
            for side in Side::BOTH {
                if applies(side, *sides) {
                    lengthen(axle, *member, side, by * amount);
                }
            }
        }
        Effect::Add { scalar, by } => add(axle, *scalar, by * amount),
    }
}

/// Moves points on the sides named, each side's motion found before any of that side's points has moved.
fn move_points<M: Motion>(
    axle: &mut FrontAxle,
    points: &[PointName],
    sides: EffectSides,
    motion_on: impl Fn(&FrontAxle, Side) -> Option<M>,
) {
    let motions = Side::BOTH.map(|side| (side, motion_on(axle, side)));
    for (side, motion) in motions {
        let Some(motion) = motion.filter(|_| applies(side, sides)) else {
            continue;
        };
        for &point in points {
            if !point.is_shared() || moves_shared(side, sides) {
                move_point(axle, point, side, &motion);
            }
        }
    }
}

/// Whether an effect applies on a side.
fn applies(side: Side, sides: EffectSides) -> bool {
    match sides {
        EffectSides::Mirrored | EffectSides::Together => true,
        EffectSides::Left => side == Side::Left,
        EffectSides::Right => side == Side::Right,
    }
}

/// Whether it is this side's turn to move what both sides share, which moves once.
fn moves_shared(side: Side, sides: EffectSides) -> bool {
    side == Side::Left || sides == EffectSides::Right
}

/// Whether a side takes the mirror image of what is given.
fn mirrors(side: Side, sides: EffectSides) -> bool {
    side == Side::Right && sides != EffectSides::Together
}

fn given_for(side: Side, sides: EffectSides, given: &Position) -> Vector {
    let vector = given.vector();
    if mirrors(side, sides) {
        mirrored_vector(&vector)
    } else {
        vector
    }
}

fn add(axle: &mut FrontAxle, scalar: Scalar, by: f64) {
    match scalar {
        Scalar::Wheelbase => axle.wheelbase += by,
        Scalar::FrontStation => axle.station += by,
        Scalar::RideHeight => axle.road.ride_height += by,
        Scalar::Pitch => axle.road.pitch += by.to_radians(),
        Scalar::Roll => axle.road.roll += by.to_radians(),
        Scalar::TyreRadius => on_both(axle, |knuckle, _| knuckle.tyre_radius += by),
        Scalar::TyreWidth => on_both(axle, |knuckle, _| knuckle.tyre_width += by),
        Scalar::Camber => on_both(axle, |knuckle, side| {
            // The top goes outboard by a turn that takes the outboard end of the spin axis down: left-handed
            // about x on the left, right-handed on the right.
            let turn =
                Rotation3::from_axis_angle(&Vector::x_axis(), -side.sign() * by.to_radians());
            knuckle.spin_axis = turn * knuckle.spin_axis;
        }),
    }
}

fn on_both(axle: &mut FrontAxle, mut change: impl FnMut(&mut Knuckle, Side)) {
    for side in Side::BOTH {
        change(&mut axle.corners.get_mut(side).knuckle, side);
    }
}

fn lengthen(axle: &mut FrontAxle, member: Member, side: Side, by: f64) {
    match member {
        Member::UpperArm => {
            if let Suspension::SwingingUpperArm(arm) = &mut axle.corners.get_mut(side).suspension {
                lengthen_arm(arm, by);
            }
        }
    }
}

/// Takes the arm's ball straight away from its hinge axis; the knuckle keeps its own points.
fn lengthen_arm(arm: &mut Arm, by: f64) {
    let hinge = arm.hinge[1] - arm.hinge[0];
    let to_ball = arm.ball - arm.hinge[0];
    let along = hinge.dot(&to_ball) / hinge.norm_squared().max(LEAST_DIRECTION);
    let radial = to_ball - hinge * along;
    if radial.norm() > LEAST_DIRECTION {
        arm.ball += radial * (by / radial.norm());
    }
}

/// A displacement.
struct Translation(Vector);

impl Motion for Translation {
    fn point(&self, point: &Point) -> Point {
        point + self.0
    }

    fn direction(&self, direction: &Vector) -> Vector {
        *direction
    }
}

/// A turn about an axis through a point.
struct Rotation {
    through: Point,
    turn: Rotation3<f64>,
}

impl Rotation {
    /// Right-handed about `about`, angle in rad; nothing if the axis has no direction.
    fn new(through: Point, about: Vector, angle: f64) -> Option<Self> {
        let axis = Unit::try_new(about, LEAST_DIRECTION)?;
        Some(Self {
            through,
            turn: Rotation3::from_axis_angle(&axis, angle),
        })
    }
}

impl Motion for Rotation {
    fn point(&self, point: &Point) -> Point {
        self.through + self.turn * (point - self.through)
    }

    fn direction(&self, direction: &Vector) -> Vector {
        self.turn * direction
    }
}

/// A reflection in a plane through a point.
struct Reflection {
    through: Point,
    normal: Unit<Vector>,
}

impl Reflection {
    /// Nothing if the normal has no direction.
    fn new(through: Point, normal: Vector) -> Option<Self> {
        let normal = Unit::try_new(normal, LEAST_DIRECTION)?;
        Some(Self { through, normal })
    }
}

impl Motion for Reflection {
    fn point(&self, point: &Point) -> Point {
        let height = self.normal.dot(&(point - self.through));
        point - self.normal.into_inner() * (2.0 * height)
    }

    fn direction(&self, direction: &Vector) -> Vector {
        direction - self.normal.into_inner() * (2.0 * self.normal.dot(direction))
    }
}
