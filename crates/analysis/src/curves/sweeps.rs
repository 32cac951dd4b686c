//! The poses that curves are read off: along steering input, wheel travel and roll, each to its lock.

use std::sync::OnceLock;

use steerloft_setup::car::Ranges;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::inner_outer;
use steerloft_solver::frame::{Road, Sides};
use steerloft_solver::pose::AxlePose;
use steerloft_solver::sweep::{Sweep, SweepRange, bump_sweep, steer_sweep};

use super::{
    Along, Axis, Curve, CurveKind, End, Swept, Turn, TurnSample, of_roll, of_steer, of_travel,
    of_turns, roll_range, value_at,
};
use crate::{InputUnit, Range};

/// Poses of a sweep over the steering or the travel.
pub const SAMPLES: usize = 121;

/// What is held while something else is swept.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Wheel travel in sweeps over the steering, mm.
    pub travel: Sides<f64>,
    /// Steering input in the sweep over the travel with the wheels turned, in the drive's unit: degrees or mm.
    pub input: f64,
}

/// A pose with the chassis rolled and both tyres on the road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RollPose {
    /// Roll from how the car stands, rad, right side down positive.
    pub roll: f64,
    /// The road as the rolled chassis sees it.
    pub road: Road,
    /// The pose.
    pub pose: AxlePose,
}

/// A front axle posed along everything that moves it; each sweep is made when it is asked for, and once.
#[derive(Debug, Clone)]
pub struct Sweeps {
    assembly: Assembly,
    ranges: Ranges,
    samples: usize,
    held: Held,
    steer: OnceLock<Sweep>,
    travel: OnceLock<Option<Sweep>>,
    steered_travel: OnceLock<Option<Sweep>>,
    roll: OnceLock<Vec<RollPose>>,
    steer_on_road: OnceLock<Vec<AxlePose>>,
}

impl Sweeps {
    /// Over the ranges of a car, wheels at rest in sweeps over the steering. The input held in the sweep over the travel
    /// with the wheels turned is at first half of what the car steers.
    #[must_use]
    pub fn new(assembly: &Assembly, ranges: &Ranges) -> Self {
        Self::with_samples(assembly, ranges, SAMPLES)
    }

    /// As [`Sweeps::new`], with so many poses in a sweep.
    #[must_use]
    pub fn with_samples(assembly: &Assembly, ranges: &Ranges, samples: usize) -> Self {
        Self {
            assembly: *assembly,
            ranges: *ranges,
            samples,
            held: Held {
                travel: Sides::both(0.0),
                input: ranges.input.1 * 0.5,
            },
            steer: OnceLock::new(),
            travel: OnceLock::new(),
            steered_travel: OnceLock::new(),
            roll: OnceLock::new(),
            steer_on_road: OnceLock::new(),
        }
    }

    /// The axle.
    #[must_use]
    pub const fn assembly(&self) -> &Assembly {
        &self.assembly
    }

    /// How far the car's parts go.
    #[must_use]
    pub const fn ranges(&self) -> &Ranges {
        &self.ranges
    }

    /// The unit of the steering input.
    #[must_use]
    pub const fn unit(&self) -> InputUnit {
        InputUnit::of_drive(&self.assembly.axle().drive)
    }

    /// What is held.
    #[must_use]
    pub const fn held(&self) -> &Held {
        &self.held
    }

    /// Holds something else; sweeps that depend on it are made anew when they are asked for.
    pub fn hold(&mut self, held: Held) {
        if held.travel != self.held.travel {
            self.steer = OnceLock::new();
        }
        if held.input.to_bits() != self.held.input.to_bits() {
            self.steered_travel = OnceLock::new();
        }
        self.held = held;
    }

    /// Poses over the steering input, at the wheel travel held.
    #[must_use]
    pub fn steer(&self) -> &Sweep {
        self.steer.get_or_init(|| {
            let (from, to) = self.ranges.input;
            let unit = self.unit();
            let range = self.range((unit.to_solver(from), unit.to_solver(to)));
            steer_sweep(&self.assembly, range, self.held.travel)
        })
    }

