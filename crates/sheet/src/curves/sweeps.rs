//! The poses that curves are read off: along steering input, wheel travel and roll, each to its lock.

use steerloft_setup::car::Ranges;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::drive::Drive;
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::{InnerOuter, inner_outer};
use steerloft_solver::frame::{Road, Side, Sides};
use steerloft_solver::pose::AxlePose;
use steerloft_solver::sweep::{Sweep, SweepRange, bump_sweep, steer_sweep};

use super::{Axis, Curve, CurveKind, Range, of_roll, of_steer, of_travel};
use crate::number::signed;

/// Poses of a sweep.
pub const SAMPLES: usize = 121;

/// Greatest roll shown, rad.
const MOST_ROLL: f64 = 5.0_f64.to_radians();

/// A front axle posed along everything that moves it.
#[derive(Debug, Clone, PartialEq)]
pub struct Sweeps {
    /// The axle.
    pub assembly: Assembly,
    /// Poses over the steering input, wheels at rest height.
    pub steer: Sweep,
    /// Poses over the wheel travel, straight ahead; none for a suspension without travel.
    pub travel: Option<Sweep>,
    /// Poses over the roll of the chassis (rad, right side down positive) with both tyres on the road, straight ahead,
    /// in order; none for a suspension without travel.
    pub roll: Vec<(f64, AxlePose)>,
    pub(super) ranges: Ranges,
}

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
    pub const fn with_inner(side: Side) -> Self {
        match side {
            Side::Left => Self::Left,
            Side::Right => Self::Right,
        }
    }
}

/// A pose of the steering sweep in which the wheels turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TurnSample {
    /// Steering input, rad (mm of a rack).
    pub input: f64,
    /// Direction of the turn.
    pub turn: Turn,
    /// Inner and outer wheel, rad.
    pub angles: InnerOuter,
}

impl Sweeps {
    /// Poses an axle over the ranges of its car.
    #[must_use]
    pub fn new(assembly: &Assembly, ranges: &Ranges) -> Self {
        let unit = input_unit(&assembly.axle().drive);
        let [from, to] = [ranges.input.0, ranges.input.1].map(|input| input * unit.in_solver);
        let input = SweepRange {
            from,
            to,
            count: SAMPLES,
        };
        let travel = SweepRange {
            from: ranges.travel.0,
            to: ranges.travel.1,
            count: SAMPLES,
        };
        Self {
            assembly: *assembly,
            steer: steer_sweep(assembly, input, Sides::both(0.0)),
            travel: bump_sweep(assembly, travel, 0.0).ok(),
            roll: roll_poses(assembly, ranges),
            ranges: *ranges,
        }
    }

    /// A curve of this axle.
    #[must_use]
    pub fn curve(&self, kind: CurveKind) -> Curve {
        match kind {
            CurveKind::ToeTravel
            | CurveKind::CamberTravel
            | CurveKind::CasterTravel
            | CurveKind::InclinationTravel
            | CurveKind::ContactTravel => of_travel::curve(self, kind),
            CurveKind::RollSteer | CurveKind::RollCamber => of_roll::curve(self, kind),
            CurveKind::InnerOuter
            | CurveKind::AckermannShare
            | CurveKind::WheelAngles
            | CurveKind::SteeringRatio
            | CurveKind::CamberSteer
            | CurveKind::ScrubSteer
            | CurveKind::TrailSteer
            | CurveKind::Transmission => of_steer::curve(self, kind),
        }
    }

    /// The poses of the steering sweep in which the wheels turn, in order of the input. Straight ahead, where no wheel
    /// is the inner one, is absent.
    pub fn turns(&self) -> impl Iterator<Item = TurnSample> {
        self.steer.poses.iter().filter_map(|pose| {
            let angles = inner_outer(&self.assembly, pose)?;
            Some(TurnSample {
                input: pose.input,
                turn: Turn::with_inner(angles.inner_side),
                angles,
            })
        })
    }

    /// The end of steering in one direction; none where the car never turns that way.
    #[must_use]
    pub fn full_lock(&self, turn: Turn) -> Option<TurnSample> {
        self.turns()
            .filter(|sample| sample.turn == turn)
            .max_by(|a, b| a.input.abs().total_cmp(&b.input.abs()))
    }

    /// The unit of the steering input.
    #[must_use]
    pub fn input_unit(&self) -> InputUnit {
        input_unit(&self.assembly.axle().drive)
    }

    /// The axis of the steering input.
    pub(super) fn input_axis(&self) -> Axis {
        let pose = self.assembly.static_pose();
        let road = &self.assembly.axle().road;
        let rates = pose.corners.map(|corner| steer_per_input(&corner, road));
        let way = if rates.left + rates.right < 0.0 {
            "right"
        } else {
            "left"
        };
        Axis {
            quantity: "steering input",
            unit: self.input_unit().name,
            sign: format!("turns {way} +"),
            least: Range::new(self.ranges.input.0, self.ranges.input.1),
        }
    }

    /// Where steering ends before the car's range does, in sentences.
    pub(super) fn steering_notes(&self) -> Vec<String> {
        let unit = self.input_unit();
        self.steer
            .locks()
            .map(|lock| {
                let at = signed(lock.at / unit.in_solver, 1);
                format!("Steering ends at {at} {}: {}.", unit.name, lock.cause)
            })
            .collect()
    }
}

/// Unit of a steering input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InputUnit {
    /// As written: "deg" or "mm".
    pub name: &'static str,
    /// What one of it is to the solver, rad or mm.
    pub in_solver: f64,
}

fn input_unit(drive: &Drive) -> InputUnit {
    match drive {
        Drive::SwingArm(_) | Drive::TwinCrank(_) => InputUnit {
            name: "deg",
            in_solver: 1.0_f64.to_radians(),
        },
        Drive::Slider(_) => InputUnit {
            name: "mm",
            in_solver: 1.0,
        },
    }
}

/// Poses with the chassis rolled as far as the wheels' travel lets it, both tyres on the road, from the level outward.
fn roll_poses(assembly: &Assembly, ranges: &Ranges) -> Vec<(f64, AxlePose)> {
    let half_track = assembly.static_pose().corners.left.wheel_centre.y.abs();
    let travel = (-ranges.travel.0).min(ranges.travel.1).max(0.0);
    let reach = (travel / half_track).atan().min(MOST_ROLL);
    if reach.is_nan() || reach <= 0.0 {
        return Vec::new();
    }
    let values = SweepRange {
        from: -reach,
        to: reach,
        count: SAMPLES,
    }
    .values();
    let mut poses = roll_to_lock(assembly, values.clone().rev().filter(|roll| *roll < 0.0));
    poses.reverse();
    poses.extend(roll_to_lock(assembly, values.filter(|roll| *roll >= 0.0)));
    poses
}

fn roll_to_lock(assembly: &Assembly, rolls: impl Iterator<Item = f64>) -> Vec<(f64, AxlePose)> {
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
                poses.push((roll, pose));
            }
            Err(_) => break,
        }
    }
    poses
}
