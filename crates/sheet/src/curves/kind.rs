//! The curves there are.

/// What a curve shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CurveKind {
    /// Toe of each wheel against wheel travel, straight ahead.
    ToeTravel,
    /// Angle of the outer wheel against that of the inner one, at rest, with the ideal pair and parallel steering.
    InnerOuter,
    /// Camber of each wheel against wheel travel, straight ahead.
    CamberTravel,
    /// Caster of each steering axis against wheel travel, straight ahead.
    CasterTravel,
    /// Kingpin inclination of each steering axis against wheel travel, straight ahead.
    InclinationTravel,
    /// How far each tyre's contact moves outboard with wheel travel, straight ahead.
    ContactTravel,
    /// Ackermann share against the angle of the inner wheel.
    AckermannShare,
    /// Angle of each wheel against the steering input.
    WheelAngles,
    /// Steering ratio against the steering input.
    SteeringRatio,
    /// Camber of each wheel against the steering input.
    CamberSteer,
    /// Scrub radius of each wheel against the steering input.
    ScrubSteer,
    /// Mechanical trail of each wheel against the steering input.
    TrailSteer,
    /// Transmission angle at each outer tie-rod ball against the steering input.
    Transmission,
    /// Steer of each wheel against roll, both tyres on the road.
    RollSteer,
    /// Camber of each wheel against roll, both tyres on the road.
    RollCamber,
}

impl CurveKind {
    /// Every curve, in the order in which they are listed.
    pub const ALL: [Self; 15] = [
        Self::ToeTravel,
        Self::InnerOuter,
        Self::CamberTravel,
        Self::CasterTravel,
        Self::InclinationTravel,
        Self::ContactTravel,
        Self::AckermannShare,
        Self::WheelAngles,
        Self::SteeringRatio,
        Self::CamberSteer,
        Self::ScrubSteer,
        Self::TrailSteer,
        Self::Transmission,
        Self::RollSteer,
        Self::RollCamber,
    ];

    /// Title as written over the curve.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::ToeTravel => "Toe against travel",
            Self::InnerOuter => "Outer against inner angle",
            Self::CamberTravel => "Camber against travel",
            Self::CasterTravel => "Caster against travel",
            Self::InclinationTravel => "Kingpin inclination against travel",
            Self::ContactTravel => "Tyre contact sideways against travel",
            Self::AckermannShare => "Ackermann share against inner angle",
            Self::WheelAngles => "Wheel angles against steering input",
            Self::SteeringRatio => "Steering ratio against steering input",
            Self::CamberSteer => "Camber against steering input",
            Self::ScrubSteer => "Scrub radius against steering input",
            Self::TrailSteer => "Trail against steering input",
            Self::Transmission => "Transmission angle against steering input",
            Self::RollSteer => "Steer against roll",
            Self::RollCamber => "Camber against roll",
        }
    }

    /// Short name for a command line: "toe-travel".
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::ToeTravel => "toe-travel",
            Self::InnerOuter => "inner-outer",
            Self::CamberTravel => "camber-travel",
            Self::CasterTravel => "caster-travel",
            Self::InclinationTravel => "inclination-travel",
            Self::ContactTravel => "contact-travel",
            Self::AckermannShare => "ackermann",
            Self::WheelAngles => "wheel-angles",
            Self::SteeringRatio => "ratio",
            Self::CamberSteer => "camber-steer",
            Self::ScrubSteer => "scrub-steer",
            Self::TrailSteer => "trail-steer",
            Self::Transmission => "transmission",
            Self::RollSteer => "roll-steer",
            Self::RollCamber => "roll-camber",
        }
    }

    /// The curve of a short name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }

    /// Whether it exists only for a suspension with wheel travel.
    #[must_use]
    pub const fn needs_travel(self) -> bool {
        matches!(
            self,
            Self::ToeTravel
                | Self::CamberTravel
                | Self::CasterTravel
                | Self::InclinationTravel
                | Self::ContactTravel
                | Self::RollSteer
                | Self::RollCamber
        )
    }
}
