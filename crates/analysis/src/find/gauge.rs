//! Measuring an assembled axle: exact values of what is wanted, with as few poses as they need.

use steerloft_setup::adjustment::Unit;
use steerloft_setup::car::{Ranges, TieRodParts};
use steerloft_setup::setup::Setup;
use steerloft_solver::figures::camber::camber_of;
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::steering_axis::{caster_of, inclination_of};
use steerloft_solver::figures::toe::{leftward_axis, steer_of, toe_of};
use steerloft_solver::figures::{ideal_outer, kingpin_distance, steering_ratio, travel_gradient};
use steerloft_solver::frame::{RoadAxes, Side, Sides};
use steerloft_solver::sweep::steer_on;
use steerloft_solver::{Assembly, AxlePose};

use super::measure::{Measure, Wheel};
use super::want::Want;

/// An angle counts as reached within this, rad: what is left is made up along the tangent, and falls short by about its square.
const REACHED: f64 = 1e-6;

/// Most corrections of the input on the way to an angle.
const MOST_CORRECTIONS: usize = 40;

/// How close to a lock, as a share of the way there, the last pose is taken.
const SHORT_OF_LOCK: f64 = 1e-9;

/// What a car's axles are measured by: how far its parts go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gauge {
    ranges: Ranges,
    tie_rod: TieRodParts,
    unit: Unit,
}

impl Gauge {
    /// For the car of a setup.
    #[must_use]
    pub fn of(setup: &Setup) -> Self {
        Self {
            ranges: setup.car.ranges,
            tie_rod: setup.car.tie_rod,
            unit: setup.car.drive.input_unit(),
        }
    }

