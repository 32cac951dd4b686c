//! The value of every figure.

use steerloft_solver::figures::instant_centre::{
    RollCentre, front_view_instant_centre, roll_centre, side_view_instant_centre,
};
use steerloft_solver::figures::linkage::{ball_misalignment, inner_share, outer_transmission};
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::toe::total_toe_length;
use steerloft_solver::figures::{
    CornerFigures, InnerOuter, RollGradient, TravelGradient, Turning, arm_lines, corner_figures,
    kingpin_distance, rod_angles, roll_gradient, steering_ratio, straight_ahead_share,
    transmission, travel_gradient,
};
use steerloft_solver::frame::{Point, Side, Sides, Vector};
use steerloft_solver::pose::{AxlePose, CornerPose};

use super::lock::{LockPose, least_transmission};
use super::parts::turning_of;
use super::{FigureKind, Figures, Values, symmetry};
use crate::TieRod;
use crate::curves::{CurveKind, Trace};
use crate::loads::standing_effort;

/// Shares shown as percent.
const PERCENT: f64 = 100.0;

/// Instant centres and meeting lines farther away than this are as good as at infinity, mm.
const FAR: f64 = 1e5;
const FARTHEST: f64 = 1e6;

/// A ball nearer than this to a joint of a lever is that joint, mm.
const SAME: f64 = 1e-6;

