//! Frames and sides: chassis axes, the left and right of the car, the road plane.
//!
//! Chassis axes are x forward, y to the left, z up, right-handed, in millimetres; the origin lies on the
//! centre line at the design front-axle station, on the underside of the chassis plate (ISO 8855 axis
//! directions). Angles are radians.

use nalgebra::{Point3, Vector3};

/// A point in chassis axes, mm.
pub type Point = Point3<f64>;

/// A direction or displacement in chassis axes.
pub type Vector = Vector3<f64>;

/// A side of the car.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Side {
    /// The side at positive y.
    Left,
    /// The side at negative y.
    Right,
}

impl Side {
    /// Left, then right.
    pub const BOTH: [Self; 2] = [Self::Left, Self::Right];

    /// +1 on the left, -1 on the right: the sign of y on this side.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Self::Left => 1.0,
            Self::Right => -1.0,
        }
    }

    /// The other side.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

impl std::fmt::Display for Side {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Left => "left",
            Self::Right => "right",
        })
    }
}

/// One value for each side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Sides<T> {
    /// The left value.
    pub left: T,
    /// The right value.
    pub right: T,
}

impl<T> Sides<T> {
    /// A pair from its left and right value.
    pub const fn new(left: T, right: T) -> Self {
        Self { left, right }
    }

    /// Both values computed from their side.
    pub fn from_fn(mut value: impl FnMut(Side) -> T) -> Self {
        Self {
            left: value(Side::Left),
            right: value(Side::Right),
        }
    }

    /// Both values computed from their side, or the first error.
    pub fn try_from_fn<E>(mut value: impl FnMut(Side) -> Result<T, E>) -> Result<Self, E> {
        Ok(Self {
            left: value(Side::Left)?,
            right: value(Side::Right)?,
        })
    }

    /// The value of one side.
    pub const fn get(&self, side: Side) -> &T {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }

    /// The value of one side, to change.
    pub const fn get_mut(&mut self, side: Side) -> &mut T {
        match side {
            Side::Left => &mut self.left,
            Side::Right => &mut self.right,
        }
    }

    /// Both values, each mapped.
    pub fn map<U>(self, mut value: impl FnMut(T) -> U) -> Sides<U> {
        Sides {
            left: value(self.left),
            right: value(self.right),
        }
    }
}

impl<T: Copy> Sides<T> {
    /// The same value on both sides.
    pub const fn both(value: T) -> Self {
        Self {
            left: value,
            right: value,
        }
    }
}

/// Mirror image of a point in the car's centre plane (y -> -y).
#[must_use]
pub fn mirrored_point(point: &Point) -> Point {
    Point::new(point.x, -point.y, point.z)
}

/// Mirror image of a direction in the car's centre plane (y -> -y).
#[must_use]
pub fn mirrored_vector(vector: &Vector) -> Vector {
    Vector::new(vector.x, -vector.y, vector.z)
}

/// The road plane as the chassis sees it.
///
/// It passes through the chassis point (0, 0, -`ride_height`).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Road {
    /// Height of the chassis underside over the road at the origin, mm.
    pub ride_height: f64,
    /// Chassis pitch against the road, rad, nose down positive (about +y).
    pub pitch: f64,
    /// Chassis roll against the road, rad, right side down positive (about +x).
    pub roll: f64,
}

impl Road {
    /// Upward unit normal of the road in chassis axes.
    ///
    /// Chassis attitude against the road is Ry(pitch) Rx(roll), so the road's z axis in chassis axes is the
    /// transpose of that rotation applied to (0, 0, 1).
    #[must_use]
    pub fn normal(&self) -> Vector {
        let (sin_pitch, cos_pitch) = self.pitch.sin_cos();
        let (sin_roll, cos_roll) = self.roll.sin_cos();
        Vector::new(-sin_pitch, cos_pitch * sin_roll, cos_pitch * cos_roll)
    }

    /// Height of a chassis point over the road, mm.
    #[must_use]
    pub fn height_of(&self, point: &Point) -> f64 {
        let foot = Point::new(0.0, 0.0, -self.ride_height);
        self.normal().dot(&(point - foot))
    }

    /// Road-levelled axes: X is chassis x projected on the road, Z the road normal, Y = Z x X.
    #[must_use]
    pub fn axes(&self) -> RoadAxes {
        let up = self.normal();
        let forward = Vector::x() - up * up.x;
        // Pitch is bounded well below 90 degrees by `FrontAxle::assemble`, so `forward` has a length.
        let forward = forward / forward.norm();
        RoadAxes {
            forward,
            leftward: up.cross(&forward),
            up,
        }
    }
}

/// Unit vectors of the road-levelled axes, in chassis axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoadAxes {
    /// X: straight ahead.
    pub forward: Vector,
    /// Y: to the left.
    pub leftward: Vector,
    /// Z: the road normal.
    pub up: Vector,
}
