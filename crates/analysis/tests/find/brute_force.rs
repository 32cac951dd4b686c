//! Every combination built as a setup of its own, laid out and assembled afresh, its figures taken from the solver's own
//! functions and by bisection, ranked by a plain sort.

use steerloft_analysis::InputUnit;
use steerloft_analysis::find::{Measure, Search, Target, Want, Wheel};
use steerloft_setup::layout::assemble;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::figures::toe::{leftward_axis, steer_of, toe_of};
use steerloft_solver::figures::{corner_figures, inner_outer, steering_ratio, travel_gradient};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::{Assembly, AxlePose};

/// A setup measured the plain way.
struct Plain {
    assembly: Assembly,
    setup: Setup,
}

impl Plain {
    fn sides(wheel: Wheel) -> Vec<Side> {
        match wheel {
            Wheel::Left => vec![Side::Left],
            Wheel::Right => vec![Side::Right],
            Wheel::Both => vec![Side::Left, Side::Right],
        }
    }

    fn end(&self, turn: Side) -> f64 {
        let unit = InputUnit::of(&self.setup.car);
        let (from, to) = self.setup.car.ranges.input;
        [from, to]
            .map(|end| unit.to_solver(end))
            .into_iter()
            .find(|end| {
                let pose = self.assembly.pose(end * 0.1, Sides::both(0.0)).unwrap();
                inner_outer(&self.assembly, &pose).unwrap().inner_side == turn
            })
            .unwrap()
    }

    fn turned(&self, pose: &AxlePose, side: Side, turn: Side) -> f64 {
        let road = self.assembly.axle().road.axes();
        let steer = |pose: &AxlePose| steer_of(&leftward_axis(pose.corners.get(side)), &road);
        (steer(pose) - steer(self.assembly.static_pose())) * turn.sign()
    }

    fn pose(&self, input: f64) -> Option<AxlePose> {
        self.assembly.pose(input, Sides::both(0.0)).ok()
    }

    /// The pose in which the inner wheel stands at an angle, by bisection over the whole range.
    fn turned_to(&self, turn: Side, inner: f64) -> Option<AxlePose> {
        let (mut short, mut past) = (0.0, self.end(turn));
        let turned = |input: f64| self.turned(&self.pose(input).unwrap(), turn, turn);
        if turned(past) < inner {
            return None;
        }
        for _ in 0..80 {
            let middle = f64::midpoint(short, past);
            if turned(middle) < inner {
                short = middle;
            } else {
                past = middle;
            }
        }
        self.pose(past)
    }

    fn toe_at(&self, side: Side, travel: f64) -> Option<f64> {
        let pose = self.assembly.pose(0.0, Sides::both(travel)).ok()?;
        let road = self.assembly.axle().road.axes();
        let steer = steer_of(&leftward_axis(pose.corners.get(side)), &road);
        Some(toe_of(side, steer).to_degrees())
    }

    fn value(&self, measure: &Measure, side: Side) -> Option<f64> {
        let road = &self.assembly.axle().road;
        let rest = self.assembly.static_pose().corners.get(side);
        let figures = corner_figures(rest, road);
        let ranges = &self.setup.car.ranges;
        let length = (rest.steering_arm - rest.rod_inner).norm();
        Some(match measure {
            Measure::BumpSteer(_) => travel_gradient(rest, road)?.toe.to_degrees(),
            Measure::ToeAtBump(_) => self.toe_at(side, ranges.travel.1)?,
            Measure::ToeAtDroop(_) => self.toe_at(side, ranges.travel.0)?,
            Measure::Ackermann { inner, .. } => {
                let pose = self.turned_to(side, inner.to_radians())?;
                inner_outer(&self.assembly, &pose)?.ackermann_share?
            }
            Measure::LockLeft(_) => {
                let pose = self.pose(self.end(Side::Left))?;
                self.turned(&pose, side, Side::Left).to_degrees()
            }
            Measure::LockRight(_) => {
                let pose = self.pose(self.end(Side::Right))?;
                self.turned(&pose, side, Side::Right).to_degrees()
            }
            Measure::Camber(_) => figures.camber.to_degrees(),
            Measure::Caster(_) => figures.caster.to_degrees(),
            Measure::Ratio => steering_ratio(self.assembly.static_pose(), road)?.abs(),
            Measure::RodLength(_) => length,
            Measure::CupGap(_) => length - 2.0 * self.setup.car.tie_rod.cup_length,
            Measure::ToeCurve {
                points, tolerance, ..
            } => {
                let off = |point: &[f64; 2]| {
                    Some(beyond(self.toe_at(side, point[0])? - point[1], *tolerance))
                };
                root_mean_square(points.iter().map(off))?
            }
            Measure::InnerOuterCurve {
                points, tolerance, ..
            } => {
                let off = |point: &[f64; 2]| {
                    let pose = self.turned_to(side, point[0].to_radians())?;
                    let outer = self.turned(&pose, side.other(), side).to_degrees();
                    Some(beyond(outer - point[1], *tolerance))
                };
                root_mean_square(points.iter().map(off))?
            }
            Measure::Toe(_)
            | Measure::Inclination(_)
            | Measure::CamberGain(_)
            | Measure::DriveEffort
            | Measure::ServoTorque => return None,
        })
    }

