//! Something that is wrong with a setup.

use steerloft_solver::frame::Side;

/// What a finding is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FindingKind {
    /// The linkage does not close at all.
    Assembly,
    /// The steering locks before the end of its range.
    SteeringRange,
    /// The wheels lock before the end of their travel.
    TravelRange,
    /// Steering and travel each reach their ends, but not both at once.
    Field,
    /// A ball joint swings beyond its limit.
    BallJoint,
    /// A rod comes too near to its dead centre.
    DeadCentre,
    /// A tie rod touches the rim.
    Rim,
    /// A tie rod or a knuckle touches what is fixed in the chassis.
    Chassis,
    /// A tie rod's parts do not make its length.
    RodLength,
    /// Too little thread sits in a tie rod's cups.
    RodThread,
    /// The steering asks more than the servo's throw.
    ServoThrow,
    /// The spacers at hand do not serve all stacks at once.
    Spacers,
}

impl FindingKind {
    /// Every kind, in the order in which they are found.
    pub const ALL: [Self; 12] = [
        Self::Assembly,
        Self::SteeringRange,
        Self::TravelRange,
        Self::Field,
        Self::BallJoint,
        Self::DeadCentre,
        Self::Rim,
        Self::Chassis,
        Self::RodLength,
        Self::RodThread,
        Self::ServoThrow,
        Self::Spacers,
    ];

    /// Its name for programs, which does not change.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Assembly => "assembly",
            Self::SteeringRange => "steering-range",
            Self::TravelRange => "travel-range",
            Self::Field => "field",
            Self::BallJoint => "ball-joint",
            Self::DeadCentre => "dead-centre",
            Self::Rim => "rim",
            Self::Chassis => "chassis",
            Self::RodLength => "rod-length",
            Self::RodThread => "rod-thread",
            Self::ServoThrow => "servo-throw",
            Self::Spacers => "spacers",
        }
    }
}

/// A value with the limit that it is held against.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measure {
    /// What it is.
    pub value: f64,
    /// What it may be at most or must be at least.
    pub limit: f64,
    /// Unit of both: "mm", "deg", or nothing for a share.
    pub unit: &'static str,
}

/// Something that is wrong with a setup.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What it is about.
    pub kind: FindingKind,
    /// In plain words, without a full stop.
    pub text: String,
    /// The side it is on, where it is on one.
    pub side: Option<Side>,
    /// Steering input at which it shows, degrees or mm.
    pub input: Option<f64>,
    /// Wheel travel at which it shows, mm.
    pub travel: Option<f64>,
    /// What is too much or too little.
    pub measure: Option<Measure>,
}

impl Finding {
    pub(super) const fn new(kind: FindingKind, text: String) -> Self {
        Self {
            kind,
            text,
            side: None,
            input: None,
            travel: None,
            measure: None,
        }
    }

    pub(super) fn on(self, side: Side) -> Self {
        Self {
            side: Some(side),
            ..self
        }
    }

    pub(super) fn at_input(self, input: f64) -> Self {
        Self {
            input: Some(input),
            ..self
        }
    }

    pub(super) fn at_travel(self, travel: f64) -> Self {
        Self {
            travel: Some(travel),
            ..self
        }
    }

    pub(super) fn measured(self, value: f64, limit: f64, unit: &'static str) -> Self {
        Self {
            measure: Some(Measure { value, limit, unit }),
            ..self
        }
    }
}
