//! Texts that are checked as they are typed: names in lists, and what is in a stock.

use steerloft_setup::car::Car;
use steerloft_setup::edit::CarEdit;

use super::super::{obstacles, spacer_list, stocks};
use crate::units::Units;

/// A text of something in a list, by its place there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TextField {
    /// Name of an obstacle.
    ObstacleName(usize),
    /// Name of a stock of spacers.
    StockName(usize),
    /// How many of which thickness are in a stock.
    StockSpacers(usize),
}

impl TextField {
    /// The text as the car has it, lengths in a unit.
    #[must_use]
    pub fn text(self, car: &Car, units: Units) -> Option<String> {
        Some(match self {
            Self::ObstacleName(index) => car.obstacles.get(index)?.name.clone(),
            Self::StockName(index) => car.stock.get(index)?.name.clone(),
            Self::StockSpacers(index) => spacer_list::text(&car.stock.get(index)?.parts, units),
        })
    }

    /// The edit that makes the car have another text there, or what is wrong with it.
    pub fn edit(self, car: &Car, text: &str, units: Units) -> Result<CarEdit, String> {
        let edit = match self {
            Self::ObstacleName(index) => {
                let name = text.trim().to_owned();
                obstacles::changed(car, index, |obstacle| obstacle.name = name)
            }
            Self::StockName(index) => Some(CarEdit::RenameStock {
                index,
                name: text.trim().to_owned(),
            }),
            Self::StockSpacers(index) => {
                let parts = spacer_list::read(text, units)?;
                stocks::changed(car, index, |stock| stock.parts = parts)
            }
        };
        edit.ok_or_else(|| "it is no longer in the list".to_owned())
    }
}
