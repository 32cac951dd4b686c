//! A front axle as bodies and joints, either all in one system, as a general program takes it, or piece by piece: the
//! drive first, then each corner with its rod's inner ball where the drive has it, which keeps the systems as small as
//! the mechanism allows.

use steerloft_solver::axle::{Corner, FrontAxle};
use steerloft_solver::drive::{Crank, Drive, InnerBallsOn, Slider, SwingArm, TwinCrank};
use steerloft_solver::frame::Side;
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::{Assembly, Point, Sides, Vector};

use super::{Body, Joint, Linkage, On};

/// How an axle is put into systems of equations.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Division {
    /// One system.
    Whole,
    /// Drive, left corner, right corner.
    Pieces,
}

/// A front axle to be closed in general terms, warm from pose to pose.
#[derive(Debug, Clone)]
pub(crate) struct GeneralAxle {
    axle: FrontAxle,
    rod_lengths: Sides<f64>,
    division: Division,
    /// The drive, or the whole axle.
    first: Linkage,
    /// The corners where they are systems of their own.
    corners: Sides<Linkage>,
    /// Index of each knuckle among its system's bodies.
    knuckles: Sides<usize>,
}

/// A body that turns about a line of the chassis: five equations.
fn hinge(body: usize, point: Point, direction: &Vector, joints: &mut Vec<Joint>) {
    let direction = direction.normalize();
    joints.push(Joint::Ball(On::Body(body, point), On::Chassis(point)));
    joints.push(Joint::OnLine {
        point: On::Body(body, point + direction * 10.0),
        body: None,
        line: point,
        direction,
    });
}

/// A body on a hinge, turned by an angle: one equation more.
fn turned_hinge(body: usize, crank: &Crank, angle: f64, joints: &mut Vec<Joint>) {
    let axis = crank.axis_direction.normalize();
    hinge(body, crank.axis_point, &axis, joints);
    let across = if axis.x.abs() < 0.8 {
        Vector::x()
    } else {
        Vector::y()
    };
    let drawn = axis.cross(&across).normalize();
    let ahead = axis.cross(&drawn);
    joints.push(Joint::Square {
        body,
        drawn,
        fixed: ahead * angle.cos() - drawn * angle.sin(),
    });
}

impl GeneralAxle {
    /// The axle of an assembly, with its rods as long as they have been set there, as drawn.
    pub(crate) fn new(assembly: &Assembly, division: Division) -> Self {
        let axle = *assembly.axle();
        let mut first = drive_at(&axle.drive, 0.0);
        let mut corners = axle.corners.map(|corner| Linkage {
            bodies: corner_bodies(&corner),
            joints: vec![],
        });
        let mut knuckles = Sides::both(0);
        if division == Division::Whole {
            for side in Side::BOTH {
                *knuckles.get_mut(side) = first.bodies.len();
                first.bodies.append(&mut corners.get_mut(side).bodies);
            }
        }
        Self {
            axle,
            rod_lengths: assembly.rod_lengths(),
            division,
            first,
            corners,
            knuckles,
        }
    }

    /// Closes the axle at an input and a wheel travel, from where it is; whether it did.
    pub(crate) fn close(&mut self, input: f64, travel: f64) -> bool {
        self.first.joints = drive_at(&self.axle.drive, input).joints;
        if self.division == Division::Whole {
            for side in Side::BOTH {
                let inner = inner_ball(&self.axle.drive, side);
                self.add_corner_joints(side, inner, travel);
            }
            return self.first.close();
        }
        if !self.first.close() {
            return false;
        }
        Side::BOTH.into_iter().all(|side| {
            let inner = inner_ball(&self.axle.drive, side).place(&self.first.bodies);
            self.add_corner_joints(side, On::Chassis(inner), travel);
            self.corners.get_mut(side).close()
        })
    }

