//! The circle of a ball on a lever, and where it meets a sphere: the ball at a given distance from another ball.

use crate::frame::{Point, Vector};

/// The circle that a ball on a lever runs on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Circle {
    /// Centre.
    foot: Point,
    /// From the centre to the ball as drawn.
    radius: Vector,
    /// Axis x `radius`.
    ahead: Vector,
}

impl Circle {
    /// The circle of a ball about an axis with unit direction.
    pub(crate) fn about(axis_point: Point, axis: Vector, ball: Point) -> Self {
        let foot = axis_point + axis * axis.dot(&(ball - axis_point));
        let radius = ball - foot;
        Self {
            foot,
            radius,
            ahead: axis.cross(&radius),
        }
    }

    /// The point and its velocity per rad, at an angle given by cosine and sine.
    #[inline]
    pub(crate) fn at(&self, cos: f64, sin: f64) -> (Point, Vector) {
        (
            self.foot + self.radius * cos + self.ahead * sin,
            self.ahead * cos - self.radius * sin,
        )
    }

    /// The point's acceleration per rad squared at an angle given by cosine and sine: straight to the centre.
    pub(crate) fn bend(&self, cos: f64, sin: f64) -> Vector {
        -(self.radius * cos + self.ahead * sin)
    }

    /// The three numbers of the circle's meeting with a sphere, as [`meet`] takes them.
    #[inline]
    pub(crate) fn against(&self, centre: &Point, length: f64) -> (f64, f64, f64) {
        let offset = self.foot - centre;
        (
            offset.dot(&self.radius),
            offset.dot(&self.ahead),
            0.5 * (length * length - offset.norm_squared() - self.radius.norm_squared()),
        )
    }

    /// Which branch the ball lies on as drawn, seen from a sphere's centre: the sign of the number, zero at a dead
    /// centre.
    pub(crate) fn branch(&self, centre: &Point) -> f64 {
        (self.foot - centre).dot(&self.ahead)
    }

    /// Radius, mm.
    pub(crate) fn radius(&self) -> f64 {
        self.radius.norm()
    }

    /// Cosine and sine at which the ball is `length` away from `centre`, or nothing out of reach.
    #[inline]
    pub(crate) fn meet(&self, centre: &Point, length: f64, branch: f64) -> Option<(f64, f64)> {
        let (along, ahead, value) = self.against(centre, length);
        meet(along, ahead, value, branch)
    }

    /// Cosine and sine of the angle at which the circle just touches the sphere, where it does to within rounding.
    pub(crate) fn touch(&self, centre: &Point, length: f64) -> Option<(f64, f64)> {
        let (along, ahead, value) = self.against(centre, length);
        let reach = along.hypot(ahead);
        let touches = (reach - value.abs()).abs() <= TOUCHES * reach;
        let sign = value.signum() / reach;
        touches.then_some((along * sign, ahead * sign))
    }

    /// By how much a link of the given length misses the ball from `centre`: mm, positive when it is too short.
    pub(crate) fn miss(&self, centre: &Point, length: f64) -> f64 {
        let (along, ahead, value) = self.against(centre, length);
        miss(along, ahead, value, length)
    }
}

/// What two distances may differ by and still count as the same, against their size.
const TOUCHES: f64 = 1e-12;

/// Cosine and sine of the angle at which `along * cos + ahead * sin = value`, on one of its two branches.
///
/// The equation of a circle against a sphere: with the circle at centre + radius cos + ahead sin and the sphere
/// of radius l about p, `along` = (centre - p) . radius, `ahead` = (centre - p) . ahead and
/// `value` = (l^2 - |centre - p|^2 - r^2) / 2. Its roots are atan2(ahead, along) +- acos(value / hypot), an
/// elementary form given in every text on spatial linkages; written here without inverse functions.
/// `branch` is the sign of the left side's derivative by the angle, which tells the two roots apart.
///
/// Nothing where the sphere misses the circle or only touches it.
#[inline]
pub(crate) fn meet(along: f64, ahead: f64, value: f64, branch: f64) -> Option<(f64, f64)> {
    let square = along * along + ahead * ahead;
    let discriminant = square - value * value;
    // Not-a-number is no meeting either.
    if discriminant > 0.0 {
        let root = branch * discriminant.sqrt();
        Some((
            (along * value + ahead * root) / square,
            (ahead * value - along * root) / square,
        ))
    } else {
        None
    }
}

/// By how much a sphere of radius `length` misses the circle whose nearest and farthest points from its centre
/// follow from the same three numbers: positive when the length is too short, negative when it is too long.
///
/// The squared distance runs from `length^2 - 2 (value + hypot)` to `length^2 - 2 (value - hypot)`.
fn miss(along: f64, ahead: f64, value: f64, length: f64) -> f64 {
    let reach = along.hypot(ahead);
    let nearest = (length * length - 2.0 * (value + reach)).max(0.0).sqrt();
    let farthest = (length * length - 2.0 * (value - reach)).max(0.0).sqrt();
    if length < nearest {
        nearest - length
    } else {
        farthest - length
    }
}

/// How much the distance of a ball on a lever from another point can still grow or shrink by turning the lever, mm, at
/// the least, when it changes by `slope` mm per rad now.
///
/// Derived here: the distance is about A cos(t) over the turn, with A at most the lever's length; from its slope
/// s = A sin(t) follows A - sqrt(A^2 - s^2), which is least for the greatest A.
pub(crate) fn reserve(lever: f64, slope: f64) -> f64 {
    let rest = lever * lever - slope * slope;
    lever - rest.max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Elementary: 3 cos f + 4 sin f = 2.5 at f = 113.1301 and -6.8699 degrees.
    #[test]
    fn both_roots() {
        for (branch, degrees) in [(-1.0, 113.130_102), (1.0, -6.869_898)] {
            let (cos, sin) = meet(3.0, 4.0, 2.5, branch).unwrap_or_default();
            assert!((sin.atan2(cos).to_degrees() - degrees).abs() < 1e-5);
            assert!((3.0 * cos + 4.0 * sin - 2.5).abs() < 1e-14);
            assert!((4.0 * cos - 3.0 * sin) * branch > 0.0);
        }
    }

    #[test]
    fn no_meeting() {
        assert_eq!(meet(3.0, 4.0, 5.5, 1.0), None);
        assert_eq!(meet(3.0, 4.0, f64::NAN, 1.0), None);
    }

    /// A unit circle about the origin seen from (3, 0): distances from 2 to 4.
    #[test]
    fn misses_on_both_ends() {
        let value = |length: f64| (length * length - 9.0 - 1.0) / 2.0;
        assert!((miss(-3.0, 0.0, value(1.5), 1.5) - 0.5).abs() < 1e-12);
        assert!((miss(-3.0, 0.0, value(4.25), 4.25) + 0.25).abs() < 1e-12);
    }
}
