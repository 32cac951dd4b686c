//! An adjustment while it is being written: numbers as typed, checked at every key.

use steerloft_setup::adjustment::{
    Adjustment, ChoiceOption, Effect, FromStock, Kind, Place, Spacer, Unit,
};
use steerloft_setup::edit::CarEdit;
use steerloft_setup::setup::Setup;

use super::draft_fault::{DraftFault, DraftPart};
use super::entries::in_words;
use super::typed_number::{Measured, TypedNumber};
use super::{EffectDraft, spacer_list};
use crate::units::Units;

/// How an adjustment is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DraftKind {
    /// Along a range.
    Slide,
    /// By spacers.
    Stack,
    /// One of several positions.
    Choice,
}

impl DraftKind {
    /// Every kind, as listed.
    pub const ALL: [Self; 3] = [Self::Slide, Self::Stack, Self::Choice];

    /// In plain words.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Slide => "slide",
            Self::Stack => "stack",
            Self::Choice => "choice",
        }
    }
}

/// A named position of a choice being written.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OptionDraft {
    /// Its name.
    pub name: String,
    /// What choosing it does.
    pub effects: Vec<EffectDraft>,
}

/// An adjustment being written.
#[derive(Debug, Clone, PartialEq)]
pub struct AdjustmentDraft {
    /// Index of the adjustment it changes; none for a new one.
    pub index: Option<usize>,
    /// The unit of lengths in which it is written: that which was shown when it was begun.
    pub units: Units,
    /// Its name.
    pub name: String,
    /// Where on the car it is.
    pub place: Place,
    /// What the builder should know.
    pub notes: String,
    /// How it is set.
    pub kind: DraftKind,
    /// Unit of a slide.
    pub unit: Unit,
    /// Least value of a slide.
    pub least: TypedNumber,
    /// Greatest value of a slide, or greatest total of a stack.
    pub most: TypedNumber,
    /// Step of a slide; empty for any value.
    pub step: TypedNumber,
    /// The value at which the car's points are given; a choice's is [`Self::base_option`].
    pub base: TypedNumber,
    /// Spacers at hand, such as "4 x 0.5, 2 x 1".
    pub parts: String,
    /// Name of the stock that spacers are taken from.
    pub stock: Option<String>,
    /// In how many places of the car the stack is built.
    pub places: String,
    /// What one unit of a slide or stack does.
    pub effects: Vec<EffectDraft>,
    /// The positions of a choice.
    pub options: Vec<OptionDraft>,
    /// The position at which the car's points are given.
    pub base_option: usize,
}

impl AdjustmentDraft {
    /// A new adjustment.
    #[must_use]
    pub fn new(units: Units) -> Self {
        let option = |name: &str| OptionDraft {
            name: name.to_owned(),
            effects: Vec::new(),
        };
        let length = |mm| TypedNumber::of(mm, Measured::Length(None), units);
        let spacer = |count, thickness| Spacer { thickness, count };
        Self {
            index: None,
            units,
            name: String::new(),
            place: Place::SteeringDrive,
            notes: String::new(),
            kind: DraftKind::Slide,
            unit: Unit::Millimetres,
            least: length(-3.0),
            most: length(3.0),
            step: length(0.5),
            base: length(0.0),
            parts: spacer_list::text(&[spacer(2, 0.5), spacer(4, 1.0)], units),
            stock: None,
            places: "2".to_owned(),
            effects: vec![EffectDraft::default()],
            options: vec![option("inner hole"), option("outer hole")],
            base_option: 0,
        }
    }

    /// The adjustment with an index, to be changed.
    #[must_use]
    pub fn of(index: usize, adjustment: &Adjustment, units: Units) -> Self {
        let draft = Self {
            index: Some(index),
            name: adjustment.name.clone(),
            place: adjustment.place,
            notes: adjustment.notes.clone(),
            ..Self::new(units)
        };
        let drafts = |effects: &[Effect], per| {
            let drafts = effects
                .iter()
                .map(|effect| EffectDraft::of(effect, per, units));
            drafts.collect()
        };
        let number = |value, unit| TypedNumber::of(value, Measured::in_unit(unit), units);
        match &adjustment.kind {
            Kind::Slide {
                unit,
                range,
                step,
                base,
                effects,
            } => Self {
                kind: DraftKind::Slide,
                unit: *unit,
                least: number(range.0, *unit),
                most: number(range.1, *unit),
                step: step.map_or_else(TypedNumber::default, |step| number(step, *unit)),
                base: number(*base, *unit),
                effects: drafts(effects, Some(*unit)),
                ..draft
            },
            Kind::Stack {
                parts,
                stock,
                most,
                base,
                effects,
            } => Self {
                kind: DraftKind::Stack,
                parts: spacer_list::text(parts, units),
                stock: stock.as_ref().map(|from| from.name.clone()),
                places: stock
                    .as_ref()
                    .map_or(draft.places, |from| from.places.to_string()),
                most: number(*most, Unit::Millimetres),
                base: number(*base, Unit::Millimetres),
                effects: drafts(effects, Some(Unit::Millimetres)),
                ..draft
            },
            Kind::Choice { options, base } => Self {
                kind: DraftKind::Choice,
                base_option: options
                    .iter()
                    .position(|option| option.name == *base)
                    .unwrap_or_default(),
                options: options
                    .iter()
                    .map(|option| OptionDraft {
                        name: option.name.clone(),
                        effects: drafts(&option.effects, None),
                    })
                    .collect(),
                ..draft
            },
        }
    }

