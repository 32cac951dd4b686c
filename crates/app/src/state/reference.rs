//! The reference: another setup, or the same one at another moment, to compare the current one with.

use steerloft_setup::adjustment::Adjustment;
use steerloft_setup::setup::{Chosen, Setup};

use super::{Cursor, Derived, Document, InputUnit, SetupId, Shown};

/// What the current setup is compared with, posed where the current one is.
#[derive(Debug)]
pub struct Reference {
    origin: Origin,
    document: Document,
    derived: Derived,
}

/// Where a reference comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// An open setup, as it stands now.
    Open(SetupId),
    /// A moment of an open setup, kept as it was.
    Moment(SetupId),
}

impl Reference {
    pub(super) fn new(origin: Origin, document: Document) -> Self {
        let derived = Derived::new(&document, Cursor::STATIC);
        Self {
            origin,
            document,
            derived,
        }
    }

    /// Where it comes from.
    #[must_use]
    pub fn origin(&self) -> Origin {
        self.origin
    }

    /// The setup.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        self.document.setup()
    }

    /// Its name, such as "carpet.ron" or "carpet.ron, kept".
    #[must_use]
    pub fn name(&self) -> String {
        let name = self.document.name();
        match self.origin {
            Origin::Open(_) => name,
            Origin::Moment(_) => format!("{name}, kept"),
        }
    }

    /// What follows from it where the current setup's cursor stands.
    #[must_use]
    pub fn derived(&self) -> &Derived {
        &self.derived
    }

    /// The reference as it can be drawn: posed where the current setup's cursor stands, as far as its parts go. If it is
    /// steered by a drive of another unit than the current one, it is straight ahead.
    #[must_use]
    pub fn shown(&self) -> Option<&Shown> {
        self.derived.shown()
    }

    /// The reference's adjustment of the same name, with its value.
    #[must_use]
    pub fn adjustment(&self, name: &str) -> Option<(&Adjustment, Chosen)> {
        let all = &self.setup().car.adjustments;
        let index = all.iter().position(|adjustment| adjustment.name == name)?;
        Some((&all[index], self.setup().value(index)))
    }

    /// How many adjustments of a setup stand elsewhere than in the reference, those that it has not left out.
    #[must_use]
    pub fn differing_adjustments(&self, setup: &Setup) -> usize {
        let adjustments = setup.car.adjustments.iter().enumerate();
        adjustments
            .filter(|(index, adjustment)| {
                self.adjustment(&adjustment.name)
                    .is_some_and(|(_, value)| value != setup.value(*index))
            })
            .count()
    }

    /// Takes over what was changed in the open setup it comes from.
    pub(super) fn follow(&mut self, document: &Document) {
        if self.document.edition() != document.edition() || self.document.path() != document.path()
        {
            self.document = document.clone();
        }
    }

    pub(super) fn hold_input(&mut self, input: Option<f64>) {
        self.derived.hold_input(input);
    }

    /// Poses it where the cursor of the current setup stands.
    pub(super) fn pose(&mut self, cursor: Cursor, unit: InputUnit) {
        let car = &self.document.setup().car;
        let steered = InputUnit::of(car) == unit;
        let wanted = Cursor {
            input: if steered { cursor.input } else { 0.0 },
            ..cursor
        };
        let has_travel = self
            .shown()
            .is_none_or(|shown| shown.assembly().has_travel());
        let cursor = wanted.within(&car.ranges, has_travel);
        self.derived.update(&self.document, cursor);
    }
}
