//! A corner made ready to close, and its bodies placed at given coordinates.

use super::fixed_axis::FixedAxis;
use crate::axle::{Corner, Knuckle};
use crate::error::{Fault, SolveError};
use crate::frame::{Point, Side, Vector};
use crate::pose::Coordinates;
use crate::suspension::axis_frame::AxisFrame;
use crate::suspension::{Carriage, Kinematics, drawn_axis};
use crate::twist::Twist;

/// A corner made ready to close.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct CornerClosure {
    pub(crate) side: Side,
    pub(crate) knuckle: Knuckle,
    pub(crate) kinematics: Kinematics,
    drawn: Drawn,
    /// The quicker closure of a steering axis fixed in the chassis.
    pub(crate) fixed_axis: Option<FixedAxis>,
    pub(crate) has_travel: bool,
    /// A typical length of the corner, mm: turns angles into lengths where the two are compared.
    pub(crate) lever: f64,
    /// Sign of the determinant with a rod as the steering condition: which of the two ways the linkage can be
    /// put together is meant.
    pub(crate) branch: f64,
    /// What a residual must come below, mm: a few roundings of the largest coordinate.
    pub(crate) tolerance: f64,
}

/// The knuckle as drawn, seen from its steering axis.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Drawn {
    axis: AxisFrame,
    /// Coordinates of the wheel centre along the axis frame.
    wheel_centre: Vector,
    /// Coordinates of the outer ball.
    steering_arm: Vector,
    /// Components of the spin axis.
    spin_axis: Vector,
}

impl Drawn {
    #[inline]
    fn new(axis: AxisFrame, knuckle: &Knuckle) -> Self {
        Self {
            wheel_centre: axis.local(&knuckle.wheel_centre),
            steering_arm: axis.local(&knuckle.steering_arm),
            spin_axis: axis.components(&knuckle.spin_axis),
            axis,
        }
    }
}

/// The knuckle placed at given coordinates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Placed {
    /// The steering axis with the knuckle turned about it.
    pub(crate) frame: AxisFrame,
    pub(crate) wheel_centre: Point,
    pub(crate) steering_arm: Point,
    /// Motion of the knuckle per unit of the suspension coordinate.
    pub(crate) by_suspension: Twist,
    /// Rate of the unit steering axis per unit of the suspension coordinate.
    pub(crate) axis_rate: Vector,
    /// How fast the steering axis turns in the knuckle per unit of the suspension coordinate, in chassis axes.
    pub(crate) axis_turn: Vector,
    /// Change of the suspension coordinate over which the members stay together, at the least.
    pub(crate) stay: f64,
}

impl Placed {
    /// Motion of the knuckle per rad of the steering coordinate.
    #[inline]
    pub(crate) fn by_steering(&self) -> Twist {
        Twist::rotation(self.frame.axis, self.frame.origin)
    }
}

impl CornerClosure {
    pub(crate) fn new(side: Side, corner: &Corner) -> Result<Self, SolveError> {
        let degenerate = |fault| SolveError::Degenerate {
            side: Some(side),
            fault,
        };
        let spin_axis = corner
            .knuckle
            .spin_axis
            .try_normalize(f64::MIN_POSITIVE)
            .ok_or(degenerate(Fault::SpinAxisHasNoDirection))?;
        let knuckle = Knuckle {
            spin_axis,
            ..corner.knuckle
        };
        let axis = drawn_axis(&knuckle).map_err(degenerate)?;
        let kinematics = corner
            .suspension
            .kinematics(&knuckle, axis)
            .map_err(degenerate)?;
        let lever = steering_lever(&knuckle);
        let magnitude = [
            knuckle.wheel_centre,
            knuckle.steering_arm,
            knuckle.kingpin_upper,
            knuckle.kingpin_lower,
        ]
        .iter()
        .fold(0.0_f64, |most, point| most.max(point.coords.amax()));
        if lever <= 1e-9 * magnitude {
            return Err(degenerate(Fault::SteeringArmOnKingpin));
        }
        let drawn = Drawn::new(axis, &knuckle);
        Ok(Self {
            side,
            knuckle,
            kinematics,
            fixed_axis: kinematics.is_fixed_axis().then(|| {
                let slides = corner.suspension.has_travel();
                FixedAxis::new(&axis, &drawn.wheel_centre, &drawn.steering_arm, slides)
            }),
            drawn,
            has_travel: corner.suspension.has_travel(),
            lever,
            branch: 1.0,
            tolerance: 16.0 * f64::EPSILON * magnitude,
        })
    }

