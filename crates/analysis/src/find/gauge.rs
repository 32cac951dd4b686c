//! Measuring an assembled axle: exact values of what is wanted, with as few poses as they need.

use steerloft_setup::adjustment::Unit;
use steerloft_setup::car::{Loads, Ranges, TieRodParts};
use steerloft_setup::setup::Setup;
use steerloft_solver::figures::camber::{camber_of, camber_rate};
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::steering_axis::{caster_of, inclination_of};
use steerloft_solver::figures::toe::{leftward_axis, steer_of, steer_rate, toe_of};
use steerloft_solver::figures::{ideal_outer, kingpin_distance};
use steerloft_solver::frame::{RoadAxes, Side, Sides};
use steerloft_solver::sweep::end_of_steering;
use steerloft_solver::{Assembly, CornerPose};

use super::measure::{Measure, Wheel};
use super::want::Want;
use crate::loads::standing_effort;

/// An angle counts as reached within this, rad: what is left is made up along the tangent, and falls short by about its square.
const REACHED: f64 = 1e-5;

/// Most corrections of the input on the way to an angle.
const MOST_CORRECTIONS: usize = 40;

/// What a car's axles are measured by: how far its parts go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gauge {
    ranges: Ranges,
    tie_rod: TieRodParts,
    unit: Unit,
    loads: Option<Loads>,
}

impl Gauge {
    /// For the car of a setup.
    #[must_use]
    pub fn of(setup: &Setup) -> Self {
        Self {
            ranges: setup.car.ranges,
            tie_rod: setup.car.tie_rod,
            unit: setup.car.drive.input_unit(),
            loads: setup.car.loads,
        }
    }

    /// An axle on the gauge.
    #[must_use]
    pub(super) fn take<'a>(&'a self, assembly: &'a Assembly) -> Gauged<'a> {
        let road = assembly.axle().road.axes();
        let rest = assembly.static_pose().corners;
        let straight = rest.map(|corner| steer_of(&leftward_axis(&corner), &road));
        Gauged {
            gauge: self,
            assembly,
            road,
            straight,
            is_mirrored: assembly.is_mirror_symmetrical(),
            turns_alike: assembly.is_mirror_symmetrical() && self.steers_alike(),
            bump: Known::NotYet,
            droop: Known::NotYet,
            turned: Sides::both(None),
            locks: Sides::both(Known::NotYet),
        }
    }

    /// The values of measures of an assembled axle, in their units; none where the axle does not get there. A measure of
    /// both wheels gives the left one's.
    #[must_use]
    pub fn values(&self, assembly: &Assembly, measures: &[Measure]) -> Vec<Option<f64>> {
        let mut gauged = self.take(assembly);
        let side = |measure: &Measure| match measure.wheel() {
            Some(Wheel::Right) => Side::Right,
            _ => Side::Left,
        };
        measures
            .iter()
            .map(|measure| gauged.value(measure, side(measure)))
            .collect()
    }

    /// Whether the car's steering goes as far to both sides.
    fn steers_alike(&self) -> bool {
        let (from, to) = self.ranges.input;
        from.to_bits() == (-to).to_bits()
    }

    /// The least and greatest length that the parts of a tie rod allow, mm.
    pub(super) const fn rod_lengths(&self) -> (f64, f64) {
        (self.tie_rod.shortest, self.tie_rod.longest)
    }
}

/// An axle while it is measured; poses that several measures need are kept.
pub(super) struct Gauged<'a> {
    gauge: &'a Gauge,
    assembly: &'a Assembly,
    road: RoadAxes,
    /// Steer of each wheel straight ahead, rad.
    straight: Sides<f64>,
    /// Whether the right half at rest is the mirror image of the left one, and need not be measured.
    is_mirrored: bool,
    /// Whether besides a turn to the right is the mirror image of one to the left, and need not be posed.
    turns_alike: bool,
    bump: Known,
    droop: Known,
    /// The last angle that the inner wheel of each turn was turned to.
    turned: Sides<Option<Turned>>,
    locks: Sides<Known>,
}

/// The wheels of a turn with the inner one at an angle.
#[derive(Debug, Clone, Copy)]
struct Turned {
    /// The angle asked for, rad.
    inner: f64,
    /// That of the outer wheel there; none where the inner one is not turned so far within the car's range.
    outer: Option<f64>,
}

/// A value of each wheel, once it has been asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Known {
    NotYet,
    Measured(Sides<f64>),
    /// The axle does not get there.
    Absent,
}

