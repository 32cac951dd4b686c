//! What effects do to a laid-out axle.

use nalgebra::Rotation3;
use solver::axle::{FrontAxle, Knuckle};
use solver::drive::Drive;
use solver::frame::{Side, Vector, mirrored_vector};
use solver::joints::JointLimits;
use solver::suspension::Arm;
use steerloft_solver as solver;

use crate::adjustment::{Adjustment, Effect, EffectSides, Kind, Member, PointName, Scalar};
use crate::car::Position;
use crate::motion::{LEAST_DIRECTION, Motion, Reflection, Rotation, Translation};
use crate::points::{arms_mut, move_point, point_of};
use crate::setup::Chosen;

/// An axle to which adjustments are applied, one after the other.
pub(crate) struct Adjusting<'a> {
    axle: &'a mut FrontAxle,
    /// The limits of the ball joints, whose studs turn with their balls.
    joints: Option<&'a mut JointLimits>,
    /// What the links of the drive are made longer by. It counts from how they are drawn in the end, so that it
    /// does not matter whether their balls are moved before or after.
    drag_link: f64,
    cross_link: f64,
}

impl<'a> Adjusting<'a> {
    /// From an axle at base, or with adjustments applied that made the drag link and the cross link longer by so much.
    pub(crate) fn going_on(
        axle: &'a mut FrontAxle,
        joints: Option<&'a mut JointLimits>,
        [drag_link, cross_link]: [f64; 2],
    ) -> Self {
        Self {
            axle,
            joints,
            drag_link,
            cross_link,
        }
    }

    /// What the drag link and the cross link are made longer by so far.
    pub(crate) const fn longer_links(&self) -> [f64; 2] {
        [self.drag_link, self.cross_link]
    }

    /// Applies an adjustment at a value. A value of another kind, or an option there is not, leaves it at base.
    pub(crate) fn apply(&mut self, adjustment: &Adjustment, value: &Chosen) {
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
            self.apply_effect(effect, amount);
        }
    }

    /// Sets what counts from everything else that was applied.
    pub(crate) fn finish(self) {
        if let Drive::TwinCrank(drive) = &mut self.axle.drive {
            let drag = drive.drag_crank - drive.drag_servo;
            let cross = drive.cross_balls.right - drive.cross_balls.left;
            set_longer(&mut drive.drag_length, drag.norm(), self.drag_link);
            set_longer(&mut drive.cross_length, cross.norm(), self.cross_link);
        }
    }

    fn apply_effect(&mut self, effect: &Effect, amount: f64) {
        match effect {
            Effect::Move { points, by, sides } => {
                self.move_points(points, *sides, |_, side| {
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
                self.move_points(points, *sides, |axle, side| {
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
                self.move_points(points, *sides, |axle, side| {
                    Reflection::new(
                        point_of(axle, *through, side)?,
                        given_for(side, *sides, normal),
                    )
                });
            }
            Effect::Lengthen { member, by, sides } => self.lengthen(*member, *sides, by * amount),
            Effect::Add { scalar, by } => add(self.axle, *scalar, by * amount),
        }
    }

    /// Moves points on the sides named, each side's motion found before any of that side's points has moved. A ball's
    /// stud turns with it.
    fn move_points<M: Motion>(
        &mut self,
        points: &[PointName],
        sides: EffectSides,
        motion_on: impl Fn(&FrontAxle, Side) -> Option<M>,
    ) {
        let motions = Side::BOTH.map(|side| (side, motion_on(self.axle, side)));
        for (side, motion) in motions {
            let Some(motion) = motion.filter(|_| applies(side, sides)) else {
                continue;
            };
            for &point in points {
                if !point.is_shared() || side == side_of_shared(self.axle, point) {
                    move_point(self.axle, point, side, &motion);
                    self.turn_stud(point, side, &motion);
                }
            }
        }
    }

    fn turn_stud(&mut self, point: PointName, side: Side, motion: &impl Motion) {
        let Some(joints) = self.joints.as_deref_mut() else {
            return;
        };
        let studs = match point {
            PointName::SteeringArm => &mut joints.outer_studs,
            PointName::RodInner => &mut joints.inner_studs,
            _ => return,
        };
        let stud = studs.get_mut(side);
        *stud = motion.direction(stud);
    }

    fn lengthen(&mut self, member: Member, sides: EffectSides, by: f64) {
        match member {
            Member::DragLink => self.drag_link += by,
            Member::CrossLink => self.cross_link += by,
            Member::LowerArm | Member::UpperArm => {
                for side in Side::BOTH.into_iter().filter(|&side| applies(side, sides)) {
                    let [lower, upper] = arms_mut(&mut self.axle.corners.get_mut(side).suspension);
                    let arm = if member == Member::LowerArm {
                        lower
                    } else {
                        upper
                    };
                    if let Some(arm) = arm {
                        lengthen_arm(arm, by);
                    }
                }
            }
        }
    }
}

/// Makes a link longer than it is set, or drawn; one that stays as drawn follows its balls.
fn set_longer(length: &mut Option<f64>, drawn: f64, by: f64) {
    if by != 0.0 {
        *length = Some(length.unwrap_or(drawn) + by);
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

/// On which side's turn a point moves that both sides share, so that it moves once: with the crank that carries it.
fn side_of_shared(axle: &FrontAxle, point: PointName) -> Side {
    match (point, &axle.drive) {
        (PointName::DragCrank, Drive::TwinCrank(drive)) => drive.driven,
        _ => Side::Left,
    }
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
