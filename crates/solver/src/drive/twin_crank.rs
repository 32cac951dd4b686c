//! A left and a right crank on their own axes, tied by a cross link; one of them is turned by a drag link from a
//! servo arm. Every stage is solved in space: a ball on a lever at a link's length from another ball, a closed
//! form.

use nalgebra::{Isometry3, Translation3, UnitQuaternion};

use super::swing_arm::unit_axis;
use super::{DriveMiss, InnerBalls};
use crate::closure::circle::{Circle, reserve};
use crate::error::{Fault, Member, SolveError};
use crate::frame::{Point, Side, Sides, Vector};
use crate::pose::{DriveJoints, DrivePose, turned_about};

/// A lever on its own axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crank {
    /// A point of the axis, chassis axes, mm.
    pub axis_point: Point,
    /// Direction of the axis; any length.
    pub axis_direction: Vector,
}

/// What carries the inner tie-rod balls.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InnerBallsOn {
    /// Each crank carries its side's ball.
    Cranks,
    /// The cross link carries both, on the line between its two joints, about which it may spin. Each keeps its
    /// share of the way between them.
    CrossLink,
}

/// Two cranks tied by a cross link. The input is the servo arm's angle, rad, right-handed about its axis. All
/// points are those at input 0 with both links as long as drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwinCrank {
    /// The cranks.
    pub cranks: Sides<Crank>,
    /// The cross link's ball on each crank, chassis axes, mm.
    pub cross_balls: Sides<Point>,
    /// Inner tie-rod balls, chassis axes, mm.
    pub rod_inner: Sides<Point>,
    /// What carries the inner tie-rod balls.
    pub inner_on: InnerBallsOn,
    /// The servo arm.
    pub servo: Crank,
    /// The drag link's ball on the servo arm.
    pub drag_servo: Point,
    /// The drag link's ball on the driven crank.
    pub drag_crank: Point,
    /// Which crank the drag link turns.
    pub driven: Side,
    /// Length of the drag link, mm, where it is set otherwise than drawn.
    pub drag_length: Option<f64>,
    /// Length of the cross link, mm, where it is set otherwise than drawn.
    pub cross_length: Option<f64>,
}

impl TwinCrank {
    pub(super) fn kinematics(&self) -> Result<TwinCrankKinematics, SolveError> {
        let axes = Sides::try_from_fn(|side| unit_axis(&self.cranks.get(side).axis_direction))?;
        let servo_axis = unit_axis(&self.servo.axis_direction)?;
        let on_crank = |side: Side, ball: &Point| {
            Circle::about(self.cranks.get(side).axis_point, *axes.get(side), *ball)
        };
        let driven = self.driven;
        let other = driven.other();
        let cross = *self.cross_balls.get(driven);
        Ok(TwinCrankKinematics {
            cranks: self.cranks,
            axes,
            driven,
            servo_circle: Circle::about(self.servo.axis_point, servo_axis, self.drag_servo),
            drag: Stage::new(
                on_crank(driven, &self.drag_crank),
                self.drag_servo,
                self.drag_crank,
                self.drag_length,
                Member::DragLink,
                driven,
            )?,
            cross_driven: on_crank(driven, &cross),
            cross: Stage::new(
                on_crank(other, self.cross_balls.get(other)),
                cross,
                *self.cross_balls.get(other),
                self.cross_length,
                Member::CrossLink,
                other,
            )?,
            inner: match self.inner_on {
                InnerBallsOn::Cranks => Inner::OnCranks(Sides::from_fn(|side| {
                    on_crank(side, self.rod_inner.get(side))
                })),
                InnerBallsOn::CrossLink => Inner::OnCrossLink(Sides::try_from_fn(|side| {
                    self.share_of_cross_link(self.rod_inner.get(side))
                })?),
            },
        })
    }

    /// Share of the way from the left to the right joint of the cross link at which a point lies.
    fn share_of_cross_link(&self, point: &Point) -> Result<f64, SolveError> {
        let line = self.cross_balls.right - self.cross_balls.left;
        let offset = point - self.cross_balls.left;
        let share = line.dot(&offset) / line.norm_squared();
        // A thousandth of the link's length, or what a file's rounded decimals may leave.
        if (offset - line * share).norm() <= 1e-3 * line.norm() {
            Ok(share)
        } else {
            Err(degenerate(Fault::InnerBallOffCrossLink))
        }
    }
}

fn degenerate(fault: Fault) -> SolveError {
    SolveError::Degenerate { side: None, fault }
}

