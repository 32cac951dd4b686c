//! A solved position of the whole front axle.

use nalgebra::{Isometry3, Quaternion, Translation3, UnitQuaternion};

use crate::frame::{Point, Side, Sides, Vector};
use crate::twist::Twist;

/// Greatest rise of a spin axis over the chassis plane, as a sine. Beyond it the wheel lies flat and steer and
/// contact lose their meaning.
pub(crate) const FLATTEST_WHEEL: f64 = 0.8;

/// Where everything of the front axle is at one input and one wheel travel on each side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AxlePose {
    /// Steering input, rad (mm for a slider).
    pub input: f64,
    /// Wheel travel, mm along chassis z, bump positive.
    pub travel: Sides<f64>,
    /// The steering drive.
    pub drive: DrivePose,
    /// The corners.
    pub corners: Sides<CornerPose>,
}

impl AxlePose {
    /// One side of this pose.
    #[must_use]
    pub fn half(&self, side: Side) -> HalfPose {
        HalfPose {
            input: self.input,
            travel: *self.travel.get(side),
            drive: self.drive,
            corner: *self.corners.get(side),
        }
    }
}

/// One side of the front axle at an input and a travel: the drive and one corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HalfPose {
    /// Steering input, rad (mm for a slider).
    pub input: f64,
    /// Wheel travel, mm along chassis z, bump positive.
    pub travel: f64,
    /// The steering drive.
    pub drive: DrivePose,
    /// The corner.
    pub corner: CornerPose,
}

/// Where the steering drive is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrivePose {
    /// Inner tie-rod ball centres, chassis axes, mm.
    pub rod_inner: Sides<Point>,
    /// Velocity of the inner balls, mm per unit of input.
    pub rod_inner_rate: Sides<Vector>,
    /// Motion of the body that carries each inner ball, from its place as drawn.
    pub carrier: Sides<Isometry3<f64>>,
    /// How fast that body turns, rad per unit of input.
    pub carrier_turn: Sides<Vector>,
    pub(crate) joints: DriveJoints,
    /// Change of the input over which the drive stays together, at the least.
    pub(crate) stay: f64,
}

/// The drive's joints other than the inner balls.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum DriveJoints {
    /// A drive in one piece.
    None,
    /// Two cranks.
    TwinCrank {
        /// The drag link's ball on the servo arm.
        drag_servo: Point,
        /// The drag link's ball on the driven crank.
        drag_crank: Point,
        /// The cross link's balls.
        cross: Sides<Point>,
    },
}

/// An arm or crank that turns about an axis fixed in the chassis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lever {
    /// A point of its axis.
    pub axis_point: Point,
    /// Unit vector of its axis.
    pub axis: Vector,
    pub(crate) balls: [Option<Point>; 3],
}

impl Lever {
    /// The balls it carries.
    pub fn balls(&self) -> impl Iterator<Item = Point> + use<> {
        self.balls.into_iter().flatten()
    }
}

/// A link between two joints.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// One joint.
    pub from: Point,
    /// The other joint.
    pub to: Point,
}

/// Motion of a body turned about an axis with unit direction through a point, by the angle whose cosine and sine
/// are given.
pub(crate) fn turned_about(
    axis_point: &Point,
    axis: &Vector,
    cos: f64,
    sin: f64,
) -> Isometry3<f64> {
    // Half angles from whichever of the two is not small.
    let (half_cos, half_sin) = if cos >= 0.0 {
        let half_cos = (0.5 * (1.0 + cos)).sqrt();
        (half_cos, 0.5 * sin / half_cos)
    } else {
        let half_sin = (0.5 * (1.0 - cos)).sqrt().copysign(sin);
        (0.5 * sin / half_sin, half_sin)
    };
    let quaternion = Quaternion::from_parts(half_cos, axis * half_sin);
    let rotation = UnitQuaternion::new_unchecked(quaternion);
    let shift = axis_point - rotation * axis_point;
    Isometry3::from_parts(Translation3::from(shift), rotation)
}

/// Where one corner is. All points are in chassis axes, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CornerPose {
    /// Side of the car.
    pub side: Side,
    /// Motion of the knuckle from its place as drawn.
    pub knuckle: Isometry3<f64>,
    /// Wheel centre.
    pub wheel_centre: Point,
    /// Unit spin axis pointing outboard.
    pub spin_axis: Vector,
    /// Loaded tyre radius, mm.
    pub tyre_radius: f64,
    /// Tread width, mm.
    pub tyre_width: f64,
    /// Lower point of the steering axis as it lies now.
    pub kingpin_lower: Point,
    /// Upper point of the steering axis as it lies now.
    pub kingpin_upper: Point,
    /// Outer tie-rod ball.
    pub steering_arm: Point,
    /// Inner tie-rod ball.
    pub rod_inner: Point,
    /// Motion of the knuckle per unit of input, travel held.
    pub per_input: Twist,
    /// Motion of the knuckle per mm of travel, input held; none where the suspension has no travel.
    pub per_travel: Option<Twist>,
    /// Rate of the unit steering axis (pointing up) per mm of travel, input held; zero where it stands still.
    pub kingpin_per_travel: Vector,
    /// How much the distance of the rod's balls can still grow or shrink by turning the knuckle, mm.
    pub(crate) reserve: f64,
    /// Change of the suspension coordinate over which the suspension stays together, at the least.
    pub(crate) suspension_stay: f64,
    pub(crate) coordinates: Coordinates,
    /// Rates of the coordinates per unit of input, travel held.
    pub(crate) by_input: Coordinates,
    /// Rates of the coordinates per mm of travel, input held.
    pub(crate) by_travel: Coordinates,
}

impl CornerPose {
    /// Unit vector of the steering axis, pointing up.
    #[must_use]
    pub fn kingpin_axis(&self) -> Vector {
        let along = self.kingpin_upper - self.kingpin_lower;
        along / along.norm()
    }

    /// Distance of the tie rod's balls, mm.
    #[must_use]
    pub fn rod_length(&self) -> f64 {
        (self.steering_arm - self.rod_inner).norm()
    }
}

/// Where a suspension arm is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ArmPose {
    /// Front and rear point of its hinge.
    pub hinge: [Point; 2],
    /// Its ball centre.
    pub ball: Point,
}

/// The two freedoms of a corner, as the closure counts them.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Coordinates {
    /// Slide along the kingpin, mm, or swing of the leading arm, rad; 0 as drawn.
    pub(crate) suspension: f64,
    /// Turn about the steering axis, rad; 0 as drawn.
    pub(crate) steering: f64,
}

impl Coordinates {
    /// These coordinates and a step from them.
    #[inline]
    pub(crate) fn plus(&self, step: &Self) -> Self {
        Self {
            suspension: self.suspension + step.suspension,
            steering: self.steering + step.steering,
        }
    }

    /// A step of a share of this one.
    #[inline]
    pub(crate) fn times(&self, share: f64) -> Self {
        Self {
            suspension: self.suspension * share,
            steering: self.steering * share,
        }
    }
}
