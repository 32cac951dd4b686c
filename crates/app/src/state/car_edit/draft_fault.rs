//! What is wrong with an adjustment being written, and at which part of it to say so.

use steerloft_setup::check::Step;
use steerloft_setup::edit::EditError;

/// A part of the draft that something can be wrong with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DraftPart {
    /// The name.
    Name,
    /// The notes.
    Notes,
    /// Least and greatest value.
    Range,
    /// The step.
    Step,
    /// The base.
    Base,
    /// The spacers at hand.
    Parts,
    /// The stock, and the number of places that take from it.
    Places,
    /// The positions, the one with this index if one alone is wrong.
    Options(Option<usize>),
    /// The effects, the one with this index if one alone is wrong.
    Effects(Option<usize>),
}

/// What is wrong with a draft, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DraftFault {
    /// The part to show it at.
    pub part: DraftPart,
    /// What is wrong, in words.
    pub text: String,
}

impl DraftPart {
    /// The part of the draft that a refused edit is about: the last field on the way to it that the draft has.
    pub(super) fn of(error: &EditError) -> Self {
        let EditError::Check(fault) = error else {
            return Self::Effects(None);
        };
        let mut part = Self::Effects(None);
        let steps = fault.path.steps();
        for (step, next) in steps
            .iter()
            .zip(steps.iter().skip(1).map(Some).chain([None]))
        {
            let Step::Field(field) = step else {
                continue;
            };
            let index = match next {
                Some(Step::Item(index)) => Some(*index),
                _ => None,
            };
            part = match *field {
                "name" if !matches!(part, Self::Options(_)) => Self::Name,
                "notes" => Self::Notes,
                "range" | "most" => Self::Range,
                "step" => Self::Step,
                "base" => Self::Base,
                "parts" => Self::Parts,
                "stock" | "places" => Self::Places,
                "options" => Self::Options(index),
                "effects" if !matches!(part, Self::Options(_)) => Self::Effects(index),
                _ => part,
            };
        }
        part
    }
}
