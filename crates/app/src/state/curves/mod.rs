//! The curves on screen: toe against travel, outer against inner angle.

use steerloft_setup::car::Ranges;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::{corner_figures, ideal_outer, inner_outer, kingpin_distance};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::pose::AxlePose;
use steerloft_solver::sweep::{Lock, SweepRange, bump_sweep, steer_sweep};

/// Poses on a curve.
const SAMPLES: usize = 121;

/// Ends of the ideal line, degrees of the inner wheel.
const IDEAL_TO: f64 = 60.0;

/// Poses on the ideal line.
const IDEAL_SAMPLES: usize = 61;

/// Direction of a turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// To the left: the left wheel is the inner one.
    Left,
    /// To the right: the right wheel is the inner one.
    Right,
}

impl Turn {
    /// Left, then right.
    pub const BOTH: [Self; 2] = [Self::Left, Self::Right];

    /// The turn whose inner wheel is on this side.
    #[must_use]
    pub fn with_inner(side: Side) -> Self {
        match side {
            Side::Left => Self::Left,
            Side::Right => Self::Right,
        }
    }
}

/// Toe of both wheels over the wheel travel, straight ahead.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BumpCurve {
    /// Travel (mm, bump positive) and toe (degrees, toe-in positive).
    pub toe: Sides<Vec<[f64; 2]>>,
    /// Where travel ends before the car's range does.
    pub locks: Vec<Lock>,
}

/// One pose of the steering sweep.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SteerSample {
    /// Steering input, degrees.
    pub input: f64,
    /// Direction of the turn.
    pub turn: Turn,
    /// Angle of the inner wheel from straight ahead, degrees.
    pub inner: f64,
    /// Angle of the outer wheel from straight ahead, degrees.
    pub outer: f64,
}

/// Wheel angles over the steering input, at the travel of the cursor.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SteerCurve {
    /// Poses in order of the input; straight ahead itself, where no wheel is the inner one, is absent.
    pub samples: Vec<SteerSample>,
    /// Whether the sweep is at rest, so that both wheels' angles start from zero.
    pub at_rest: bool,
    /// Where steering ends before the car's range does.
    pub locks: Vec<Lock>,
    /// Inner and ideal outer angle, degrees.
    pub ideal: Vec<[f64; 2]>,
}

impl SteerCurve {
    /// The line of one direction of turn: inner and outer angle, degrees, from straight ahead on.
    #[must_use]
    pub fn line(&self, turn: Turn) -> Vec<[f64; 2]> {
        let mut line: Vec<[f64; 2]> = self
            .samples
            .iter()
            .filter(|sample| sample.turn == turn)
            .map(|sample| [sample.inner, sample.outer])
            .collect();
        if self.at_rest {
            line.push([0.0, 0.0]);
        }
        line.sort_by(|a, b| a[0].total_cmp(&b[0]));
        line
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
        let mut line: Vec<[f64; 2]> = self
            .samples
            .iter()
            .filter(|sample| sample.turn == turn)
            .map(|sample| [sample.inner, sample.input])
            .collect();
        line.push([0.0, 0.0]);
        line.sort_by(|a, b| a[0].total_cmp(&b[0]));
        interpolate(&line, inner)
    }
}

/// All curves on screen.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Curves {
    /// Toe against travel; none for a suspension without travel.
    pub bump: Option<BumpCurve>,
    /// Outer against inner angle.
    pub steer: SteerCurve,
}

impl Curves {
    /// The curves of an axle over the ranges of its car, the steering sweep at the given travel.
    #[must_use]
    pub fn new(assembly: &Assembly, ranges: &Ranges, travel: Sides<f64>) -> Self {
        Self {
            bump: bump_curve(assembly, ranges),
            steer: steer_curve(assembly, ranges, travel),
        }
    }
}

fn bump_curve(assembly: &Assembly, ranges: &Ranges) -> Option<BumpCurve> {
    if !assembly.has_travel() {
        return None;
    }
    let range = SweepRange {
        from: ranges.travel.0,
        to: ranges.travel.1,
        count: SAMPLES,
    };
    let sweep = bump_sweep(assembly, range, 0.0).ok()?;
    let road = &assembly.axle().road;
    let toe = Sides::from_fn(|side| {
        sweep
            .poses
            .iter()
            .map(|pose| {
                let figures = corner_figures(pose.corners.get(side), road);
                [*pose.travel.get(side), figures.toe.to_degrees()]
            })
            .collect()
    });
    Some(BumpCurve {
        toe,
        locks: sweep.locks().copied().collect(),
    })
}

fn steer_curve(assembly: &Assembly, ranges: &Ranges, travel: Sides<f64>) -> SteerCurve {
    let range = SweepRange {
        from: ranges.input.0.to_radians(),
        to: ranges.input.1.to_radians(),
        count: SAMPLES,
    };
    let sweep = steer_sweep(assembly, range, travel);
    let samples = sweep
        .poses
        .iter()
        .filter_map(|pose| steer_sample(assembly, pose))
        .collect();
    SteerCurve {
        samples,
        at_rest: travel == Sides::both(0.0),
        locks: sweep.locks().copied().collect(),
        ideal: ideal_line(kingpin_distance(assembly), assembly.axle().wheelbase),
    }
}

/// The wheel angles of a pose, degrees; none straight ahead.
fn steer_sample(assembly: &Assembly, pose: &AxlePose) -> Option<SteerSample> {
    let angles = inner_outer(assembly, pose)?;
    Some(SteerSample {
        input: pose.input.to_degrees(),
        turn: Turn::with_inner(angles.inner_side),
        inner: angles.inner.to_degrees(),
        outer: angles.outer.to_degrees(),
    })
}

fn ideal_line(kingpin_distance: f64, wheelbase: f64) -> Vec<[f64; 2]> {
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

/// Value of a line, sorted by its first coordinate, at a place on it; its end beyond the ends.
fn interpolate(line: &[[f64; 2]], at: f64) -> Option<f64> {
    let after = line.partition_point(|point| point[0] < at);
    let Some(high) = line.get(after) else {
        return line.last().map(|point| point[1]);
    };
    let Some(low) = after.checked_sub(1).and_then(|before| line.get(before)) else {
        return Some(high[1]);
    };
    let width = high[0] - low[0];
    if width <= 0.0 {
        return Some(high[1]);
    }
    Some(low[1] + (high[1] - low[1]) * (at - low[0]) / width)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn interpolation_holds_the_ends() {
        let line = [[0.0, 0.0], [10.0, 20.0], [20.0, 25.0]];
        assert_eq!(interpolate(&line, -5.0), Some(0.0));
        assert_eq!(interpolate(&line, 5.0), Some(10.0));
        assert_eq!(interpolate(&line, 15.0), Some(22.5));
        assert_eq!(interpolate(&line, 99.0), Some(25.0));
        assert_eq!(interpolate(&[], 1.0), None);
    }
}
