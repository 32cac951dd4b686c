//! What a drawing is made of: flat shapes in millimetres, each with the part it shows.
//!
//! The drawing plane has u to the right and v up. Shapes come in painter's order: a later one lies over an
//! earlier one.

use steerloft_solver::frame::{Point, Side, Vector};

use crate::text;

/// From where the front end is looked at.
///
/// The car's left is at the left of the top and the front view, so both share one lateral axis and a pivot
/// stands over itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum View {
    /// From above, forward up: u = -y, v = x.
    Top,
    /// From the driver's seat, looking forward: u = -y, v = z.
    Front,
    /// The left side from outside, forward to the left: u = -x, v = z.
    Side,
}

impl View {
    /// All views, in the order in which they are listed.
    pub const ALL: [Self; 3] = [Self::Top, Self::Front, Self::Side];

    /// A chassis point (mm) in the drawing plane: [u, v], mm.
    #[must_use]
    pub fn project(self, point: &Point) -> [f64; 2] {
        self.project_vector(&point.coords)
    }

    /// A displacement in chassis axes (mm) in the drawing plane: [u, v], mm.
    #[must_use]
    pub fn project_vector(self, vector: &Vector) -> [f64; 2] {
        match self {
            Self::Top => [-vector.y, vector.x],
            Self::Front => [-vector.y, vector.z],
            Self::Side => [-vector.x, vector.z],
        }
    }

    /// The chassis vector (mm) that lies in the drawing plane at [u, v], mm.
    #[must_use]
    pub fn lift(self, [u, v]: [f64; 2]) -> Vector {
        match self {
            Self::Top => Vector::new(v, -u, 0.0),
            Self::Front => Vector::new(0.0, -u, v),
            Self::Side => Vector::new(-u, 0.0, v),
        }
    }

    /// Unit vector in chassis axes from the drawing plane towards the eye.
    #[must_use]
    pub fn towards_eye(self) -> Vector {
        match self {
            Self::Top => Vector::z(),
            Self::Front => -Vector::x(),
            Self::Side => Vector::y(),
        }
    }

    /// Name of the view as written under a drawing.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Top => "Top view",
            Self::Front => "Front view, looking forward",
            Self::Side => "Side view, left side",
        }
    }
}

/// A drawing: shapes in painter's order, mm.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drawing {
    /// The shapes; a later one lies over an earlier one.
    pub shapes: Vec<Shape>,
}

impl Drawing {
    /// The rectangle that holds every shape; none for an empty drawing.
    ///
    /// Line widths are not counted, and a text counts by its estimated width.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        self.shapes
            .iter()
            .filter_map(|shape| shape.outline.bounds())
            .reduce(Bounds::union)
    }
}

/// One flat shape and what it shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// The part shown; decides the style.
    pub role: Role,
    /// The side of the car it belongs to, if it belongs to one.
    pub side: Option<Side>,
    /// Its form.
    pub outline: Outline,
}

/// The form of a shape; lengths in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum Outline {
    /// A straight line.
    Line([[f64; 2]; 2]),
    /// An open run of straight lines.
    Polyline(Vec<[f64; 2]>),
    /// A closed convex polygon, counter-clockwise. Ellipses and round ends come as fine polygons.
    Polygon(Vec<[f64; 2]>),
    /// A circle.
    Circle {
        /// Centre.
        centre: [f64; 2],
        /// Radius.
        radius: f64,
    },
    /// A line of writing.
    Text(Text),
}

impl Outline {
    /// Whether every coordinate and size is finite.
    #[must_use]
    pub fn is_finite(&self) -> bool {
        let finite = |points: &[[f64; 2]]| points.iter().flatten().all(|value| value.is_finite());
        match self {
            Self::Line(points) => finite(points),
            Self::Polyline(points) | Self::Polygon(points) => finite(points),
            Self::Circle { centre, radius } => finite(&[*centre]) && radius.is_finite(),
            Self::Text(text) => finite(&[text.at]) && text.size.is_finite(),
        }
    }

    /// The rectangle that holds the form; none for a form without points.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        match self {
            Self::Line(points) => Bounds::of(points),
            Self::Polyline(points) | Self::Polygon(points) => Bounds::of(points),
            Self::Circle { centre, radius } => Some(Bounds {
                min: [centre[0] - radius, centre[1] - radius],
                max: [centre[0] + radius, centre[1] + radius],
            }),
            Self::Text(text) => Some(text.bounds()),
        }
    }
}

