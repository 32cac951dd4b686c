//! What can be wanted of a setup.

use steerloft_solver::frame::Side;

use crate::figures::FigureKind;
use crate::text;

/// Which wheels, or which turns, a want is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Wheel {
    /// The left wheel, or the turn to the left.
    Left,
    /// The right wheel, or the turn to the right.
    Right,
    /// Each of both.
    Both,
}

impl Wheel {
    /// The sides meant.
    pub(super) fn sides(self) -> impl Iterator<Item = Side> {
        let (left, right) = match self {
            Self::Left => (Some(Side::Left), None),
            Self::Right => (None, Some(Side::Right)),
            Self::Both => (Some(Side::Left), Some(Side::Right)),
        };
        left.into_iter().chain(right)
    }
}

/// A figure, or a whole curve, that can be wanted.
#[derive(Debug, Clone, PartialEq)]
pub enum Measure {
    /// Toe at rest, degrees, toe-in positive.
    Toe(Wheel),
    /// Camber at rest, degrees, top outboard positive.
    Camber(Wheel),
    /// Caster at rest, degrees.
    Caster(Wheel),
    /// Kingpin inclination at rest, degrees.
    Inclination(Wheel),
    /// Bump steer: toe by travel at rest, degrees per mm.
    BumpSteer(Wheel),
    /// Camber gain: camber by travel at rest, degrees per mm.
    CamberGain(Wheel),
    /// Toe with both wheels at full bump, degrees.
    ToeAtBump(Wheel),
    /// Toe with both wheels at full droop, degrees.
    ToeAtDroop(Wheel),
    /// Ackermann share when the inner wheel of a turn has come to an angle, percent.
    Ackermann {
        /// The turn, by its inner wheel.
        turn: Wheel,
        /// Angle of the inner wheel from straight ahead, degrees.
        inner: f64,
    },
    /// Angle of a wheel from straight ahead at the end of steering to the left, degrees, positive into the turn.
    LockLeft(Wheel),
    /// Likewise to the right.
    LockRight(Wheel),
    /// Steering ratio straight ahead, without sign: degrees of arm, or mm of rack, for each degree of the wheels.
    Ratio,
    /// Effort at the drive, straight ahead, for a moment of 1 N m at each kingpin, without sign: N m at an arm, N at a rack.
    DriveEffort,
    /// Effort at the drive that turns the loaded wheels of a car that stands, straight ahead, without sign: N mm at an arm, N at
    /// a rack.
    ServoTorque,
    /// Length of a tie rod between its ball centres, mm.
    RodLength(Wheel),
    /// Gap between the cups of a tie rod, mm.
    CupGap(Wheel),
    /// Toe against travel as a whole: travels in mm with the toe wanted there, degrees.
    ToeCurve {
        /// The wheel.
        wheel: Wheel,
        /// Travel and toe.
        points: Vec<[f64; 2]>,
        /// How far the toe may be off at each of them and still count as wanted, degrees.
        tolerance: f64,
    },
    /// Outer against inner angle as a whole: angles of the inner wheel with the outer one's wanted there, degrees from
    /// straight ahead.
    InnerOuterCurve {
        /// The turn, by its inner wheel.
        turn: Wheel,
        /// Inner and outer angle.
        points: Vec<[f64; 2]>,
        /// How far the outer angle may be off at each of them and still count as wanted, degrees.
        tolerance: f64,
    },
}

