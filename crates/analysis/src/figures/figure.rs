//! A figure with its values, as numbers and as text.

use steerloft_solver::frame::Sides;

use super::{Facts, FigureKind};
use crate::text::{NONE, number, signed};

/// A figure of a setup in a pose.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Which one.
    pub kind: FigureKind,
    /// Its unit, empty if it has none.
    pub unit: &'static str,
    /// Its values in that unit.
    pub values: Values,
    /// Something about the values that needs attention.
    pub caution: Option<String>,
}

/// The values of a figure; none where the setup has no such figure in the pose. Every one is finite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Values {
    /// One for each wheel, or for a turn to each side.
    Sides(Sides<Option<f64>>),
    /// One for the axle.
    Axle(Option<f64>),
}

/// The values of a figure as text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Texts {
    /// One for each wheel, or for a turn to each side.
    Sides(Sides<String>),
    /// One for the axle.
    Axle(String),
}

impl Values {
    /// The values, those that are not finite left out.
    pub(super) fn finite(self) -> Self {
        let finite = |value: Option<f64>| value.filter(|value| value.is_finite());
        match self {
            Self::Sides(sides) => Self::Sides(sides.map(finite)),
            Self::Axle(value) => Self::Axle(finite(value)),
        }
    }
}

impl Facts {
    /// A value of the figure as text, without its unit.
    #[must_use]
    pub fn text(&self, value: Option<f64>) -> String {
        self.text_with(value, self.decimals)
    }

    fn text_with(&self, value: Option<f64>, decimals: usize) -> String {
        match value {
            Some(value) if self.is_signed => signed(value, decimals),
            Some(value) => number(value, decimals),
            None => NONE.to_owned(),
        }
    }
}

impl Figure {
    /// What it is.
    #[must_use]
    pub const fn facts(&self) -> &'static Facts {
        self.kind.facts()
    }

    /// The values as text, without their unit.
    #[must_use]
    pub fn texts(&self) -> Texts {
        self.texts_in(1.0, self.facts().decimals)
    }

    /// The values as text in another unit: multiplied with a factor, with so many decimals.
    #[must_use]
    pub fn texts_in(&self, factor: f64, decimals: usize) -> Texts {
        let facts = self.facts();
        let text =
            |value: Option<f64>| facts.text_with(value.map(|value| value * factor), decimals);
        match self.values {
            Values::Sides(sides) => Texts::Sides(sides.map(text)),
            Values::Axle(value) => Texts::Axle(text(value)),
        }
    }

    /// How much more than the same figure of another setup, as text; a dash where either has none.
    #[must_use]
    pub fn differences(&self, reference: &Self) -> Texts {
        self.differences_in(reference, 1.0, self.facts().decimals)
    }

    /// The same in another unit: multiplied with a factor, with so many decimals.
    #[must_use]
    pub fn differences_in(&self, reference: &Self, factor: f64, decimals: usize) -> Texts {
        let difference = |own: Option<f64>, other: Option<f64>| match (own, other) {
            (Some(own), Some(other)) => signed((own - other) * factor, decimals),
            _ => NONE.to_owned(),
        };
        match (self.values, reference.values) {
            (Values::Sides(own), Values::Sides(other)) => Texts::Sides(Sides::new(
                difference(own.left, other.left),
                difference(own.right, other.right),
            )),
            (Values::Axle(own), Values::Axle(other)) => Texts::Axle(difference(own, other)),
            (Values::Sides(_), Values::Axle(_)) => {
                Texts::Sides(Sides::new(NONE.to_owned(), NONE.to_owned()))
            }
            (Values::Axle(_), Values::Sides(_)) => Texts::Axle(NONE.to_owned()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figure(kind: FigureKind, values: Values) -> Figure {
        Figure {
            kind,
            unit: "\u{b0}",
            values,
            caution: None,
        }
    }

    #[test]
    fn values_are_written_with_their_decimals_and_sign() {
        let toe = figure(
            FigureKind::Toe,
            Values::Sides(Sides::new(Some(0.5), Some(-0.004))),
        );
        let texts = Sides::new("+0.50".to_owned(), "0.00".to_owned());
        assert_eq!(toe.texts(), Texts::Sides(texts));
        let share = figure(FigureKind::Ackermann, Values::Axle(None));
        assert_eq!(share.texts(), Texts::Axle(NONE.to_owned()));
    }

    #[test]
    fn values_in_another_unit_are_scaled_before_they_are_rounded() {
        let length = figure(FigureKind::RodLength, Values::Axle(Some(25.4)));
        let texts = Texts::Axle("1.0000".to_owned());
        assert_eq!(length.texts_in(1.0 / 25.4, 4), texts);
        let longer = figure(FigureKind::RodLength, Values::Axle(Some(26.67)));
        let more = Texts::Axle("+0.050".to_owned());
        assert_eq!(longer.differences_in(&length, 1.0 / 25.4, 3), more);
    }

    #[test]
    fn differences_are_of_values_that_both_have() {
        let of = |left, right| figure(FigureKind::Toe, Values::Sides(Sides::new(left, right)));
        let differences = of(Some(1.0), Some(1.0)).differences(&of(Some(1.25), None));
        let texts = Sides::new("\u{2212}0.25".to_owned(), NONE.to_owned());
        assert_eq!(differences, Texts::Sides(texts));
    }

    #[test]
    fn what_is_not_finite_is_no_value() {
        let values = Values::Sides(Sides::new(Some(f64::NAN), Some(1.0)));
        assert_eq!(values.finite(), Values::Sides(Sides::new(None, Some(1.0))));
        assert_eq!(
            Values::Axle(Some(f64::INFINITY)).finite(),
            Values::Axle(None)
        );
    }
}
