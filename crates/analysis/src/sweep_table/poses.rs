//! The poses of a sweep, outward from the middle each way, and where they end.

use steerloft_setup::car::Car;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::error::SolveError;
use steerloft_solver::frame::{Road, Sides};
use steerloft_solver::pose::AxlePose;
use steerloft_solver::sweep::{Sweep, SweepRange, bump_sweep, steer_sweep};

use super::{Along, Posed, SweepRequest};
use crate::InputUnit;
use crate::curves::roll_range;

/// How far a wheel may stand outside its travel, mm: rounding.
const ROUNDING: f64 = 1e-9;

/// The poses asked for, and why there are fewer.
pub(super) fn poses(
    assembly: &Assembly,
    car: &Car,
    request: &SweepRequest,
) -> Result<(Vec<Posed>, Vec<String>), SolveError> {
    let unit = InputUnit::of(car);
    let per_unit = unit.to_solver(1.0);
    let range = |(least, greatest): (f64, f64), scale: f64| SweepRange {
        from: request.from.unwrap_or(least) * scale,
        to: request.to.unwrap_or(greatest) * scale,
        count: request.steps.saturating_add(1),
    };
    match request.along {
        Along::Steer => {
            let held = Sides::both(request.travel);
            assembly.pose(0.0, held)?;
            let sweep = steer_sweep(assembly, range(car.ranges.input, per_unit), held);
            let ends = ends(&sweep, "steering", per_unit, unit.word());
            Ok((on_level_road(assembly, sweep), ends))
        }
        Along::Bump => {
            let held = request.steer * per_unit;
            assembly.pose(held, Sides::both(0.0))?;
            let sweep = bump_sweep(assembly, range(car.ranges.travel, 1.0), held)?;
            let ends = ends(&sweep, "wheel travel", 1.0, "mm");
            Ok((on_level_road(assembly, sweep), ends))
        }
        Along::Roll => {
            let held = assembly.pose(request.steer * per_unit, Sides::both(0.0))?;
            let rolls = roll_range(assembly, &held, &car.ranges);
            let rolls = (rolls.from.to_degrees(), rolls.to.to_degrees());
            roll(assembly, car, &held, range(rolls, 1.0))
        }
    }
}

fn on_level_road(assembly: &Assembly, sweep: Sweep) -> Vec<Posed> {
    let road = assembly.axle().road;
    let posed = |pose| Posed {
        pose,
        road,
        roll: 0.0,
    };
    sweep.poses.into_iter().map(posed).collect()
}

fn ends(sweep: &Sweep, what: &str, per_unit: f64, unit: &str) -> Vec<String> {
    sweep
        .locks()
        .map(|lock| {
            format!(
                "{what} ends at {:.3} {unit}: {}",
                lock.at / per_unit,
                lock.cause
            )
        })
        .collect()
}

/// Rolls the chassis outward from the level, both tyres on the road, as far as the wheels' travel goes.
fn roll(
    assembly: &Assembly,
    car: &Car,
    held: &AxlePose,
    range: SweepRange,
) -> Result<(Vec<Posed>, Vec<String>), SolveError> {
    let level = assembly.pose_on_road(held, held.input, &assembly.axle().road)?;
    let mut ends = Vec::new();
    let mut run = |values: &mut dyn Iterator<Item = f64>| {
        let mut near = level;
        let mut poses = Vec::new();
        for roll in values {
            match rolled(assembly, car, &near, roll) {
                Ok(posed) => {
                    near = posed.pose;
                    poses.push(posed);
                }
                Err(reason) => {
                    ends.push(format!("roll ends before {roll:.3} deg: {reason}"));
                    break;
                }
            }
        }
        poses
    };
    let mut poses = run(&mut range.values().rev().filter(|roll| *roll < 0.0));
    poses.reverse();
    poses.extend(run(&mut range.values().filter(|roll| *roll >= 0.0)));
    Ok((poses, ends))
}

fn rolled(assembly: &Assembly, car: &Car, near: &AxlePose, roll: f64) -> Result<Posed, String> {
    let at_rest = assembly.axle().road;
    let road = Road {
        roll: at_rest.roll + roll.to_radians(),
        ..at_rest
    };
    let pose = assembly
        .pose_on_road(near, near.input, &road)
        .map_err(|error| error.to_string())?;
    let (droop, bump) = car.ranges.travel;
    let outside = |travel: f64| travel < droop - ROUNDING || travel > bump + ROUNDING;
    if outside(pose.travel.left) || outside(pose.travel.right) {
        return Err(format!(
            "a wheel would leave its travel of {droop} to {bump} mm"
        ));
    }
    Ok(Posed { pose, road, roll })
}