/// A ball on a crank that a link holds at its length from another ball.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Stage {
    circle: Circle,
    length: f64,
    branch: f64,
    member: Member,
    side: Side,
}

/// A crank's turn.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Turn {
    cos: f64,
    sin: f64,
    /// rad per unit of input.
    rate: f64,
    /// Change of the input over which the link reaches the crank, at the least.
    stay: f64,
}

impl Stage {
    fn new(
        circle: Circle,
        from: Point,
        ball: Point,
        length: Option<f64>,
        member: Member,
        side: Side,
    ) -> Result<Self, SolveError> {
        let drawn = (ball - from).norm();
        if circle.radius() == 0.0 {
            return Err(degenerate(Fault::CrankHasNoLength));
        }
        if drawn == 0.0 {
            return Err(degenerate(Fault::LinkHasNoLength));
        }
        if circle.branch(&from) == 0.0 {
            return Err(degenerate(Fault::LinkAtDeadCentre));
        }
        Ok(Self {
            circle,
            length: length.unwrap_or(drawn),
            branch: circle.branch(&from).signum(),
            member,
            side,
        })
    }

    /// The crank's turn when the link's other ball is at `from` and moves at `from_rate`.
    #[inline]
    fn turn(&self, from: &Point, from_rate: &Vector) -> Result<Turn, DriveMiss> {
        let Some((cos, sin)) = self.circle.meet(from, self.length, self.branch) else {
            return Err(DriveMiss {
                member: self.member,
                side: self.side,
                difference: self.circle.miss(from, self.length),
            });
        };
        let (ball, by_turn) = self.circle.at(cos, sin);
        let link = ball - from;
        // The link keeps its length: both balls move alike along it.
        let pull = link.dot(&by_turn);
        let rate = link.dot(from_rate) / pull;
        let reserve = reserve(self.circle.radius(), pull / link.norm());
        Ok(Turn {
            cos,
            sin,
            rate,
            stay: (reserve / from_rate.norm()).min(f64::MAX),
        })
    }
}

/// A point that moves with the input: place, velocity and acceleration.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Moving {
    place: Point,
    rate: Vector,
    bend: Vector,
}

impl Stage {
    /// How the crank's turn bends, rad per unit of input squared, when the link's other ball moves as given.
    fn turn_bend(&self, turn: &Turn, from: &Moving) -> f64 {
        let (ball, by_turn) = self.circle.at(turn.cos, turn.sin);
        let link = ball - from.place;
        let apart = by_turn * turn.rate - from.rate;
        let toward_centre = self.circle.bend(turn.cos, turn.sin) * (turn.rate * turn.rate);
        // The link keeps its length in second order too.
        -(apart.norm_squared() + link.dot(&(toward_centre - from.bend))) / link.dot(&by_turn)
    }
}

impl Turn {
    /// A ball on a crank that turns so, with the turn's own second derivative.
    fn carry_moving(&self, circle: &Circle, turn_bend: f64) -> Moving {
        let (place, by_turn) = circle.at(self.cos, self.sin);
        Moving {
            place,
            rate: by_turn * self.rate,
            bend: circle.bend(self.cos, self.sin) * (self.rate * self.rate) + by_turn * turn_bend,
        }
    }

