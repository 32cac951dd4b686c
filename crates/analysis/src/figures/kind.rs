//! The figures there are.

use super::catalogue::{
    Facts, alignment, drive, full_lock, roll, straight_ahead, symmetry, tie_rods, travel, turn,
};

/// A figure of a setup. [`FigureKind::facts`] says what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum FigureKind {
    /// Toe.
    Toe,
    /// Total toe.
    TotalToe,
    /// Camber.
    Camber,
    /// Caster.
    Caster,
    /// Kingpin inclination.
    Inclination,
    /// Scrub radius.
    ScrubRadius,
    /// Trail.
    Trail,
    /// Hub offset.
    HubOffset,
    /// Hub trail.
    HubTrail,
    /// Track at the contacts.
    Track,
    /// Wheelbase.
    Wheelbase,
    /// Bump steer.
    BumpSteer,
    /// Toe at full bump.
    ToeAtBump,
    /// Toe at full droop.
    ToeAtDroop,
    /// Least toe in travel.
    ToeLeast,
    /// Greatest toe in travel.
    ToeMost,
    /// Camber gain in bump.
    CamberGain,
    /// Caster gain in bump.
    CasterGain,
    /// Inclination gain in bump.
    InclinationGain,
    /// Contact sideways in bump.
    ContactGain,
    /// Front-view arm.
    FrontArm,
    /// Front centre height.
    FrontCentreHeight,
    /// Side-view arm.
    SideArm,
    /// Side centre height.
    SideCentreHeight,
    /// Roll steer.
    RollSteer,
    /// Camber in roll.
    RollCamber,
    /// Travel in roll.
    RollTravel,
    /// Roll centre height.
    RollCentreHeight,
    /// Roll centre offset.
    RollCentreOffset,
    /// Rod length.
    RodLength,
    /// Cup gap.
    CupGap,
    /// Rod thread reserve.
    RodReserve,
    /// Rod angle, top.
    RodAngleTop,
    /// Rod angle, front.
    RodAngleFront,
    /// Outer ball misalignment.
    OuterBall,
    /// Inner ball misalignment.
    InnerBall,
    /// Steer angle.
    Steer,
    /// Ackermann share.
    Ackermann,
    /// Ideal outer angle.
    IdealOuter,
    /// Turn radius.
    TurnRadius,
    /// Turn-centre spread.
    TurnSpread,
    /// Swept circle.
    SweptCircle,
    /// Steering ratio.
    Ratio,
    /// Outer transmission.
    OuterTransmission,
    /// Outer share.
    OuterShare,
    /// Inner transmission.
    InnerTransmission,
    /// Inner share.
    InnerShare,
    /// Drive effort.
    DriveEffort,
    /// Servo torque at a standstill.
    ServoTorque,
    /// Steering ratio, straight ahead.
    StraightRatio,
    /// Ackermann at centre.
    StraightAckermann,
    /// Arm lines.
    ArmLines,
    /// Arm lines meet.
    ArmLinesMeet,
    /// Kingpin distance.
    KingpinDistance,
    /// Wheels at left lock.
    LockLeft,
    /// Wheels at right lock.
    LockRight,
    /// Steering input at lock.
    LockInput,
    /// Ackermann share at lock.
    LockAckermann,
    /// Turning circle at lock.
    LockCircle,
    /// Swept radius at lock.
    LockRadius,
    /// Least transmission angle.
    LeastTransmission,
    /// Difference of turns.
    SteerDifference,
    /// Toe difference in travel.
    ToeDifference,
    /// Camber difference in travel.
    CamberDifference,
}