    /// An axle on the gauge.
    #[must_use]
    pub(super) fn take<'a>(&'a self, assembly: &'a Assembly) -> Gauged<'a> {
        let road = assembly.axle().road.axes();
        let straight = assembly
            .static_pose()
            .corners
            .map(|corner| steer_of(&leftward_axis(&corner), &road));
        Gauged {
            gauge: self,
            assembly,
            road,
            straight,
            is_symmetrical: assembly.is_mirror_symmetrical() && self.steers_alike(),
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
    /// Whether a turn to the right is the mirror image of one to the left, and need not be posed.
    is_symmetrical: bool,
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
    /// root of its mean square deviation. None where the axle does not get there.
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
            Measure::BumpSteer(_) => travel_gradient(rest, &assembly.axle().road)?
                .toe
                .to_degrees(),
            Measure::CamberGain(_) => travel_gradient(rest, &assembly.axle().road)?
                .camber
                .to_degrees(),
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
            Measure::RodLength(_) => *assembly.rod_lengths().get(side),
            Measure::CupGap(_) => {
                assembly.rod_lengths().get(side) - 2.0 * self.gauge.tie_rod.cup_length
            }
            Measure::ToeCurve { points, .. } => self.toe_curve(side, points)?,
            Measure::InnerOuterCurve { points, .. } => self.inner_outer_curve(side, points)?,
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

    fn steer(&self, pose: &AxlePose) -> Sides<f64> {
        pose.corners
            .map(|corner| steer_of(&leftward_axis(&corner), &self.road))
    }

    /// Toe of both wheels at a travel, straight ahead, degrees.
    fn toe_at(&self, travel: f64) -> Option<Sides<f64>> {
        if !self.assembly.has_travel() {
            return None;
        }
        let pose = self.assembly.pose(0.0, Sides::both(travel)).ok()?;
        let steer = self.steer(&pose);
        Some(Sides::from_fn(|side| {
            toe_of(side, *steer.get(side)).to_degrees()
        }))
    }

    fn toe_curve(&self, side: Side, points: &[[f64; 2]]) -> Option<f64> {
        mean_deviation(points, |travel| Some(*self.toe_at(travel)?.get(side)))
    }

    fn inner_outer_curve(&mut self, turn: Side, points: &[[f64; 2]]) -> Option<f64> {
        mean_deviation(points, |inner| {
            Some(self.outer_at(turn, inner.to_radians())?.to_degrees())
        })
    }

    /// The turn that is posed for one asked for.
    const fn posed_for(&self, turn: Side) -> Side {
        if self.is_symmetrical {
            Side::Left
        } else {
            turn
        }
    }

    /// The range's end of the steering input that turns the wheels to a side, rad or mm.
    fn end_towards(&self, turn: Side) -> f64 {
        let road = &self.assembly.axle().road;
        let rates = self
            .assembly
            .static_pose()
            .corners
            .map(|corner| steer_per_input(&corner, road));
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

    /// Turn of the inner and of the outer wheel into a turn in a pose, rad from straight ahead.
    fn turned_in(&self, turn: Side, pose: &AxlePose) -> (f64, f64) {
        let steer = self.steer(pose);
        let turned = |side: Side| (steer.get(side) - self.straight.get(side)) * turn.sign();
        (turned(turn), turned(turn.other()))
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

    /// Turns the inner wheel of a turn to an angle, by Newton's iteration on the input, kept between what is known to be short
    /// of the angle and what is known to be past it.
    fn turned_to(&self, turn: Side, inner: f64) -> Turned {
        let road = &self.assembly.axle().road;
        let rate_of = |pose: &AxlePose, side: Side| {
            steer_per_input(pose.corners.get(side), road) * turn.sign()
        };
        let end = self.end_towards(turn);
        let mut near = *self.assembly.static_pose();
        let not_reached = Turned { inner, outer: None };
        let (mut short, mut past) = (0.0_f64, end);
        let mut input = inner / rate_of(&near, turn);
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
            let Ok(pose) = self.assembly.pose_near(&near, input, Sides::both(0.0)) else {
                past = input;
                input = f64::midpoint(short, past);
                continue;
            };
            let (turned, outer) = self.turned_in(turn, &pose);
            let rate = rate_of(&pose, turn);
            let left = inner - turned;
            if left.abs() <= REACHED {
                let outer = outer + left * rate_of(&pose, turn.other()) / rate;
                return Turned {
                    inner,
                    outer: Some(outer),
                };
            }
            if left > 0.0 {
                if input.to_bits() == end.to_bits() {
                    return not_reached;
                }
                short = input;
            } else {
                past = input;
            }
            near = pose;
            input += left / rate;
        }
        not_reached
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

    /// Angles of both wheels at the end of steering in a turn: at the end of the car's range, or a hair before the lock
    /// that comes first.
    fn end_of(&self, turn: Side) -> Option<Sides<f64>> {
        let pose = self.end_pose(turn)?;
        let (inner, outer) = self.turned_in(turn, &pose);
        let (inner, outer) = (inner.to_degrees(), outer.to_degrees());
        Some(match turn {
            Side::Left => Sides::new(inner, outer),
            Side::Right => Sides::new(outer, inner),
        })
    }

    /// The pose at an end of the car's range, or a hair before the lock or limit that a sweep there meets first.
    ///
    /// It is swept from rest, not from a pose on the way that happens to be known: the last digits would tell which figures
    /// were measured before.
    fn end_pose(&self, turn: Side) -> Option<AxlePose> {
        let rest = self.assembly.static_pose();
        match steer_on(self.assembly, rest, self.end_towards(turn)) {
            Ok(pose) => Some(pose),
            Err(lock) => {
                let before_lock = lock.at * (1.0 - SHORT_OF_LOCK);
                let pose = self.assembly.pose_near(rest, before_lock, Sides::both(0.0));
                pose.ok()
            }
        }
    }

    fn drive_effort(&self) -> f64 {
        let effort = holding_effort(self.assembly.static_pose(), &Sides::both(1.0)).abs();
        match self.gauge.unit {
            Unit::Degrees => effort,
            Unit::Millimetres => effort * 1_000.0,
        }
    }

    fn ratio(&self) -> Option<f64> {
        let axle = self.assembly.axle();
        let ratio = steering_ratio(self.assembly.static_pose(), &axle.road)?.abs();
        Some(match self.gauge.unit {
            Unit::Degrees => ratio,
            Unit::Millimetres => ratio * 1.0_f64.to_radians(),
        })
    }
}

/// Root of the mean square of what a curve is off its points.
fn mean_deviation(points: &[[f64; 2]], mut value: impl FnMut(f64) -> Option<f64>) -> Option<f64> {
    let mut squares = 0.0;
    for [at, wanted] in points {
        let off = value(*at)? - wanted;
        squares += off * off;
    }
    #[allow(
        clippy::cast_precision_loss,
        reason = "a curve has far fewer points than f64 has whole numbers"
    )]
    let count = points.len().max(1) as f64;
    Some((squares / count).sqrt())
}
