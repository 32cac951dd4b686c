//! What the solver is given: the front axle as plain geometry.

use nalgebra::Vector2;

use crate::drive::Drive;
use crate::frame::{Point, Road, Side, Sides, Vector, mirrored_point, mirrored_vector};
use crate::suspension::Suspension;

/// The knuckle with its wheel, placed as drawn in the reference pose (chassis axes, mm).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Knuckle {
    /// Centre of the wheel plane on the spin axis.
    pub wheel_centre: Point,
    /// Spin axis pointing outboard; any length.
    pub spin_axis: Vector,
    /// Lower point of the steering axis.
    pub kingpin_lower: Point,
    /// Upper point of the steering axis.
    pub kingpin_upper: Point,
    /// Centre of the outer tie-rod ball.
    pub steering_arm: Point,
    /// Loaded tyre radius, mm.
    pub tyre_radius: f64,
    /// Tread width, mm.
    pub tyre_width: f64,
}

/// One front corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Corner {
    /// Knuckle and wheel.
    pub knuckle: Knuckle,
    /// What carries the knuckle.
    pub suspension: Suspension,
}

impl Corner {
    /// The mirror image of this corner in the car's centre plane.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let knuckle = &self.knuckle;
        Self {
            knuckle: Knuckle {
                wheel_centre: mirrored_point(&knuckle.wheel_centre),
                spin_axis: mirrored_vector(&knuckle.spin_axis),
                kingpin_lower: mirrored_point(&knuckle.kingpin_lower),
                kingpin_upper: mirrored_point(&knuckle.kingpin_upper),
                steering_arm: mirrored_point(&knuckle.steering_arm),
                ..*knuckle
            },
            suspension: self.suspension.mirrored(),
        }
    }
}

/// How one tie rod is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rod {
    /// Length follows from this toe angle, rad (toe-in positive), at input 0 and travel 0.
    HoldToe(f64),
    /// Centre-to-centre length, mm; toe follows from it.
    FixedLength(f64),
}

/// A front axle: two corners, the drive they share, the rods between, and the road under them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrontAxle {
    /// The two corners.
    pub corners: Sides<Corner>,
    /// What moves the inner balls.
    pub drive: Drive,
    /// How each rod is set.
    pub rods: Sides<Rod>,
    /// Distance from the front-axle station to the rear axle, mm.
    pub wheelbase: f64,
    /// Where the front-axle station lies, mm ahead of the origin: 0 unless the front axle has been moved.
    pub station: f64,
    /// The road plane.
    pub road: Road,
}

impl FrontAxle {
    /// How far behind the origin the rear axle lies, mm.
    #[must_use]
    pub fn rear_axle_behind(&self) -> f64 {
        self.wheelbase - self.station
    }

    /// Whether the right half is the mirror image of the left one to the last digit, and does the same when it is turned the
    /// other way. Not looked for in twin cranks, of which one is driven.
    pub(crate) fn is_mirror_symmetrical(&self) -> bool {
        let rod_inner = match &self.drive {
            Drive::SwingArm(arm) if arm.axis_point.y == 0.0 && arm.axis_direction.y == 0.0 => {
                arm.rod_inner
            }
            Drive::Slider(rack) if rack.direction.xz() == Vector2::zeros() => rack.rod_inner,
            _ => return false,
        };
        rod_inner.right == mirrored_point(&rod_inner.left)
            && self.road.roll == 0.0
            && self.rods.left == self.rods.right
            && self.corners.right == self.corners.left.mirrored()
    }
}

/// Outboard spin axis of a wheel pointing straight ahead at the given camber (rad, top outboard positive),
/// against the chassis.
#[must_use]
pub fn spin_axis_at_camber(side: Side, camber: f64) -> Vector {
    Vector::new(0.0, side.sign() * camber.cos(), -camber.sin())
}
