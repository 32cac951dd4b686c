//! The curves there are.

/// What a curve goes over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// Wheel travel, mm, straight ahead.
    Travel,
    /// Wheel travel, mm, at a steering input that is held.
    SteeredTravel,
    /// Steering input, in the unit of the car's drive.
    Steer,
    /// Angle of the inner wheel, degrees.
    InnerAngle,
    /// Roll of the chassis, degrees.
    Roll,
}

/// What a curve shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum CurveKind {
    /// Toe of each wheel against wheel travel, straight ahead.
    ToeTravel,
    /// Change of toe of each wheel against wheel travel, at a steering input that is held.
    ToeTravelSteered,
    /// Angle of the outer wheel against that of the inner one, with the ideal pair and parallel steering.
    InnerOuter,
    /// Ackermann share against the angle of the inner wheel.
    AckermannShare,
    /// Angle of each wheel against the steering input.
    WheelAngles,
    /// Camber of each wheel against wheel travel, straight ahead.
    CamberTravel,
    /// Camber of each wheel against the steering input.
    CamberSteer,
    /// Camber of each wheel against roll, both tyres on the road.
    RollCamber,
    /// Caster of each steering axis against wheel travel, straight ahead.
    CasterTravel,
    /// Caster of each steering axis against the steering input.
    CasterSteer,
    /// Kingpin inclination of each steering axis against wheel travel, straight ahead.
    InclinationTravel,
    /// Kingpin inclination of each steering axis against the steering input.
    InclinationSteer,
    /// Steer of each wheel against roll, both tyres on the road.
    RollSteer,
    /// Change of the track against wheel travel, straight ahead.
    TrackTravel,
    /// How far each tyre's contact moves outboard with wheel travel, straight ahead.
    ContactTravel,
    /// How far each wheel's centre moves outboard with wheel travel, straight ahead.
    CentreTravel,
    /// How far each wheel's centre moves forward with wheel travel, straight ahead.
    StationTravel,
    /// Scrub radius of each wheel against wheel travel, straight ahead.
    ScrubTravel,
    /// Scrub radius of each wheel against the steering input.
    ScrubSteer,
    /// Mechanical trail of each wheel against wheel travel, straight ahead.
    TrailTravel,
    /// Mechanical trail of each wheel against the steering input.
    TrailSteer,
    /// Wheel travel that keeps both tyres on the road against the steering input: jacking.
    RoadSteer,
    /// Steering ratio against the steering input.
    SteeringRatio,
    /// Effort at the drive for a moment at the kingpins, against the steering input.
    DriveEffort,
    /// Transmission angle at each outer tie-rod ball against the steering input.
    Transmission,
    /// Share of each inner ball's motion that goes along the rod, against the steering input.
    InnerShare,
}

impl CurveKind {
    /// Every curve, in the order in which they are listed.
    pub const ALL: [Self; 26] = [
        Self::ToeTravel,
        Self::ToeTravelSteered,
        Self::InnerOuter,
        Self::AckermannShare,
        Self::WheelAngles,
        Self::CamberTravel,
        Self::CamberSteer,
        Self::RollCamber,
        Self::CasterTravel,
        Self::CasterSteer,
        Self::InclinationTravel,
        Self::InclinationSteer,
        Self::RollSteer,
        Self::TrackTravel,
        Self::ContactTravel,
        Self::CentreTravel,
        Self::StationTravel,
        Self::ScrubTravel,
        Self::ScrubSteer,
        Self::TrailTravel,
        Self::TrailSteer,
        Self::RoadSteer,
        Self::SteeringRatio,
        Self::DriveEffort,
        Self::Transmission,
        Self::InnerShare,
    ];

    /// Its place in [`Self::ALL`].
    #[must_use]
    pub const fn index(self) -> usize {
        self as usize
    }

