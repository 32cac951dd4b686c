//! What each figure is: names, unit, decimals, meaning; a file a group.

pub(super) mod alignment;
pub(super) mod drive;
pub(super) mod full_lock;
pub(super) mod roll;
pub(super) mod straight_ahead;
pub(super) mod symmetry;
pub(super) mod tie_rods;
pub(super) mod travel;
pub(super) mod turn;

use crate::InputUnit;

/// What a figure is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Facts {
    /// Short name for a command line, never changed: "bump-steer".
    pub name: &'static str,
    /// Plain name.
    pub title: &'static str,
    /// The plain name where there is little room.
    pub brief: &'static str,
    /// Which way is positive, such as "in +"; empty where the name says it or nothing is to be said.
    pub positive: &'static str,
    /// Decimals shown: what can be built and measured.
    pub decimals: usize,
    /// Whether its sign is always shown.
    pub is_signed: bool,
    /// What its values belong to.
    pub scope: Scope,
    /// What it means and which way is more.
    pub meaning: &'static str,
    /// Whether it is one of the few that are always on screen.
    pub is_headline: bool,
    /// Whether it is read off gauges on the car, as far as it can be read at all.
    pub is_gauged: bool,
    unit: Unit,
}

/// What the values of a figure belong to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// One value for each wheel.
    Wheels,
    /// One value for a turn to the left and one for a turn to the right.
    Turns,
    /// One value for the axle.
    Axle,
}

/// Units of figures; some go with the unit of the steering input.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Unit {
    Degrees,
    Millimetres,
    Percent,
    DegreesPerMillimetre,
    MillimetresPerMillimetre,
    DegreesPerDegree,
    MillimetresPerDegree,
    Input,
    Ratio,
    Effort,
    StandingEffort,
}

impl Facts {
    const fn new(
        name: &'static str,
        title: &'static str,
        (unit, decimals): (Unit, usize),
        scope: Scope,
        meaning: &'static str,
    ) -> Self {
        Self {
            name,
            title,
            brief: title,
            positive: "",
            decimals,
            is_signed: false,
            scope,
            meaning,
            is_headline: false,
            is_gauged: false,
            unit,
        }
    }

    const fn brief(mut self, brief: &'static str) -> Self {
        self.brief = brief;
        self
    }

    const fn positive(mut self, positive: &'static str) -> Self {
        self.positive = positive;
        self.signed()
    }

    const fn signed(mut self) -> Self {
        self.is_signed = true;
        self
    }

    const fn headline(mut self) -> Self {
        self.is_headline = true;
        self
    }

    const fn gauged(mut self) -> Self {
        self.is_gauged = true;
        self
    }

    /// The plain name with which way is positive: "Toe (in +)".
    #[must_use]
    pub fn title_with_sign(&self) -> String {
        if self.positive.is_empty() {
            self.title.to_owned()
        } else {
            format!("{} ({})", self.title, self.positive)
        }
    }

    /// Its unit, such as "mm", for a car whose steering is turned in a unit.
    #[must_use]
    pub fn unit(&self, input: InputUnit) -> &'static str {
        match self.unit {
            Unit::Degrees => "\u{b0}",
            Unit::Millimetres => "mm",
            Unit::Percent => "%",
            Unit::DegreesPerMillimetre => "\u{b0}/mm",
            Unit::MillimetresPerMillimetre => "mm/mm",
            Unit::DegreesPerDegree => "\u{b0}/\u{b0}",
            Unit::MillimetresPerDegree => "mm/\u{b0}",
            Unit::Input => input.sign(),
            Unit::Ratio => input.per_degree(),
            Unit::Effort => input.effort_unit(),
            Unit::StandingEffort => input.standing_effort_unit(),
        }
    }
}