/// A single line of writing.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// Anchor point on the base line, mm.
    pub at: [f64; 2],
    /// Which part of the line stands at the anchor point.
    pub anchor: Anchor,
    /// Font size, mm.
    pub size: f64,
    /// Heavier letters.
    pub bold: bool,
    /// What is written.
    pub content: String,
}

impl Text {
    fn bounds(&self) -> Bounds {
        let width = text::width(&self.content, self.size, self.bold);
        let left = match self.anchor {
            Anchor::Start => self.at[0],
            Anchor::Middle => self.at[0] - width / 2.0,
            Anchor::End => self.at[0] - width,
        };
        Bounds {
            min: [left, self.at[1] - text::DESCENT * self.size],
            max: [left + width, self.at[1] + text::ASCENT * self.size],
        }
    }
}

/// Which part of a line of writing stands at its anchor point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its start (left end).
    Start,
    /// Its middle.
    Middle,
    /// Its end (right end).
    End,
}

/// What a shape shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Role {
    /// Chassis centre line.
    CentreLine,
    /// Line through both front wheel centres as drawn.
    AxleLine,
    /// Underside of the chassis plate, seen edge-on.
    Chassis,
    /// The road, seen edge-on.
    Road,
    /// Outline of a tyre.
    Tyre,
    /// Rim and hub of a wheel, drawn on its tyre.
    Wheel,
    /// The wheel plane seen edge-on, or a mark at the wheel centre.
    WheelLine,
    /// The axle that the wheel turns on.
    SpinAxle,
    /// Body of the knuckle.
    Knuckle,
    /// The pin that the knuckle turns on.
    Kingpin,
    /// The steering axis, drawn on down to the road.
    KingpinAxis,
    /// Steering arm of the knuckle.
    SteeringArm,
    /// A bar of a suspension arm.
    Arm,
    /// Hinge of a suspension arm.
    Hinge,
    /// A bearing of the kingpin in the chassis.
    Bearing,
    /// Tie rod between its cups.
    Rod,
    /// Ball cup at an end of a tie rod.
    Cup,
    /// A ball of a joint.
    Ball,
    /// Centre of a joint.
    Pivot,
    /// The stud that carries a ball.
    Stud,
    /// Arm of the steering drive that carries the inner balls.
    DriveArm,
    /// Boss, nut or shaft on the axis of the steering drive.
    DriveHub,
    /// Axis of the steering drive.
    DriveAxis,
    /// Case of the servo.
    Servo,
    /// One spacer of a stack.
    Spacer,
    /// A wheel's tyre at an end of its travel.
    Envelope,
    /// Where a steering axis meets the road.
    GroundPoint,
    /// A wheel's axis, drawn on to the line of the rear axle.
    WheelAxis,
    /// The axis that the outer wheel would need to meet the inner one's on the line of the rear axle.
    IdealAxis,
    /// The line of the rear axle.
    RearAxle,
    /// A line of a frame, a table or a scale bar on paper.
    Rule,
    /// A filled field of a scale bar on paper.
    Bar,
    /// Small writing that says what stands beside or under it.
    Caption,
    /// Writing.
    Label,
}

/// A rectangle along the axes of the drawing plane, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// Least u and v.
    pub min: [f64; 2],
    /// Greatest u and v.
    pub max: [f64; 2],
}

impl Bounds {
    /// The rectangle that holds the points; none for no points.
    #[must_use]
    pub fn of(points: &[[f64; 2]]) -> Option<Self> {
        points
            .iter()
            .map(|&point| Self {
                min: point,
                max: point,
            })
            .reduce(Self::union)
    }

    /// The rectangle that holds both.
    #[must_use]
    pub fn union(self, other: Self) -> Self {
        Self {
            min: [self.min[0].min(other.min[0]), self.min[1].min(other.min[1])],
            max: [self.max[0].max(other.max[0]), self.max[1].max(other.max[1])],
        }
    }

    /// Extent along u, mm.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.max[0] - self.min[0]
    }

    /// Extent along v, mm.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.max[1] - self.min[1]
    }

    /// Whether the two rectangles share more than an edge.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        (0..2).all(|axis| self.min[axis] < other.max[axis] && other.min[axis] < self.max[axis])
    }
}
