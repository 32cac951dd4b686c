//! The steering axis as a frame that moves with the suspension, and knuckle points in it.

use nalgebra::{Isometry3, Matrix3, Rotation3, Translation3, UnitQuaternion};

use crate::frame::{Point, Vector};
use crate::twist::Twist;

/// A right-handed orthonormal frame whose third axis is a steering axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct AxisFrame {
    /// A point of the steering axis.
    pub(crate) origin: Point,
    /// First unit vector across the axis.
    pub(crate) across: Vector,
    /// Second unit vector across the axis, `axis` x `across`.
    pub(crate) beside: Vector,
    /// Unit vector of the axis, pointing up.
    pub(crate) axis: Vector,
    /// Length of `hint` x `axis`, kept for the rates.
    pub(super) hint_length: f64,
}

impl AxisFrame {
    /// The frame on a unit axis; `hint` is any fixed vector not along it, so that the frame is a smooth
    /// function of the axis.
    pub(crate) fn on_axis(origin: Point, axis: Vector, hint: &Vector) -> Self {
        let across = hint.cross(&axis);
        let hint_length = across.norm();
        let across = across / hint_length;
        Self {
            origin,
            across,
            beside: axis.cross(&across),
            axis,
            hint_length,
        }
    }

    /// Chassis x: never along a steering axis, which stands upright.
    pub(crate) fn hint() -> Vector {
        Vector::x()
    }

    /// Motion of the frame, given how its origin and its axis move.
    ///
    /// Derived here: the axis rate fixes the rotation across the axis (axis x rate); the rotation along it is
    /// the rate of `across` along `beside`, with `across` along hint x axis.
    pub(crate) fn motion(&self, hint: &Vector, origin_rate: Vector, axis_rate: Vector) -> Twist {
        let spin = self.beside.dot(&hint.cross(&axis_rate)) / self.hint_length;
        Twist {
            angular: self.axis.cross(&axis_rate) + self.axis * spin,
            linear: origin_rate,
            at: self.origin,
        }
    }

    /// Rate of the frame's angular velocity, given how its axis moves and how that motion changes: rad per unit
    /// squared. Derived here by differentiating [`AxisFrame::motion`].
    pub(crate) fn angular_bend(
        &self,
        hint: &Vector,
        axis_rate: &Vector,
        axis_bend: &Vector,
    ) -> Vector {
        let turning = hint.cross(axis_rate);
        let spin = self.beside.dot(&turning) / self.hint_length;
        let angular = self.axis.cross(axis_rate) + self.axis * spin;
        let beside_rate = angular.cross(&self.beside);
        let spin_rate = (beside_rate.dot(&turning) + self.beside.dot(&hint.cross(axis_bend))
            - spin * self.across.dot(&turning))
            / self.hint_length;
        self.axis.cross(axis_bend) + self.axis * spin_rate + axis_rate * spin
    }

    /// Components of a vector along the frame's three directions.
    #[inline]
    pub(crate) fn components(&self, vector: &Vector) -> Vector {
        Vector::new(
            self.across.dot(vector),
            self.beside.dot(vector),
            self.axis.dot(vector),
        )
    }

    /// Coordinates of a point in this frame.
    #[inline]
    pub(crate) fn local(&self, point: &Point) -> Vector {
        self.components(&(point - self.origin))
    }

    /// The vector with the given components.
    #[inline]
    pub(crate) fn direction(&self, components: &Vector) -> Vector {
        self.across * components.x + self.beside * components.y + self.axis * components.z
    }

    /// The point at the given coordinates.
    #[inline]
    pub(crate) fn point(&self, local: &Vector) -> Point {
        self.origin + self.direction(local)
    }

    /// The frame turned about its own axis, right-handed, given cosine and sine of the angle.
    pub(crate) fn turned(&self, cos: f64, sin: f64) -> Self {
        Self {
            across: self.across * cos + self.beside * sin,
            beside: self.beside * cos - self.across * sin,
            ..*self
        }
    }

    /// The rigid motion that carries frame `from` onto this one.
    pub(crate) fn motion_from(&self, from: &Self) -> Isometry3<f64> {
        let here = Matrix3::from_columns(&[self.across, self.beside, self.axis]);
        let there = Matrix3::from_columns(&[from.across, from.beside, from.axis]);
        let rotation = UnitQuaternion::from_rotation_matrix(&Rotation3::from_matrix_unchecked(
            here * there.transpose(),
        ));
        let shift = self.origin - rotation * from.origin;
        Isometry3::from_parts(Translation3::from(shift), rotation)
    }
}