    fn add_corner_joints(&mut self, side: Side, inner: On, travel: f64) {
        let joints = CornerJoints {
            corner: self.axle.corners.get(side),
            knuckle: *self.knuckles.get(side),
            inner,
            rod: *self.rod_lengths.get(side),
            travel,
        };
        match self.division {
            Division::Whole => joints.add_to(&mut self.first.joints),
            Division::Pieces => {
                let linkage = self.corners.get_mut(side);
                linkage.joints.clear();
                joints.add_to(&mut linkage.joints);
            }
        }
    }

    /// The knuckle of a side as it is now.
    pub(crate) fn knuckle(&self, side: Side) -> &Body {
        let linkage = match self.division {
            Division::Whole => &self.first,
            Division::Pieces => self.corners.get(side),
        };
        &linkage.bodies[*self.knuckles.get(side)]
    }

    /// Upper less lower point of a side's steering axis as it lies now.
    pub(crate) fn kingpin(&self, side: Side) -> Vector {
        let corner = self.axle.corners.get(side);
        let drawn = &corner.knuckle;
        let knuckle = self.knuckle(side);
        let lower = knuckle.point(&drawn.kingpin_lower);
        match corner.suspension {
            Suspension::Strut { .. } => drawn.kingpin_upper - lower,
            _ => knuckle.point(&drawn.kingpin_upper) - lower,
        }
    }
}

/// The knuckle, then its arms.
fn corner_bodies(corner: &Corner) -> Vec<Body> {
    let mut bodies = vec![Body::drawn(corner.knuckle.kingpin_upper)];
    match &corner.suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => {}
        Suspension::SwingingUpperArm(arm) | Suspension::Strut { lower: arm, .. } => {
            bodies.push(Body::drawn(arm.ball));
        }
        Suspension::DoubleWishbone { lower, upper } => {
            bodies.push(Body::drawn(lower.ball));
            bodies.push(Body::drawn(upper.ball));
        }
    }
    bodies
}

/// What holds a corner's bodies.
struct CornerJoints<'a> {
    corner: &'a Corner,
    /// Index of the knuckle; arms follow.
    knuckle: usize,
    inner: On,
    rod: f64,
    travel: f64,
}

impl CornerJoints<'_> {
    fn on_knuckle(&self, point: Point) -> On {
        On::Body(self.knuckle, point)
    }

    fn add_to(&self, joints: &mut Vec<Joint>) {
        let drawn = &self.corner.knuckle;
        let (lower, upper) = (drawn.kingpin_lower, drawn.kingpin_upper);
        let axis = (upper - lower).normalize();
        joints.push(Joint::Link(
            self.on_knuckle(drawn.steering_arm),
            self.inner,
            self.rod,
        ));
        if self.corner.suspension.has_travel() {
            let height = drawn.wheel_centre.z + self.travel;
            joints.push(Joint::Height(self.on_knuckle(drawn.wheel_centre), height));
        }
        match &self.corner.suspension {
            Suspension::FixedKingpin => hinge(self.knuckle, lower, &axis, joints),
            Suspension::SlidingKingpin => {
                for end in [lower, upper] {
                    joints.push(Joint::OnLine {
                        point: self.on_knuckle(end),
                        body: None,
                        line: lower,
                        direction: axis,
                    });
                }
            }
            Suspension::SwingingUpperArm(arm) => {
                self.carried_by(arm, 1, upper, joints);
                self.slides_through(lower, upper, axis, joints);
            }
            Suspension::DoubleWishbone {
                lower: lower_arm,
                upper: upper_arm,
            } => {
                self.carried_by(lower_arm, 1, lower, joints);
                self.carried_by(upper_arm, 2, upper, joints);
            }
            Suspension::Strut {
                lower: arm,
                slide_direction,
            } => {
                self.carried_by(arm, 1, lower, joints);
                self.slides_through(upper, upper, slide_direction.normalize(), joints);
            }
        }
    }

    /// An arm on its hinge carries a point of the knuckle.
    fn carried_by(&self, arm: &Arm, after: usize, ball: Point, joints: &mut Vec<Joint>) {
        let body = self.knuckle + after;
        hinge(body, arm.hinge[0], &(arm.hinge[1] - arm.hinge[0]), joints);
        joints.push(Joint::Ball(self.on_knuckle(ball), On::Body(body, arm.ball)));
    }

    /// A line of the knuckle runs through a point of the chassis.
    fn slides_through(
        &self,
        fixed: Point,
        line: Point,
        direction: Vector,
        joints: &mut Vec<Joint>,
    ) {
        joints.push(Joint::OnLine {
            point: On::Chassis(fixed),
            body: Some(self.knuckle),
            line,
            direction,
        });
    }
}

