//! Every command of the bench in one table: its text, what it does in a sentence, and its key.
//!
//! Menus, keys and tests share it.

use eframe::egui::{Key, KeyboardShortcut, Modifiers};
use steerloft_setup::supplied::SUPPLIED;

use crate::memory::MOST_RECENT;
use crate::state::CurveKind;
use crate::theme::ThemeChoice;
use crate::ui::Column;
use crate::ui::views::Overlay;

/// Names of the commands that open a file used before, where the file's own name is not shown.
const RECENT: [&str; MOST_RECENT] = [
    "Last file",
    "2nd last file",
    "3rd last file",
    "4th last file",
    "5th last file",
    "6th last file",
    "7th last file",
    "8th last file",
    "9th last file",
];

/// Something the user can ask for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// A new setup from the supplied car at this place in the list.
    New(usize),
    /// Open a file.
    Open,
    /// Open the file at this place in the list of those used last.
    Recent(usize),
    /// Save to the file the setup came from.
    Save,
    /// Save to another file.
    SaveAs,
    /// Take the current setup off the bench.
    CloseSetup,
    /// Work on the next open setup.
    NextSetup,
    /// Work on the open setup before.
    PreviousSetup,
    /// Close the window.
    Quit,
    /// Keep the current setup as it stands as the reference.
    KeepReference,
    /// Open a file as the reference.
    OpenReference,
    /// Work on the reference and compare it with what was worked on.
    SwapReference,
    /// Compare with nothing.
    ClearReference,
    /// Take the last change back.
    Undo,
    /// Make the change again.
    Redo,
    /// Show the whole front end in the views.
    FitViews,
    /// Let the curves fill their panels, or go back to their fixed ranges.
    FitCurves,
    /// Show the curves or all figures in the column on the right.
    Column(Column),
    /// Show or hide a curve.
    Curve(CurveKind),
    /// Show or hide the side view.
    SideView,
    /// Show or hide something in the views.
    Show(Overlay),
    /// Show the car with its turn-centre lines down to the rear axle.
    FitTurn,
    /// Begin or end measuring in the views.
    Measure,
    /// Put steering and travel back to rest.
    ResetCursor,
    /// Choose a theme.
    Theme(ThemeChoice),
    /// Show what the program is and the cautions that go with it.
    About,
}

impl Command {
    /// Every command, those for supplied cars and for curves included.
    pub fn all() -> impl Iterator<Item = Self> {
        let cars = (0..SUPPLIED.len()).map(Self::New);
        let columns = Column::ALL.map(Self::Column);
        let curves = CurveKind::ALL.map(Self::Curve);
        let overlays = Overlay::ALL.map(Self::Show);
        let recent = (0..RECENT.len()).map(Self::Recent);
        let listed = cars
            .chain(recent)
            .chain(columns)
            .chain(curves)
            .chain(overlays);
        listed.chain([
            Self::Open,
            Self::Save,
            Self::SaveAs,
            Self::CloseSetup,
            Self::NextSetup,
            Self::PreviousSetup,
            Self::Quit,
            Self::KeepReference,
            Self::OpenReference,
            Self::SwapReference,
            Self::ClearReference,
            Self::Undo,
            Self::Redo,
            Self::FitViews,
            Self::FitCurves,
            Self::SideView,
            Self::FitTurn,
            Self::Measure,
            Self::ResetCursor,
            Self::Theme(ThemeChoice::Light),
            Self::Theme(ThemeChoice::Dark),
            Self::Theme(ThemeChoice::System),
            Self::About,
        ])
    }

