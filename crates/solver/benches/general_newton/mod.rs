//! The closure as a general multibody program does it: every body has six unknowns, every joint is an equation
//! between points of bodies, and Newton's iteration solves them all with a dense Jacobian by finite differences and
//! an LU decomposition. It knows nothing of steering; [`axle`] builds the bodies and joints of a front axle.

pub(crate) mod axle;

use nalgebra::{DMatrix, DVector, UnitQuaternion, Vector3};
use steerloft_solver::{Point, Vector};

/// A rigid body by where its reference point is and how it is turned from its place as drawn.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Body {
    reference: Point,
    place: Point,
    rotation: UnitQuaternion<f64>,
}

impl Body {
    /// The body as drawn; its reference point should lie among its joints.
    pub(crate) fn drawn(reference: Point) -> Self {
        Self {
            reference,
            place: reference,
            rotation: UnitQuaternion::identity(),
        }
    }

    /// Where a point of the body as drawn is now.
    pub(crate) fn point(&self, drawn: &Point) -> Point {
        self.place + self.rotation * (drawn - self.reference)
    }

    /// Where a direction of the body as drawn points now.
    pub(crate) fn direction(&self, drawn: &Vector) -> Vector {
        self.rotation * drawn
    }

    fn moved(&self, unknown: usize, by: f64) -> Self {
        let mut step = [0.0; 6];
        step[unknown] = by;
        self.stepped(&step)
    }

    fn stepped(&self, step: &[f64]) -> Self {
        Self {
            place: self.place + Vector3::new(step[0], step[1], step[2]),
            rotation: UnitQuaternion::from_scaled_axis(Vector3::new(step[3], step[4], step[5]))
                * self.rotation,
            ..*self
        }
    }
}

/// A point by what carries it, as drawn.
#[derive(Debug, Clone, Copy)]
pub(crate) enum On {
    /// The chassis.
    Chassis(Point),
    /// A body.
    Body(usize, Point),
    /// The line between two bodies' points, at a share of the way.
    Between([(usize, Point); 2], f64),
}

impl On {
    fn place(&self, bodies: &[Body]) -> Point {
        match self {
            Self::Chassis(point) => *point,
            Self::Body(body, drawn) => bodies[*body].point(drawn),
            Self::Between([(one, from), (other, to)], share) => {
                let from = bodies[*one].point(from);
                from + (bodies[*other].point(to) - from) * *share
            }
        }
    }
}

/// Equations between bodies. Lengths in mm.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Joint {
    /// Two points coincide: three equations.
    Ball(On, On),
    /// A point lies on a line of a body, or of the chassis where no body is named: two equations.
    OnLine {
        /// The point.
        point: On,
        /// The line's body.
        body: Option<usize>,
        /// A point of the line as drawn.
        line: Point,
        /// Its direction as drawn, a unit vector.
        direction: Vector,
    },
    /// Two points keep a distance: one equation.
    Link(On, On, f64),
    /// A point's height: one equation.
    Height(On, f64),
    /// A direction of a body stays square to a fixed direction: one equation.
    Square {
        /// The body.
        body: usize,
        /// Its direction as drawn.
        drawn: Vector,
        /// The fixed direction.
        fixed: Vector,
    },
}

impl Joint {
    fn residuals(&self, bodies: &[Body], into: &mut Vec<f64>) {
        match self {
            Self::Ball(one, other) => {
                let apart = one.place(bodies) - other.place(bodies);
                into.extend(apart.iter());
            }
            Self::OnLine {
                point,
                body,
                line,
                direction,
            } => {
                let (through, along) = body.map_or((*line, *direction), |body| {
                    (bodies[body].point(line), bodies[body].direction(direction))
                });
                let across = if along.x.abs() < 0.8 {
                    Vector::x()
                } else {
                    Vector::y()
                };
                let first = along.cross(&across).normalize();
                let offset = point.place(bodies) - through;
                into.push(offset.dot(&first));
                into.push(offset.dot(&along.cross(&first)));
            }
            Self::Link(one, other, length) => {
                into.push((one.place(bodies) - other.place(bodies)).norm() - length);
            }
            Self::Height(point, height) => into.push(point.place(bodies).z - height),
            Self::Square { body, drawn, fixed } => {
                into.push(bodies[*body].direction(drawn).dot(fixed));
            }
        }
    }
}

/// Bodies and the joints between them.
#[derive(Debug, Clone)]
pub(crate) struct Linkage {
    /// The bodies where they are now.
    pub(crate) bodies: Vec<Body>,
    /// The joints; as many equations as there are unknowns.
    pub(crate) joints: Vec<Joint>,
}

/// Residual at which the linkage counts as closed, mm.
const CLOSED: f64 = 1e-9;
/// Step of the finite differences, mm and rad.
const DIFFERENCE: f64 = 1e-7;
/// Most steps of Newton's iteration.
const MOST_STEPS: usize = 50;

impl Linkage {
    fn residuals(&self, bodies: &[Body]) -> Vec<f64> {
        let mut residuals = Vec::with_capacity(6 * bodies.len());
        for joint in &self.joints {
            joint.residuals(bodies, &mut residuals);
        }
        residuals
    }

    /// Closes the linkage from where its bodies are; whether it did.
    pub(crate) fn close(&mut self) -> bool {
        let unknowns = 6 * self.bodies.len();
        for _ in 0..MOST_STEPS {
            let residuals = DVector::from_vec(self.residuals(&self.bodies));
            if residuals.len() != unknowns {
                return false;
            }
            if residuals.amax() <= CLOSED {
                return true;
            }
            let jacobian = self.jacobian(&residuals);
            let Some(step) = jacobian.lu().solve(&-residuals) else {
                return false;
            };
            for (index, body) in self.bodies.iter_mut().enumerate() {
                *body = body.stepped(&step.as_slice()[6 * index..6 * index + 6]);
            }
        }
        false
    }

    fn jacobian(&self, residuals: &DVector<f64>) -> DMatrix<f64> {
        let unknowns = residuals.len();
        let mut jacobian = DMatrix::zeros(unknowns, unknowns);
        let mut bodies = self.bodies.clone();
        for unknown in 0..unknowns {
            let body = unknown / 6;
            let kept = bodies[body];
            bodies[body] = kept.moved(unknown % 6, DIFFERENCE);
            for (row, value) in self.residuals(&bodies).into_iter().enumerate() {
                jacobian[(row, unknown)] = (value - residuals[row]) / DIFFERENCE;
            }
            bodies[body] = kept;
        }
        jacobian
    }
}