    /// Places the knuckle, or nothing where the suspension cannot be put together.
    #[inline]
    pub(crate) fn place(&self, at: &Coordinates) -> Option<Placed> {
        self.place_on(&self.kinematics.carriage(at.suspension)?, at)
    }

    /// Places the knuckle on a carriage that belongs to the coordinates.
    #[inline]
    pub(crate) fn place_on(&self, carriage: &Carriage, at: &Coordinates) -> Option<Placed> {
        let (sin, cos) = at.steering.sin_cos();
        let frame = carriage.frame.turned(cos, sin);
        let mut placed = Placed {
            wheel_centre: frame.point(&self.drawn.wheel_centre),
            steering_arm: frame.point(&self.drawn.steering_arm),
            by_suspension: carriage.motion,
            axis_rate: carriage.axis_rate,
            axis_turn: Vector::zeros(),
            stay: carriage.stay,
            frame,
        };
        if self.kinematics.moves_axis_in_knuckle() {
            self.place_on_moving_axis(&mut placed, at)?;
        }
        Some(placed)
    }

    /// Places the points again where the steering axis moves in the knuckle.
    fn place_on_moving_axis(&self, placed: &mut Placed, at: &Coordinates) -> Option<()> {
        let axis = self.kinematics.axis_in_knuckle(at.suspension)?;
        let drawn = Drawn::new(axis.frame, &self.knuckle);
        placed.wheel_centre = placed.frame.point(&drawn.wheel_centre);
        placed.steering_arm = placed.frame.point(&drawn.steering_arm);
        placed.axis_turn = placed.frame.direction(&axis.frame.components(&axis.turn));
        placed.by_suspension.angular -= placed.axis_turn;
        Some(())
    }

    /// The steering axis in the knuckle as drawn, at coordinates that can be placed.
    #[inline]
    pub(crate) fn drawn_axis(&self, at: &Coordinates) -> AxisFrame {
        if self.kinematics.moves_axis_in_knuckle()
            && let Some(axis) = self.kinematics.axis_in_knuckle(at.suspension)
        {
            return axis.frame;
        }
        self.drawn.axis
    }

    /// The unit spin axis, pointing outboard, when placed at the coordinates.
    #[inline]
    pub(crate) fn spin_axis(&self, at: &Coordinates, placed: &Placed) -> Vector {
        if self.kinematics.moves_axis_in_knuckle() {
            self.direction(at, placed, &self.knuckle.spin_axis)
        } else {
            placed.frame.direction(&self.drawn.spin_axis)
        }
    }

    /// A direction of the knuckle as drawn, as it points when placed at the coordinates.
    #[inline]
    pub(crate) fn direction(&self, at: &Coordinates, placed: &Placed, drawn: &Vector) -> Vector {
        placed
            .frame
            .direction(&self.drawn_axis(at).components(drawn))
    }
}

/// Distance of the outer ball from the steering axis as drawn, mm.
fn steering_lever(knuckle: &Knuckle) -> f64 {
    let axis = knuckle.kingpin_upper - knuckle.kingpin_lower;
    let to_ball = knuckle.steering_arm - knuckle.kingpin_lower;
    axis.cross(&to_ball).norm() / axis.norm()
}