    /// Poses over the wheel travel, straight ahead; none for a suspension without travel.
    #[must_use]
    pub fn travel(&self) -> Option<&Sweep> {
        let sweep = self.travel.get_or_init(|| self.travel_at(0.0));
        sweep.as_ref()
    }

    /// Poses over the wheel travel at the steering input held; none for a suspension without travel.
    #[must_use]
    pub fn steered_travel(&self) -> Option<&Sweep> {
        let input = self.unit().to_solver(self.held.input);
        let sweep = self.steered_travel.get_or_init(|| self.travel_at(input));
        sweep.as_ref()
    }

    /// Poses over the roll of the chassis, straight ahead, in order of the roll; none for a suspension without travel.
    #[must_use]
    pub fn roll(&self) -> &[RollPose] {
        self.roll.get_or_init(|| {
            // Keeping the tyres down takes several closures a pose, and these lines bend little: half as many will do.
            roll_poses(&self.assembly, &self.ranges, self.samples.div_ceil(2))
        })
    }

    /// Poses over the steering input with both tyres kept on the road, in order of the input; none for a suspension
    /// without travel.
    #[must_use]
    pub fn steer_on_road(&self) -> &[AxlePose] {
        self.steer_on_road.get_or_init(|| {
            let (from, to) = self.ranges.input;
            let unit = self.unit();
            let inputs = SweepRange {
                from: unit.to_solver(from),
                to: unit.to_solver(to),
                // As in roll, several closures a pose.
                count: self.samples.div_ceil(2),
            };
            steered_on_road(&self.assembly, inputs)
        })
    }

    fn travel_at(&self, input: f64) -> Option<Sweep> {
        bump_sweep(&self.assembly, self.range(self.ranges.travel), input).ok()
    }

    fn range(&self, (from, to): (f64, f64)) -> SweepRange {
        SweepRange {
            from,
            to,
            count: self.samples,
        }
    }

    /// A curve of this axle.
    #[must_use]
    pub fn curve(&self, kind: CurveKind) -> Curve {
        match kind.along() {
            Along::Travel => of_travel::straight(self, kind),
            Along::SteeredTravel => of_travel::steered(self, kind),
            Along::Steer => of_steer::curve(self, kind),
            Along::InnerAngle => of_turns::curve(self, kind),
            Along::Roll => of_roll::curve(self, kind),
        }
    }

    /// The poses of the steering sweep in which the wheels turn, in order of the input. Straight ahead, where no wheel
    /// is the inner one, is absent.
    pub fn turns(&self) -> impl Iterator<Item = TurnSample> {
        self.steer().poses.iter().filter_map(|pose| {
            let angles = inner_outer(&self.assembly, pose)?;
            Some(TurnSample {
                input: pose.input,
                turn: Turn::with_inner(angles.inner_side),
                angles,
            })
        })
    }

    /// The end of steering in one direction with its pose; none where the car never turns that way.
    #[must_use]
    pub fn full_lock(&self, turn: Turn) -> Option<(TurnSample, &AxlePose)> {
        let end = self
            .turns()
            .filter(|sample| sample.turn == turn)
            .max_by(|a, b| a.input.abs().total_cmp(&b.input.abs()))?;
        let mut poses = self.steer().poses.iter();
        let pose = poses.find(|pose| pose.input.to_bits() == end.input.to_bits())?;
        Some((end, pose))
    }

    /// The input, in the drive's unit, at which the inner wheel of a turn stands at an angle, degrees; that of the end of
    /// steering beyond it.
    #[must_use]
    pub fn input_at(&self, turn: Turn, inner: f64) -> Option<f64> {
        let unit = self.unit();
        let samples = self.turns().filter(|sample| sample.turn == turn);
        let mut line: Vec<[f64; 2]> = samples
            .map(|sample| {
                let inner = sample.angles.inner.to_degrees();
                [inner, unit.from_solver(sample.input)]
            })
            .collect();
        line.push([0.0, 0.0]);
        line.sort_by(|a, b| a[0].total_cmp(&b[0]));
        let (first, last) = (line.first()?[0], line.last()?[0]);
        value_at(&line, inner.max(first).min(last))
    }