impl FigureKind {
    /// Every figure, in the order in which they are listed: group by group.
    pub const ALL: [Self; 64] = [
        Self::Toe,
        Self::TotalToe,
        Self::Camber,
        Self::Caster,
        Self::Inclination,
        Self::ScrubRadius,
        Self::Trail,
        Self::HubOffset,
        Self::HubTrail,
        Self::Track,
        Self::Wheelbase,
        Self::BumpSteer,
        Self::ToeAtBump,
        Self::ToeAtDroop,
        Self::ToeLeast,
        Self::ToeMost,
        Self::CamberGain,
        Self::CasterGain,
        Self::InclinationGain,
        Self::ContactGain,
        Self::FrontArm,
        Self::FrontCentreHeight,
        Self::SideArm,
        Self::SideCentreHeight,
        Self::RollSteer,
        Self::RollCamber,
        Self::RollTravel,
        Self::RollCentreHeight,
        Self::RollCentreOffset,
        Self::RodLength,
        Self::CupGap,
        Self::RodReserve,
        Self::RodAngleTop,
        Self::RodAngleFront,
        Self::OuterBall,
        Self::InnerBall,
        Self::Steer,
        Self::Ackermann,
        Self::IdealOuter,
        Self::TurnRadius,
        Self::TurnSpread,
        Self::SweptCircle,
        Self::Ratio,
        Self::OuterTransmission,
        Self::OuterShare,
        Self::InnerTransmission,
        Self::InnerShare,
        Self::DriveEffort,
        Self::ServoTorque,
        Self::StraightRatio,
        Self::StraightAckermann,
        Self::ArmLines,
        Self::ArmLinesMeet,
        Self::KingpinDistance,
        Self::LockLeft,
        Self::LockRight,
        Self::LockInput,
        Self::LockAckermann,
        Self::LockCircle,
        Self::LockRadius,
        Self::LeastTransmission,
        Self::SteerDifference,
        Self::ToeDifference,
        Self::CamberDifference,
    ];