    fn deviation(&self, want: &Want) -> Option<f64> {
        let (wheel, is_curve) = match &want.measure {
            Measure::ToeCurve { wheel, .. } => (*wheel, true),
            Measure::InnerOuterCurve { turn, .. } => (*turn, true),
            Measure::Ackermann { turn, .. } => (*turn, false),
            Measure::Ratio | Measure::DriveEffort | Measure::ServoTorque => (Wheel::Left, false),
            Measure::Toe(wheel)
            | Measure::Camber(wheel)
            | Measure::Caster(wheel)
            | Measure::Inclination(wheel)
            | Measure::BumpSteer(wheel)
            | Measure::CamberGain(wheel)
            | Measure::ToeAtBump(wheel)
            | Measure::ToeAtDroop(wheel)
            | Measure::LockLeft(wheel)
            | Measure::LockRight(wheel)
            | Measure::RodLength(wheel)
            | Measure::CupGap(wheel) => (*wheel, false),
        };
        let mut farthest = 0.0_f64;
        for side in Self::sides(wheel) {
            let value = self.value(&want.measure, side)?;
            farthest = farthest.max(match want.target {
                _ if is_curve => value,
                Target::Value(wanted) => (value - wanted).abs(),
                Target::Range(least, most) => (least - value).max(value - most).max(0.0),
            });
        }
        Some(farthest)
    }
}

/// What is left of a deviation beyond a tolerance.
fn beyond(off: f64, tolerance: f64) -> f64 {
    if off.abs() > tolerance {
        off.abs() - tolerance
    } else {
        0.0
    }
}

fn root_mean_square(offs: impl Iterator<Item = Option<f64>>) -> Option<f64> {
    let offs: Vec<f64> = offs.collect::<Option<_>>()?;
    #[allow(clippy::cast_precision_loss, reason = "a few points")]
    let count = offs.len() as f64;
    Some((offs.iter().map(|off| off * off).sum::<f64>() / count).sqrt())
}

/// A combination as brute force has it.
#[derive(Debug, Clone)]
pub(crate) struct Tried {
    pub(crate) values: Vec<Chosen>,
    pub(crate) changes: usize,
    pub(crate) off: f64,
}

/// Every combination that may be, best first.
pub(crate) fn brute_force(search: &Search, may_be: impl Fn(&[Chosen]) -> bool) -> Vec<Tried> {
    let mut free = search.free.clone();
    free.sort_by_key(|free| free.adjustment);
    let mut combinations: Vec<Vec<Chosen>> = vec![vec![]];
    for free in &free {
        combinations = combinations
            .iter()
            .flat_map(|head| {
                free.values.iter().map(move |value| {
                    let mut whole = head.clone();
                    whole.push(value.clone());
                    whole
                })
            })
            .collect();
    }
    let weights: f64 = search.wants.iter().map(|want| want.weight).sum();
    let mut tried: Vec<Tried> = combinations
        .into_iter()
        .filter(|values| may_be(values))
        .filter_map(|values| {
            let mut setup = search.setup.clone();
            let mut changes = 0;
            for (free, value) in free.iter().zip(&values) {
                changes += usize::from(search.setup.value(free.adjustment) != *value);
                setup.set(free.adjustment, value.clone()).unwrap();
            }
            let assembly = assemble(&setup).ok()?;
            let lengths = assembly.rod_lengths();
            let parts = &setup.car.tie_rod;
            let fits = |length: f64| length >= parts.shortest && length <= parts.longest;
            if !fits(lengths.left) || !fits(lengths.right) {
                return None;
            }
            let plain = Plain { assembly, setup };
            let mut cost = 0.0;
            for want in &search.wants {
                let steps = plain.deviation(want)? / want.measure.noticeable();
                cost += want.weight * steps * steps;
            }
            let off = (cost / weights).sqrt();
            Some(Tried {
                values,
                changes,
                off,
            })
        })
        .filter(|tried| search.most_changes.is_none_or(|most| tried.changes <= most))
        .collect();
    tried.sort_by(|a, b| {
        let step = |tried: &Tried| (tried.off * 1e7).round();
        step(a).total_cmp(&step(b)).then(a.changes.cmp(&b.changes))
    });
    tried
}