impl Known {
    /// The values; measured now if they are not known yet.
    fn or_measure(&mut self, measure: impl FnOnce() -> Option<Sides<f64>>) -> Option<Sides<f64>> {
        if *self == Self::NotYet {
            *self = measure().map_or(Self::Absent, Self::Measured);
        }
        match self {
            Self::Measured(values) => Some(*values),
            Self::NotYet | Self::Absent => None,
        }
    }
}

impl Gauged<'_> {
    /// The value of a measure on a side (of the wheel, or of the turn to it): in the measure's unit; of a whole curve the
    /// root of its mean square deviation beyond the tolerance. None where the axle does not get there.
    pub(super) fn value(&mut self, measure: &Measure, side: Side) -> Option<f64> {
        let assembly = self.assembly;
        let rest = assembly.static_pose().corners.get(side);
        let value = match measure {
            Measure::Toe(_) => toe_of(side, *self.straight.get(side)).to_degrees(),
            Measure::Camber(_) => camber_of(&rest.spin_axis, &self.road.up).to_degrees(),
            Measure::Caster(_) => caster_of(&rest.kingpin_axis(), &self.road).to_degrees(),
            Measure::Inclination(_) => {
                inclination_of(side, &rest.kingpin_axis(), &self.road).to_degrees()
            }
            Measure::BumpSteer(_) => {
                let motion = rest.per_travel?.angular;
                let steer = steer_rate(&leftward_axis(rest), &motion, &self.road);
                toe_of(side, steer).to_degrees()
            }
            Measure::CamberGain(_) => {
                let motion = rest.per_travel?.angular;
                camber_rate(&rest.spin_axis, &motion, &self.road.up).to_degrees()
            }
            Measure::ToeAtBump(_) => {
                let travel = self.gauge.ranges.travel.1;
                let mut known = self.bump;
                let toe = known.or_measure(|| self.toe_at(travel));
                self.bump = known;
                *toe?.get(side)
            }
            Measure::ToeAtDroop(_) => {
                let travel = self.gauge.ranges.travel.0;
                let mut known = self.droop;
                let toe = known.or_measure(|| self.toe_at(travel));
                self.droop = known;
                *toe?.get(side)
            }
            Measure::Ackermann { inner, .. } => self.ackermann(side, inner.to_radians())?,
            Measure::LockLeft(_) => self.lock(Side::Left, side)?,
            Measure::LockRight(_) => self.lock(Side::Right, side)?,
            Measure::Ratio => self.ratio()?,
            Measure::DriveEffort => self.drive_effort(),
            Measure::ServoTorque => {
                let loads = self.gauge.loads.as_ref()?;
                standing_effort(assembly.static_pose(), &assembly.axle().road, loads)
            }
            Measure::RodLength(_) => *assembly.rod_lengths().get(side),
            Measure::CupGap(_) => {
                assembly.rod_lengths().get(side) - 2.0 * self.gauge.tie_rod.cup_length
            }
            Measure::ToeCurve {
                points, tolerance, ..
            } => mean_deviation(points, *tolerance, |travel| {
                Some(*self.toe_at(travel)?.get(side))
            })?,
            Measure::InnerOuterCurve {
                points, tolerance, ..
            } => mean_deviation(points, *tolerance, |inner| {
                Some(self.outer_at(side, inner.to_radians())?.to_degrees())
            })?,
        };
        value.is_finite().then_some(value)
    }

    /// The values of a want, one for each wheel or turn meant; one for a figure of the axle.
    pub(super) fn values<'a>(
        &'a mut self,
        want: &'a Want,
    ) -> impl Iterator<Item = Option<f64>> + 'a {
        let sides = want.measure.wheel().map(Wheel::sides);
        let axle = sides.is_none().then_some(Side::Left);
        let sides = sides.into_iter().flatten().chain(axle);
        sides.map(|side| self.value(&want.measure, side))
    }

    /// How far the axle is from a want, in the measure's unit; none where it has no value.
    pub(super) fn deviation(&mut self, want: &Want) -> Option<f64> {
        let has_twin = match want.measure {
            Measure::Ackermann { .. } | Measure::InnerOuterCurve { .. } => self.turns_alike,
            // The two wheels of one turn differ.
            Measure::LockLeft(_) | Measure::LockRight(_) => false,
            _ => self.is_mirrored,
        };
        if has_twin && want.measure.wheel() == Some(Wheel::Both) {
            let value = self.value(&want.measure, Side::Left);
            return want.deviation(std::iter::once(value));
        }
        want.deviation(self.values(want))
    }

    /// Whether the parts of both tie rods allow their lengths.
    pub(super) fn rods_fit(&self) -> bool {
        let (shortest, longest) = self.gauge.rod_lengths();
        let lengths = self.assembly.rod_lengths();
        [lengths.left, lengths.right]
            .iter()
            .all(|length| (shortest..=longest).contains(length))
    }

    fn steer_on(&self, corner: &CornerPose) -> f64 {
        steer_of(&leftward_axis(corner), &self.road)
    }

    /// Rate of a wheel's steer by the input, rad per unit, positive to the left.
    fn steer_per_input(&self, corner: &CornerPose) -> f64 {
        steer_rate(
            &leftward_axis(corner),
            &corner.per_input.angular,
            &self.road,
        )
    }

    /// Toe of both wheels at a travel, straight ahead, degrees.
    fn toe_at(&self, travel: f64) -> Option<Sides<f64>> {
        if !self.assembly.has_travel() {
            return None;
        }
        let rest = self.assembly.static_pose();
        let toe = |side: Side| {
            let half = (self.assembly).half_near(&rest.half(side), 0.0, travel);
            half.map(|half| toe_of(side, self.steer_on(&half.corner)).to_degrees())
        };
        if self.is_mirrored {
            return toe(Side::Left).map(Sides::both).ok();
        }
        Sides::try_from_fn(toe).ok()
    }

    /// The turn that is posed for one asked for.
    const fn posed_for(&self, turn: Side) -> Side {
        if self.turns_alike { Side::Left } else { turn }
    }

    /// The range's end of the steering input that turns the wheels to a side, rad or mm.
    fn end_towards(&self, turn: Side) -> f64 {
        let rest = self.assembly.static_pose();
        let rates = rest.corners.map(|corner| self.steer_per_input(&corner));
        let (from, to) = self.gauge.ranges.input;
        let end = if (rates.left + rates.right > 0.0) == (turn == Side::Left) {
            to
        } else {
            from
        };
        match self.gauge.unit {
            Unit::Degrees => end.to_radians(),
            Unit::Millimetres => end,
        }
    }

    /// Turn of a wheel into a turn, rad from straight ahead.
    fn turned_on(&self, turn: Side, corner: &CornerPose) -> f64 {
        (self.steer_on(corner) - self.straight.get(corner.side)) * turn.sign()
    }

    /// Angle of the outer wheel where the inner wheel of a turn has come to an angle, rad. None where the angle is not
    /// reached within the car's range.
    fn outer_at(&mut self, turn: Side, inner: f64) -> Option<f64> {
        let turn = self.posed_for(turn);
        let known = self.turned.get(turn).as_ref();
        if let Some(known) = known.filter(|known| known.inner.to_bits() == inner.to_bits()) {
            return known.outer;
        }
        let turned = self.turned_to(turn, inner);
        *self.turned.get_mut(turn) = Some(turned);
        turned.outer
    }

    /// Turns the inner wheel of a turn to an angle, and then the outer one as far as the steering has gone.
    fn turned_to(&self, turn: Side, inner: f64) -> Turned {
        let rest = self.assembly.static_pose();
        let outer = self.input_for(turn, inner).and_then(|input| {
            let half = rest.half(turn.other());
            let half = self.assembly.half_near(&half, input, 0.0).ok()?;
            Some(self.turned_on(turn, &half.corner))
        });
        Turned { inner, outer }
    }

    /// The input at which the inner wheel of a turn stands at an angle: by Newton's iteration, kept between what is known to be
    /// short of the angle and what is known to be past it. None where the angle is not reached within the car's range.
    fn input_for(&self, turn: Side, inner: f64) -> Option<f64> {
        let rate_of = |corner: &CornerPose| self.steer_per_input(corner) * turn.sign();
        let end = self.end_towards(turn);
        let mut near = self.assembly.static_pose().half(turn);
        let (mut short, mut past) = (0.0_f64, end);
        let mut input = inner / rate_of(&near.corner);
        for _ in 0..MOST_CORRECTIONS {
            let between = (input - short) * (input - past) < 0.0;
            if !between {
                // The end is tried itself before anything nearer.
                input = if past.to_bits() == end.to_bits() && near.input.to_bits() != end.to_bits()
                {
                    end
                } else {
                    f64::midpoint(short, past)
                };
            }
            let Ok(half) = self.assembly.half_near(&near, input, 0.0) else {
                past = input;
                input = f64::midpoint(short, past);
                continue;
            };
            let left = inner - self.turned_on(turn, &half.corner);
            let rate = rate_of(&half.corner);
            if left.abs() <= REACHED {
                return Some(input + left / rate);
            }
            if left > 0.0 {
                if input.to_bits() == end.to_bits() {
                    return None;
                }
                short = input;
            } else {
                past = input;
            }
            let known = (
                near.input,
                self.turned_on(turn, &near.corner),
                rate_of(&near.corner),
            );
            input = input_between(known, (input, inner - left, rate), inner);
            near = half;
        }
        None
    }

    /// 100 (inner - outer) / (inner - ideal outer), percent.
    fn ackermann(&mut self, turn: Side, inner: f64) -> Option<f64> {
        let outer = self.outer_at(turn, inner)?;
        let axle = self.assembly.axle();
        let ideal = ideal_outer(inner, kingpin_distance(self.assembly), axle.wheelbase);
        Some(100.0 * (inner - outer) / (inner - ideal))
    }

    /// Angle of a wheel at the end of steering in a turn, degrees into the turn.
    fn lock(&mut self, turn: Side, wheel: Side) -> Option<f64> {
        let (posed, wheel) = if self.posed_for(turn) == turn {
            (turn, wheel)
        } else {
            (turn.other(), wheel.other())
        };
        let mut known = *self.locks.get(posed);
        let angles = known.or_measure(|| self.end_of(posed));
        *self.locks.get_mut(posed) = known;
        Some(*angles?.get(wheel))
    }

    /// Angles of both wheels at the end of steering in a turn, degrees: at the end of the car's range, or a hair before the
    /// lock that comes first.
    ///
    /// It is swept from rest, not from a pose on the way that happens to be known: the last digits would tell which figures
    /// were measured before.
    fn end_of(&self, turn: Side) -> Option<Sides<f64>> {
        let pose = end_of_steering(self.assembly, self.end_towards(turn))?;
        let angle = |corner: CornerPose| self.turned_on(turn, &corner).to_degrees();
        Some(pose.corners.map(angle))
    }

    fn drive_effort(&self) -> f64 {
        let effort = holding_effort(self.assembly.static_pose(), &Sides::both(1.0)).abs();
        match self.gauge.unit {
            Unit::Degrees => effort,
            Unit::Millimetres => effort * 1_000.0,
        }
    }

    fn ratio(&self) -> Option<f64> {
        let rates = self.assembly.static_pose().corners;
        let rates = rates.map(|corner| self.steer_per_input(&corner));
        let ratio = (2.0 / (rates.left + rates.right)).abs();
        let ratio = match self.gauge.unit {
            Unit::Degrees => ratio,
            Unit::Millimetres => ratio * 1.0_f64.to_radians(),
        };
        ratio.is_finite().then_some(ratio)
    }
}

