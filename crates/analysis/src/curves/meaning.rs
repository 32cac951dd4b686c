//! What each curve means and what to look for in it.

use super::CurveKind;

impl CurveKind {
    /// What it means and what to look for.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::ToeTravel => {
                "Bump steer over the whole travel, steering straight ahead. A level line does not steer in bumps."
            }
            Self::ToeTravelSteered => {
                "How the turned wheels toe with travel, from how they point at rest, at the steering input chosen. A level line does not steer in bumps in mid-corner."
            }
            Self::InnerOuter => {
                "How far the outer wheel follows the inner one from straight ahead. On the line of the ideal pair neither scrubs; on the parallel line both turn alike."
            }
            Self::AckermannShare => {
                "How much more the inner wheel turns than the outer one: 0 % both wheels turn alike, 100 % the ideal pair, negative reversed. It is left out close to straight ahead, where it is a quotient of next to nothing."
            }
            Self::WheelAngles => {
                "Where each wheel points as the steering is turned. Mirrored lines: both turns alike."
            }
            Self::CamberTravel => {
                "Camber over the wheel travel, steering straight ahead. A falling line leans the wheel in as it is pushed up."
            }
            Self::CamberSteer => {
                "Camber over the steering input: caster leans the outer wheel in, kingpin inclination leans both out."
            }
            Self::RollCamber => {
                "Camber against the road while the chassis rolls on both tyres. The flatter the lines, the more upright the wheels stay."
            }
            Self::CasterTravel => {
                "Caster over the wheel travel. A rising line puts more caster on as the wheel is pushed up."
            }
            Self::CasterSteer => {
                "Caster over the steering input at the travel shown. It stays level where the steering axis stands still."
            }
            Self::InclinationTravel => {
                "Kingpin inclination over the wheel travel. A rising line leans the axis in more as the wheel is pushed up."
            }
            Self::InclinationSteer => {
                "Kingpin inclination over the steering input at the travel shown. It stays level where the steering axis stands still."
            }
            Self::RollSteer => {
                "How the wheels steer while the chassis rolls on both tyres, from how it stands. A level line does not steer in roll."
            }
            Self::TrackTravel => {
                "How much wider the axle stands as both wheels are pushed up. A level line does not drag the tyres sideways in bumps."
            }
            Self::ContactTravel => {
                "The path of each tyre's contact seen from the front: how far it moves outboard with travel."
            }
            Self::CentreTravel => {
                "The path of each wheel's centre seen from the front: how far it moves outboard with travel."
            }
            Self::StationTravel => {
                "The path of each wheel's centre seen from the side: how far it moves forward with travel. A line that falls lets the wheel give way to bumps."
            }
            Self::ScrubTravel => {
                "Scrub radius over the wheel travel. A level line keeps the feel of the steering in bumps."
            }
            Self::ScrubSteer => {
                "Scrub radius over the steering input. Positive: the tyre's middle stands outboard of where the steering axis meets the ground."
            }
            Self::TrailTravel => {
                "Mechanical trail over the wheel travel. More of it centres the steering more."
            }
            Self::TrailSteer => {
                "Mechanical trail over the steering input. A wheel whose trail turns negative pulls further into the turn."
            }
            Self::RoadSteer => {
                "Jacking: how far each wheel moves up in the chassis as it is steered with both tyres kept on the road. Where the line rises the steering compresses that spring or lifts that corner; where it falls the corner sinks."
            }
            Self::SteeringRatio => {
                "Steering input for each degree that the wheels turn on average. More is slower; a line that falls towards lock grows quicker there."
            }
            Self::DriveEffort => {
                "What the servo, column or rack must hold against a moment of 1 N m at each kingpin in one sense. Less is easier, and slower."
            }
            Self::Transmission => {
                "Angle between tie rod and steering arm. 90\u{b0} passes on most; near 0\u{b0} or 180\u{b0} the steering locks."
            }
            Self::InnerShare => {
                "How much of the inner ball's motion goes along the rod: 100 % is best, at 0 % the drive stands on dead centre."
            }
        }
    }
}
