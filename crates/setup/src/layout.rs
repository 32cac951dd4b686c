//! A setup laid out as the points, lengths and angles the solver poses.

use solver::assembly::Assembly;
use solver::axle::FrontAxle;
use solver::error::SolveError;
use solver::frame::{Point, Side, Vector};
use solver::joints::JointLimits;
use steerloft_solver as solver;

use crate::adjustment::{Adjustment, PointName};
use crate::car::Car;
use crate::points::point_of;
use crate::setup::{Chosen, Rods, Setup};
use stacks::stack_places;

mod base;
mod laying;
mod stacks;

pub use laying::Laying;

/// Displacements below this, mm, are none.
pub(crate) const STILL: f64 = 1e-9;

/// A setup laid out: every adjustment applied, before the mechanism is closed.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// What the solver poses.
    pub axle: FrontAxle,
    /// How far the tie rods' ball joints swing, where that is known.
    pub joints: Option<JointLimits>,
    /// The steering servo's case, where one is drawn.
    pub servo: Option<ServoBox>,
    /// The spacers of every stack, where they sit.
    pub stacks: Vec<StackPlace>,
    /// From a tie rod's ball to the open end of its cup, mm.
    pub cup_length: f64,
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
    let Laid { axle, joints } = laid_out(&setup.car, setup.rods, |_, adjustment| {
        setup.chosen.get(&adjustment.name)
    });
    Layout {
        servo: servo_box(setup, &axle),
        stacks: stack_places(setup, &axle),
        cup_length: setup.car.tie_rod.cup_length,
        axle,
        joints,
    }
}

impl Layout {
    /// The mechanism made ready to pose, its ball joints' limits included.
    ///
    /// # Errors
    /// As [`Assembly::new`].
    pub fn assemble(&self) -> Result<Assembly, SolveError> {
        Assembly::within(&self.axle, self.joints)
    }
}

/// A setup's mechanism made ready to pose, its ball joints' limits included.
///
/// # Errors
/// As [`Assembly::new`].
pub fn assemble(setup: &Setup) -> Result<Assembly, SolveError> {
    let Laid { axle, joints } = laid_out(&setup.car, setup.rods, |_, adjustment| {
        setup.chosen.get(&adjustment.name)
    });
    Assembly::within(&axle, joints)
}

/// As [`assemble`], with the axle changed after it has been laid out and before its rods are set.
///
/// # Errors
/// As [`Assembly::new`].
pub fn assemble_changed(
    setup: &Setup,
    change: impl FnOnce(&mut FrontAxle),
) -> Result<Assembly, SolveError> {
    let Laid { mut axle, joints } = laid_out(&setup.car, setup.rods, |_, adjustment| {
        setup.chosen.get(&adjustment.name)
    });
    change(&mut axle);
    Assembly::within(&axle, joints)
}

/// The front axle alone: what [`layout`] gives the solver, without what is only drawn.
#[must_use]
pub fn front_axle(setup: &Setup) -> FrontAxle {
    axle_with(setup, None)
}

/// The front axle with one adjustment, by index, at another value than the chosen one.
pub(crate) fn axle_with(setup: &Setup, instead: Option<(usize, &Chosen)>) -> FrontAxle {
    axle_of(&setup.car, setup.rods, |index, adjustment| match instead {
        Some((other, value)) if other == index => Some(value),
        _ => setup.chosen.get(&adjustment.name),
    })
}

/// The front axle of a car with the value of each adjustment as told; none leaves an adjustment at its base, where
/// the car's points are given.
pub(crate) fn axle_of<'a>(
    car: &Car,
    rods: Rods,
    value_of: impl Fn(usize, &Adjustment) -> Option<&'a Chosen>,
) -> FrontAxle {
    laid_out(car, rods, value_of).axle
}

/// An axle with its ball joints' limits.
struct Laid {
    axle: FrontAxle,
    joints: Option<JointLimits>,
}

fn laid_out<'a>(
    car: &Car,
    rods: Rods,
    value_of: impl Fn(usize, &Adjustment) -> Option<&'a Chosen>,
) -> Laid {
    let mut laying = Laying::at_base(car, rods);
    for (index, adjustment) in car.adjustments.iter().enumerate() {
        if let Some(value) = value_of(index, adjustment) {
            laying.apply(adjustment, value);
        }
    }
    laying.laid(car)
}

/// The case goes with the servo arm's axis.
fn servo_box(setup: &Setup, axle: &FrontAxle) -> Option<ServoBox> {
    let case = setup.car.servo?.case;
    let axis_at_base = setup.car.drive.servo_axis()?;
    let axis_now = point_of(axle, PointName::DriveAxis, Side::Left)?;
    Some(ServoBox {
        centre: case.centre.point() + (axis_now - axis_at_base.point()),
        size: case.size.vector(),
    })
}