    /// Text in menus and on buttons.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Self::New(index) => SUPPLIED.get(index).map_or("New", |car| car.title),
            Self::Open => "Open\u{2026}",
            Self::Recent(index) => RECENT.get(index).copied().unwrap_or("Open a recent file"),
            Self::Save => "Save",
            Self::SaveAs => "Save as\u{2026}",
            Self::CloseSetup => "Close setup",
            Self::NextSetup => "Next setup",
            Self::PreviousSetup => "Previous setup",
            Self::Quit => "Quit",
            Self::KeepReference => "Keep as reference",
            Self::OpenReference => "Open as reference\u{2026}",
            Self::SwapReference => "Swap with reference",
            Self::ClearReference => "Clear reference",
            Self::Undo => "Undo",
            Self::Redo => "Redo",
            Self::FitViews => "Fit views",
            Self::FitCurves => "Fit curves",
            Self::Column(Column::Curves) => "Curves",
            Self::Column(Column::Figures) => "Figures",
            Self::Curve(kind) => kind.title(),
            Self::SideView => "Side view",
            Self::Show(overlay) => overlay.title(),
            Self::FitTurn => "Fit turn centre",
            Self::Measure => "Measure",
            Self::ResetCursor => "Straight ahead at rest",
            Self::Theme(ThemeChoice::Light) => "Light",
            Self::Theme(ThemeChoice::Dark) => "Dark",
            Self::Theme(ThemeChoice::System) => "As the desktop",
            Self::About => "About and cautions",
        }
    }

    /// What it does, in a sentence.
    #[must_use]
    pub fn tooltip(self) -> &'static str {
        match self {
            Self::New(_) => "Start a new setup of this supplied car",
            Self::Open => "Open a setup file",
            Self::Recent(_) => "Open a file that was used before",
            Self::Save => "Save the setup to its file",
            Self::SaveAs => "Save the setup to another file",
            Self::CloseSetup => "Take the current setup off the bench",
            Self::NextSetup => "Work on the next setup in the list",
            Self::PreviousSetup => "Work on the setup before in the list",
            Self::Quit => "Close the window",
            Self::KeepReference => "Keep the setup as it stands now, to compare what comes with it",
            Self::OpenReference => "Open a setup file beside the current one and compare with it",
            Self::SwapReference => "Work on the reference and compare it with what you worked on",
            Self::ClearReference => "Compare with nothing",
            Self::Undo => "Take the last change back",
            Self::Redo => "Make the change again that was taken back last",
            Self::FitViews => "Show the whole front end in the views",
            Self::FitCurves => {
                "Let the curves fill their panels, or go back to fixed ranges that can be compared by eye"
            }
            Self::Column(Column::Curves) => "Show the curves in the column on the right",
            Self::Column(Column::Figures) => "Show every figure in the column on the right",
            Self::Curve(kind) => kind.meaning(),
            Self::SideView => "Show or hide the view from the left",
            Self::Show(overlay) => overlay.meaning(),
            Self::FitTurn => "Show the car with its turn-centre lines down to the rear axle",
            Self::Measure => "Measure between two places clicked in the views",
            Self::ResetCursor => "Put steering input and wheel travel back to zero",
            Self::Theme(ThemeChoice::Light) => "Dark ink on light paper",
            Self::Theme(ThemeChoice::Dark) => "Light ink on dark ground",
            Self::Theme(ThemeChoice::System) => "Light or dark as the desktop is set",
            Self::About => "What Steerloft is, and what to mind when you work on a car",
        }
    }

    /// The key that asks for it.
    #[must_use]
    pub fn shortcut(self) -> Option<KeyboardShortcut> {
        let (modifiers, key) = match self {
            Self::New(0) => (Modifiers::COMMAND, Key::N),
            Self::Open => (Modifiers::COMMAND, Key::O),
            Self::Save => (Modifiers::COMMAND, Key::S),
            Self::SaveAs => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::S),
            Self::CloseSetup => (Modifiers::COMMAND, Key::W),
            Self::NextSetup => (Modifiers::COMMAND, Key::PageDown),
            Self::PreviousSetup => (Modifiers::COMMAND, Key::PageUp),
            Self::Quit => (Modifiers::COMMAND, Key::Q),
            Self::KeepReference => (Modifiers::COMMAND, Key::M),
            Self::OpenReference => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::O),
            Self::SwapReference => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::M),
            Self::ClearReference => (Modifiers::COMMAND.plus(Modifiers::ALT), Key::M),
            Self::Undo => (Modifiers::COMMAND, Key::Z),
            Self::Redo => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::Z),
            Self::FitViews => (Modifiers::COMMAND, Key::Num0),
            Self::FitCurves => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::Num0),
            Self::Column(Column::Curves) => (Modifiers::COMMAND, Key::Num1),
            Self::Column(Column::Figures) => (Modifiers::COMMAND, Key::Num2),
            Self::SideView => (Modifiers::COMMAND, Key::Num3),
            Self::Show(Overlay::TurnLines) => (Modifiers::COMMAND, Key::T),
            Self::Show(Overlay::Envelope) => (Modifiers::COMMAND, Key::B),
            Self::Show(Overlay::RodGaps) => (Modifiers::COMMAND, Key::G),
            Self::Show(Overlay::SpacerButtons) => (Modifiers::COMMAND, Key::K),
            Self::Show(Overlay::Reference) => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::G),
            Self::FitTurn => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::T),
            Self::Measure => (Modifiers::COMMAND, Key::D),
            Self::ResetCursor => (Modifiers::COMMAND, Key::R),
            Self::About => (Modifiers::NONE, Key::F1),
            Self::New(_) | Self::Recent(_) | Self::Curve(_) | Self::Theme(_) => return None,
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }

    /// A second key for what has two by custom.
    #[must_use]
    pub fn second_shortcut(self) -> Option<KeyboardShortcut> {
        match self {
            Self::Redo => Some(KeyboardShortcut::new(Modifiers::COMMAND, Key::Y)),
            _ => None,
        }
    }

    /// Every key with its command, those with most modifiers first, so that a key with more of them is not taken for the
    /// one with fewer.
    #[must_use]
    pub fn keys() -> Vec<(KeyboardShortcut, Self)> {
        let mut keys: Vec<_> = Self::all()
            .flat_map(|command| {
                [command.shortcut(), command.second_shortcut()]
                    .into_iter()
                    .flatten()
                    .map(move |shortcut| (shortcut, command))
            })
            .collect();
        keys.sort_by_key(|(shortcut, _)| {
            let modifiers = shortcut.modifiers;
            std::cmp::Reverse(
                u8::from(modifiers.alt)
                    + u8::from(modifiers.shift)
                    + u8::from(modifiers.ctrl || modifiers.command),
            )
        });
        keys
    }

    /// Whether its key belongs to a text field while one is being edited.
    #[must_use]
    pub fn yields_to_text(self) -> bool {
        matches!(self, Self::Undo | Self::Redo)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_key_asks_for_two_commands() {
        let keys = Command::keys();
        for (index, (shortcut, command)) in keys.iter().enumerate() {
            for (other, rival) in &keys[index + 1..] {
                assert!(
                    shortcut != other,
                    "{command:?} and {rival:?} share {shortcut:?}"
                );
            }
        }
    }

    #[test]
    fn keys_with_more_modifiers_come_first() {
        let keys = Command::keys();
        let place = |wanted: Command| keys.iter().position(|(_, command)| *command == wanted);
        assert!(place(Command::SaveAs) < place(Command::Save));
        assert!(place(Command::Redo) < place(Command::Undo));
    }

    #[test]
    fn every_command_has_words() {
        for command in Command::all() {
            assert!(!command.text().is_empty(), "{command:?}");
            assert!(
                command.tooltip().len() > command.text().len() / 2,
                "{command:?}"
            );
        }
    }
}
