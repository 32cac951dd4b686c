//! Stacks of spacers, each spacer as a slice where it lies between a ball and what carries it.

use steerloft_setup::adjustment::PointName;
use steerloft_setup::layout::{Layout, StackPlace};
use steerloft_solver::Isometry3;
use steerloft_solver::frame::{Point, Side, Vector};
use steerloft_solver::pose::{AxlePose, Link};

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use crate::drawing::Role;
use crate::solid::{cuboid, cylinder};

/// Size of packing across the servo's case, as a share of the case.
const PACKING_SHARE: f64 = 0.86;

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
    let sight = parts.sight;
    let stud = (
        Role::Stud,
        cylinder(sight, [seat.face, seat.ball], sizes.stud()),
    );
    parts.add(Layer::Linkage, &seat.ball, Some(side), [stud]);
    for &slice in &seat.spacers {
        add_slice(parts, slice, side, sizes);
    }
}

fn add_slice(parts: &mut Parts, slice: [Point; 2], side: Side, sizes: Proportions) {
    let outline = cylinder(parts.sight, slice, sizes.spacer());
    let middle = slice[0] + (slice[1] - slice[0]) * 0.5;
    parts.add(
        Layer::Linkage,
        &middle,
        Some(side),
        [(Role::Spacer, outline)],
    );
}

/// Where a stack of spacers stands in a pose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StackStand {
    /// Index of its adjustment in the car.
    pub adjustment: usize,
    /// The point that the stack carries.
    pub point: PointName,
    /// Its side; what both sides share is there once, as the left side's.
    pub side: Side,
    /// Its end towards what it carries, chassis axes, mm.
    pub top: Point,
    /// Its other end; the same for an empty stack.
    pub foot: Point,
    /// Unit vector along the stack, towards what it carries.
    pub direction: Vector,
}

/// Where every stack of the car stands in a pose, those without spacers included.
#[must_use]
pub fn stack_stands(layout: &Layout, pose: &AxlePose) -> Vec<StackStand> {
    let sizes = Proportions::of(pose);
    let mut stands: Vec<StackStand> = Vec::new();
    for stack in &layout.stacks {
        let Some((mut top, direction)) = upper_end(layout, stack, pose, sizes) else {
            continue;
        };
        let above = |stand: &&StackStand| stand.point == stack.point && stand.side == stack.side;
        if let Some(above) = stands.iter().rfind(above) {
            top = above.foot;
        }
        let height: f64 = stack.spacers.iter().sum();
        stands.push(StackStand {
            adjustment: stack.adjustment,
            point: stack.point,
            side: stack.side,
            top,
            foot: top - direction * height,
            direction,
        });
    }
    stands
}

/// Upper end and direction of the first stack under a point; none for a direction, under which nothing stands.
fn upper_end(
    layout: &Layout,
    stack: &StackPlace,
    pose: &AxlePose,
    sizes: Proportions,
) -> Option<(Point, Vector)> {
    if stack.point == PointName::DriveAxis {
        return Some(match &layout.servo {
            Some(servo) => {
                let (axis, sign) = packing_axis(&stack.direction);
                let mut face = servo.centre;
                face[axis] -= sign * servo.size[axis] / 2.0;
                let mut direction = Vector::zeros();
                direction[axis] = sign;
                (face, direction)
            }
            None => (stack.top, stack.direction),
        });
    }
    let (point, carrier) = carried_point(layout, stack, pose)?;
    let direction = carrier.rotation * stack.direction;
    Some((point - direction * sizes.stand_off(), direction))
}

