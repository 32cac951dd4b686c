//! What is felt, and what is usually changed for it.

use super::PitFigure;

/// What was felt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Symptom {
    /// The front pushes wide when turning in.
    PushesAtEntry,
    /// The car darts or turns in too sharply.
    NervousAtEntry,
    /// The front pushes wide in mid-corner.
    PushesInTheMiddle,
    /// The front bites too much in mid-corner and the rear steps out.
    BitesInTheMiddle,
    /// The front pushes wide coming out, under power.
    PushesAtExit,
    /// The car rolls over on its outer wheels where grip is high.
    LiftsOver,
    /// The car wanders on the straight.
    Wanders,
    /// It does not turn tightly enough near full lock.
    LacksSteeringNearLock,
    /// Bumps throw it off its line.
    UpsetByBumps,
    /// It scrubs off speed in tight corners.
    Scrubs,
}

/// Which way a figure should go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// Greater.
    More,
    /// Smaller.
    Less,
}

impl Direction {
    /// In words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::More => "more",
            Self::Less => "less",
        }
    }

    /// +1 or -1.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Self::More => 1.0,
            Self::Less => -1.0,
        }
    }
}

/// A figure to change, and the tendency behind it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Aim {
    /// The figure.
    pub figure: PitFigure,
    /// Which way.
    pub direction: Direction,
    /// The usual tendency: common practice, no source.
    pub tendency: &'static str,
}

const fn more(figure: PitFigure, tendency: &'static str) -> Aim {
    Aim {
        figure,
        direction: Direction::More,
        tendency,
    }
}

const fn less(figure: PitFigure, tendency: &'static str) -> Aim {
    Aim {
        figure,
        direction: Direction::Less,
        tendency,
    }
}

impl Symptom {
    /// Every symptom.
    pub const ALL: [Self; 10] = [
        Self::PushesAtEntry,
        Self::NervousAtEntry,
        Self::PushesInTheMiddle,
        Self::BitesInTheMiddle,
        Self::PushesAtExit,
        Self::LiftsOver,
        Self::Wanders,
        Self::LacksSteeringNearLock,
        Self::UpsetByBumps,
        Self::Scrubs,
    ];

    /// In plain words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::PushesAtEntry => "pushes wide turning in",
            Self::NervousAtEntry => "nervous turning in",
            Self::PushesInTheMiddle => "pushes wide in mid-corner",
            Self::BitesInTheMiddle => "front bites too much in mid-corner",
            Self::PushesAtExit => "pushes wide coming out",
            Self::LiftsOver => "lifts over on high grip",
            Self::Wanders => "wanders on the straight",
            Self::LacksSteeringNearLock => "lacks steering near full lock",
            Self::UpsetByBumps => "upset by bumps",
            Self::Scrubs => "scrubs off speed in tight corners",
        }
    }

    /// A name for the command line that does not change.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::PushesAtEntry => "pushes-at-entry",
            Self::NervousAtEntry => "nervous-at-entry",
            Self::PushesInTheMiddle => "pushes-in-the-middle",
            Self::BitesInTheMiddle => "bites-in-the-middle",
            Self::PushesAtExit => "pushes-at-exit",
            Self::LiftsOver => "lifts-over",
            Self::Wanders => "wanders",
            Self::LacksSteeringNearLock => "lacks-steering-near-lock",
            Self::UpsetByBumps => "upset-by-bumps",
            Self::Scrubs => "scrubs",
        }
    }

    /// What is usually changed for it, the first thing to try first.
    #[must_use]
    pub const fn aims(self) -> &'static [Aim] {
        match self {
            Self::PushesAtEntry => PUSHES_AT_ENTRY,
            Self::NervousAtEntry => NERVOUS_AT_ENTRY,
            Self::PushesInTheMiddle => PUSHES_IN_THE_MIDDLE,
            Self::BitesInTheMiddle => BITES_IN_THE_MIDDLE,
            Self::PushesAtExit => PUSHES_AT_EXIT,
            Self::LiftsOver => LIFTS_OVER,
            Self::Wanders => WANDERS,
            Self::LacksSteeringNearLock => LACKS_STEERING,
            Self::UpsetByBumps => UPSET_BY_BUMPS,
            Self::Scrubs => SCRUBS,
        }
    }
}

