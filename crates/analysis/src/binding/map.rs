//! The field of steer and travel, and what binds in each pose of it.

use steerloft_setup::car::Clearances;
use steerloft_setup::layout::layout;
use steerloft_setup::setup::Setup;
use steerloft_solver::error::JointLimit;
use steerloft_solver::figures::linkage::{inner_share, outer_transmission};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::joints::JointLimits;
use steerloft_solver::pose::{AxlePose, CornerPose};
use steerloft_solver::{SolveError, sweep::SweepRange};

use super::clearance::{Solid, rim_clearance, solids_of};
use super::thread::{ThreadCheck, thread_check};
use crate::wheels::Wheels;

/// Least share of a rod's pull that should turn what it holds; below it the linkage is near its dead centre. Common
/// practice, no source: rod and lever no nearer to one line than 20 degrees, whose sine this is.
pub const LEAST_SHARE: f64 = 0.342;

/// What may go wrong in a pose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Concern {
    /// A ball joint swings beyond its limit.
    BallJoint,
    /// A rod points nearly at the axis that it turns.
    DeadCentre,
    /// The tie rod touches the wheel's rim.
    Rim,
    /// Tie rod or knuckle touch the servo or an obstacle in the chassis.
    Chassis,
}

impl Concern {
    /// Every concern.
    pub const ALL: [Self; 4] = [Self::BallJoint, Self::DeadCentre, Self::Rim, Self::Chassis];

    /// In plain words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::BallJoint => "ball joint",
            Self::DeadCentre => "dead centre",
            Self::Rim => "rim",
            Self::Chassis => "chassis",
        }
    }

    /// What its value is, with the unit.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::BallJoint => "swing of the ball joint that is nearest to its limit, degrees",
            Self::DeadCentre => "least share of a rod's pull that turns what it holds, 0 to 1",
            Self::Rim => "least gap between tie rod and rim, mm",
            Self::Chassis => {
                "least gap between tie rod or knuckle and what is fixed in the chassis, mm"
            }
        }
    }
}

/// What binds in one pose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cell {
    /// The joint that swings farthest, where the car gives its joints.
    pub joint: Option<JointLimit>,
    /// Least share of a rod's pull that turns what it holds.
    pub share: f64,
    /// Least gap between rod and rim, mm, where sizes are given and the rod comes near.
    pub rim: Option<f64>,
    /// Least gap of rod and knuckle to the chassis, mm, where sizes are given.
    pub chassis: Option<f64>,
}

impl Cell {
    /// The value of a concern; nothing where the car does not give what it takes.
    #[must_use]
    pub fn value(&self, concern: Concern) -> Option<f64> {
        match concern {
            Concern::BallJoint => self.joint.map(|joint| joint.misalignment.to_degrees()),
            Concern::DeadCentre => Some(self.share),
            Concern::Rim => self.rim,
            Concern::Chassis => self.chassis,
        }
    }

    /// How far a concern is from its limit, in its unit; negative beyond it.
    #[must_use]
    pub fn margin(&self, concern: Concern) -> Option<f64> {
        match concern {
            Concern::BallJoint => self
                .joint
                .map(|joint| (joint.most - joint.misalignment).to_degrees()),
            Concern::DeadCentre => Some(self.share - LEAST_SHARE),
            Concern::Rim => self.rim,
            Concern::Chassis => self.chassis,
        }
    }
}

/// The field of steer and travel of a setup.
#[derive(Debug, Clone, PartialEq)]
pub struct BindingMap {
    /// Steering inputs of the columns, degrees or mm, ascending.
    pub inputs: Vec<f64>,
    /// Travels of the rows, mm, ascending; only 0 for a car without travel.
    pub travels: Vec<f64>,
    /// Row by row; the reason where there is no pose.
    pub cells: Vec<Result<Cell, SolveError>>,
    /// The rods, left and right.
    pub threads: Sides<ThreadCheck>,
    /// Limit of the ball joints, degrees, where the car gives it.
    pub joint_limit: Option<f64>,
}

/// Where a concern is nearest to its limit or farthest beyond it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WorstPoint {
    /// Steering input, degrees or mm.
    pub input: f64,
    /// Travel of both wheels, mm.
    pub travel: f64,
    /// Value of the concern there.
    pub value: f64,
    /// How far from its limit, in its unit; negative beyond it.
    pub margin: f64,
}

impl BindingMap {
    /// The cell at a column and row.
    #[must_use]
    pub fn cell(&self, column: usize, row: usize) -> Option<&Result<Cell, SolveError>> {
        if column >= self.inputs.len() {
            return None;
        }
        self.cells.get(row * self.inputs.len() + column)
    }

    /// Where a concern is worst; nothing where it is known nowhere.
    #[must_use]
    pub fn worst(&self, concern: Concern) -> Option<WorstPoint> {
        let points = self.cells.iter().enumerate().filter_map(|(index, cell)| {
            let cell = cell.as_ref().ok()?;
            Some(WorstPoint {
                input: *self.inputs.get(index % self.inputs.len())?,
                travel: *self.travels.get(index / self.inputs.len())?,
                value: cell.value(concern)?,
                margin: cell.margin(concern)?,
            })
        });
        points.min_by(|a, b| a.margin.total_cmp(&b.margin))
    }

