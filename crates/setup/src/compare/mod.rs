//! What to change on a car to come from one setup to another: parts first, then whatever else differs.

mod data;
mod rods;

pub use data::{DataDifference, data_differences};
pub use rods::{RodDifference, RodsDifference};

use std::collections::BTreeSet;

use crate::adjustment::{Adjustment, Place, Unit};
use crate::setup::{Chosen, Setup};
use crate::values::{same_value, short};

/// What differs between two setups, as a way from the first to the second.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// Adjustments that both cars have and that stand differently, in the order of places on the car.
    pub adjustments: Vec<AdjustmentDifference>,
    /// Adjustments that only one of the cars has.
    pub only_in_one: Vec<OnlyInOne>,
    /// The tie rods, where they are set or come out differently.
    pub rods: Option<RodsDifference>,
    /// Everything of the cars' descriptions that differs.
    pub data: Vec<DataDifference>,
}

impl Comparison {
    /// Whether the setups put the same car together in the same way.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.adjustments.is_empty()
            && self.only_in_one.is_empty()
            && self.rods.is_none()
            && self.data.is_empty()
    }
}

/// An adjustment that stands differently.
#[derive(Debug, Clone, PartialEq)]
pub struct AdjustmentDifference {
    /// Index of the adjustment in the first setup's car.
    pub adjustment: usize,
    /// Its name.
    pub name: String,
    /// Where on the car it is.
    pub place: Place,
    /// Value in the first setup, in words.
    pub from: String,
    /// Value in the second setup, in words.
    pub to: String,
    /// What to do.
    pub work: Work,
}

/// What to do to come from one value of an adjustment to another.
#[derive(Debug, Clone, PartialEq)]
pub enum Work {
    /// Move a slide.
    Slide {
        /// How far, in the slide's unit.
        by: f64,
        /// That unit.
        unit: Unit,
    },
    /// Build a stack anew; thicknesses in mm, thickest first. Pieces that both piles have stay.
    Spacers {
        /// Pieces to put in.
        add: Vec<f64>,
        /// Pieces to take out.
        remove: Vec<f64>,
        /// In how many places, where the car tells.
        places: Option<u32>,
    },
    /// Choose another option.
    Choose,
}

/// An adjustment that only one of two cars has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OnlyInOne {
    /// Its name.
    pub name: String,
    /// Its value there, in words.
    pub value: String,
    /// Whether the first of the two has it.
    pub in_first: bool,
}

/// What differs on the way from the first setup to the second.
#[must_use]
pub fn compare(from: &Setup, to: &Setup) -> Comparison {
    Comparison {
        adjustments: adjustment_differences(from, to),
        only_in_one: only_in_one(from, to),
        rods: rods::difference(from, to),
        data: data_differences(&from.car, &to.car),
    }
}

fn adjustment_differences(from: &Setup, to: &Setup) -> Vec<AdjustmentDifference> {
    let mut differences: Vec<AdjustmentDifference> = Vec::new();
    for (index, adjustment) in from.car.adjustments.iter().enumerate() {
        let Some(other) = named(to, &adjustment.name) else {
            continue;
        };
        let (was, is) = (from.value_of(adjustment), to.value_of(other));
        if same_value(&was, &is) {
            continue;
        }
        differences.push(AdjustmentDifference {
            adjustment: index,
            name: adjustment.name.clone(),
            place: adjustment.place,
            from: adjustment.label_of(&was),
            to: other.label_of(&is),
            work: work((adjustment, &was), (other, &is)),
        });
    }
    differences.sort_by_key(|difference| difference.place);
    differences
}

fn work((adjustment, was): (&Adjustment, &Chosen), (other, is): (&Adjustment, &Chosen)) -> Work {
    match (was, is) {
        (Chosen::Slide(was), Chosen::Slide(is)) => Work::Slide {
            by: is - was,
            unit: adjustment.unit(),
        },
        (Chosen::Stack(was), Chosen::Stack(is)) => {
            let old = adjustment.spacers_for(*was).unwrap_or_default();
            let new = other.spacers_for(*is).unwrap_or_default();
            Work::Spacers {
                add: without(&new, &old),
                remove: without(&old, &new),
                places: other.stock().map(|stock| stock.places),
            }
        }
        _ => Work::Choose,
    }
}

/// The pieces of one pile that another has not, piece by piece.
fn without(pile: &[f64], other: &[f64]) -> Vec<f64> {
    let mut left = other.to_vec();
    let mut rest = Vec::new();
    for piece in pile {
        match left.iter().position(|held| (held - piece).abs() < 1e-6) {
            Some(at) => {
                left.swap_remove(at);
            }
            None => rest.push(*piece),
        }
    }
    rest
}

fn only_in_one(from: &Setup, to: &Setup) -> Vec<OnlyInOne> {
    let names: BTreeSet<&str> = [from, to]
        .into_iter()
        .flat_map(|setup| &setup.car.adjustments)
        .map(|adjustment| adjustment.name.as_str())
        .collect();
    let mut found = Vec::new();
    for name in names {
        let (holder, adjustment, in_first) = match (named(from, name), named(to, name)) {
            (Some(adjustment), None) => (from, adjustment, true),
            (None, Some(adjustment)) => (to, adjustment, false),
            _ => continue,
        };
        found.push(OnlyInOne {
            name: name.to_owned(),
            value: adjustment.label_of(&holder.value_of(adjustment)),
            in_first,
        });
    }
    found
}

fn named<'a>(setup: &'a Setup, name: &str) -> Option<&'a Adjustment> {
    setup
        .car
        .adjustments
        .iter()
        .find(|adjustment| adjustment.name == name)
}

/// As in "by +1.5 mm", "put in 0.5 mm, take out 1 mm (2 places)", "rear hole instead of forward hole".
impl std::fmt::Display for AdjustmentDifference {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match &self.work {
            Work::Slide { by, unit } => {
                let unit = match unit {
                    Unit::Millimetres => " mm",
                    Unit::Degrees => "°",
                };
                let sign = if *by > 0.0 { "+" } else { "" };
                write!(
                    f,
                    "from {} to {}, by {sign}{}{unit}",
                    self.from,
                    self.to,
                    short(*by)
                )
            }
            Work::Spacers {
                add,
                remove,
                places,
            } => {
                write!(f, "from {} to {}", self.from, self.to)?;
                if !add.is_empty() {
                    write!(f, ", put in {}", pieces(add))?;
                }
                if !remove.is_empty() {
                    write!(f, ", take out {}", pieces(remove))?;
                }
                match places {
                    Some(places) if *places > 1 => write!(f, ", in {places} places"),
                    _ => Ok(()),
                }
            }
            Work::Choose => write!(f, "{} instead of {}", self.to, self.from),
        }
    }
}

/// As in "2 x 1 mm and 0.5 mm"; pieces come thickest first.
fn pieces(pile: &[f64]) -> String {
    let mut counted: Vec<(f64, usize)> = Vec::new();
    for piece in pile {
        match counted.last_mut() {
            Some((size, count)) if (*size - piece).abs() < 1e-6 => *count += 1,
            _ => counted.push((*piece, 1)),
        }
    }
    let words: Vec<String> = counted
        .iter()
        .map(|(size, count)| match count {
            1 => format!("{} mm", short(*size)),
            _ => format!("{count} × {} mm", short(*size)),
        })
        .collect();
    words.join(" and ")
}