    /// What the figure is.
    #[must_use]
    pub const fn facts(self) -> &'static Facts {
        match self {
            Self::Toe => &alignment::TOE,
            Self::TotalToe => &alignment::TOTAL_TOE,
            Self::Camber => &alignment::CAMBER,
            Self::Caster => &alignment::CASTER,
            Self::Inclination => &alignment::INCLINATION,
            Self::ScrubRadius => &alignment::SCRUB_RADIUS,
            Self::Trail => &alignment::TRAIL,
            Self::HubOffset => &alignment::HUB_OFFSET,
            Self::HubTrail => &alignment::HUB_TRAIL,
            Self::Track => &alignment::TRACK,
            Self::Wheelbase => &alignment::WHEELBASE,
            Self::BumpSteer => &travel::BUMP_STEER,
            Self::ToeAtBump => &travel::TOE_AT_BUMP,
            Self::ToeAtDroop => &travel::TOE_AT_DROOP,
            Self::ToeLeast => &travel::TOE_LEAST,
            Self::ToeMost => &travel::TOE_MOST,
            Self::CamberGain => &travel::CAMBER_GAIN,
            Self::CasterGain => &travel::CASTER_GAIN,
            Self::InclinationGain => &travel::INCLINATION_GAIN,
            Self::ContactGain => &travel::CONTACT_GAIN,
            Self::FrontArm => &travel::FRONT_ARM,
            Self::FrontCentreHeight => &travel::FRONT_CENTRE_HEIGHT,
            Self::SideArm => &travel::SIDE_ARM,
            Self::SideCentreHeight => &travel::SIDE_CENTRE_HEIGHT,
            Self::RollSteer => &roll::ROLL_STEER,
            Self::RollCamber => &roll::ROLL_CAMBER,
            Self::RollTravel => &roll::ROLL_TRAVEL,
            Self::RollCentreHeight => &roll::ROLL_CENTRE_HEIGHT,
            Self::RollCentreOffset => &roll::ROLL_CENTRE_OFFSET,
            Self::RodLength => &tie_rods::ROD_LENGTH,
            Self::CupGap => &tie_rods::CUP_GAP,
            Self::RodReserve => &tie_rods::ROD_RESERVE,
            Self::RodAngleTop => &tie_rods::ROD_ANGLE_TOP,
            Self::RodAngleFront => &tie_rods::ROD_ANGLE_FRONT,
            Self::OuterBall => &tie_rods::OUTER_BALL,
            Self::InnerBall => &tie_rods::INNER_BALL,
            Self::Steer => &turn::STEER,
            Self::Ackermann => &turn::ACKERMANN,
            Self::IdealOuter => &turn::IDEAL_OUTER,
            Self::TurnRadius => &turn::TURN_RADIUS,
            Self::TurnSpread => &turn::TURN_SPREAD,
            Self::SweptCircle => &turn::SWEPT_CIRCLE,
            Self::Ratio => &drive::RATIO,
            Self::OuterTransmission => &drive::OUTER_TRANSMISSION,
            Self::OuterShare => &drive::OUTER_SHARE,
            Self::InnerTransmission => &drive::INNER_TRANSMISSION,
            Self::InnerShare => &drive::INNER_SHARE,
            Self::DriveEffort => &drive::DRIVE_EFFORT,
            Self::ServoTorque => &drive::SERVO_TORQUE,
            Self::StraightRatio => &straight_ahead::STRAIGHT_RATIO,
            Self::StraightAckermann => &straight_ahead::STRAIGHT_ACKERMANN,
            Self::ArmLines => &straight_ahead::ARM_LINES,
            Self::ArmLinesMeet => &straight_ahead::ARM_LINES_MEET,
            Self::KingpinDistance => &straight_ahead::KINGPIN_DISTANCE,
            Self::LockLeft => &full_lock::LOCK_LEFT,
            Self::LockRight => &full_lock::LOCK_RIGHT,
            Self::LockInput => &full_lock::LOCK_INPUT,
            Self::LockAckermann => &full_lock::LOCK_ACKERMANN,
            Self::LockCircle => &full_lock::LOCK_CIRCLE,
            Self::LockRadius => &full_lock::LOCK_RADIUS,
            Self::LeastTransmission => &full_lock::LEAST_TRANSMISSION,
            Self::SteerDifference => &symmetry::STEER_DIFFERENCE,
            Self::ToeDifference => &symmetry::TOE_DIFFERENCE,
            Self::CamberDifference => &symmetry::CAMBER_DIFFERENCE,
        }
    }

    /// The group that it stands in.
    #[must_use]
    pub const fn group(self) -> FigureGroup {
        match self {
            Self::Toe
            | Self::TotalToe
            | Self::Camber
            | Self::Caster
            | Self::Inclination
            | Self::ScrubRadius
            | Self::Trail
            | Self::HubOffset
            | Self::HubTrail
            | Self::Track
            | Self::Wheelbase => FigureGroup::Alignment,
            Self::BumpSteer
            | Self::ToeAtBump
            | Self::ToeAtDroop
            | Self::ToeLeast
            | Self::ToeMost
            | Self::CamberGain
            | Self::CasterGain
            | Self::InclinationGain
            | Self::ContactGain
            | Self::FrontArm
            | Self::FrontCentreHeight
            | Self::SideArm
            | Self::SideCentreHeight => FigureGroup::Travel,
            Self::RollSteer
            | Self::RollCamber
            | Self::RollTravel
            | Self::RollCentreHeight
            | Self::RollCentreOffset => FigureGroup::Roll,
            Self::RodLength
            | Self::CupGap
            | Self::RodReserve
            | Self::RodAngleTop
            | Self::RodAngleFront
            | Self::OuterBall
            | Self::InnerBall => FigureGroup::TieRods,
            Self::Steer
            | Self::Ackermann
            | Self::IdealOuter
            | Self::TurnRadius
            | Self::TurnSpread
            | Self::SweptCircle => FigureGroup::Turn,
            Self::Ratio
            | Self::OuterTransmission
            | Self::OuterShare
            | Self::InnerTransmission
            | Self::InnerShare
            | Self::DriveEffort
            | Self::ServoTorque => FigureGroup::Drive,
            Self::StraightRatio
            | Self::StraightAckermann
            | Self::ArmLines
            | Self::ArmLinesMeet
            | Self::KingpinDistance => FigureGroup::StraightAhead,
            Self::LockLeft
            | Self::LockRight
            | Self::LockInput
            | Self::LockAckermann
            | Self::LockCircle
            | Self::LockRadius
            | Self::LeastTransmission => FigureGroup::FullLock,
            Self::SteerDifference | Self::ToeDifference | Self::CamberDifference => {
                FigureGroup::Symmetry
            }
        }
    }

    /// The figure of a short name, such as "bump-steer".
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.facts().name == name)
    }
}

