//! An adjustment while it is being written: numbers as typed, checked at every key.

use steerloft_setup::adjustment::{Adjustment, ChoiceOption, Effect, FromStock, Kind, Place, Unit};
use steerloft_setup::edit::CarEdit;
use steerloft_setup::setup::Setup;

use super::draft_fault::{DraftFault, DraftPart};
use super::entries::in_words;
use super::{EffectDraft, spacer_list};

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
    pub least: String,
    /// Greatest value of a slide, or greatest total of a stack.
    pub most: String,
    /// Step of a slide; empty for any value.
    pub step: String,
    /// The value at which the car's points are given; a choice's is [`Self::base_option`].
    pub base: String,
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

impl Default for AdjustmentDraft {
    fn default() -> Self {
        let option = |name: &str| OptionDraft {
            name: name.to_owned(),
            effects: Vec::new(),
        };
        Self {
            index: None,
            name: String::new(),
            place: Place::SteeringDrive,
            notes: String::new(),
            kind: DraftKind::Slide,
            unit: Unit::Millimetres,
            least: "-3".to_owned(),
            most: "3".to_owned(),
            step: "0.5".to_owned(),
            base: "0".to_owned(),
            parts: "2 x 0.5, 4 x 1".to_owned(),
            stock: None,
            places: "2".to_owned(),
            effects: vec![EffectDraft::default()],
            options: vec![option("inner hole"), option("outer hole")],
            base_option: 0,
        }
    }
}

impl AdjustmentDraft {
    /// The adjustment with an index, to be changed.
    #[must_use]
    pub fn of(index: usize, adjustment: &Adjustment) -> Self {
        let draft = Self {
            index: Some(index),
            name: adjustment.name.clone(),
            place: adjustment.place,
            notes: adjustment.notes.clone(),
            ..Self::default()
        };
        let drafts = |effects: &[Effect]| effects.iter().map(EffectDraft::of).collect();
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
                least: range.0.to_string(),
                most: range.1.to_string(),
                step: step.map_or_else(String::new, |step| step.to_string()),
                base: base.to_string(),
                effects: drafts(effects),
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
                parts: spacer_list::text(parts, |thickness| thickness.to_string()),
                stock: stock.as_ref().map(|from| from.name.clone()),
                places: stock
                    .as_ref()
                    .map_or(draft.places, |from| from.places.to_string()),
                most: most.to_string(),
                base: base.to_string(),
                effects: drafts(effects),
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
                        effects: drafts(&option.effects),
                    })
                    .collect(),
                ..draft
            },
        }
    }

    /// The edits that bring it into the car, or what is wrong with it. `read` turns a text into a number.
    pub fn edits(
        &self,
        setup: &Setup,
        read: &impl Fn(&str) -> Result<f64, String>,
    ) -> Result<Vec<CarEdit>, DraftFault> {
        self.check_name(setup)?;
        let adjustment = self.build(read)?;
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

    fn build(&self, read: &impl Fn(&str) -> Result<f64, String>) -> Result<Adjustment, DraftFault> {
        let number = |text: &str, part| read(text).map_err(|text| DraftFault { part, text });
        let kind = match self.kind {
            DraftKind::Slide => Kind::Slide {
                unit: self.unit,
                range: (
                    number(&self.least, DraftPart::Range)?,
                    number(&self.most, DraftPart::Range)?,
                ),
                step: if self.step.trim().is_empty() {
                    None
                } else {
                    Some(number(&self.step, DraftPart::Step)?)
                },
                base: number(&self.base, DraftPart::Base)?,
                effects: effects(&self.effects, read, DraftPart::Effects)?,
            },
            DraftKind::Stack => Kind::Stack {
                parts: spacer_list::read(&self.parts, read).map_err(|text| DraftFault {
                    part: DraftPart::Parts,
                    text,
                })?,
                stock: self.taken_from()?,
                most: number(&self.most, DraftPart::Range)?,
                base: number(&self.base, DraftPart::Base)?,
                effects: effects(&self.effects, read, DraftPart::Effects)?,
            },
            DraftKind::Choice => self.choice(read)?,
        };
        Ok(Adjustment {
            name: self.name.trim().to_owned(),
            place: self.place,
            notes: self.notes.trim().to_owned(),
            kind,
        })
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

    fn choice(&self, read: &impl Fn(&str) -> Result<f64, String>) -> Result<Kind, DraftFault> {
        let mut options = Vec::new();
        for (index, option) in self.options.iter().enumerate() {
            options.push(ChoiceOption {
                name: option.name.trim().to_owned(),
                effects: effects(&option.effects, read, |_| DraftPart::Options(Some(index)))?,
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

fn effects(
    drafts: &[EffectDraft],
    read: &impl Fn(&str) -> Result<f64, String>,
    part: impl Fn(Option<usize>) -> DraftPart,
) -> Result<Vec<Effect>, DraftFault> {
    let built = drafts.iter().enumerate().map(|(index, draft)| {
        draft.build(read).map_err(|text| DraftFault {
            part: part(Some(index)),
            text,
        })
    });
    built.collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use steerloft_setup::supplied::SUPPLIED;

    fn read(text: &str) -> Result<f64, String> {
        text.trim()
            .parse()
            .map_err(|_| format!("\u{201c}{text}\u{201d} is no number"))
    }

    #[test]
    fn every_adjustment_of_every_supplied_car_is_written_back_as_it_was() {
        for car in SUPPLIED {
            let setup = car.setup();
            for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
                let draft = AdjustmentDraft::of(index, adjustment);
                assert_eq!(draft.build(&read).as_ref(), Ok(adjustment), "{}", car.title);
                let edits = draft.edits(&setup, &read).unwrap();
                let mut edited = setup.clone();
                for edit in &edits {
                    edited = edited.edited(edit).unwrap();
                }
                assert_eq!(edited, setup);
            }
        }
    }

    #[test]
    fn what_is_wrong_is_told_at_its_place() {
        let setup = SUPPLIED[0].setup();
        let fault = |change: fn(&mut AdjustmentDraft)| {
            let mut draft = AdjustmentDraft::of(0, &setup.car.adjustments[0]);
            draft.index = None;
            draft.name = "Another name".to_owned();
            change(&mut draft);
            draft.edits(&setup, &read).unwrap_err()
        };
        let other = setup.car.adjustments[1].name.clone();
        assert_eq!(fault(|draft| draft.name.clear()).part, DraftPart::Name);
        let mut twice = AdjustmentDraft::of(0, &setup.car.adjustments[0]);
        twice.name = other;
        assert_eq!(
            twice.edits(&setup, &read).unwrap_err().part,
            DraftPart::Name
        );
        let slide = |change: fn(&mut AdjustmentDraft)| {
            let mut draft = AdjustmentDraft {
                name: "Another name".to_owned(),
                ..AdjustmentDraft::default()
            };
            draft.effects[0].points = vec![steerloft_setup::adjustment::PointName::RodInner];
            assert!(draft.edits(&setup, &read).is_ok());
            change(&mut draft);
            draft.edits(&setup, &read).unwrap_err()
        };
        assert_eq!(
            slide(|draft| draft.least = "9".to_owned()).part,
            DraftPart::Range
        );
        assert_eq!(
            slide(|draft| draft.step = "-1".to_owned()).part,
            DraftPart::Step
        );
        assert_eq!(
            slide(|draft| draft.base = "a".to_owned()).part,
            DraftPart::Base
        );
        let none = slide(|draft| draft.effects[0].points.clear());
        assert_eq!(none.part, DraftPart::Effects(Some(0)));
        assert_eq!(none.text, "choose at least one point");
    }
}