/// The input at an angle by the cubic through two poses of which input, angle and rate of the angle are known, taken the other way
/// round (Hermite): its error goes with the square of the distances to both.
fn input_between(one: (f64, f64, f64), other: (f64, f64, f64), angle: f64) -> f64 {
    let (from, from_angle, from_rate) = one;
    let (to, to_angle, to_rate) = other;
    let span = to_angle - from_angle;
    let share = (angle - from_angle) / span;
    let rest = 1.0 - share;
    let (from_slope, to_slope) = (span / from_rate, span / to_rate);
    from * (1.0 + 2.0 * share) * rest * rest
        + to * share * share * (3.0 - 2.0 * share)
        + share * rest * (from_slope * rest - to_slope * share)
}

/// Root of the mean square of what a curve is off its points by more than the tolerance.
fn mean_deviation(
    points: &[[f64; 2]],
    tolerance: f64,
    mut value: impl FnMut(f64) -> Option<f64>,
) -> Option<f64> {
    let mut squares = 0.0;
    for [at, wanted] in points {
        let off = ((value(*at)? - wanted).abs() - tolerance).max(0.0);
        squares += off * off;
    }
    #[allow(
        clippy::cast_precision_loss,
        reason = "a curve has far fewer points than f64 has whole numbers"
    )]
    let count = points.len().max(1) as f64;
    Some((squares / count).sqrt())
}
