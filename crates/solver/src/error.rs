//! Why a front axle has no pose.

use thiserror::Error;

use crate::frame::Side;

/// Why a front axle could not be posed.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum SolveError {
    /// A member cannot reach its joint.
    #[error(transparent)]
    OutOfReach(#[from] OutOfReach),
    /// A ball joint has swung as far as it goes.
    #[error(transparent)]
    JointLimit(#[from] JointLimit),
    /// Points that must differ coincide, or an axis has no direction.
    #[error("{}: {fault}", place_name(*.side))]
    Degenerate {
        /// The corner, if the fault belongs to one.
        side: Option<Side>,
        /// What is wrong.
        fault: Fault,
    },
    /// A number given is not finite or not within what geometry allows.
    #[error("{what} must be {allowed}, but is {value}")]
    BadNumber {
        /// What the number is.
        what: &'static str,
        /// What is allowed.
        allowed: &'static str,
        /// The number given.
        value: f64,
    },
    /// Travel was asked of a suspension that has none.
    #[error("the {side} corner has a fixed kingpin and no wheel travel")]
    NoTravel {
        /// The corner.
        side: Side,
    },
    /// Newton's iteration did not settle although every member reaches.
    #[error(
        "the {side} corner closes to {residual:.1e} mm only, at an input of {input} and a travel of {travel} mm"
    )]
    NotClosed {
        /// The corner.
        side: Side,
        /// Steering input, rad or mm.
        input: f64,
        /// Wheel travel, mm.
        travel: f64,
        /// What is left open, mm.
        residual: f64,
    },
    /// The way to the pose asked for takes more steps than are allowed, so it is not known whether there is one.
    #[error(
        "the {side} corner could be followed over {:.3} % only of the way to an input of {input} and a travel of {travel} mm, \
         in as many steps as are allowed: ask for less, or check for lengths that are thousands of times too long or too short",
        100.0 * reached
    )]
    NotFollowed {
        /// The corner.
        side: Side,
        /// Steering input, rad or mm.
        input: f64,
        /// Wheel travel, mm.
        travel: f64,
        /// Share of the way that was followed, 0 to 1.
        reached: f64,
    },
}

fn place_name(side: Option<Side>) -> &'static str {
    match side {
        Some(Side::Left) => "left corner",
        Some(Side::Right) => "right corner",
        None => "steering drive",
    }
}

/// Geometry that defines no mechanism.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fault {
    /// The steering axis has no direction.
    KingpinPointsCoincide,
    /// The wheel has no spin axis.
    SpinAxisHasNoDirection,
    /// The rod has no lever.
    SteeringArmOnKingpin,
    /// The steering axis leans too far from upright.
    KingpinTooLevel,
    /// The spin axis stands too steep.
    WheelLiesFlat,
    /// A hinge axis has no direction.
    HingePointsCoincide,
    /// A strut's slide line has no direction.
    SlideHasNoDirection,
    /// A strut's slide line lies nearly square to the steering axis.
    SlideAcrossKingpin,
    /// An arm has no length.
    BallOnHinge,
    /// The drive's axis has no direction.
    DriveAxisHasNoDirection,
    /// The inner and outer ball of a rod coincide.
    RodHasNoLength,
    /// The rod stands at its dead centre in the static pose.
    RodAtDeadCentre,
    /// A crank or the servo arm has its ball on its axis.
    CrankHasNoLength,
    /// A link of the drive has coincident balls.
    LinkHasNoLength,
    /// A link of the drive stands at its dead centre at input 0.
    LinkAtDeadCentre,
    /// An inner ball said to sit on the cross link lies beside it.
    InnerBallOffCrossLink,
}

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::KingpinPointsCoincide => {
                "the lower and upper kingpin points coincide; they must lie apart on the steering axis"
            }
            Self::SpinAxisHasNoDirection => "the wheel's spin axis has no direction",
            Self::SteeringArmOnKingpin => {
                "the outer rod ball lies on the steering axis, so the rod cannot turn the wheel"
            }
            Self::KingpinTooLevel => {
                "the steering axis leans more than 53 degrees from the chassis upright"
            }
            Self::WheelLiesFlat => "the wheel leans more than 53 degrees and lies nearly flat",
            Self::HingePointsCoincide => {
                "the two points of an arm's hinge coincide; they must lie apart on the hinge axis"
            }
            Self::SlideHasNoDirection => "the strut's slide line has no direction",
            Self::SlideAcrossKingpin => {
                "the strut's slide line lies nearly square to the steering axis"
            }
            Self::BallOnHinge => "the ball of an arm lies on its hinge axis, so the arm has no length",
            Self::DriveAxisHasNoDirection => "the axis of the steering arm has no direction",
            Self::CrankHasNoLength => "a ball of a crank or of the servo arm lies on its own axis",
            Self::LinkHasNoLength => "the two balls of the drag link or of the cross link coincide",
            Self::LinkAtDeadCentre => {
                "the drag link or the cross link points straight at a crank's axis and cannot turn it"
            }
            Self::InnerBallOffCrossLink => {
                "an inner ball on the cross link must lie on the line between its two joints, about which the link may spin"
            }
            Self::RodHasNoLength => "the inner and outer ball of the tie rod coincide",
            Self::RodAtDeadCentre => {
                "the tie rod points straight at the steering axis and cannot turn the wheel"
            }
        })
    }
}