const PUSHES_AT_ENTRY: &[Aim] = &[
    more(
        PitFigure::BumpSteer,
        "More bump steer, such as fewer spacers at the outer balls give, usually brings more steering on entry; it is \
         used at lower grip.",
    ),
    less(
        PitFigure::Toe,
        "Toe-out usually makes the front turn in sooner, and the car less steady on the straight.",
    ),
    less(
        PitFigure::Camber,
        "More negative camber usually gives the outer front tyre more bite in a corner.",
    ),
    less(
        PitFigure::Caster,
        "Less caster usually brings more steering on entry and less in mid-corner and out.",
    ),
];

const NERVOUS_AT_ENTRY: &[Aim] = &[
    less(
        PitFigure::BumpSteer,
        "Less bump steer, such as taller spacers at the outer balls give, usually calms the entry; it is used at higher \
         grip.",
    ),
    more(
        PitFigure::Caster,
        "More caster usually makes the steering calmer on entry and self-centring stronger.",
    ),
    more(
        PitFigure::AckermannShare,
        "A greater Ackermann share usually makes a car easier to drive.",
    ),
    more(
        PitFigure::Ratio,
        "A slower steering ratio makes the same movement of the servo turn the wheels less.",
    ),
];

const PUSHES_IN_THE_MIDDLE: &[Aim] = &[
    less(
        PitFigure::Camber,
        "More negative camber usually gives the outer front tyre more bite in mid-corner, until only its inner edge \
         works.",
    ),
    more(
        PitFigure::Caster,
        "More caster leans the outer wheel into the corner as it is turned, which usually helps in mid-corner.",
    ),
    less(
        PitFigure::AckermannShare,
        "A smaller Ackermann share usually gives more steering the nearer the wheels are to lock.",
    ),
];

const BITES_IN_THE_MIDDLE: &[Aim] = &[
    more(
        PitFigure::Camber,
        "Less negative camber usually takes bite from the outer front tyre.",
    ),
    more(
        PitFigure::AckermannShare,
        "A greater Ackermann share usually makes a car easier to drive in mid-corner.",
    ),
    less(
        PitFigure::BumpSteer,
        "Less bump steer, such as taller spacers at the outer balls give, is usual at higher grip.",
    ),
];

const PUSHES_AT_EXIT: &[Aim] = &[
    more(
        PitFigure::Caster,
        "More caster usually gives more steering coming out, as the outer wheel stays leaned into the corner.",
    ),
    less(
        PitFigure::AckermannShare,
        "A smaller Ackermann share usually keeps more steering while the wheels are still turned far.",
    ),
];

const LIFTS_OVER: &[Aim] = &[
    more(
        PitFigure::AckermannShare,
        "A greater Ackermann share usually makes a car less inclined to lift over on high grip.",
    ),
    less(
        PitFigure::BumpSteer,
        "Less bump steer, such as taller spacers at the outer balls give, is used at higher grip.",
    ),
    more(
        PitFigure::Camber,
        "Less negative camber usually takes grip from the outer front tyre.",
    ),
    less(
        PitFigure::Lock,
        "Less lock keeps the wheels from being turned farther than the grip bears.",
    ),
];

const WANDERS: &[Aim] = &[
    more(
        PitFigure::Toe,
        "Toe-in at the front, or less toe-out, usually makes a car steadier on the straight.",
    ),
    more(
        PitFigure::Caster,
        "More caster usually steadies the car, as the wheels centre themselves more.",
    ),
    less(
        PitFigure::BumpSteer,
        "Less bump steer keeps the wheels pointing straight over unevenness.",
    ),
];

const LACKS_STEERING: &[Aim] = &[
    more(
        PitFigure::Lock,
        "More lock turns tighter, as far as the front grips; check for binding by hand first.",
    ),
    less(
        PitFigure::AckermannShare,
        "A smaller Ackermann share usually gives more steering near lock.",
    ),
];

const UPSET_BY_BUMPS: &[Aim] = &[
    less(
        PitFigure::BumpSteer,
        "Less bump steer keeps the wheels pointing the same way when they are pushed up.",
    ),
    less(
        PitFigure::ScrubRadius,
        "A smaller scrub radius gives bumps a shorter lever to turn the wheels with.",
    ),
];

const SCRUBS: &[Aim] = &[
    more(
        PitFigure::AckermannShare,
        "A share nearer to 100 lets both front wheels roll about one point in slow, tight corners.",
    ),
    more(
        PitFigure::Camber,
        "Less negative camber lets more of the tread share the work.",
    ),
];