/// The point that a stack carries in a pose, and the motion of the body that it stands on.
fn carried_point(
    layout: &Layout,
    stack: &StackPlace,
    pose: &AxlePose,
) -> Option<(Point, Isometry3<f64>)> {
    let corner = pose.corners.get(stack.side);
    // Stacks on a crank stand along its axis, a direction that does not turn with it.
    let still = Isometry3::identity();
    Some(match stack.point {
        PointName::SteeringArm => (corner.steering_arm, corner.knuckle),
        PointName::RodInner => (
            *pose.drive.rod_inner.get(stack.side),
            *pose.drive.carrier.get(stack.side),
        ),
        PointName::WheelCentre => (corner.wheel_centre, corner.knuckle),
        PointName::KingpinLower => (corner.kingpin_lower, still),
        PointName::KingpinUpper => (corner.kingpin_upper, still),
        PointName::UpperHingeFront
        | PointName::UpperHingeRear
        | PointName::LowerHingeFront
        | PointName::LowerHingeRear
        | PointName::CrankAxis
        | PointName::DriveAxis => (stack.top, still),
        PointName::CrossBall | PointName::DragServo | PointName::DragCrank => {
            (crank_ball(layout, stack, pose)?, still)
        }
        PointName::SpinAxis
        | PointName::DriveDirection
        | PointName::SlideDirection
        | PointName::CrankDirection => return None,
    })
}

/// A ball of drag link or cross link.
fn crank_ball(layout: &Layout, stack: &StackPlace, pose: &AxlePose) -> Option<Point> {
    let mut links = layout.axle.drive.links(&pose.drive);
    let (drag, cross): (Link, Link) = (links.next()?, links.next()?);
    match (stack.point, stack.side) {
        (PointName::DragServo, _) => Some(drag.from),
        (PointName::DragCrank, _) => Some(drag.to),
        (PointName::CrossBall, Side::Left) => Some(cross.from),
        (PointName::CrossBall, Side::Right) => Some(cross.to),
        _ => None,
    }
}

/// Adds the stacks that stand under a hinge, a bearing, a shaft or a ball of the steering cranks.
///
/// Those under a tie rod's balls belong to the balls' seats, and packing to the servo's case.
pub(super) fn add_under_points(
    parts: &mut Parts,
    layout: &Layout,
    pose: &AxlePose,
    sizes: Proportions,
) {
    for (stack, stand) in placed(layout, pose) {
        let belongs_elsewhere = match stack.point {
            PointName::SteeringArm | PointName::RodInner => true,
            PointName::DriveAxis => layout.servo.is_some(),
            _ => false,
        };
        if !belongs_elsewhere {
            for slice in slices(stack, &stand) {
                add_slice(parts, slice, stack.side, sizes);
            }
        }
    }
}

/// Adds the packing under the servo's case, on the side that its mounts stand on.
pub(super) fn add_packing(parts: &mut Parts, layout: &Layout, pose: &AxlePose) {
    let Some(servo) = &layout.servo else {
        return;
    };
    let view = parts.sight.view;
    for (stack, stand) in placed(layout, pose) {
        if stack.point != PointName::DriveAxis {
            continue;
        }
        let (axis, _) = packing_axis(&stack.direction);
        for slice in slices(stack, &stand) {
            let mut centre = servo.centre;
            centre[axis] = f64::midpoint(slice[0][axis], slice[1][axis]);
            let mut size = servo.size * PACKING_SHARE;
            size[axis] = (slice[1][axis] - slice[0][axis]).abs();
            let packing = (Role::Spacer, cuboid(view, &centre, &size));
            parts.add(Layer::Case, &centre, None, [packing]);
        }
    }
}

/// Stacks with where they stand.
fn placed<'a>(
    layout: &'a Layout,
    pose: &AxlePose,
) -> impl Iterator<Item = (&'a StackPlace, StackStand)> {
    let stands = stack_stands(layout, pose).into_iter();
    stands.filter_map(|stand| {
        let stack = layout.stacks.iter().find(|stack| {
            stack.adjustment == stand.adjustment
                && stack.point == stand.point
                && stack.side == stand.side
        })?;
        Some((stack, stand))
    })
}

/// Ends of each spacer of a stack, from its upper end down.
fn slices(stack: &StackPlace, stand: &StackStand) -> Vec<[Point; 2]> {
    let mut top = stand.top;
    let mut slices = Vec::new();
    for thickness in stack.spacers.iter().rev() {
        let below = top - stand.direction * *thickness;
        slices.push([top, below]);
        top = below;
    }
    slices
}

/// The chassis axis that packing lies along, and its sign from the packing to the case.
fn packing_axis(direction: &Vector) -> (usize, f64) {
    let axis = direction.iamax();
    (axis, direction[axis].signum())
}
