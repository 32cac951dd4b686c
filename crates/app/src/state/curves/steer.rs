//! Curves over the steering input, at the wheel travel shown.

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::camber::camber_of;
use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::figures::{
    ideal_outer, inner_outer, kingpin_distance, steering_ratio, straight_ahead_share,
};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::pose::AxlePose;
use steerloft_solver::sweep::steer_sweep;

use super::{End, Line, Sweeps, Turn};
use crate::state::InputUnit;

/// End of the ideal line, degrees of the inner wheel.
const IDEAL_TO: f64 = 75.0;

/// Poses on the ideal line.
const IDEAL_SAMPLES: usize = 61;

/// Turn of the inner wheel from which on the Ackermann share is plotted, degrees.
const SHARE_FROM: f64 = 1.0;

/// One pose of the steering sweep that turns the car.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SteerSample {
    /// Steering input, degrees or mm.
    pub input: f64,
    /// Direction of the turn.
    pub turn: Turn,
    /// Angle of the inner wheel from straight ahead, degrees.
    pub inner: f64,
    /// Angle of the outer wheel from straight ahead, degrees.
    pub outer: f64,
}

/// What follows from the steering input, at the travel of the cursor. Inputs are in the car's unit, angles in degrees.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SteerCurves {
    /// Poses in order of the input; straight ahead itself, where no wheel is the inner one, is absent.
    pub samples: Vec<SteerSample>,
    /// Outer against inner angle, of a left and a right turn, from straight ahead on.
    pub angles: [Line; 2],
    /// Ackermann share, percent, of a left and a right turn. At rest a mirror-symmetrical car's lines meet in the limit
    /// straight ahead.
    pub share: [Line; 2],
    /// Camber of each wheel, positive with the top outboard.
    pub camber: Sides<Line>,
    /// Angle between tie rod and steering arm, degrees.
    pub transmission: Sides<Line>,
    /// Input for each degree of the wheels' mean steer.
    pub ratio: Line,
    /// Where steering ends before the car's range does.
    pub ends: Vec<End>,
    /// Inner and ideal outer angle.
    pub ideal: Line,
}

impl SteerCurves {
    /// The curves at wheel travels, mm.
    #[must_use]
    pub fn new(assembly: &Assembly, sweeps: &Sweeps, travel: Sides<f64>) -> Self {
        let unit = sweeps.unit;
        let (from, to) = sweeps.input;
        let range = sweeps.range((unit.to_solver(from), unit.to_solver(to)));
        let sweep = steer_sweep(assembly, range, travel);
        let mut curves = Self {
            ends: sweep
                .locks()
                .map(|lock| End::of(lock, |input| unit.from_solver(input)))
                .collect(),
            ideal: ideal_line(kingpin_distance(assembly), assembly.axle().wheelbase),
            ..Self::default()
        };
        for pose in &sweep.poses {
            curves.push(assembly, pose, unit);
        }
        let at_rest = travel == Sides::both(0.0);
        if at_rest {
            curves.start_from_rest(straight_ahead_share(assembly));
        }
        for line in &mut curves.angles {
            line.sort_by(|a, b| a[0].total_cmp(&b[0]));
        }
        for line in &mut curves.share {
            line.sort_by(|a, b| a[0].total_cmp(&b[0]));
        }
        curves
    }

    fn push(&mut self, assembly: &Assembly, pose: &AxlePose, unit: InputUnit) {
        let road = &assembly.axle().road;
        let up = road.normal();
        let input = unit.from_solver(pose.input);
        for side in Side::BOTH {
            let corner = pose.corners.get(side);
            let camber = camber_of(&corner.spin_axis, &up).to_degrees();
            self.camber.get_mut(side).push([input, camber]);
            let angle = outer_transmission(corner).angle.to_degrees();
            self.transmission.get_mut(side).push([input, angle]);
        }
        if let Some(ratio) = steering_ratio(pose, road) {
            self.ratio.push([input, unit.ratio(ratio)]);
        }
        let Some(angles) = inner_outer(assembly, pose) else {
            return;
        };
        let turn = Turn::with_inner(angles.inner_side);
        let (inner, outer) = (angles.inner.to_degrees(), angles.outer.to_degrees());
        self.samples.push(SteerSample {
            input,
            turn,
            inner,
            outer,
        });
        self.angles[turn as usize].push([inner, outer]);
        if let Some(share) = angles.ackermann_share.filter(|_| inner >= SHARE_FROM) {
            self.share[turn as usize].push([input, share]);
        }
    }

    /// At rest both wheels' angles start from zero, and the share from its limit where there is one.
    fn start_from_rest(&mut self, share: Option<f64>) {
        for line in &mut self.angles {
            line.push([0.0, 0.0]);
        }
        if let Some(share) = share {
            for line in &mut self.share {
                line.push([0.0, share]);
            }
        }
    }

    /// Which way a positive steering input turns the car.
    #[must_use]
    pub fn positive_input(&self) -> Option<Turn> {
        self.samples
            .last()
            .filter(|sample| sample.input > 0.0)
            .map(|sample| sample.turn)
    }

    /// The input at which the inner wheel of a turn stands at an angle, degrees; the end of the line beyond it.
    #[must_use]
    pub fn input_at(&self, turn: Turn, inner: f64) -> Option<f64> {
        let mut line: Line = self
            .samples
            .iter()
            .filter(|sample| sample.turn == turn)
            .map(|sample| [sample.inner, sample.input])
            .collect();
        line.push([0.0, 0.0]);
        line.sort_by(|a, b| a[0].total_cmp(&b[0]));
        held(&line, inner)
    }
}

fn ideal_line(kingpin_distance: f64, wheelbase: f64) -> Line {
    #[allow(clippy::cast_precision_loss, reason = "a few dozen samples")]
    let inner_at = |index: usize| IDEAL_TO * index as f64 / (IDEAL_SAMPLES - 1) as f64;
    (0..IDEAL_SAMPLES)
        .map(|index| {
            let inner = inner_at(index);
            let outer = ideal_outer(inner.to_radians(), kingpin_distance, wheelbase);
            [inner, outer.to_degrees()]
        })
        .collect()
}

/// Value of a line at a place; beyond its ends the value at the end.
fn held(line: &[[f64; 2]], place: f64) -> Option<f64> {
    let (first, last) = (line.first()?, line.last()?);
    super::value_at(line, place.max(first[0]).min(last[0]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_of_a_line_hold_beyond_it() {
        let line = [[0.0, 0.0], [10.0, 20.0], [20.0, 25.0]];
        assert_eq!(held(&line, -5.0), Some(0.0));
        assert_eq!(held(&line, 5.0), Some(10.0));
        assert_eq!(held(&line, 15.0), Some(22.5));
        assert_eq!(held(&line, 99.0), Some(25.0));
        assert_eq!(held(&[], 1.0), None);
    }
}