    /// The turn that a positive steering input makes.
    #[must_use]
    pub fn positive_input(&self) -> Turn {
        let road = &self.assembly.axle().road;
        let corners = &self.assembly.static_pose().corners;
        let rates = corners.map(|corner| steer_per_input(&corner, road));
        if rates.left + rates.right < 0.0 {
            Turn::Right
        } else {
            Turn::Left
        }
    }

    /// The axis of the steering input.
    pub(super) fn input_axis(&self) -> Axis {
        let (from, to) = self.ranges.input;
        Axis {
            quantity: "steering input",
            unit: self.unit().word(),
            sign: match self.positive_input() {
                Turn::Left => "turns left +",
                Turn::Right => "turns right +",
            },
            decimals: 1,
            least: Range::new(from, to),
        }
    }

    /// Where steering ends before the car's range does.
    #[must_use]
    pub fn steering_ends(&self) -> Vec<End> {
        let unit = self.unit();
        let locks = self.steer().locks();
        locks
            .map(|lock| {
                let at = unit.from_solver(lock.at);
                End::of(lock, Swept::Steering, at, unit.word())
            })
            .collect()
    }
}

/// Where a sweep over the travel ends before the car's range does.
pub(super) fn travel_ends(sweep: &Sweep) -> Vec<End> {
    let locks = sweep.locks();
    locks
        .map(|lock| End::of(lock, Swept::Travel, lock.at, "mm"))
        .collect()
}

/// Poses with the chassis rolled as far as the wheels' travel lets it, both tyres on the road, from the level outward.
fn roll_poses(assembly: &Assembly, ranges: &Ranges, samples: usize) -> Vec<RollPose> {
    let Range { from, to } = roll_range(assembly, assembly.static_pose(), ranges);
    if from >= to {
        return Vec::new();
    }
    let values = SweepRange {
        from,
        to,
        count: samples,
    }
    .values();
    let mut poses = roll_to_lock(assembly, values.clone().rev().filter(|roll| *roll < 0.0));
    poses.reverse();
    poses.extend(roll_to_lock(assembly, values.filter(|roll| *roll >= 0.0)));
    poses
}

fn roll_to_lock(assembly: &Assembly, rolls: impl Iterator<Item = f64>) -> Vec<RollPose> {
    let at_rest = assembly.axle().road;
    let mut near = *assembly.static_pose();
    let mut poses = Vec::new();
    for roll in rolls {
        let road = Road {
            roll: at_rest.roll + roll,
            ..at_rest
        };
        match assembly.pose_on_road(&near, 0.0, &road) {
            Ok(pose) => {
                near = pose;
                poses.push(RollPose { roll, road, pose });
            }
            Err(_) => break,
        }
    }
    poses
}

/// Poses over the steering input with both tyres kept on the road, each way as far as the linkage and the wheels go.
fn steered_on_road(assembly: &Assembly, range: SweepRange) -> Vec<AxlePose> {
    if !assembly.has_travel() {
        return Vec::new();
    }
    let values = range.values();
    let mut poses = steer_to_lock(assembly, values.clone().rev().filter(|input| *input < 0.0));
    poses.reverse();
    poses.extend(steer_to_lock(
        assembly,
        values.filter(|input| *input >= 0.0),
    ));
    poses
}

fn steer_to_lock(assembly: &Assembly, inputs: impl Iterator<Item = f64>) -> Vec<AxlePose> {
    let road = &assembly.axle().road;
    let mut near = *assembly.static_pose();
    let mut poses = Vec::new();
    for input in inputs {
        let Ok(pose) = assembly.pose_on_road(&near, input, road) else {
            break;
        };
        near = pose;
        poses.push(pose);
    }
    poses
}
