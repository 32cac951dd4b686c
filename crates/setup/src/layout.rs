//! A setup laid out as the points, lengths and angles the solver poses.

use solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use solver::drive::{Drive as AxleDrive, SwingArm};
use solver::frame::{Point, Road, Side, Sides, Vector};
use solver::suspension::{Arm, Suspension as Carrier};
use steerloft_solver as solver;

use crate::adjustment::{Kind, PointName};
use crate::car::{Car, CornerPoints, Drive, RightCorner, Suspension};
use crate::effects::apply;
use crate::points::point_of;
use crate::setup::{Chosen, Rods, Setup};

/// A setup laid out: every adjustment applied, before the mechanism is closed.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// What the solver poses.
    pub axle: FrontAxle,
    /// The steering servo's case, where one is drawn.
    pub servo: Option<ServoBox>,
    /// The spacers of every stack, where they sit.
    pub stacks: Vec<StackPlace>,
}

/// The servo's case, a box along chassis axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ServoBox {
    /// Centre, chassis axes, mm.
    pub centre: Point,
    /// Size along x, y and z, mm.
    pub size: Vector,
}

/// A stack of spacers under one point.
#[derive(Debug, Clone, PartialEq)]
pub struct StackPlace {
    /// Index of the adjustment in the car.
    pub adjustment: usize,
    /// The point that the stack carries.
    pub point: PointName,
    /// Its side; what both sides share is there once, as the left side's.
    pub side: Side,
    /// The point as drawn, chassis axes, mm: where the stack ends.
    pub top: Point,
    /// Unit direction from the stack's foot to the point.
    pub direction: Vector,
    /// Thicknesses in mm, thickest first; none for an empty stack.
    pub spacers: Vec<f64>,
}

/// Lays a setup out. Effects apply in the order in which the car lists its adjustments.
#[must_use]
pub fn layout(setup: &Setup) -> Layout {
    let axle = front_axle(setup);
    Layout {
        servo: servo_box(setup, &axle),
        stacks: stack_places(setup, &axle),
        axle,
    }
}

/// The front axle alone: what [`layout`] gives the solver, without what is only drawn.
#[must_use]
pub fn front_axle(setup: &Setup) -> FrontAxle {
    axle_with(setup, None)
}

/// The front axle with one adjustment, by index, at another value than the chosen one.
pub(crate) fn axle_with(setup: &Setup, instead: Option<(usize, &Chosen)>) -> FrontAxle {
    let mut axle = axle_at_base(&setup.car, setup.rods);
    for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
        match instead {
            Some((other, value)) if other == index => apply(&mut axle, adjustment, value),
            _ => apply(&mut axle, adjustment, &setup.value_of(adjustment)),
        }
    }
    axle
}

fn axle_at_base(car: &Car, rods: Rods) -> FrontAxle {
    let left = corner(&car.left, Side::Left);
    let right = match &car.right {
        RightCorner::Mirrored => left.mirrored(),
        RightCorner::Given(points) => corner(points, Side::Right),
    };
    FrontAxle {
        corners: Sides::new(left, right),
        drive: drive(&car.drive),
        rods: rods_of(rods),
        wheelbase: car.wheelbase,
        station: 0.0,
        road: Road {
            ride_height: car.ride_height,
            pitch: car.pitch.to_radians(),
            roll: car.roll.to_radians(),
        },
    }
}

fn corner(points: &CornerPoints, side: Side) -> Corner {
    let kingpin_upper = points.kingpin_upper.point();
    Corner {
        knuckle: Knuckle {
            wheel_centre: points.wheel_centre.point(),
            spin_axis: spin_axis_at_camber(side, points.camber.to_radians()),
            kingpin_lower: points.kingpin_lower.point(),
            kingpin_upper,
            steering_arm: points.steering_arm.point(),
            tyre_radius: points.tyre_radius,
            tyre_width: points.tyre_width,
        },
        suspension: match &points.suspension {
            Suspension::FixedKingpin => Carrier::FixedKingpin,
            Suspension::SlidingKingpin => Carrier::SlidingKingpin,
            Suspension::SwingingUpperArm {
                upper_hinge_front,
                upper_hinge_rear,
            } => Carrier::SwingingUpperArm(Arm {
                hinge: [upper_hinge_front.point(), upper_hinge_rear.point()],
                ball: kingpin_upper,
            }),
        },
    }
}