    /// The edits that bring it into the car, or what is wrong with it.
    pub fn edits(&self, setup: &Setup) -> Result<Vec<CarEdit>, DraftFault> {
        self.check_name(setup)?;
        let adjustment = self.build()?;
        let edits = match self.index {
            None => vec![CarEdit::AddAdjustment {
                at: setup.car.adjustments.len(),
                adjustment,
            }],
            Some(index) => vec![
                CarEdit::RenameAdjustment {
                    index,
                    name: adjustment.name.clone(),
                },
                CarEdit::ReplaceAdjustment { index, adjustment },
            ],
        };
        let mut edited = setup.clone();
        for edit in &edits {
            edited = edited.edited(edit).map_err(|error| DraftFault {
                part: DraftPart::of(&error),
                text: in_words(&error),
            })?;
        }
        Ok(edits)
    }

    /// Whether it has a name of its own, which is told before anything else.
    fn check_name(&self, setup: &Setup) -> Result<(), DraftFault> {
        let name = self.name.trim();
        let mut others = setup.car.adjustments.iter().enumerate();
        let text = if name.is_empty() {
            "give it a name".to_owned()
        } else if others.any(|(index, other)| Some(index) != self.index && other.name == name) {
            format!("another adjustment is called \u{201c}{name}\u{201d}; give each its own name")
        } else {
            return Ok(());
        };
        Err(DraftFault {
            part: DraftPart::Name,
            text,
        })
    }

    fn build(&self) -> Result<Adjustment, DraftFault> {
        let kind = match self.kind {
            DraftKind::Slide => self.slide()?,
            DraftKind::Stack => self.stack()?,
            DraftKind::Choice => self.choice()?,
        };
        Ok(Adjustment {
            name: self.name.trim().to_owned(),
            place: self.place,
            notes: self.notes.trim().to_owned(),
            kind,
        })
    }

    fn slide(&self) -> Result<Kind, DraftFault> {
        let number = |number: &TypedNumber, part| self.number(number, self.unit, part);
        Ok(Kind::Slide {
            unit: self.unit,
            range: (
                number(&self.least, DraftPart::Range)?,
                number(&self.most, DraftPart::Range)?,
            ),
            step: if self.step.text.trim().is_empty() {
                None
            } else {
                Some(number(&self.step, DraftPart::Step)?)
            },
            base: number(&self.base, DraftPart::Base)?,
            effects: self.effects(&self.effects, Some(self.unit), DraftPart::Effects)?,
        })
    }

    fn stack(&self) -> Result<Kind, DraftFault> {
        let length = |number: &TypedNumber, part| self.number(number, Unit::Millimetres, part);
        Ok(Kind::Stack {
            parts: spacer_list::read(&self.parts, self.units).map_err(|text| DraftFault {
                part: DraftPart::Parts,
                text,
            })?,
            stock: self.taken_from()?,
            most: length(&self.most, DraftPart::Range)?,
            base: length(&self.base, DraftPart::Base)?,
            effects: self.effects(&self.effects, Some(Unit::Millimetres), DraftPart::Effects)?,
        })
    }

    fn number(&self, number: &TypedNumber, unit: Unit, part: DraftPart) -> Result<f64, DraftFault> {
        let read = number.read(Measured::in_unit(unit), self.units);
        read.map_err(|text| DraftFault { part, text })
    }

    fn effects(
        &self,
        drafts: &[EffectDraft],
        per: Option<Unit>,
        part: impl Fn(Option<usize>) -> DraftPart,
    ) -> Result<Vec<Effect>, DraftFault> {
        let built = drafts.iter().enumerate().map(|(index, draft)| {
            let built = draft.build(per, self.units);
            built.map_err(|text| DraftFault {
                part: part(Some(index)),
                text,
            })
        });
        built.collect()
    }

    fn taken_from(&self) -> Result<Option<FromStock>, DraftFault> {
        let Some(name) = &self.stock else {
            return Ok(None);
        };
        let places = self.places.trim().parse().map_err(|_| DraftFault {
            part: DraftPart::Places,
            text: format!(
                "\u{201c}{}\u{201d} is no number of places; give 2 for one on each side",
                self.places
            ),
        })?;
        Ok(Some(FromStock {
            name: name.clone(),
            places,
        }))
    }

    fn choice(&self) -> Result<Kind, DraftFault> {
        let mut options = Vec::new();
        for (index, option) in self.options.iter().enumerate() {
            options.push(ChoiceOption {
                name: option.name.trim().to_owned(),
                effects: self
                    .effects(&option.effects, None, |_| DraftPart::Options(Some(index)))?,
            });
        }
        let Some(base) = options.get(self.base_option) else {
            return Err(DraftFault {
                part: DraftPart::Options(None),
                text: "a choice needs positions; add some".to_owned(),
            });
        };
        Ok(Kind::Choice {
            base: base.name.clone(),
            options,
        })
    }
}

#[cfg(test)]
mod tests;
