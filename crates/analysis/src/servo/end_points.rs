//! End points: how far the transmitter may turn the servo to each side.

use steerloft_setup::car::ServoAction;
use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;
use steerloft_solver::figures::turning;
use steerloft_solver::frame::{Side, Sides};

use crate::wheels::{Wheels, input_where};

/// The end of the servo's way to one side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EndPoint {
    /// Steering input there, degrees or mm.
    pub input: f64,
    /// Turn of the arm from its centre, degrees, without sign.
    pub throw: f64,
    /// The same as a share of the servo's throw, percent, where the servo is known. Over 100 it is out of reach.
    pub share: Option<f64>,
    /// The pulse, microseconds, where the servo is known. Longer pulses turn the wheels to the side that a greater input
    /// does; a transmitter's reverse switch changes that.
    pub pulse: Option<f64>,
    /// Lock of the inner wheel there, degrees.
    pub lock: f64,
    /// Radius swept by the outer tyre there, mm; none while a wheel's axis is parallel to the rear axle.
    pub swept_radius: Option<f64>,
}

/// The ends to both sides; none where the linkage does not come so far.
pub type EndPoints = Sides<Option<EndPoint>>;

/// The end points at which the inner wheel turns by so many degrees to each side.
///
/// # Errors
/// Where the setup cannot be assembled.
pub fn end_points_for_lock(setup: &Setup, lock: f64) -> Result<EndPoints, SolveError> {
    let search = Search::new(setup)?;
    Ok(Sides::from_fn(|to| {
        let turn = |input: f64| {
            let pose = search.wheels.pose(input).ok()?;
            Some(search.wheels.inner_turn(&pose, to))
        };
        let input = input_where((0.0, search.wheels.end(to)), lock, turn)?;
        search.end_point(input, to)
    }))
}

/// The end points at which the car turns on equal circles to both sides: the wider of the two that its full lock gives.
///
/// # Errors
/// Where the setup cannot be assembled.
pub fn end_points_for_equal_circles(setup: &Setup) -> Result<EndPoints, SolveError> {
    let search = Search::new(setup)?;
    let ends = Sides::from_fn(|to| search.end_point(search.wheels.end(to), to));
    let radius = |to: Side| ends.get(to).and_then(|end| end.swept_radius);
    let (Some(left), Some(right)) = (radius(Side::Left), radius(Side::Right)) else {
        return Ok(Sides::both(None));
    };
    let wider = left.max(right);
    Ok(Sides::from_fn(|to| {
        if radius(to) == Some(wider) {
            return *ends.get(to);
        }
        // Curvature, not radius: it goes through zero straight ahead where the radius is infinite.
        let end = search.wheels.end(to);
        let curvature = |input: f64| {
            search
                .swept_radius(input)
                .map_or(Some(0.0), |radius| Some(1.0 / radius))
        };
        let input = input_where((0.0, end), 1.0 / wider, curvature)?;
        search.end_point(input, to)
    }))
}

struct Search {
    wheels: Wheels,
    centre: f64,
    action: Option<ServoAction>,
}

impl Search {
    fn new(setup: &Setup) -> Result<Self, SolveError> {
        let servo = setup.car.servo;
        Ok(Self {
            wheels: Wheels::new(setup)?,
            centre: servo
                .and_then(|servo| servo.spline)
                .map_or(0.0, |spline| spline.centre_input()),
            action: servo.and_then(|servo| servo.action),
        })
    }

    fn swept_radius(&self, input: f64) -> Option<f64> {
        let pose = self.wheels.pose(input).ok()?;
        let axle = self.wheels.assembly.axle();
        turning(&pose, &axle.road, axle.rear_axle_behind()).map(|turning| turning.swept_radius)
    }

    fn end_point(&self, input: f64, to: Side) -> Option<EndPoint> {
        let pose = self.wheels.pose(input).ok()?;
        let turn = input - self.centre;
        Some(EndPoint {
            input,
            throw: turn.abs(),
            share: self.action.map(|action| 100.0 * turn.abs() / action.throw),
            pulse: self
                .action
                .map(|action| action.pulse.centre + turn * action.microseconds_per_degree()),
            lock: self.wheels.inner_turn(&pose, to),
            swept_radius: self.swept_radius(input),
        })
    }
}
