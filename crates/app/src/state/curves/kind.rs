//! What can be plotted, one kind a panel.

/// What a curve goes over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sweep {
    /// Wheel travel, mm.
    Travel,
    /// Steering input, in the unit of the car's drive.
    Steer,
    /// Angle of the inner wheel, degrees.
    InnerAngle,
    /// Roll of the chassis, degrees.
    Roll,
}

/// One panel of curves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CurveKind {
    /// Toe against travel.
    ToeTravel,
    /// Outer against inner wheel angle.
    OuterInner,
    /// Ackermann share against steering.
    Ackermann,
    /// Camber against travel.
    CamberTravel,
    /// Camber against steering.
    CamberSteer,
    /// Caster against travel.
    CasterTravel,
    /// Roll steer.
    RollSteer,
    /// Camber against roll.
    CamberRoll,
    /// Steering ratio against steering.
    Ratio,
    /// Angle between tie rod and steering arm, against steering.
    Transmission,
}

impl CurveKind {
    /// Every kind, in the order in which panels stand one above the other.
    pub const ALL: [Self; 10] = [
        Self::ToeTravel,
        Self::OuterInner,
        Self::Ackermann,
        Self::CamberTravel,
        Self::CamberSteer,
        Self::CasterTravel,
        Self::RollSteer,
        Self::CamberRoll,
        Self::Ratio,
        Self::Transmission,
    ];

    /// Plain name, as the panel is headed.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::ToeTravel => "Toe against travel",
            Self::OuterInner => "Outer against inner angle",
            Self::Ackermann => "Ackermann against steering",
            Self::CamberTravel => "Camber against travel",
            Self::CamberSteer => "Camber against steering",
            Self::CasterTravel => "Caster against travel",
            Self::RollSteer => "Roll steer",
            Self::CamberRoll => "Camber against roll",
            Self::Ratio => "Steering ratio",
            Self::Transmission => "Rod transmission angle",
        }
    }

    /// What it means and what to look for.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::ToeTravel => {
                "Bump steer over the whole travel, steering straight ahead. A level line does not steer in bumps."
            }
            Self::OuterInner => {
                "How far the outer wheel follows the inner one from straight ahead. On the dotted line neither scrubs; on the thin dashed one both turn alike."
            }
            Self::Ackermann => {
                "Ackermann share over the steering input: 0 % both wheels turn alike, 100 % the ideal pair, negative reversed. It is left out close to straight ahead, where it is a quotient of next to nothing."
            }
            Self::CamberTravel => {
                "Camber over the wheel travel, steering straight ahead. A falling line leans the wheel in as it is pushed up."
            }
            Self::CamberSteer => {
                "Camber over the steering input: caster leans the outer wheel in, kingpin inclination leans both out."
            }
            Self::CasterTravel => {
                "Caster over the wheel travel. A rising line puts more caster on as the wheel is pushed up."
            }
            Self::RollSteer => {
                "How the wheels steer while the chassis rolls on both tyres, from how it stands. A level line does not steer in roll."
            }
            Self::CamberRoll => {
                "Camber against the road while the chassis rolls on both tyres. The flatter the lines, the more upright the wheels stay."
            }
            Self::Ratio => {
                "Steering input for each degree that the wheels turn on average. More is slower; a line that falls towards lock grows quicker there."
            }
            Self::Transmission => {
                "Angle between tie rod and steering arm. 90\u{b0} passes on most; near 0\u{b0} or 180\u{b0} the steering locks."
            }
        }
    }

    /// What it goes over.
    #[must_use]
    pub const fn sweep(self) -> Sweep {
        match self {
            Self::ToeTravel | Self::CamberTravel | Self::CasterTravel => Sweep::Travel,
            Self::OuterInner => Sweep::InnerAngle,
            Self::Ackermann | Self::CamberSteer | Self::Ratio | Self::Transmission => Sweep::Steer,
            Self::RollSteer | Self::CamberRoll => Sweep::Roll,
        }
    }

    /// Its place in [`Self::ALL`].
    #[must_use]
    pub const fn index(self) -> usize {
        self as usize
    }
}

#[cfg(test)]
mod tests {
    use super::CurveKind;

    #[test]
    fn kinds_know_their_place() {
        for (place, kind) in CurveKind::ALL.into_iter().enumerate() {
            assert_eq!(kind.index(), place, "{kind:?}");
        }
    }
}