/// A member of a corner that may fail to reach.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Member {
    /// The tie rod, inner ball to outer ball.
    TieRod,
    /// An arm or slide that carries the knuckle over its travel.
    Suspension,
    /// The drag link, servo arm to driven crank.
    DragLink,
    /// The cross link, driven crank to the other crank.
    CrossLink,
}

impl std::fmt::Display for Member {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::TieRod => "tie rod",
            Self::Suspension => "suspension arm",
            Self::DragLink => "drag link",
            Self::CrossLink => "cross link",
        })
    }
}

/// In which direction a member misses its joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Miss {
    /// The joint is farther away than the member is long.
    TooShort,
    /// The joint is nearer than the member is long.
    TooLong,
}

impl Miss {
    /// The miss of a member by what it lacks, mm: positive too short, negative too long.
    pub(crate) fn of(difference: f64) -> Self {
        if difference > 0.0 {
            Self::TooShort
        } else {
            Self::TooLong
        }
    }
}

/// A member that cannot reach its joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutOfReach {
    /// The member.
    pub member: Member,
    /// Its side.
    pub side: Side,
    /// Whether it is too short or too long.
    pub miss: Miss,
    /// By how much, mm.
    pub shortfall: f64,
    /// Steering input at which it was asked, rad or mm.
    pub input: f64,
    /// Wheel travel at which it was asked, mm.
    pub travel: f64,
    /// Share of the way from the starting pose to the one asked for at which the member locks, 0 to 1.
    pub reached: f64,
}

impl OutOfReach {
    /// The joint that is not reached, in plain words.
    #[must_use]
    pub fn joint(&self) -> &'static str {
        match self.member {
            Member::TieRod => "outer ball on the steering arm",
            Member::Suspension => "kingpin ball",
            Member::DragLink => "driven crank",
            Member::CrossLink => "other crank",
        }
    }
}

impl std::error::Error for OutOfReach {}

impl std::fmt::Display for OutOfReach {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let miss = match self.miss {
            Miss::TooShort => "short",
            Miss::TooLong => "long",
        };
        let side = match self.member {
            Member::TieRod | Member::Suspension => match self.side {
                Side::Left => "left ",
                Side::Right => "right ",
            },
            Member::DragLink | Member::CrossLink => "",
        };
        write!(
            f,
            "the {side}{} is {:.2} mm too {miss} to reach the {}",
            self.member,
            self.shortfall,
            self.joint()
        )
    }
}

/// A ball of a tie rod.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Joint {
    /// At the steering drive.
    Inner,
    /// At the steering arm.
    Outer,
}

impl std::fmt::Display for Joint {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Inner => "inner",
            Self::Outer => "outer",
        })
    }
}

/// How far a ball joint has swung against its limit.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error(
    "the {side} tie rod's {joint} ball joint swings {:.1} degrees, and {:.1} is its limit",
    misalignment.to_degrees(),
    most.to_degrees()
)]
pub struct JointLimit {
    /// Its side.
    pub side: Side,
    /// Which ball.
    pub joint: Joint,
    /// Angle between the rod and the plane square to the stud, rad.
    pub misalignment: f64,
    /// The limit, rad.
    pub most: f64,
}