impl Figures<'_> {
    pub(super) fn of(&self, kind: FigureKind) -> Values {
        match kind {
            FigureKind::Toe => self.toe(),
            FigureKind::TotalToe => self.total_toe(),
            FigureKind::Camber => self.angle(|corner| corner.camber),
            FigureKind::Caster => self.angle(|corner| corner.caster),
            FigureKind::Inclination => self.angle(|corner| corner.inclination),
            FigureKind::ScrubRadius => self.length(|corner| corner.scrub_radius),
            FigureKind::Trail => self.length(|corner| corner.trail),
            FigureKind::HubOffset => self.length(|corner| corner.axis_offset),
            FigureKind::HubTrail => self.length(|corner| corner.castor_offset),
            FigureKind::Track => Values::Axle(Some(self.track())),
            FigureKind::Wheelbase => Values::Axle(Some(self.assembly().axle().wheelbase)),
            FigureKind::BumpSteer => self.by_travel(|gain| gain.toe),
            FigureKind::ToeAtBump => self.toe_at(self.study.ranges().travel.1),
            FigureKind::ToeAtDroop => self.toe_at(self.study.ranges().travel.0),
            FigureKind::ToeLeast => self.toe_over_travel(f64::min),
            FigureKind::ToeMost => self.toe_over_travel(f64::max),
            FigureKind::CamberGain => self.by_travel(|gain| gain.camber),
            FigureKind::CasterGain => self.by_travel(|gain| gain.caster),
            FigureKind::InclinationGain => self.by_travel(|gain| gain.inclination),
            FigureKind::ContactGain => self.contact_gain(),
            FigureKind::FrontArm => self.front_centre(|centre| centre.arm),
            FigureKind::FrontCentreHeight => self.front_centre(|centre| centre.height),
            FigureKind::SideArm => self.side_centre(|centre| centre.arm),
            FigureKind::SideCentreHeight => self.side_centre(|centre| centre.height),
            FigureKind::RollSteer => self.by_roll(|gain| gain.steer),
            FigureKind::RollCamber => self.by_roll(|gain| gain.camber),
            FigureKind::RollTravel => self.by_roll(|gain| gain.travel * 1_f64.to_radians()),
            FigureKind::RollCentreHeight => self.roll_centre(|centre| centre.height),
            FigureKind::RollCentreOffset => self.roll_centre(|centre| centre.lateral),
            FigureKind::RodLength => self.of_rods(|rod| rod.length),
            FigureKind::CupGap => self.of_rods(|rod| rod.gap),
            FigureKind::RodReserve => self.of_rods(|rod| rod.reserve),
            FigureKind::RodAngleTop => {
                self.each(|corner| Some(rod_angles(corner).top.to_degrees()))
            }
            FigureKind::RodAngleFront => {
                self.each(|corner| Some(rod_angles(corner).front.to_degrees()))
            }
            FigureKind::OuterBall => self.outer_ball(),
            FigureKind::InnerBall => self.inner_ball(),
            FigureKind::Steer => self.angle(|corner| corner.steer),
            FigureKind::Ackermann => {
                Values::Axle(self.turn().and_then(|turn| turn.ackermann_share))
            }
            FigureKind::IdealOuter => {
                let ideal = |turn: &InnerOuter| turn.ideal_outer.to_degrees();
                Values::Axle(self.turn().map(ideal))
            }
            FigureKind::TurnRadius => self.turn_radius(),
            FigureKind::TurnSpread => self.turning_circle(|turning| turning.spread),
            FigureKind::SweptCircle => self.turning_circle(|turning| 2.0 * turning.swept_radius),
            FigureKind::Ratio => self.ratio(self.pose),
            FigureKind::OuterTransmission => {
                self.each(|corner| Some(outer_transmission(corner).angle.to_degrees()))
            }
            FigureKind::OuterShare => {
                self.each(|corner| Some(outer_transmission(corner).share * PERCENT))
            }
            FigureKind::InnerTransmission => self.each(|corner| self.inner_transmission(corner)),
            FigureKind::InnerShare => {
                self.each(|corner| Some(inner_share(self.pose, corner)? * PERCENT))
            }
            FigureKind::DriveEffort => {
                let effort = holding_effort(self.pose, &Sides::both(1.0));
                Values::Axle(Some(self.unit().effort(effort).abs()))
            }
            FigureKind::ServoTorque => self.servo_torque(),
            FigureKind::StraightRatio => self.ratio(self.study.rest()),
            FigureKind::StraightAckermann => Values::Axle(straight_ahead_share(self.assembly())),
            FigureKind::ArmLines => {
                Values::Axle(arm_lines(self.assembly()).map(|lines| lines.share))
            }
            FigureKind::ArmLinesMeet => {
                let behind = arm_lines(self.assembly()).map(|lines| lines.behind);
                Values::Axle(behind.filter(|behind| behind.abs() < FARTHEST))
            }
            FigureKind::KingpinDistance => Values::Axle(Some(kingpin_distance(self.assembly()))),
            FigureKind::LockLeft => wheels_at(self.locks().left.as_ref()),
            FigureKind::LockRight => wheels_at(self.locks().right.as_ref()),
            FigureKind::LockInput => {
                self.at_locks(|lock| Some(self.unit().from_solver(lock.sample.input)))
            }
            FigureKind::LockAckermann => self.at_locks(|lock| lock.sample.angles.ackermann_share),
            FigureKind::LockCircle => self.at_locks(|lock| Some(2.0 * self.swept_at(lock)?)),
            FigureKind::LockRadius => self.at_locks(|lock| self.swept_at(lock)),
            FigureKind::LeastTransmission => {
                Values::Sides(Sides::from_fn(|side| least_transmission(self.study, side)))
            }
            FigureKind::SteerDifference => Values::Axle(symmetry::of_turns(self.study)),
            FigureKind::ToeDifference => {
                Values::Axle(symmetry::of_travel(self.study, CurveKind::ToeTravel))
            }
            FigureKind::CamberDifference => {
                Values::Axle(symmetry::of_travel(self.study, CurveKind::CamberTravel))
            }
        }
    }

    /// Effort at the drive that turns the loaded wheels of a car that stands: N mm at an arm, N at a rack.
    fn servo_torque(&self) -> Values {
        let road = &self.assembly().axle().road;
        let effort = |loads| standing_effort(self.pose, road, loads);
        Values::Axle(self.study.loads().map(effort))
    }

    /// An angle of each wheel in the pose, from rad.
    fn angle(&self, value: impl Fn(&CornerFigures) -> f64) -> Values {
        let corners = self.corners();
        let degrees = |side| Some(value(corners.get(side)).to_degrees());
        Values::Sides(Sides::from_fn(degrees))
    }

    /// A length of each wheel in the pose, mm.
    fn length(&self, value: impl Fn(&CornerFigures) -> f64) -> Values {
        let corners = self.corners();
        Values::Sides(Sides::from_fn(|side| Some(value(corners.get(side)))))
    }

    /// Toe straight ahead at the travel of the pose, rad.
    fn straight_toe(&self) -> Sides<f64> {
        let corners = self.straight().corners;
        corners.map(|corner| corner_figures(&corner, self.road()).toe)
    }

    fn toe(&self) -> Values {
        Values::Sides(self.straight_toe().map(|toe| Some(toe.to_degrees())))
    }

    fn total_toe(&self) -> Values {
        let diameter = 2.0 * self.pose.corners.left.tyre_radius;
        Values::Axle(Some(total_toe_length(&self.straight_toe(), diameter)))
    }

    /// Toe straight ahead at a travel of both wheels, mm; none where the suspension does not get there or does not move.
    fn toe_at(&self, travel: f64) -> Values {
        let assembly = self.assembly();
        let pose = (assembly.has_travel())
            .then(|| assembly.pose(0.0, Sides::both(travel)).ok())
            .flatten();
        let toe = |pose: &AxlePose| {
            let corners = pose.corners;
            corners.map(|corner| Some(corner_figures(&corner, self.road()).toe.to_degrees()))
        };
        Values::Sides(pose.as_ref().map_or(Sides::both(None), toe))
    }

    /// The least or the greatest toe of each wheel over the travel; none without travel.
    fn toe_over_travel(&self, extreme: fn(f64, f64) -> f64) -> Values {
        let curve = self.study.curve(CurveKind::ToeTravel);
        Values::Sides(Sides::from_fn(|side| {
            let trace = match side {
                Side::Left => Trace::Left,
                Side::Right => Trace::Right,
            };
            let line = curve.series.iter().find(|series| series.trace == trace)?;
            line.points.iter().map(|point| point[1]).reduce(extreme)
        }))
    }

    fn track(&self) -> f64 {
        let corners = self.corners();
        let across = corners.left.contact_centre - corners.right.contact_centre;
        across.dot(&self.road().axes().leftward)
    }

    /// A rate by travel at rest, from rad/mm.
    fn by_travel(&self, value: impl Fn(&TravelGradient) -> f64) -> Values {
        self.each_at_rest(|corner| {
            let gain = travel_gradient(corner, self.road())?;
            Some(value(&gain).to_degrees())
        })
    }

    /// Rate of the contact centre outboard by travel at rest. Derived here: the lowest point of the wheel circle moves as
    /// the knuckle's motion takes it and, as the wheel leans, along the circle; the second adds the rate of the direction
    /// from hub to contact.
    fn contact_gain(&self) -> Values {
        let axes = self.road().axes();
        self.each_at_rest(|corner| {
            let motion = corner.per_travel?;
            let spin = corner.spin_axis;
            let spin_rate = motion.angular.cross(&spin);
            let sine = spin.dot(&axes.up);
            let sine_rate = spin_rate.dot(&axes.up);
            let down = spin * sine - axes.up;
            let length = down.norm();
            let down_rate = spin_rate * sine + spin * sine_rate;
            let along = down / length;
            let turned = (down_rate - along * along.dot(&down_rate)) / length;
            let rate = motion.velocity_of(&corner.wheel_centre) + turned * corner.tyre_radius;
            Some(corner.side.sign() * rate.dot(&axes.leftward))
        })
    }

    fn front_centre(&self, value: impl Fn(&InstantCentre) -> f64) -> Values {
        let leftward = self.road().axes().leftward;
        self.each_at_rest(|corner| {
            let centre = front_view_instant_centre(corner, self.road())?;
            let inboard = leftward * -corner.side.sign();
            self.seen_from_contact(corner, &centre, &inboard)
                .map(|centre| value(&centre))
        })
    }

    fn side_centre(&self, value: impl Fn(&InstantCentre) -> f64) -> Values {
        let rearward = -self.road().axes().forward;
        self.each_at_rest(|corner| {
            let centre = side_view_instant_centre(corner, self.road())?;
            self.seen_from_contact(corner, &centre, &rearward)
                .map(|centre| value(&centre))
        })
    }

    fn seen_from_contact(
        &self,
        corner: &CornerPose,
        centre: &Point,
        along: &Vector,
    ) -> Option<InstantCentre> {
        let road = self.road();
        let contact = corner_figures(corner, road).contact_centre;
        let seen = InstantCentre {
            arm: (centre - contact).dot(along),
            height: road.height_of(centre),
        };
        (seen.arm.abs() < FAR && seen.height.abs() < FAR).then_some(seen)
    }

    /// A rate by roll, straight ahead with both tyres on the road.
    fn by_roll(&self, value: impl Fn(&RollGradient) -> f64) -> Values {
        let of_pose = |pose: &AxlePose| {
            let corners = pose.corners;
            corners.map(|corner| roll_gradient(&corner, self.road()).map(|gain| value(&gain)))
        };
        Values::Sides(self.on_road().map_or(Sides::both(None), of_pose))
    }

    fn roll_centre(&self, value: impl Fn(&RollCentre) -> f64) -> Values {
        let centre = self
            .on_road()
            .and_then(|pose| roll_centre(pose, self.road()));
        Values::Axle(centre.map(|centre| value(&centre)))
    }

    fn of_rods(&self, value: impl Fn(&TieRod) -> f64) -> Values {
        let rods = self.study.tie_rods();
        Values::Sides(rods.map(|rod| Some(value(&rod))))
    }

    fn outer_ball(&self) -> Values {
        let limits = self.assembly().joint_limits();
        self.each(|corner| {
            let stud = corner.knuckle.rotation * limits?.outer_studs.get(corner.side);
            Some(ball_misalignment(&rod(corner), &stud).to_degrees())
        })
    }

    fn inner_ball(&self) -> Values {
        let limits = self.assembly().joint_limits();
        self.each(|corner| {
            let carrier = self.pose.drive.carrier.get(corner.side);
            let stud = carrier.rotation * limits?.inner_studs.get(corner.side);
            Some(ball_misalignment(&rod(corner), &stud).to_degrees())
        })
    }

    fn turn_radius(&self) -> Values {
        let turning = self.turning();
        let radius = |side: Side| Some(turning?.centres.get(side).radius);
        Values::Sides(Sides::from_fn(radius))
    }

    fn turning_circle(&self, value: impl Fn(&Turning) -> f64) -> Values {
        Values::Axle(self.turning().map(value))
    }

    fn ratio(&self, pose: &AxlePose) -> Values {
        let ratio = steering_ratio(pose, self.road());
        Values::Axle(ratio.map(|ratio| self.unit().ratio(ratio)))
    }

    /// Angle between rod and the lever that carries its inner ball, degrees; none where no lever does.
    fn inner_transmission(&self, corner: &CornerPose) -> Option<f64> {
        let drive = &self.assembly().axle().drive;
        let carries = |ball: Point| (ball - corner.rod_inner).norm() < SAME;
        let mut levers = drive.levers(&self.pose.drive);
        let lever = levers.find(|lever| lever.balls().any(carries))?;
        let passed = transmission(
            &corner.rod_inner,
            &corner.steering_arm,
            &lever.axis_point,
            &lever.axis,
        );
        Some(passed.angle.to_degrees())
    }

    /// A value of both ends of steering.
    fn at_locks(&self, value: impl Fn(&LockPose<'_>) -> Option<f64>) -> Values {
        let locks = self.locks();
        let of = |side: Side| locks.get(side).as_ref().and_then(&value);
        Values::Sides(Sides::from_fn(of))
    }

    /// Radius that the outer tyre sweeps at an end of steering, mm.
    fn swept_at(&self, lock: &LockPose<'_>) -> Option<f64> {
        Some(turning_of(self.assembly(), lock.pose)?.swept_radius)
    }
}

/// An instant centre as seen from the tyre's contact with the road.
struct InstantCentre {
    /// Length of the arm on which the wheel seems to swing, mm: inboard of the contact in front view, behind it in side
    /// view.
    arm: f64,
    /// Height over the road, mm.
    height: f64,
}

fn wheels_at(lock: Option<&LockPose<'_>>) -> Values {
    Values::Sides(lock.map_or(Sides::both(None), |lock| lock.wheels().map(Some)))
}

fn rod(corner: &CornerPose) -> Vector {
    corner.steering_arm - corner.rod_inner
}