/// Figures that belong together and to one kind of pose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FigureGroup {
    /// How the wheels and steering axes stand.
    Alignment,
    /// What the wheels do when they are pushed up.
    Travel,
    /// What the wheels do when the chassis rolls.
    Roll,
    /// The tie rods.
    TieRods,
    /// How the wheels turn against each other.
    Turn,
    /// How the linkage passes on.
    Drive,
    /// What holds straight ahead at rest.
    StraightAhead,
    /// Both ends of steering.
    FullLock,
    /// How alike the two sides are.
    Symmetry,
}

impl FigureGroup {
    /// Every group, in the order in which they are listed.
    pub const ALL: [Self; 9] = [
        Self::Alignment,
        Self::Travel,
        Self::Roll,
        Self::TieRods,
        Self::Turn,
        Self::Drive,
        Self::StraightAhead,
        Self::FullLock,
        Self::Symmetry,
    ];

    /// What its figures are about.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Alignment => "Alignment",
            Self::Travel => "Travel",
            Self::Roll => "Roll",
            Self::TieRods => "Tie rods",
            Self::Turn => "Turn",
            Self::Drive => "Drive",
            Self::StraightAhead => "Straight ahead",
            Self::FullLock => "Full lock",
            Self::Symmetry => "Left against right",
        }
    }

    /// The pose or poses to which its figures belong, in words.
    #[must_use]
    pub const fn pose(self) -> &'static str {
        match self {
            Self::Alignment | Self::TieRods | Self::Turn | Self::Drive => "in the pose shown",
            Self::Travel | Self::Roll => "straight ahead at rest",
            Self::StraightAhead => "at rest",
            Self::FullLock => "at the travel shown",
            Self::Symmetry => "over the whole ranges",
        }
    }

    /// Its figures, in the order in which they are listed.
    pub fn kinds(self) -> impl Iterator<Item = FigureKind> {
        let all = FigureKind::ALL.into_iter();
        all.filter(move |kind| kind.group() == self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_and_titles_tell_figures_apart_and_each_says_what_it_means() {
        for (index, kind) in FigureKind::ALL.into_iter().enumerate() {
            let facts = kind.facts();
            assert_eq!(kind as usize, index);
            assert_eq!(FigureKind::from_name(facts.name), Some(kind));
            assert!(facts.meaning.len() > 30, "{}", facts.name);
            let plain = |letter: char| letter.is_ascii_lowercase() || letter == '-';
            assert!(facts.name.chars().all(plain), "{}", facts.name);
            for other in FigureKind::ALL.iter().skip(index + 1) {
                let other = other.facts();
                assert_ne!(facts.name, other.name);
                assert_ne!(facts.title, other.title);
                assert_ne!(facts.brief, other.brief);
            }
        }
        assert_eq!(FigureKind::from_name("no such figure"), None);
    }

    #[test]
    fn groups_hold_every_figure_once_and_in_order() {
        let grouped: Vec<FigureKind> = FigureGroup::ALL
            .into_iter()
            .flat_map(FigureGroup::kinds)
            .collect();
        assert_eq!(grouped, FigureKind::ALL);
    }
}
