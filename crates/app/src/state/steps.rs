//! The steps of an open setup's history: what each is called, and going to any of them.

use steerloft_setup::setup::Setup;

use super::change::label;
use super::{Bench, OpenSetup};
use crate::units::Units;

/// One step of the history.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HistoryStep {
    /// What was done.
    pub name: String,
    /// Whether the file holds the setup as this step left it.
    pub saved: bool,
}

impl Bench {
    /// What the last step is called, with lengths in these units.
    #[must_use]
    pub fn undo_name(&self, units: Units) -> Option<String> {
        let (name, before) = self.current().history().done().last()?;
        Some(named(name, before, self.setup(), units))
    }

    /// What the step is called that redo would make again, with lengths in these units.
    #[must_use]
    pub fn redo_name(&self, units: Units) -> Option<String> {
        let (name, after) = self.current().history().undone().next()?;
        Some(named(name, self.setup(), after, units))
    }

    /// Every step that can be undone or done again, in the order they were made, with lengths in these units.
    #[must_use]
    pub fn steps(&self, units: Units) -> Vec<HistoryStep> {
        self.current().steps(units)
    }

    /// How many steps have been made and not undone: the place in [`Self::steps`].
    #[must_use]
    pub fn place(&self) -> usize {
        self.current().history().done().len()
    }

    /// Undoes or does again whatever lies between here and the place after so many steps.
    pub fn jump(&mut self, place: usize) {
        self.current_mut().jump(place);
    }
}

impl OpenSetup {
    fn steps(&self, units: Units) -> Vec<HistoryStep> {
        let here = std::iter::once(self.document().setup());
        let before = self.history().done().map(|(_, setup)| setup);
        let after = self.history().undone().map(|(_, setup)| setup);
        let states: Vec<&Setup> = before.chain(here).chain(after).collect();
        let names = self.history().done().chain(self.history().undone());
        let kept = self.document().kept();
        states
            .windows(2)
            .zip(names)
            .filter_map(|(pair, (name, _))| {
                let [before, after] = pair else { return None };
                Some(HistoryStep {
                    name: named(name, before, after, units),
                    saved: kept == Some(*after),
                })
            })
            .collect()
    }
}

/// A step's name, told anew where it was kept in other units.
fn named(name: &str, before: &Setup, after: &Setup, units: Units) -> String {
    match units {
        Units::Millimetres => name.to_owned(),
        Units::Inches => label(before, after, units),
    }
}
