//! Curves over the roll of the chassis, both tyres on the road, steering straight ahead.

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::camber::camber_of;
use steerloft_solver::figures::toe::{leftward_axis, steer_of};
use steerloft_solver::frame::{Road, Side, Sides};
use steerloft_solver::pose::AxlePose;
use steerloft_solver::sweep::SweepRange;

use super::{Line, Sweeps};

/// Angles of both wheels over the roll of the chassis from how the car stands: degrees, right side down positive.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RollCurves {
    /// Steer from where the wheel points without roll, positive to the left.
    pub steer: Sides<Line>,
    /// Camber against the road, positive with the top outboard.
    pub camber: Sides<Line>,
}

impl RollCurves {
    /// The curves, or nothing for a suspension that cannot keep both tyres on the road. Each way they end where a wheel
    /// no longer reaches it.
    #[must_use]
    pub fn new(assembly: &Assembly, sweeps: &Sweeps) -> Option<Self> {
        let road = assembly.axle().road;
        let level = assembly
            .pose_on_road(assembly.static_pose(), 0.0, &road)
            .ok()?;
        let axes = road.axes();
        let straight = level
            .corners
            .map(|corner| steer_of(&leftward_axis(&corner), &axes));
        let mut curves = Self::default();
        // Keeping the tyres down takes several closures a pose, and these lines bend little: half as many poses will do.
        let rolls = SweepRange {
            from: -sweeps.roll,
            to: sweeps.roll,
            count: sweeps.samples.div_ceil(2),
        };
        let rolls = rolls.values();
        let down = rolls.clone().rev().filter(|roll| *roll < 0.0);
        for (roll, pose, road) in follow(assembly, &level, road, down) {
            curves.push(roll, &pose, &road, &straight);
        }
        curves.reverse();
        let up = rolls.filter(|roll| *roll >= 0.0);
        for (roll, pose, road) in follow(assembly, &level, road, up) {
            curves.push(roll, &pose, &road, &straight);
        }
        Some(curves)
    }

    fn push(&mut self, roll: f64, pose: &AxlePose, road: &Road, straight: &Sides<f64>) {
        let axes = road.axes();
        for side in Side::BOTH {
            let corner = pose.corners.get(side);
            let steer = steer_of(&leftward_axis(corner), &axes) - straight.get(side);
            self.steer.get_mut(side).push([roll, steer.to_degrees()]);
            let camber = camber_of(&corner.spin_axis, &axes.up);
            self.camber.get_mut(side).push([roll, camber.to_degrees()]);
        }
    }

    fn reverse(&mut self) {
        for side in Side::BOTH {
            self.steer.get_mut(side).reverse();
            self.camber.get_mut(side).reverse();
        }
    }
}

/// Poses on the road at each roll (degrees more than the road has), each from the one before, as far as there are any.
fn follow(
    assembly: &Assembly,
    from: &AxlePose,
    road: Road,
    rolls: impl Iterator<Item = f64>,
) -> impl Iterator<Item = (f64, AxlePose, Road)> {
    rolls.scan(*from, move |near, roll| {
        let road = Road {
            roll: road.roll + roll.to_radians(),
            ..road
        };
        let pose = assembly.pose_on_road(near, 0.0, &road).ok()?;
        *near = pose;
        Some((roll, pose, road))
    })
}
