//! Stacks of spacers, each spacer as a slice where it lies between a ball and what carries it.

use steerloft_setup::adjustment::PointName;
use steerloft_setup::layout::{Layout, StackPlace};
use steerloft_solver::Isometry3;
use steerloft_solver::frame::{Point, Side, Vector};
use steerloft_solver::pose::{AxlePose, DrivePose, Link};

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::Role;
use crate::solid::{cuboid, cylinder};

/// How a ball stands on the lever that carries it: stud, spacers, face of the lever.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Seat {
    /// Centre of the ball.
    pub(super) ball: Point,
    /// Centre of the face that the lowest spacer, or the stud's shoulder, lies on.
    pub(super) face: Point,
    /// Unit vector from the face to the ball.
    pub(super) towards_ball: Vector,
    /// Ends of each spacer's axis, from the ball down.
    pub(super) spacers: Vec<[Point; 2]>,
}

impl Seat {
    /// A ball that stands `stand_off` over its lever along the given direction, without spacers.
    pub(super) fn plain(ball: Point, towards_ball: Vector, stand_off: f64) -> Self {
        Self {
            ball,
            face: ball - towards_ball * stand_off,
            towards_ball,
            spacers: Vec::new(),
        }
    }

    /// The seat of a ball with the spacers that the layout has there; none where it has no stack.
    pub(super) fn with_stacks(
        layout: &Layout,
        at: (PointName, Side),
        ball: Point,
        carrier: &Isometry3<f64>,
        stand_off: f64,
    ) -> Option<Self> {
        let mut stacks = stacks_at(layout, at).peekable();
        let first = carrier.rotation * stacks.peek()?.direction;
        let mut seat = Self::plain(ball, first, stand_off);
        for stack in stacks {
            seat.towards_ball = carrier.rotation * stack.direction;
            for thickness in stack.spacers.iter().rev() {
                let below = seat.face - seat.towards_ball * *thickness;
                seat.spacers.push([seat.face, below]);
                seat.face = below;
            }
        }
        Some(seat)
    }
}

fn stacks_at(
    layout: &Layout,
    (point, side): (PointName, Side),
) -> impl Iterator<Item = &StackPlace> {
    layout
        .stacks
        .iter()
        .filter(move |stack| stack.point == point && stack.side == side)
}

/// Adds stud and spacers of a ball.
pub(super) fn add_seat(parts: &mut Parts, seat: &Seat, side: Side, sizes: Proportions) {
    let view = parts.view;
    let stud = (
        Role::Stud,
        cylinder(view, [seat.face, seat.ball], sizes.stud()),
    );
    parts.add(Layer::Linkage, &seat.ball, Some(side), [stud]);
    for &slice in &seat.spacers {
        add_slice(parts, slice, side, sizes);
    }
}

fn add_slice(parts: &mut Parts, slice: [Point; 2], side: Side, sizes: Proportions) {
    let outline = cylinder(parts.view, slice, sizes.spacer());
    let middle = slice[0] + (slice[1] - slice[0]) * 0.5;
    parts.add(
        Layer::Linkage,
        &middle,
        Some(side),
        [(Role::Spacer, outline)],
    );
}

/// Adds the stacks that stand on the chassis: under hinges and bearings.
pub(super) fn add_on_chassis(
    parts: &mut Parts,
    layout: &Layout,
    pose: &AxlePose,
    sizes: Proportions,
) {
    for stack in &layout.stacks {
        let carrier = match stack.point {
            PointName::SteeringArm
            | PointName::RodInner
            | PointName::DriveAxis
            | PointName::DriveDirection
            | PointName::SlideDirection
            | PointName::CrankDirection
            | PointName::CrossBall
            | PointName::DragServo
            | PointName::DragCrank => continue,
            PointName::WheelCentre | PointName::SpinAxis => pose.corners.get(stack.side).knuckle,
            PointName::KingpinLower
            | PointName::KingpinUpper
            | PointName::UpperHingeFront
            | PointName::UpperHingeRear
            | PointName::LowerHingeFront
            | PointName::LowerHingeRear
            | PointName::CrankAxis => Isometry3::identity(),
        };
        let direction = carrier.rotation * stack.direction;
        add_under(parts, stack, carrier * stack.top, direction, sizes);
    }
}

/// Adds the stacks under the balls of drag link and cross link.
///
/// They stand along the axis of the crank or arm that carries them, a direction that does not turn with it.
pub(super) fn add_on_cranks(
    parts: &mut Parts,
    layout: &Layout,
    drive: &DrivePose,
    sizes: Proportions,
) {
    let links: Vec<Link> = layout.axle.drive.links(drive).collect();
    let [drag, cross] = links[..] else {
        return;
    };
    for stack in &layout.stacks {
        let ball = match (stack.point, stack.side) {
            (PointName::DragServo, _) => drag.from,
            (PointName::DragCrank, _) => drag.to,
            (PointName::CrossBall, Side::Left) => cross.from,
            (PointName::CrossBall, Side::Right) => cross.to,
            _ => continue,
        };
        add_under(parts, stack, ball, stack.direction, sizes);
    }
}

/// Adds the spacers of a stack that ends under a point.
fn add_under(
    parts: &mut Parts,
    stack: &StackPlace,
    point: Point,
    direction: Vector,
    sizes: Proportions,
) {
    let mut top = point - direction * sizes.stand_off();
    for thickness in stack.spacers.iter().rev() {
        let below = top - direction * *thickness;
        add_slice(parts, [top, below], stack.side, sizes);
        top = below;
    }
}

/// Adds the packing under the servo's case, on the side that its mounts stand on.
pub(super) fn add_packing(parts: &mut Parts, layout: &Layout, sizes: Proportions) {
    let view = parts.view;
    let mut depth_used = 0.0;
    for stack in stacks_at(layout, (PointName::DriveAxis, Side::Left)) {
        let Some(servo) = &layout.servo else {
            let mut top = stack.top;
            for thickness in stack.spacers.iter().rev() {
                let below = top - stack.direction * *thickness;
                add_slice(parts, [top, below], Side::Left, sizes);
                top = below;
            }
            continue;
        };
        let axis = stack.direction.iamax();
        let sign = stack.direction[axis].signum();
        for thickness in stack.spacers.iter().rev() {
            let mut size = servo.size * 0.86;
            size[axis] = *thickness;
            let mut centre = servo.centre;
            centre[axis] -= sign * (servo.size[axis] / 2.0 + depth_used + thickness / 2.0);
            depth_used += thickness;
            let slice = (Role::Spacer, cuboid(view, &centre, &size));
            parts.add(Layer::Case, &centre, None, [slice]);
        }
    }
}