    #[inline]
    fn carry(&self, circle: &Circle) -> (Point, Vector) {
        let (point, by_turn) = circle.at(self.cos, self.sin);
        (point, by_turn * self.rate)
    }
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Inner {
    OnCranks(Sides<Circle>),
    OnCrossLink(Sides<f64>),
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct TwinCrankKinematics {
    cranks: Sides<Crank>,
    axes: Sides<Vector>,
    driven: Side,
    servo_circle: Circle,
    drag: Stage,
    cross_driven: Circle,
    cross: Stage,
    inner: Inner,
}

/// Both cranks' turns, and the joints of the cross link with their velocities.
struct Turned {
    drag_servo: Point,
    turns: Sides<Turn>,
    cross_balls: Sides<(Point, Vector)>,
}

impl TwinCrankKinematics {
    #[inline]
    fn turned(&self, angle: f64) -> Result<Turned, DriveMiss> {
        let (sin, cos) = angle.sin_cos();
        let (drag_servo, drag_rate) = self.servo_circle.at(cos, sin);
        let driven = self.drag.turn(&drag_servo, &drag_rate)?;
        let near = driven.carry(&self.cross_driven);
        let other = self.cross.turn(&near.0, &near.1)?;
        let far = other.carry(&self.cross.circle);
        let by_side = |side: Side| side == self.driven;
        Ok(Turned {
            drag_servo,
            turns: Sides::from_fn(|side| if by_side(side) { driven } else { other }),
            cross_balls: Sides::from_fn(|side| if by_side(side) { near } else { far }),
        })
    }

    #[inline]
    fn inner_of(&self, turned: &Turned) -> InnerBalls {
        let balls = match &self.inner {
            Inner::OnCranks(circles) => {
                Sides::from_fn(|side| turned.turns.get(side).carry(circles.get(side)))
            }
            Inner::OnCrossLink(shares) => {
                let (from, from_rate) = turned.cross_balls.left;
                let (to, to_rate) = turned.cross_balls.right;
                shares.map(|share| {
                    (
                        from + (to - from) * share,
                        from_rate * (1.0 - share) + to_rate * share,
                    )
                })
            }
        };
        InnerBalls {
            points: balls.map(|(point, _)| point),
            rates: balls.map(|(_, rate)| rate),
            stay: turned.turns.left.stay.min(turned.turns.right.stay),
        }
    }

    #[inline]
    pub(super) fn inner_balls(&self, angle: f64) -> Result<InnerBalls, DriveMiss> {
        Ok(self.inner_of(&self.turned(angle)?))
    }

    pub(super) fn inner_bends(&self, angle: f64) -> Result<Sides<Vector>, DriveMiss> {
        let turned = self.turned(angle)?;
        let (driven, other) = (self.driven, self.driven.other());
        let (sin, cos) = angle.sin_cos();
        let (place, rate) = self.servo_circle.at(cos, sin);
        let servo = Moving {
            place,
            rate,
            bend: self.servo_circle.bend(cos, sin),
        };
        let driven_turn = turned.turns.get(driven);
        let driven_bend = self.drag.turn_bend(driven_turn, &servo);
        let near = driven_turn.carry_moving(&self.cross_driven, driven_bend);
        let other_turn = turned.turns.get(other);
        let other_bend = self.cross.turn_bend(other_turn, &near);
        let far = other_turn.carry_moving(&self.cross.circle, other_bend);
        let by_side = |side: Side| side == driven;
        Ok(match &self.inner {
            Inner::OnCranks(circles) => Sides::from_fn(|side| {
                let bend = if by_side(side) {
                    driven_bend
                } else {
                    other_bend
                };
                let turn = turned.turns.get(side);
                turn.carry_moving(circles.get(side), bend).bend
            }),
            Inner::OnCrossLink(shares) => {
                let ends = Sides::from_fn(|side| if by_side(side) { near.bend } else { far.bend });
                shares.map(|share| ends.left * (1.0 - share) + ends.right * share)
            }
        })
    }

    pub(super) fn pose(&self, angle: f64) -> Result<DrivePose, DriveMiss> {
        let turned = self.turned(angle)?;
        let InnerBalls {
            points,
            rates,
            stay,
        } = self.inner_of(&turned);
        let drag_crank = turned.turns.get(self.driven).carry(&self.drag.circle).0;
        Ok(DrivePose {
            rod_inner: points,
            rod_inner_rate: rates,
            carrier: Sides::from_fn(|side| self.carrier(side, &turned, points.get(side))),
            carrier_turn: Sides::from_fn(|side| match &self.inner {
                Inner::OnCranks(_) => self.axes.get(side) * turned.turns.get(side).rate,
                Inner::OnCrossLink(_) => Vector::zeros(),
            }),
            stay,
            joints: DriveJoints::TwinCrank {
                drag_servo: turned.drag_servo,
                drag_crank,
                cross: turned.cross_balls.map(|(point, _)| point),
            },
        })
    }

    /// Motion of what carries a side's inner ball. The cross link may spin, so only its shift counts.
    fn carrier(&self, side: Side, turned: &Turned, ball: &Point) -> Isometry3<f64> {
        match &self.inner {
            Inner::OnCranks(_) => {
                let Turn { cos, sin, .. } = *turned.turns.get(side);
                let axis_point = &self.cranks.get(side).axis_point;
                turned_about(axis_point, self.axes.get(side), cos, sin)
            }
            Inner::OnCrossLink(shares) => {
                let from = self.drawn_cross_ball(Side::Left);
                let to = self.drawn_cross_ball(Side::Right);
                let drawn = from + (to - from) * *shares.get(side);
                let shift = Translation3::from(ball - drawn);
                Isometry3::from_parts(shift, UnitQuaternion::identity())
            }
        }
    }

    fn drawn_cross_ball(&self, side: Side) -> Point {
        let circle = if side == self.driven {
            &self.cross_driven
        } else {
            &self.cross.circle
        };
        circle.at(1.0, 0.0).0
    }
}
