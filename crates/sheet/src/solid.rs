//! Outlines of simple solids in a view: true parallel projections of circles, cylinders, bars and boxes.

use std::f64::consts::TAU;
use std::sync::LazyLock;

use steerloft_solver::frame::{Point, Vector};

use crate::drawing::{Outline, View};
use crate::plane::{hull, hull_of_similar_rings};
use crate::sight::Sight;

/// Most edges of the outline of a small part, and of a wheel.
const SMALL_EDGES: usize = 40;
const WHEEL_EDGES: usize = 96;

/// A regular polygon in the unit circle.
struct UnitPolygon {
    /// Its corners. Their number is a multiple of four, so that the ends of both axes of an ellipse are among them.
    corners: Vec<[f64; 2]>,
    /// Distance of its edges from the centre.
    least_radius: f64,
}

/// Polygons of 4, 8, 12 and more edges, up to those of a wheel.
static UNIT_POLYGONS: LazyLock<Vec<UnitPolygon>> =
    LazyLock::new(|| (4..=WHEEL_EDGES).step_by(4).map(UnitPolygon::new).collect());

/// Sine of a tilt below which a circle faces the eye squarely: more than rounding leaves of a tilt of none.
pub(crate) const SQUARE_ON: f64 = 1e-9;

impl UnitPolygon {
    #[allow(clippy::cast_precision_loss, reason = "edges are few")]
    fn new(edges: usize) -> Self {
        let angle = |corner: usize| TAU * corner as f64 / edges as f64;
        Self {
            corners: (0..edges)
                .map(|corner| [angle(corner).cos(), angle(corner).sin()])
                .collect(),
            least_radius: (angle(1) / 2.0).cos(),
        }
    }

    /// The polygon of fewest edges that strays no farther from a circle of a radius (mm) than it may, with no more than
    /// `most` edges, a multiple of four.
    fn for_circle(radius: f64, deviation: f64, most: usize) -> &'static Self {
        let polygons = &UNIT_POLYGONS[1..most / 4];
        let near = |polygon: &&Self| polygon.least_radius * radius >= radius - deviation;
        let fine = polygons.iter().find(near).filter(|_| deviation > 0.0);
        fine.unwrap_or(&UNIT_POLYGONS[most / 4 - 1])
    }
}

/// A circle in space.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Circle {
    /// Centre, mm.
    pub(crate) centre: Point,
    /// Unit normal of its plane.
    pub(crate) normal: Vector,
    /// Radius, mm.
    pub(crate) radius: f64,
}

impl Circle {
    /// Points of the ellipse that the view shows.
    ///
    /// A circle with unit normal n shows its full radius across the projected normal, and the radius times the
    /// share of n towards the eye along it. Sampled from those two axes, so their ends are exact.
    fn projected<'a>(
        &self,
        view: View,
        polygon: &'a UnitPolygon,
    ) -> impl Iterator<Item = [f64; 2]> + use<'a> {
        let centre = view.project(&self.centre);
        let slant = view.project_vector(&self.normal);
        let sine = slant[0].hypot(slant[1]);
        let along = if sine > SQUARE_ON {
            [slant[0] / sine, slant[1] / sine]
        } else {
            [1.0, 0.0]
        };
        let minor = self.radius * self.normal.dot(&view.towards_eye()).abs();
        let major = self.radius;
        polygon.corners.iter().map(move |[cos, sin]| {
            let (a, b) = (minor * cos, major * sin);
            [
                centre[0] + a * along[0] - b * along[1],
                centre[1] + a * along[1] + b * along[0],
            ]
        })
    }
}

/// Outline of the convex body spanned by circles of a small part.
pub(crate) fn hull_of_circles(sight: Sight, circles: &[Circle]) -> Outline {
    hull_of_polygons(sight, circles, SMALL_EDGES)
}

/// Outline of the convex body spanned by circles of a wheel.
pub(crate) fn hull_of_wheel_circles(sight: Sight, circles: &[Circle]) -> Outline {
    hull_of_polygons(sight, circles, WHEEL_EDGES)
}

fn hull_of_polygons(sight: Sight, circles: &[Circle], most_edges: usize) -> Outline {
    let radii = circles.iter().map(|circle| circle.radius);
    let greatest = radii.fold(0.0, f64::max);
    let polygon = UnitPolygon::for_circle(greatest, sight.deviation, most_edges);
    let rings: Vec<Vec<[f64; 2]>> = circles
        .iter()
        .map(|circle| circle.projected(sight.view, polygon).collect())
        .collect();
    let parallel = circles
        .windows(2)
        .all(|pair| matches!(pair, [one, other] if one.normal == other.normal));
    Outline::Polygon(if parallel {
        hull_of_similar_rings(&rings)
    } else {
        hull(rings.concat())
    })
}

/// The two end circles of a cylinder that stands `thickness` high along the unit `axis`, half to each side of
/// `centre`.
pub(crate) fn disc(centre: Point, axis: Vector, radius: f64, thickness: f64) -> [Circle; 2] {
    [-0.5, 0.5].map(|share| Circle {
        centre: centre + axis * (share * thickness),
        normal: axis,
        radius,
    })
}

/// Outline of a round bar with spherical ends, each end given by centre and radius.
pub(crate) fn bar(sight: Sight, ends: &[(Point, f64)]) -> Outline {
    let circles: Vec<Circle> = ends
        .iter()
        .map(|&(centre, radius)| Circle {
            centre,
            normal: sight.view.towards_eye(),
            radius,
        })
        .collect();
    hull_of_circles(sight, &circles)
}

/// Outline of a round rod with flat ends.
pub(crate) fn cylinder(sight: Sight, ends: [Point; 2], radius: f64) -> Outline {
    match direction(&ends[0], &ends[1]) {
        Some(normal) => hull_of_circles(
            sight,
            &ends.map(|centre| Circle {
                centre,
                normal,
                radius,
            }),
        ),
        None => bar(sight, &[(ends[0], radius)]),
    }
}

/// Outline of a box with its edges along the chassis axes.
pub(crate) fn cuboid(view: View, centre: &Point, size: &Vector) -> Outline {
    let corners = (0..8_u8)
        .map(|corner| {
            let half = |bit: u8| if corner & bit == 0 { -0.5 } else { 0.5 };
            let offset = size.component_mul(&Vector::new(half(1), half(2), half(4)));
            view.project(&(centre + offset))
        })
        .collect();
    Outline::Polygon(hull(corners))
}

/// Unit vector from one point to another; none where they coincide.
pub(crate) fn direction(from: &Point, to: &Point) -> Option<Vector> {
    (to - from).try_normalize(f64::EPSILON)
}

/// Foot of the perpendicular from a point to a line given by a point of it and its unit direction.
pub(crate) fn foot_on_line(point: &Point, on_line: &Point, along: &Vector) -> Point {
    on_line + along * (point - on_line).dot(along)
}