fn drive(drive: &Drive) -> AxleDrive {
    match drive {
        Drive::SwingArm {
            axis_point,
            axis_direction,
            rod_inner_left,
            rod_inner_right,
        } => AxleDrive::SwingArm(SwingArm {
            axis_point: axis_point.point(),
            axis_direction: axis_direction.vector(),
            rod_inner: Sides::new(rod_inner_left.point(), rod_inner_right.point()),
        }),
    }
}

fn rods_of(rods: Rods) -> Sides<Rod> {
    match rods {
        Rods::HoldToe(toe) => Sides::both(Rod::HoldToe(toe.to_radians())),
        Rods::FixedLength(length) => Sides::both(Rod::FixedLength(length)),
        Rods::FixedLengths { left, right } => {
            Sides::new(Rod::FixedLength(left), Rod::FixedLength(right))
        }
    }
}

/// The case goes with a point of the drive's axis.
fn servo_box(setup: &Setup, axle: &FrontAxle) -> Option<ServoBox> {
    let case = setup.car.servo?;
    let Drive::SwingArm { axis_point, .. } = &setup.car.drive;
    let axis_now = point_of(axle, PointName::DriveAxis, Side::Left)?;
    Some(ServoBox {
        centre: case.centre.point() + (axis_now - axis_point.point()),
        size: case.size.vector(),
    })
}

fn stack_places(setup: &Setup, axle: &FrontAxle) -> Vec<StackPlace> {
    let adjustments = setup.car.adjustments.iter().enumerate();
    adjustments
        .flat_map(|(index, adjustment)| match &adjustment.kind {
            Kind::Stack { .. } => places_of_stack(setup, axle, index),
            Kind::Slide { .. } | Kind::Choice { .. } => Vec::new(),
        })
        .collect()
}

/// Where the stack of one adjustment sits: under the points it moves that are nearest the chassis, since what
/// else moves is carried by those.
fn places_of_stack(setup: &Setup, axle: &FrontAxle, index: usize) -> Vec<StackPlace> {
    let value = setup.value(index);
    let Chosen::Stack(total) = value else {
        return Vec::new();
    };
    let one_more = axle_with(setup, Some((index, &Chosen::Stack(total + 1.0))));
    let spacers = setup.car.adjustments[index]
        .spacers_for(total)
        .unwrap_or_default();
    for carriers in FROM_THE_CHASSIS {
        let places: Vec<StackPlace> = carriers
            .iter()
            .flat_map(|&point| Side::BOTH.map(|side| (point, side)))
            .filter(|(point, side)| !point.is_shared() || *side == Side::Left)
            .filter_map(|(point, side)| {
                let top = point_of(axle, point, side)?;
                let per_millimetre = point_of(&one_more, point, side)? - top;
                Some(StackPlace {
                    adjustment: index,
                    point,
                    side,
                    top,
                    direction: per_millimetre.try_normalize(STILL)?,
                    spacers: spacers.clone(),
                })
            })
            .collect();
        if !places.is_empty() {
            return places;
        }
    }
    Vec::new()
}

/// Displacements below this, mm, are none.
pub(crate) const STILL: f64 = 1e-9;

/// Points that a stack can carry, those nearest the chassis first.
const FROM_THE_CHASSIS: [&[PointName]; 7] = [
    &[PointName::DriveAxis],
    &[PointName::UpperHingeFront, PointName::UpperHingeRear],
    &[PointName::KingpinLower],
    &[PointName::KingpinUpper],
    &[PointName::RodInner],
    &[PointName::SteeringArm],
    &[PointName::WheelCentre],
];