impl Measure {
    /// The measure of a figure on a wheel; none for a figure that cannot be wanted by itself. The Ackermann share is that
    /// with the inner wheel at `inner`, degrees.
    #[must_use]
    pub const fn of_figure(figure: FigureKind, wheel: Wheel, inner: f64) -> Option<Self> {
        Some(match figure {
            FigureKind::Toe => Self::Toe(wheel),
            FigureKind::Camber => Self::Camber(wheel),
            FigureKind::Caster => Self::Caster(wheel),
            FigureKind::Inclination => Self::Inclination(wheel),
            FigureKind::BumpSteer => Self::BumpSteer(wheel),
            FigureKind::CamberGain => Self::CamberGain(wheel),
            FigureKind::ToeAtBump => Self::ToeAtBump(wheel),
            FigureKind::ToeAtDroop => Self::ToeAtDroop(wheel),
            FigureKind::Ackermann => Self::Ackermann { turn: wheel, inner },
            FigureKind::LockLeft => Self::LockLeft(wheel),
            FigureKind::LockRight => Self::LockRight(wheel),
            FigureKind::StraightRatio => Self::Ratio,
            FigureKind::DriveEffort => Self::DriveEffort,
            FigureKind::ServoTorque => Self::ServoTorque,
            FigureKind::RodLength => Self::RodLength(wheel),
            FigureKind::CupGap => Self::CupGap(wheel),
            _ => return None,
        })
    }