    /// Title as written over the curve.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::ToeTravel => "Toe against travel",
            Self::ToeTravelSteered => "Toe against travel, wheels turned",
            Self::InnerOuter => "Outer against inner angle",
            Self::AckermannShare => "Ackermann share against inner angle",
            Self::WheelAngles => "Wheel angles against steering input",
            Self::CamberTravel => "Camber against travel",
            Self::CamberSteer => "Camber against steering input",
            Self::RollCamber => "Camber against roll",
            Self::CasterTravel => "Caster against travel",
            Self::CasterSteer => "Caster against steering input",
            Self::InclinationTravel => "Kingpin inclination against travel",
            Self::InclinationSteer => "Kingpin inclination against steering input",
            Self::RollSteer => "Steer against roll",
            Self::TrackTravel => "Track change against travel",
            Self::ContactTravel => "Tyre contact sideways against travel",
            Self::CentreTravel => "Wheel centre sideways against travel",
            Self::StationTravel => "Wheel centre fore and aft against travel",
            Self::ScrubTravel => "Scrub radius against travel",
            Self::ScrubSteer => "Scrub radius against steering input",
            Self::TrailTravel => "Trail against travel",
            Self::TrailSteer => "Trail against steering input",
            Self::RoadSteer => "Travel on the road against steering input",
            Self::SteeringRatio => "Steering ratio against steering input",
            Self::DriveEffort => "Drive effort against steering input",
            Self::Transmission => "Transmission angle against steering input",
            Self::InnerShare => "Inner rod share against steering input",
        }
    }

    /// Short name for a command line: "toe-travel".
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::ToeTravel => "toe-travel",
            Self::ToeTravelSteered => "toe-travel-steered",
            Self::InnerOuter => "inner-outer",
            Self::AckermannShare => "ackermann",
            Self::WheelAngles => "wheel-angles",
            Self::CamberTravel => "camber-travel",
            Self::CamberSteer => "camber-steer",
            Self::RollCamber => "roll-camber",
            Self::CasterTravel => "caster-travel",
            Self::CasterSteer => "caster-steer",
            Self::InclinationTravel => "inclination-travel",
            Self::InclinationSteer => "inclination-steer",
            Self::RollSteer => "roll-steer",
            Self::TrackTravel => "track-travel",
            Self::ContactTravel => "contact-travel",
            Self::CentreTravel => "centre-travel",
            Self::StationTravel => "station-travel",
            Self::ScrubTravel => "scrub-travel",
            Self::ScrubSteer => "scrub-steer",
            Self::TrailTravel => "trail-travel",
            Self::TrailSteer => "trail-steer",
            Self::RoadSteer => "road-steer",
            Self::SteeringRatio => "ratio",
            Self::DriveEffort => "effort",
            Self::Transmission => "transmission",
            Self::InnerShare => "inner-share",
        }
    }

    /// The curve of a short name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }

    /// What it goes over.
    #[must_use]
    pub const fn along(self) -> Along {
        match self {
            Self::ToeTravel
            | Self::CamberTravel
            | Self::CasterTravel
            | Self::InclinationTravel
            | Self::TrackTravel
            | Self::ContactTravel
            | Self::CentreTravel
            | Self::StationTravel
            | Self::ScrubTravel
            | Self::TrailTravel => Along::Travel,
            Self::ToeTravelSteered => Along::SteeredTravel,
            Self::InnerOuter | Self::AckermannShare => Along::InnerAngle,
            Self::WheelAngles
            | Self::CamberSteer
            | Self::CasterSteer
            | Self::InclinationSteer
            | Self::ScrubSteer
            | Self::TrailSteer
            | Self::RoadSteer
            | Self::SteeringRatio
            | Self::DriveEffort
            | Self::Transmission
            | Self::InnerShare => Along::Steer,
            Self::RollSteer | Self::RollCamber => Along::Roll,
        }
    }

    /// Whether it exists only for a suspension with wheel travel.
    #[must_use]
    pub const fn needs_travel(self) -> bool {
        matches!(self, Self::RoadSteer)
            || matches!(
                self.along(),
                Along::Travel | Along::SteeredTravel | Along::Roll
            )
    }
}

#[cfg(test)]
mod tests {
    use super::CurveKind;

    #[test]
    fn kinds_know_their_place_and_names_lead_back() {
        for (place, kind) in CurveKind::ALL.into_iter().enumerate() {
            assert_eq!(kind.index(), place, "{kind:?}");
            assert_eq!(CurveKind::from_name(kind.name()), Some(kind));
        }
        assert_eq!(CurveKind::from_name("no such curve"), None);
    }
}
