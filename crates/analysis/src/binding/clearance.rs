//! Distances between the bodies of a corner and what they could touch.

use steerloft_setup::car::{Obstacle, Position, Rim, Shape};
use steerloft_solver::frame::{Point, Vector, mirrored_point, mirrored_vector};
use steerloft_solver::pose::CornerPose;

/// A shape in chassis axes, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Solid {
    /// A box along chassis axes.
    Box { centre: Point, size: Vector },
    /// A half-space that ends at a plane; the normal points to the free side.
    HalfSpace { point: Point, normal: Vector },
}

/// Thirds taken off a segment in the search for its nearest point: what is left is a part in 1e11 of it.
const THIRDS: usize = 64;

impl Solid {
    /// Distance of a point, mm; inside negative, by the least way out.
    fn distance(&self, at: &Point) -> f64 {
        match self {
            Self::Box { centre, size } => {
                let over = (at - centre).abs() - size / 2.0;
                outside(&over)
            }
            Self::HalfSpace { point, normal } => (at - point).dot(normal),
        }
    }

    /// Least distance of a straight line between two points, mm; inside negative.
    ///
    /// Both shapes are convex, so the distance along the line is too and has one least value, found by thirds.
    pub(crate) fn clearance_of_line(&self, from: &Point, to: &Point) -> f64 {
        let at = |share: f64| self.distance(&(from + (to - from) * share));
        let (mut low, mut high) = (0.0, 1.0);
        for _ in 0..THIRDS {
            let third = (high - low) / 3.0;
            if at(low + third) <= at(high - third) {
                high -= third;
            } else {
                low += third;
            }
        }
        at(f64::midpoint(low, high)).min(at(0.0)).min(at(1.0))
    }

    /// Least distance of a box along chassis axes, mm; where they overlap negative, by the least way apart.
    pub(crate) fn clearance_of_box(&self, other: &Point, other_size: &Vector) -> f64 {
        match self {
            Self::Box { centre, size } => {
                let over = (other - centre).abs() - (size + other_size) / 2.0;
                outside(&over)
            }
            Self::HalfSpace { point, normal } => {
                (other - point).dot(normal) - normal.abs().dot(other_size) / 2.0
            }
        }
    }
}

/// Distance by how far each coordinate lies over a box's sides.
fn outside(over: &Vector) -> f64 {
    let beyond = over.map(|over| over.max(0.0)).norm();
    if beyond > 0.0 { beyond } else { over.max() }
}

/// The obstacles of a car as shapes with their names; the mirror image follows its original.
pub(crate) fn solids_of(obstacles: &[Obstacle]) -> impl Iterator<Item = (String, Solid)> + '_ {
    obstacles.iter().flat_map(|obstacle| {
        let given = solid(&obstacle.shape);
        let image = obstacle.mirrored.then(|| mirror_image(&given));
        [Some(given), image]
            .into_iter()
            .flatten()
            .map(|solid| (obstacle.name.clone(), solid))
    })
}

fn solid(shape: &Shape) -> Solid {
    match shape {
        Shape::Box { centre, size } => Solid::Box {
            centre: centre.point(),
            size: size.vector(),
        },
        Shape::Plane { point, free } => Solid::HalfSpace {
            point: point.point(),
            normal: unit(free),
        },
    }
}

/// A direction's unit vector; a checked document has no direction without length.
fn unit(direction: &Position) -> Vector {
    let vector = direction.vector();
    vector.try_normalize(f64::MIN_POSITIVE).unwrap_or(vector)
}

fn mirror_image(solid: &Solid) -> Solid {
    match solid {
        Solid::Box { centre, size } => Solid::Box {
            centre: mirrored_point(centre),
            size: *size,
        },
        Solid::HalfSpace { point, normal } => Solid::HalfSpace {
            point: mirrored_point(point),
            normal: mirrored_vector(normal),
        },
    }
}

/// Least clearance of the tie rod, as thick as given (mm), inside the wheel's rim, mm; nothing while the rod stays clear of
/// the bore's reach.
///
/// Derived here. Along the rod the square of its distance from the spin axis is a convex quadratic and the place along that
/// axis is linear, so over the stretch that lies in the bore the greatest radius and the nearest place to the disc are at
/// the stretch's ends.
pub(crate) fn rim_clearance(pose: &CornerPose, rim: &Rim, rod_diameter: f64) -> Option<f64> {
    let inboard = -pose.spin_axis;
    let place = |at: &Point| (at - pose.wheel_centre).dot(&inboard);
    let (from, to) = (pose.steering_arm, pose.rod_inner);
    let (a, b) = (place(&from), place(&to));
    // The stretch of the rod, in shares from the outer ball, that lies outboard of the bore's edge.
    let share_at_edge = (rim.inboard - a) / (b - a);
    let stretch = match (a <= rim.inboard, b <= rim.inboard) {
        (true, true) => (0.0, 1.0),
        (true, false) => (0.0, share_at_edge),
        (false, true) => (share_at_edge, 1.0),
        (false, false) => return None,
    };
    let clearance_at = |share: f64| {
        let at = from + (to - from) * share;
        let from_axis = at - pose.wheel_centre;
        let radius = (from_axis - inboard * from_axis.dot(&inboard)).norm();
        (rim.inner_radius - radius).min(place(&at) - rim.disc) - rod_diameter / 2.0
    };
    Some(clearance_at(stretch.0).min(clearance_at(stretch.1)))
}

#[cfg(test)]
mod tests {
    use approx::assert_abs_diff_eq;

    use super::*;

    const POST: Solid = Solid::Box {
        centre: Point::new(10.0, 0.0, 0.0),
        size: Vector::new(4.0, 4.0, 4.0),
    };

    #[test]
    fn a_line_past_a_box_is_as_far_as_its_nearest_point() {
        // Past the edge at (8, 2): 3 and 4 away from it.
        let from = Point::new(5.0, 6.0, -50.0);
        let to = Point::new(5.0, 6.0, 50.0);
        assert_abs_diff_eq!(POST.clearance_of_line(&from, &to), 5.0, epsilon = 1e-9);
        // Through its middle, 2 deep.
        let through = (Point::new(0.0, 0.0, 0.0), Point::new(30.0, 0.0, 0.0));
        assert_abs_diff_eq!(
            POST.clearance_of_line(&through.0, &through.1),
            -2.0,
            epsilon = 1e-9
        );
    }

    #[test]
    fn boxes_are_apart_by_the_gap_of_their_sides() {
        let size = Vector::new(2.0, 2.0, 2.0);
        assert_abs_diff_eq!(
            POST.clearance_of_box(&Point::new(4.0, 7.0, 0.0), &size),
            5.0,
            epsilon = 1e-12
        );
        assert_abs_diff_eq!(
            POST.clearance_of_box(&Point::new(7.5, 0.0, 0.0), &size),
            -0.5,
            epsilon = 1e-12
        );
        let line = Solid::HalfSpace {
            point: Point::new(-20.0, 0.0, 0.0),
            normal: Vector::x(),
        };
        assert_abs_diff_eq!(
            line.clearance_of_box(&Point::origin(), &size),
            19.0,
            epsilon = 1e-12
        );
    }
}