    /// Plain name.
    #[must_use]
    pub const fn title(&self) -> &'static str {
        match self {
            Self::Toe(_) => "Toe",
            Self::Camber(_) => "Camber",
            Self::Caster(_) => "Caster",
            Self::Inclination(_) => "Kingpin inclination",
            Self::BumpSteer(_) => "Bump steer",
            Self::CamberGain(_) => "Camber gain in bump",
            Self::ToeAtBump(_) => "Toe at full bump",
            Self::ToeAtDroop(_) => "Toe at full droop",
            Self::Ackermann { .. } => "Ackermann share",
            Self::LockLeft(_) => "Wheels at left lock",
            Self::LockRight(_) => "Wheels at right lock",
            Self::Ratio => "Steering ratio",
            Self::DriveEffort => "Drive effort",
            Self::ServoTorque => "Servo torque at a standstill",
            Self::RodLength(_) => "Rod length",
            Self::CupGap(_) => "Cup gap",
            Self::ToeCurve { .. } => "Toe against travel",
            Self::InnerOuterCurve { .. } => "Outer against inner angle",
        }
    }

    /// A difference that a builder just notices on the gauges, in the measure's unit: what deviations of different
    /// measures are compared by. Common practice, no source.
    #[must_use]
    pub const fn noticeable(&self) -> f64 {
        match self {
            Self::Toe(_)
            | Self::ToeAtBump(_)
            | Self::ToeAtDroop(_)
            | Self::ToeCurve { .. }
            | Self::Camber(_) => 0.1,
            Self::Caster(_) | Self::Inclination(_) | Self::InnerOuterCurve { .. } => 0.25,
            Self::BumpSteer(_) => 0.01,
            Self::CamberGain(_) | Self::Ratio => 0.02,
            // Of a value about 2 at an arm, or some 50 at a rack, what a servo tester tells apart.
            Self::DriveEffort => 0.05,
            Self::ServoTorque => 10.0,
            Self::Ackermann { .. } => 5.0,
            Self::LockLeft(_) | Self::LockRight(_) | Self::RodLength(_) | Self::CupGap(_) => 0.5,
        }
    }

    /// About how many poses of the axle besides that at rest it is measured by.
    pub(super) fn poses(&self) -> usize {
        match self {
            Self::ToeAtBump(_) | Self::ToeAtDroop(_) => 1,
            Self::Ackermann { .. } => 6,
            Self::LockLeft(_) | Self::LockRight(_) => 8,
            Self::ToeCurve { points, .. } => points.len(),
            Self::InnerOuterCurve { points, .. } => 4 * points.len(),
            _ => 0,
        }
    }

    /// The curve wanted, if this is a whole curve.
    pub(super) fn curve(&self) -> Option<&[[f64; 2]]> {
        match self {
            Self::ToeCurve { points, .. } | Self::InnerOuterCurve { points, .. } => Some(points),
            _ => None,
        }
    }

    /// How far each point of a whole curve may be off and still count as wanted, degrees; 0 for a figure.
    pub(super) fn tolerance(&self) -> f64 {
        match self {
            Self::ToeCurve { tolerance, .. } | Self::InnerOuterCurve { tolerance, .. } => {
                *tolerance
            }
            _ => 0.0,
        }
    }

    /// Whose it is; none for a measure of the axle.
    #[must_use]
    pub const fn wheel(&self) -> Option<Wheel> {
        match self {
            Self::Toe(wheel)
            | Self::Camber(wheel)
            | Self::Caster(wheel)
            | Self::Inclination(wheel)
            | Self::BumpSteer(wheel)
            | Self::CamberGain(wheel)
            | Self::ToeAtBump(wheel)
            | Self::ToeAtDroop(wheel)
            | Self::LockLeft(wheel)
            | Self::LockRight(wheel)
            | Self::RodLength(wheel)
            | Self::CupGap(wheel)
            | Self::Ackermann { turn: wheel, .. }
            | Self::ToeCurve { wheel, .. }
            | Self::InnerOuterCurve { turn: wheel, .. } => Some(*wheel),
            Self::Ratio | Self::DriveEffort | Self::ServoTorque => None,
        }
    }

    /// The same of another wheel or turn; a measure of the axle stays as it is.
    #[must_use]
    pub fn with_wheel(&self, wheel: Wheel) -> Self {
        let mut other = self.clone();
        match &mut other {
            Self::Toe(own)
            | Self::Camber(own)
            | Self::Caster(own)
            | Self::Inclination(own)
            | Self::BumpSteer(own)
            | Self::CamberGain(own)
            | Self::ToeAtBump(own)
            | Self::ToeAtDroop(own)
            | Self::LockLeft(own)
            | Self::LockRight(own)
            | Self::RodLength(own)
            | Self::CupGap(own)
            | Self::Ackermann { turn: own, .. }
            | Self::ToeCurve { wheel: own, .. }
            | Self::InnerOuterCurve { turn: own, .. } => *own = wheel,
            Self::Ratio | Self::DriveEffort | Self::ServoTorque => {}
        }
        other
    }

    /// The figure that is measured; none for a whole curve.
    #[must_use]
    pub const fn figure(&self) -> Option<FigureKind> {
        Some(match self {
            Self::Toe(_) => FigureKind::Toe,
            Self::Camber(_) => FigureKind::Camber,
            Self::Caster(_) => FigureKind::Caster,
            Self::Inclination(_) => FigureKind::Inclination,
            Self::BumpSteer(_) => FigureKind::BumpSteer,
            Self::CamberGain(_) => FigureKind::CamberGain,
            Self::ToeAtBump(_) => FigureKind::ToeAtBump,
            Self::ToeAtDroop(_) => FigureKind::ToeAtDroop,
            Self::Ackermann { .. } => FigureKind::Ackermann,
            Self::LockLeft(_) => FigureKind::LockLeft,
            Self::LockRight(_) => FigureKind::LockRight,
            Self::Ratio => FigureKind::StraightRatio,
            Self::DriveEffort => FigureKind::DriveEffort,
            Self::ServoTorque => FigureKind::ServoTorque,
            Self::RodLength(_) => FigureKind::RodLength,
            Self::CupGap(_) => FigureKind::CupGap,
            Self::ToeCurve { .. } | Self::InnerOuterCurve { .. } => return None,
        })
    }

    /// Its name where there is little room, with the wheel, the turn and the angle that it is about: "Bump steer, left wheel".
    #[must_use]
    pub fn label(&self) -> String {
        let facts = self.figure().map(FigureKind::facts);
        let name = facts.map_or(self.title(), |facts| facts.brief);
        let is_turn = matches!(self, Self::Ackermann { .. } | Self::InnerOuterCurve { .. });
        let whose = match (self.wheel(), is_turn) {
            (Some(Wheel::Left), true) => ", turning left",
            (Some(Wheel::Right), true) => ", turning right",
            (Some(Wheel::Left), false) => ", left wheel",
            (Some(Wheel::Right), false) => ", right wheel",
            (Some(Wheel::Both) | None, _) => "",
        };
        match self {
            Self::Ackermann { inner, .. } => {
                format!("{name} at {}\u{b0}{whose}", text::short(*inner, 2))
            }
            _ => format!("{name}{whose}"),
        }
    }
}
