//! Curves over the wheel travel, the steering input and the roll of the chassis.

mod kind;
mod roll;
mod steer;
mod travel;

use steerloft_setup::car::{Car, RightCorner};
use steerloft_solver::assembly::Assembly;
use steerloft_solver::error::SolveError;
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::sweep::{Lock, LockKind, SweepRange};

use super::InputUnit;

pub use kind::{CurveKind, Sweep};
pub use roll::RollCurves;
pub use steer::{SteerCurves, SteerSample};
pub use travel::TravelCurves;

/// Poses on a curve.
const SAMPLES: usize = 121;

/// Places on a curve, each with its value, in order of the places.
pub type Line = Vec<[f64; 2]>;

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

/// What one line of a curve belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strand {
    /// One wheel.
    Side(Side),
    /// One direction of turn.
    Turn(Turn),
    /// The axle as a whole.
    Axle,
}

/// Where a sweep ends before the car's range does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct End {
    /// The swept value there, in the unit in which people give it: degrees or mm.
    pub at: f64,
    /// What locks, and by how much it would miss a little farther on.
    pub cause: SolveError,
    /// In which way it locks.
    pub kind: LockKind,
}

impl End {
    fn of(lock: &Lock, shown: impl Fn(f64) -> f64) -> Self {
        Self {
            at: shown(lock.at),
            cause: lock.cause,
            kind: lock.kind,
        }
    }
}

/// Over what the curves of a car go, and in how many poses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sweeps {
    /// Unit of the steering input.
    pub unit: InputUnit,
    /// Least and greatest steering input, in that unit.
    pub input: (f64, f64),
    /// Full droop and full bump, mm.
    pub travel: (f64, f64),
    /// Roll of the chassis each way from how the car stands, degrees.
    pub roll: f64,
    /// Poses on each curve.
    pub samples: usize,
}

impl Sweeps {
    /// Over the whole ranges of a car.
    #[must_use]
    pub fn of(car: &Car) -> Self {
        Self {
            unit: InputUnit::of(car),
            input: car.ranges.input,
            travel: car.ranges.travel,
            roll: full_roll(car),
            samples: SAMPLES,
        }
    }

    /// Values of one sweep.
    fn range(&self, (from, to): (f64, f64)) -> SweepRange {
        SweepRange {
            from,
            to,
            count: self.samples,
        }
    }
}

/// Roll at which one wheel is at full bump while the other is at full droop, degrees: farther the springs do not let the
/// chassis roll with both tyres on the road. Derived here, with the wheels as drawn.
fn full_roll(car: &Car) -> f64 {
    let left = car.left.wheel_centre.1;
    let right = match &car.right {
        RightCorner::Mirrored => -left,
        RightCorner::Given(points) => points.wheel_centre.1,
    };
    let apart = car.ranges.travel.1 - car.ranges.travel.0;
    let roll = (apart / (left - right)).atan().to_degrees();
    if roll.is_finite() { roll.abs() } else { 0.0 }
}

/// All curves of a car.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Curves {
    /// Over the wheel travel, straight ahead; none for a suspension without travel.
    pub travel: Option<TravelCurves>,
    /// Over the steering input, at the wheel travel shown.
    pub steer: SteerCurves,
    /// Over the roll of the chassis, straight ahead; none for a suspension without travel.
    pub roll: Option<RollCurves>,
}

impl Curves {
    /// The curves of an axle, those over the steering input at the given travel.
    #[must_use]
    pub fn new(assembly: &Assembly, sweeps: &Sweeps, travel: Sides<f64>) -> Self {
        Self {
            travel: TravelCurves::new(assembly, sweeps),
            steer: SteerCurves::new(assembly, sweeps, travel),
            roll: RollCurves::new(assembly, sweeps),
        }
    }

    /// The curves over the steering input anew, at another travel; the others do not depend on it.
    pub(super) fn steer_again(&mut self, assembly: &Assembly, sweeps: &Sweeps, travel: Sides<f64>) {
        self.steer = SteerCurves::new(assembly, sweeps, travel);
    }

    /// The lines of one panel, in the units its axes name; none where the suspension does not move that way.
    #[must_use]
    pub fn lines(&self, kind: CurveKind) -> Option<Vec<(Strand, &Line)>> {
        let sides = |lines| Some(by_side(lines));
        match kind {
            CurveKind::ToeTravel => sides(&self.travel.as_ref()?.toe),
            CurveKind::CamberTravel => sides(&self.travel.as_ref()?.camber),
            CurveKind::CasterTravel => sides(&self.travel.as_ref()?.caster),
            CurveKind::OuterInner => Some(by_turn(&self.steer.angles)),
            CurveKind::Ackermann => Some(by_turn(&self.steer.share)),
            CurveKind::CamberSteer => sides(&self.steer.camber),
            CurveKind::Transmission => sides(&self.steer.transmission),
            CurveKind::Ratio => Some(vec![(Strand::Axle, &self.steer.ratio)]),
            CurveKind::RollSteer => sides(&self.roll.as_ref()?.steer),
            CurveKind::CamberRoll => sides(&self.roll.as_ref()?.camber),
        }
    }
}

fn by_side(lines: &Sides<Line>) -> Vec<(Strand, &Line)> {
    Side::BOTH
        .map(|side| (Strand::Side(side), lines.get(side)))
        .into()
}

fn by_turn([left, right]: &[Line; 2]) -> Vec<(Strand, &Line)> {
    vec![
        (Strand::Turn(Turn::Left), left),
        (Strand::Turn(Turn::Right), right),
    ]
}

/// Value of a line at a place on it; none beyond its ends.
#[must_use]
pub fn value_at(line: &[[f64; 2]], place: f64) -> Option<f64> {
    let after = line.partition_point(|point| point[0] < place);
    let high = line.get(after)?;
    if high[0] <= place {
        return Some(high[1]);
    }
    let low = line.get(after.checked_sub(1)?)?;
    Some(low[1] + (high[1] - low[1]) * (place - low[0]) / (high[0] - low[0]))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use steerloft_setup::supplied::SUPPLIED;

    #[test]
    fn values_are_read_between_points_and_not_beyond() {
        let line = [[-1.0, 2.0], [1.0, 4.0]];
        assert_eq!(value_at(&line, 0.0), Some(3.0));
        assert_eq!(value_at(&line, -1.0), Some(2.0));
        assert_eq!(value_at(&line, 1.0), Some(4.0));
        assert_eq!(value_at(&line, 1.1), None);
        assert_eq!(value_at(&line, -1.1), None);
        assert_eq!(value_at(&[], 0.0), None);
    }

    #[test]
    fn in_full_roll_the_wheels_stand_at_their_ends_of_travel() {
        let mut car = SUPPLIED[0].setup().car;
        car.ranges.travel = (-1.5, 1.5);
        let half_track = car.left.wheel_centre.1;
        let rise = half_track * full_roll(&car).to_radians().tan();
        assert!((rise - 1.5).abs() < 1e-9, "{rise}");
    }
}
