//! How far the chassis rolls before a wheel comes to an end of its travel.

use steerloft_setup::car::Ranges;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::frame::Road;
use steerloft_solver::pose::AxlePose;

use crate::Range;

/// Greatest roll shown, rad.
const MOST_ROLL: f64 = 5.0_f64.to_radians();

/// How much farther than the roll of wheels that stay where they are at rest is looked first.
const BEYOND: f64 = 1.3;

/// Travel that a wheel has left at the end of the range, mm, at most; about half of it is aimed at.
const LEFT_OVER: f64 = 2e-7;

/// How often the end of the range is brought nearer. Travel goes nearly straight with roll, so that a few times will do.
const MOST_STEPS: usize = 60;

/// The roll to each side at which the first wheel comes to an end of its travel, both tyres on the road, rad from how the
/// car stands, right side down positive; led from a pose whose steering input is held. No farther than 5 degrees, nor than
/// there is a pose. Empty where a wheel is outside its travel with the chassis level already.
pub(crate) fn roll_range(assembly: &Assembly, held: &AxlePose, ranges: &Ranges) -> Range {
    let roll = Rolling {
        assembly,
        held,
        travel: ranges.travel,
    };
    if roll.left_over(0.0).is_none_or(|left| left < LEFT_OVER) {
        return Range::new(0.0, 0.0);
    }
    Range::new(-roll.end(-1.0), roll.end(1.0))
}

struct Rolling<'a> {
    assembly: &'a Assembly,
    held: &'a AxlePose,
    /// Droop and bump of a wheel, mm.
    travel: (f64, f64),
}

impl Rolling<'_> {
    /// The travel that is left to the wheel that is nearest to an end of it, mm; none where there is no pose.
    fn left_over(&self, roll: f64) -> Option<f64> {
        let at_rest = self.assembly.axle().road;
        let road = Road {
            roll: at_rest.roll + roll,
            ..at_rest
        };
        let pose = self
            .assembly
            .pose_on_road(self.held, self.held.input, &road);
        let travel = pose.ok()?.travel;
        let (droop, bump) = self.travel;
        let left = |travel: f64| (travel - droop).min(bump - travel);
        Some(left(travel.left).min(left(travel.right)))
    }

    /// The end of the range to one side, rad, without its sign.
    fn end(&self, sign: f64) -> f64 {
        let left_over = |roll: f64| {
            self.left_over(sign * roll)
                .map(|left| left - 0.5 * LEFT_OVER)
        };
        let mut outside = (BEYOND * self.about()).clamp(0.0, MOST_ROLL);
        let mut at_outside = left_over(outside);
        if at_outside.is_some_and(|left| left >= 0.0) {
            outside = MOST_ROLL;
            at_outside = left_over(outside);
            if at_outside.is_some_and(|left| left >= 0.0) {
                return outside;
            }
        }
        let mut inside = 0.0;
        let mut at_inside = left_over(inside).unwrap_or(0.0);
        for _ in 0..MOST_STEPS {
            // Where both ends have a pose, the line between them leads to the end; else the middle is as good as any.
            let share = at_outside.map_or(0.5, |at_outside| at_inside / (at_inside - at_outside));
            let roll = inside + share * (outside - inside);
            match left_over(roll) {
                Some(left) if left.abs() < 0.5 * LEFT_OVER => return roll,
                Some(left) if left > 0.0 => {
                    (inside, at_inside) = (roll, left);
                    // The other end counts half, lest it stay where it is for ever.
                    at_outside = at_outside.map(|left| 0.5 * left);
                }
                outcome => {
                    (outside, at_outside) = (roll, outcome);
                    at_inside *= 0.5;
                }
            }
        }
        inside
    }

    /// The roll at which a wheel that stays where it is at rest comes to the nearer end of its travel, rad.
    fn about(&self) -> f64 {
        let corners = &self.assembly.static_pose().corners;
        let half_track = 0.5 * (corners.left.wheel_centre.y - corners.right.wheel_centre.y);
        let travel = (-self.travel.0).min(self.travel.1).max(0.0);
        let roll = (travel / half_track).atan();
        if roll.is_finite() { roll } else { MOST_ROLL }
    }
}
