//! The dead centre of a corner's rod: where the steering input turns back while the knuckle goes on.
//!
//! Led by the input a path comes ever slower towards it. Led by the turn of the knuckle it runs smoothly through it: with
//! the turn held, the suspension's coordinate and the input follow from the two conditions, and what remains is one
//! number, the slope of the rod's length by the turn, whose zero is sought by the secant.

use super::corner::CornerClosure;
use super::corner_pose::RodAt;
use super::newton::Conditions;
use crate::drive::InnerBalls;
use crate::pose::Coordinates;

/// A dead centre of a corner's rod.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DeadCentre {
    /// Steering input, rad or mm.
    pub(crate) input: f64,
    at: Coordinates,
    /// Rate of the suspension's coordinate by the turn.
    suspension_by_turn: f64,
    /// Second derivative of the input by the turn.
    input_bend: f64,
    /// Which way the turn went.
    way: f64,
}

impl DeadCentre {
    /// Turn of the knuckle there, rad.
    pub(crate) fn turn(&self) -> f64 {
        self.at.steering
    }
}

/// Farthest turn of the knuckle to a dead centre, rad: over so much the slope has one zero at most.
const FARTHEST: f64 = 0.8;

/// How often the turn is corrected, and with each turn the input.
const MOST_TURNS: usize = 16;
const MOST_STEPS: usize = 8;

/// Turns that differ by less than this are one, rad.
const SAME: f64 = 1e-11;

/// A closed place on the way.
#[derive(Clone, Copy)]
struct Place {
    at: Coordinates,
    input: f64,
    /// Rates by the turn.
    suspension_by_turn: f64,
    input_by_turn: f64,
    /// Slope of the rod's length by the turn, mm/rad, the height held.
    slope: f64,
    /// Rate of the rod's length by the input.
    rod_by_input: f64,
}

impl Place {
    /// Where a turn on by so much leads.
    fn on(&self, turn: f64) -> (Coordinates, f64) {
        let at = Coordinates {
            suspension: self.at.suspension + self.suspension_by_turn * turn,
            steering: self.at.steering + turn,
        };
        (at, self.input + self.input_by_turn * turn)
    }
}

impl CornerClosure {
    /// The dead centre that the rod comes to when the input goes on from a closed place to a goal, sought over a turn of the knuckle
    /// that is not too long; nothing where it is not found there.
    pub(crate) fn dead_centre(
        &self,
        (from, input): (&Coordinates, f64),
        goal: f64,
        travel: f64,
        length: f64,
        inner: impl Fn(f64) -> Option<InnerBalls>,
    ) -> Option<DeadCentre> {
        let place = |(at, input)| self.on_turn(at, input, travel, length, &inner);
        let start = place((*from, input))?;
        let way = ((goal - input) / start.input_by_turn).signum();
        let left = (start.slope.abs() / self.lever).min(1.0).asin();
        let mut behind = start;
        let mut here = place(start.on(way * left.min(0.5 * FARTHEST)))?;
        for _ in 0..MOST_TURNS {
            let slope_by_turn =
                (here.slope - behind.slope) / (here.at.steering - behind.at.steering);
            let turn = -here.slope / slope_by_turn;
            // Every comparison is put so that not-a-number fails it.
            let is_near = (here.at.steering + turn - from.steering).abs() <= FARTHEST;
            if !is_near {
                return None;
            }
            if turn.abs() <= SAME {
                let ahead = (here.input - input) * (goal - input) > 0.0;
                let input_bend = -slope_by_turn / here.rod_by_input;
                return ahead.then_some(DeadCentre {
                    input: here.input,
                    at: here.at,
                    suspension_by_turn: here.suspension_by_turn,
                    input_bend,
                    way,
                });
            }
            behind = here;
            here = place(here.on(turn))?;
        }
        None
    }

    /// Coordinates and input at which the rod closes with the knuckle turned on by so much from a closed place.
    pub(crate) fn turned_on(
        &self,
        (from, input): (&Coordinates, f64),
        by: f64,
        travel: f64,
        length: f64,
        inner: impl Fn(f64) -> Option<InnerBalls>,
    ) -> Option<(Coordinates, f64)> {
        let start = self.on_turn(*from, input, travel, length, &inner)?;
        let (at, input) = start.on(by);
        let there = self.on_turn(at, input, travel, length, &inner)?;
        Some((there.at, there.input))
    }

    /// Coordinates a little before a dead centre, at an input short of it.
    pub(crate) fn before_dead_centre(
        &self,
        centre: &DeadCentre,
        rod: &RodAt,
        input: f64,
        travel: f64,
    ) -> Option<Coordinates> {
        let turn = -centre.way * (2.0 * (input - centre.input) / centre.input_bend).sqrt();
        let start = Coordinates {
            suspension: centre.at.suspension + centre.suspension_by_turn * turn,
            steering: centre.at.steering + turn,
        };
        self.close(&rod.demand(travel), &start)
    }

    /// Closes the corner with its turn held: by the suspension's coordinate and the input.
    fn on_turn(
        &self,
        mut at: Coordinates,
        mut input: f64,
        travel: f64,
        length: f64,
        inner: impl Fn(f64) -> Option<InnerBalls>,
    ) -> Option<Place> {
        for _ in 0..MOST_STEPS {
            let balls = inner(input)?;
            let rod = RodAt {
                inner: *balls.points.get(self.side),
                inner_rate: *balls.rates.get(self.side),
                length,
            };
            let placed = self.place(&at)?;
            let conditions = self.conditions(&at, &placed, &rod.demand(travel));
            let along = (placed.steering_arm - rod.inner).normalize();
            let rod_by_input = -along.dot(&rod.inner_rate);
            let Conditions { height, steering } = conditions;
            if conditions.residual() <= self.closed() {
                let slope = conditions.determinant() / height.by_suspension;
                return Some(Place {
                    at,
                    input,
                    suspension_by_turn: -height.by_steering / height.by_suspension,
                    input_by_turn: -slope / rod_by_input,
                    slope,
                    rod_by_input,
                });
            }
            let suspension = -height.residual / height.by_suspension;
            at.suspension += suspension;
            input -= (steering.residual + steering.by_suspension * suspension) / rod_by_input;
        }
        None
    }
}
