//! What a finding changes on the car, in words of parts.

use steerloft_setup::adjustment::{Adjustment, Kind};
use steerloft_setup::setup::{Chosen, Setup};

/// A change of one adjustment against the present setup.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// Index of the adjustment in the car.
    pub adjustment: usize,
    /// Its present value.
    pub from: Chosen,
    /// The value it is to have.
    pub to: Chosen,
    /// What to do, such as "Outer rod spacers: 3 mm to 2.5 mm (2 mm + 0.5 mm)".
    pub words: String,
}

impl Change {
    pub(super) fn of(setup: &Setup, index: usize, to: &Chosen) -> Self {
        let adjustment = &setup.car.adjustments[index];
        let from = setup.value_of(adjustment);
        let name = &adjustment.name;
        let words = format!(
            "{name}: {} to {}{}",
            adjustment.label_of(&from),
            adjustment.label_of(to),
            pieces(adjustment, to)
        );
        Self {
            adjustment: index,
            from,
            to: to.clone(),
            words,
        }
    }
}

/// The spacers of a stack's total, in brackets; nothing for what is no stack, or needs none, or one of just that size.
fn pieces(adjustment: &Adjustment, to: &Chosen) -> String {
    let (Kind::Stack { .. }, Chosen::Stack(total)) = (&adjustment.kind, to) else {
        return String::new();
    };
    let pieces = adjustment.spacers_for(*total).unwrap_or_default();
    if pieces.len() < 2 {
        return String::new();
    }
    let labels: Vec<String> = pieces
        .iter()
        .map(|piece| adjustment.label_of(&Chosen::Stack(*piece)))
        .collect();
    format!(" ({})", labels.join(" + "))
}