    /// Whether the linkage reaches every pose, within every limit that is known, and its rods hold.
    #[must_use]
    pub fn is_free(&self) -> bool {
        let within = |cell: &Result<Cell, SolveError>| {
            cell.as_ref().is_ok_and(|cell| {
                let mut margins = Concern::ALL
                    .into_iter()
                    .filter_map(|concern| cell.margin(concern));
                margins.all(|margin| margin >= 0.0)
            })
        };
        self.cells.iter().all(within) && self.threads.left.holds() && self.threads.right.holds()
    }
}

/// What binds over the car's whole range of input and travel, in so many columns and rows of the field (at least 2 each;
/// one row for a car without travel). Both wheels travel together.
///
/// # Errors
/// Where the setup cannot be assembled.
pub fn binding_map(setup: &Setup, columns: usize, rows: usize) -> Result<BindingMap, SolveError> {
    let wheels = Wheels::new(setup)?;
    let bodies = Bodies::of(setup);
    let inputs = spread(wheels.input, columns);
    let travels = if wheels.assembly.has_travel() {
        spread(wheels.travel, rows)
    } else {
        vec![0.0]
    };
    let mut cells = Vec::with_capacity(inputs.len() * travels.len());
    for &travel in &travels {
        for &input in &inputs {
            let pose = wheels
                .assembly
                .pose(wheels.to_solver(input), Sides::both(travel));
            cells.push(pose.map(|pose| bodies.cell(&pose, wheels.assembly.joint_limits())));
        }
    }
    let limits = wheels.assembly.joint_limits();
    Ok(BindingMap {
        inputs,
        travels,
        cells,
        threads: wheels
            .assembly
            .rod_lengths()
            .map(|length| thread_check(&setup.car.tie_rod, length)),
        joint_limit: limits.map(|limits| limits.most.to_degrees()),
    })
}

fn spread((from, to): (f64, f64), count: usize) -> Vec<f64> {
    let count = count.max(2);
    SweepRange { from, to, count }.values().collect()
}

/// What could touch.
struct Bodies {
    clearances: Clearances,
    solids: Vec<Solid>,
}

impl Bodies {
    fn of(setup: &Setup) -> Self {
        let servo = layout(setup).servo.map(|servo| Solid::Box {
            centre: servo.centre,
            size: servo.size,
        });
        let obstacles = solids_of(&setup.car.obstacles).map(|(_, solid)| solid);
        Self {
            clearances: setup.car.clearances.unwrap_or_default(),
            solids: obstacles.chain(servo).collect(),
        }
    }

    fn cell(&self, pose: &AxlePose, limits: Option<&JointLimits>) -> Cell {
        let of_sides = |value: &dyn Fn(&CornerPose) -> Option<f64>| {
            let values = Side::BOTH.map(|side| value(pose.corners.get(side)));
            values.into_iter().flatten().min_by(f64::total_cmp)
        };
        let share = |corner: &CornerPose| {
            let inner = inner_share(pose, corner).unwrap_or(0.0);
            Some(outer_transmission(corner).share.min(inner))
        };
        Cell {
            joint: limits.map(|limits| limits.worst(pose)),
            share: of_sides(&share).unwrap_or(0.0),
            rim: of_sides(&|corner| {
                let rim = self.clearances.rim?;
                rim_clearance(corner, &rim, self.clearances.rod_diameter.unwrap_or(0.0))
            }),
            chassis: of_sides(&|corner| self.chassis_clearance(corner)),
        }
    }

    /// Least gap of a corner's rod, kingpin and steering arm, each taken for a round bar, mm.
    fn chassis_clearance(&self, corner: &CornerPose) -> Option<f64> {
        let axis_foot = {
            let axis = corner.kingpin_axis();
            let to_ball = corner.steering_arm - corner.kingpin_lower;
            corner.kingpin_lower + axis * axis.dot(&to_ball)
        };
        let rod = self
            .clearances
            .rod_diameter
            .map(|diameter| ((corner.rod_inner, corner.steering_arm), diameter));
        let knuckle = self
            .clearances
            .knuckle_diameter
            .into_iter()
            .flat_map(|diameter| {
                [
                    ((corner.kingpin_lower, corner.kingpin_upper), diameter),
                    ((axis_foot, corner.steering_arm), diameter),
                ]
            });
        let bars: Vec<_> = rod.into_iter().chain(knuckle).collect();
        let gaps = bars.iter().flat_map(|((from, to), diameter)| {
            let gap = move |solid: &Solid| solid.clearance_of_line(from, to) - diameter / 2.0;
            self.solids.iter().map(gap)
        });
        gaps.min_by(f64::total_cmp)
    }
}