fn drive_at(drive: &Drive, input: f64) -> Linkage {
    match drive {
        Drive::SwingArm(arm) => swing_arm_at(arm, input),
        Drive::Slider(rack) => slider_at(rack, input),
        Drive::TwinCrank(cranks) => twin_crank_at(cranks, input),
    }
}

fn swing_arm_at(arm: &SwingArm, input: f64) -> Linkage {
    let mut joints = Vec::with_capacity(3);
    let crank = Crank {
        axis_point: arm.axis_point,
        axis_direction: arm.axis_direction,
    };
    turned_hinge(0, &crank, input, &mut joints);
    Linkage {
        bodies: vec![Body::drawn(arm.axis_point)],
        joints,
    }
}

fn slider_at(rack: &Slider, input: f64) -> Linkage {
    let left = rack.rod_inner.left;
    let shift = rack.direction.normalize() * input;
    let square = |drawn: Vector, fixed: Vector| Joint::Square {
        body: 0,
        drawn,
        fixed,
    };
    Linkage {
        bodies: vec![Body::drawn(left)],
        joints: vec![
            Joint::Ball(On::Body(0, left), On::Chassis(left + shift)),
            square(Vector::x(), Vector::y()),
            square(Vector::y(), Vector::z()),
            square(Vector::z(), Vector::x()),
        ],
    }
}

/// Index of a side's crank among the drive's bodies; the servo arm comes first.
fn crank_of(side: Side) -> usize {
    match side {
        Side::Left => 1,
        Side::Right => 2,
    }
}

fn twin_crank_at(drive: &TwinCrank, input: f64) -> Linkage {
    let mut joints = Vec::with_capacity(9);
    turned_hinge(0, &drive.servo, input, &mut joints);
    for side in Side::BOTH {
        let crank = drive.cranks.get(side);
        hinge(
            crank_of(side),
            crank.axis_point,
            &crank.axis_direction,
            &mut joints,
        );
    }
    let (left, right) = (drive.cross_balls.left, drive.cross_balls.right);
    let drag = drive
        .drag_length
        .unwrap_or((drive.drag_crank - drive.drag_servo).norm());
    let cross = drive.cross_length.unwrap_or((left - right).norm());
    let driven = On::Body(crank_of(drive.driven), drive.drag_crank);
    joints.push(Joint::Link(On::Body(0, drive.drag_servo), driven, drag));
    joints.push(Joint::Link(On::Body(1, left), On::Body(2, right), cross));
    Linkage {
        bodies: vec![
            Body::drawn(drive.servo.axis_point),
            Body::drawn(drive.cranks.left.axis_point),
            Body::drawn(drive.cranks.right.axis_point),
        ],
        joints,
    }
}

/// A side's inner ball by the drive's body that carries it.
fn inner_ball(drive: &Drive, side: Side) -> On {
    match drive {
        Drive::SwingArm(arm) => On::Body(0, *arm.rod_inner.get(side)),
        Drive::Slider(rack) => On::Body(0, *rack.rod_inner.get(side)),
        Drive::TwinCrank(drive) => {
            let ball = *drive.rod_inner.get(side);
            match drive.inner_on {
                InnerBallsOn::Cranks => On::Body(crank_of(side), ball),
                InnerBallsOn::CrossLink => {
                    let Sides { left, right } = drive.cross_balls;
                    let line = right - left;
                    let share = line.dot(&(ball - left)) / line.norm_squared();
                    On::Between([(1, left), (2, right)], share)
                }
            }
        }
    }
}
