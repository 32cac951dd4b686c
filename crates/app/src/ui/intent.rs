//! What the user wants, gathered while a frame is drawn and carried out at its end.

use std::path::PathBuf;

use steerloft_setup::adjustment::PointName;
use steerloft_setup::edit::CarEdit;
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::Side;

use super::car::new_car::NewCar;
use super::{CurveChange, DiskAnswer, LeftAnswer, OverwriteAnswer};
use crate::commands::Command;
use crate::state::{Change, Cursor, PrintChoices, SetupId};

/// One thing the user wants.
#[derive(Debug, Clone, PartialEq)]
pub enum Intent {
    /// A command of the table.
    Command(Command),
    /// A change that goes on, such as a slider being dragged.
    Preview(Change),
    /// The change that goes on is complete.
    Finish,
    /// The change that goes on is to be taken back.
    Cancel,
    /// The cursor moved.
    Cursor(Cursor),
    /// A pivot selected, or none.
    Select(Option<(PointName, Side)>),
    /// Put another setup in the place of the one that is worked on, as a step with a name.
    Adopt(Box<Setup>, String),
    /// Put one more setup on the bench, which is in no file.
    OpenSetup(Box<Setup>),
    /// Compare with a setup that is not open.
    ReferToSetup(Box<Setup>),
    /// Read gauge readings from a file, once it is known which.
    OpenReadings,
    /// Write the gauge readings to a file, once it is known where to.
    SaveReadings,
    /// Work on this open setup.
    SwitchTo(SetupId),
    /// Open this file, or go to it if it is open.
    OpenFile(PathBuf),
    /// Take this setup off the bench.
    CloseSetup(SetupId),
    /// Compare with this open setup, or with none.
    ReferTo(Option<SetupId>),
    /// What is to be done with work that another run has left.
    Left(LeftAnswer),
    /// What is to be done about a file that another program has changed.
    Disk(SetupId, DiskAnswer),
    /// What is to be done when a save would write over what another program has put there.
    Overwrite(OverwriteAnswer),
    /// Back or forth in the history, to where so many steps have been made.
    Jump(usize),
    /// The curves arranged otherwise.
    Curves(CurveChange),
    /// The message at the top is read.
    DismissMessage,
    /// The answer to the question about unsaved changes.
    Guard(GuardAnswer),
    /// A new car of these kinds.
    CreateCar(NewCar),
    /// The car that is worked on made one of these kinds.
    ChangeKinds(NewCar),
    /// The page over everything else is read.
    ClosePage,
    /// The choices before a sheet is written.
    Print(PrintChoices),
    /// Write a sheet, once it is known where to.
    WriteSheet(PrintChoices),
}

impl Intent {
    /// Whether it is about the setup that is worked on.
    pub(crate) fn is_for_current(&self) -> bool {
        matches!(
            self,
            Self::Preview(_)
                | Self::Finish
                | Self::Cancel
                | Self::Cursor(_)
                | Self::Select(_)
                | Self::Adopt(..)
                | Self::ChangeKinds(_)
                | Self::ReferToSetup(_)
        )
    }
}

/// What is to happen to unsaved changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GuardAnswer {
    /// Save them first.
    Save,
    /// Let them go.
    Discard,
    /// Stay.
    Cancel,
}

/// An edit of the car as a change.
#[must_use]
pub fn car_change(edit: CarEdit) -> Change {
    Change::Car(Box::new(edit))
}

/// Everything wanted in one frame, in order.
#[derive(Debug, Default)]
pub struct Intents(Vec<Intent>);

impl Intents {
    /// Adds one.
    pub fn push(&mut self, intent: Intent) {
        self.0.push(intent);
    }

    /// Adds a change as a step of its own.
    pub fn apply(&mut self, change: Change) {
        self.0
            .extend([Intent::Finish, Intent::Preview(change), Intent::Finish]);
    }

    /// Adds a change made by a control that may be dragged: while it is, the change goes on.
    pub fn follow(&mut self, response: &eframe::egui::Response, change: impl FnOnce() -> Change) {
        if response.changed() {
            self.push(Intent::Preview(change()));
        }
        if response.drag_stopped() || (response.changed() && !response.dragged()) {
            self.push(Intent::Finish);
        }
    }
}

impl IntoIterator for Intents {
    type Item = Intent;
    type IntoIter = std::vec::IntoIter<Intent>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}
