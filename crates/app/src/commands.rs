//! Every command of the bench in one table: its text, what it does in a sentence, and its key.
//!
//! Menus, keys and tests share it.

use eframe::egui::{Key, KeyboardShortcut, ModifierNames, Modifiers};
use steerloft_setup::supplied::SUPPLIED;

use crate::memory::MOST_RECENT;
use crate::state::{CurveKind, Overlay, Subject};
use crate::theme::ThemeChoice;
use crate::ui::{Column, Drawer};
use crate::units::Units;

/// Keys of numbered commands, in their order.
const DIGITS: [Key; 10] = [
    Key::Num1,
    Key::Num2,
    Key::Num3,
    Key::Num4,
    Key::Num5,
    Key::Num6,
    Key::Num7,
    Key::Num8,
    Key::Num9,
    Key::Num0,
];

const ALT_SHIFT: Modifiers = Modifiers {
    alt: true,
    shift: true,
    ..Modifiers::NONE
};

/// What commands are about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Files.
    File,
    /// Changes.
    Edit,
    /// What is compared with.
    Reference,
    /// What is shown.
    View,
    /// Answers in drawers.
    Drawer,
    /// Single curves.
    Curve,
    /// Supplied cars.
    Car,
    /// Help.
    Help,
}

impl Group {
    /// All, in the order in which they are listed.
    pub const ALL: [Self; 8] = [
        Self::File,
        Self::Edit,
        Self::Reference,
        Self::View,
        Self::Drawer,
        Self::Curve,
        Self::Car,
        Self::Help,
    ];

    /// Its heading.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::File => "File",
            Self::Edit => "Edit",
            Self::Reference => "Reference",
            Self::View => "View",
            Self::Drawer => "Drawers",
            Self::Curve => "Show or hide a curve",
            Self::Car => "New from supplied car",
            Self::Help => "Help",
        }
    }
}

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
    /// A new setup made from the current one.
    Continue,
    /// A new car of kinds to be chosen.
    NewCar,
    /// Describe the car itself, or go back to its adjustments.
    EditCar,
    /// Choose another suspension or drive for the car.
    Kinds,
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
    /// Open or shut a drawer.
    Drawer(Drawer),
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
    /// Show lengths in a unit.
    Units(Units),
    /// Draw everything larger.
    Larger,
    /// Draw everything smaller.
    Smaller,
    /// Draw everything at the desktop's own scale.
    FullSize,
    /// Look for a command by what it is called or does.
    Find,
    /// Show every key.
    Keys,
    /// Show the hints for the first start.
    Hints,
    /// Choose how a sheet is printed.
    Print,
    /// Put a view or a curve on the clipboard as a picture.
    CopyPicture(Subject),
    /// Put a view or a curve on the clipboard as the text of an SVG drawing.
    CopyDrawing(Subject),
    /// Save a view or a curve as a picture.
    SavePicture(Subject),
    /// Show what the program is and the cautions that go with it.
    About,
}

impl Command {
    /// Every command, those for supplied cars and for curves included. Left out are those for pictures, which are asked for
    /// on what the picture is of.
    pub fn all() -> impl Iterator<Item = Self> {
        let cars = (0..SUPPLIED.len()).map(Self::New);
        let drawers = Drawer::ALL.map(Self::Drawer);
        let columns = Column::ALL.map(Self::Column);
        let curves = CurveKind::ALL.map(Self::Curve);
        let overlays = Overlay::ALL.map(Self::Show);
        let recent = (0..RECENT.len()).map(Self::Recent);
        let listed = cars
            .chain(recent)
            .chain(columns)
            .chain(drawers)
            .chain(curves)
            .chain(overlays);
        listed.chain([
            Self::Print,
            Self::Continue,
            Self::NewCar,
            Self::EditCar,
            Self::Kinds,
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
            Self::Units(Units::Millimetres),
            Self::Units(Units::Inches),
            Self::Larger,
            Self::Smaller,
            Self::FullSize,
            Self::Find,
            Self::Keys,
            Self::Hints,
            Self::About,
        ])
    }

    /// Text in menus and on buttons.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Self::New(index) => SUPPLIED.get(index).map_or("New", |car| car.title),
            Self::Continue => "New setup from this one",
            Self::NewCar => "New car\u{2026}",
            Self::EditCar => "Describe the car",
            Self::Kinds => "Another kind of car\u{2026}",
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
            Self::Column(Column::History) => "History",
            Self::Drawer(drawer) => drawer.title(),
            Self::Curve(kind) => kind.title(),
            Self::SideView => "Side view",
            Self::Show(overlay) => overlay.title(),
            Self::FitTurn => "Fit turn centre",
            Self::Measure => "Measure",
            Self::ResetCursor => "Straight ahead at rest",
            Self::Theme(ThemeChoice::Light) => "Light",
            Self::Theme(ThemeChoice::Dark) => "Dark",
            Self::Theme(ThemeChoice::System) => "As the desktop",
            Self::Units(Units::Millimetres) => "Millimetres",
            Self::Units(Units::Inches) => "Inches",
            Self::Larger => "Larger",
            Self::Smaller => "Smaller",
            Self::FullSize => "Actual size",
            Self::Find => "Find a command",
            Self::Keys => "Keys",
            Self::Hints => "Hints for the first start",
            Self::Print => "Print a setup sheet\u{2026}",
            Self::CopyPicture(subject)
            | Self::CopyDrawing(subject)
            | Self::SavePicture(subject) => subject.title(),
            Self::About => "About and cautions",
        }
    }

    /// What it does, in a sentence.
    #[must_use]
    pub fn tooltip(self) -> &'static str {
        match self {
            Self::New(_) => "Start a new setup of this supplied car",
            Self::Continue => {
                "Go on in a new setup that remembers this one: the same car and parts, without its notes and runs"
            }
            Self::NewCar => "Describe a car from nothing: choose its suspension and steering drive",
            Self::EditCar => {
                "Type or drag the points of the car itself and write its adjustments, or go back to them"
            }
            Self::Kinds => {
                "Give this car another suspension or steering drive: what both kinds have stays, and what goes and what is a guess is told first"
            }
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
            Self::Column(Column::History) => {
                "Show what was done in the column on the right, to go back to any of it"
            }
            Self::Drawer(drawer) => drawer.meaning(),
            Self::Curve(kind) => kind.meaning(),
            Self::SideView => "Show or hide the view from the left",
            Self::Show(overlay) => overlay.meaning(),
            Self::FitTurn => "Show the car with its turn-centre lines down to the rear axle",
            Self::Measure => "Measure between two places clicked in the views",
            Self::ResetCursor => "Put steering input and wheel travel back to zero",
            Self::Theme(ThemeChoice::Light) => "Dark ink on light paper",
            Self::Theme(ThemeChoice::Dark) => "Light ink on dark ground",
            Self::Theme(ThemeChoice::System) => "Light or dark as the desktop is set",
            Self::Units(Units::Millimetres) => "Show and take lengths in millimetres",
            Self::Units(Units::Inches) => "Show and take lengths in decimal inches",
            Self::Larger => "Draw text, controls and lines larger, up to twice their size",
            Self::Smaller => "Draw text, controls and lines smaller again",
            Self::FullSize => "Draw text, controls and lines at the desktop's own scale",
            Self::Find => "Look for a command by what it is called or does",
            Self::Keys => "Every key, and what the pointer does in the drawings",
            Self::Hints => "Four short hints about the parts of the window",
            Self::Print => "Choose paper and contents of a sheet, and save it to be printed",
            Self::CopyPicture(_) => "Put it on the clipboard as a picture",
            Self::CopyDrawing(_) => "Put it on the clipboard as the text of an SVG drawing",
            Self::SavePicture(_) => "Save it as a picture: PNG, SVG or PDF",
            Self::About => "What Steerloft is, and what to mind when you work on a car",
        }
    }

    /// The key that asks for it.
    #[must_use]
    pub fn shortcut(self) -> Option<KeyboardShortcut> {
        let (modifiers, key) = match self {
            Self::New(0) => (Modifiers::COMMAND, Key::N),
            Self::Continue => (Modifiers::COMMAND.plus(Modifiers::ALT), Key::N),
            Self::NewCar => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::N),
            Self::EditCar => (Modifiers::COMMAND, Key::E),
            Self::Kinds => (Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::E),
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
            Self::Column(Column::History) => (Modifiers::COMMAND, Key::Num4),
            Self::Drawer(drawer) => drawer.key(),
            Self::Theme(ThemeChoice::Light) => (ALT_SHIFT, Key::L),
            Self::Theme(ThemeChoice::Dark) => (ALT_SHIFT, Key::D),
            Self::Theme(ThemeChoice::System) => (ALT_SHIFT, Key::A),
            Self::Units(Units::Millimetres) => (ALT_SHIFT, Key::M),
            Self::Units(Units::Inches) => (ALT_SHIFT, Key::I),
            Self::Larger => (Modifiers::COMMAND, Key::Plus),
            Self::Smaller => (Modifiers::COMMAND, Key::Minus),
            Self::FullSize => (Modifiers::COMMAND.plus(Modifiers::ALT), Key::Num0),
            Self::Find => (Modifiers::COMMAND, Key::F),
            Self::Keys => (Modifiers::NONE, Key::F1),
            Self::Hints => (Modifiers::NONE, Key::F2),
            Self::About => (Modifiers::SHIFT, Key::F1),
            Self::New(index) => {
                let modifiers = Modifiers::COMMAND.plus(Modifiers::ALT);
                (modifiers, *DIGITS.get(index - 1)?)
            }
            Self::Recent(index) => {
                let modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);
                (modifiers, *DIGITS.get(index)?)
            }
            Self::Print => (Modifiers::COMMAND, Key::P),
            Self::CopyPicture(_) | Self::CopyDrawing(_) | Self::SavePicture(_) => return None,
            Self::Curve(kind) => {
                let index = CurveKind::ALL.iter().position(|other| *other == kind)?;
                let sets = [
                    Modifiers::ALT,
                    ALT_SHIFT,
                    ALT_SHIFT.plus(Modifiers::COMMAND),
                ];
                (
                    *sets.get(index / DIGITS.len())?,
                    DIGITS[index % DIGITS.len()],
                )
            }
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }

    /// A second key for what has two by custom.
    #[must_use]
    pub fn second_shortcut(self) -> Option<KeyboardShortcut> {
        match self {
            Self::Redo => Some(KeyboardShortcut::new(Modifiers::COMMAND, Key::Y)),
            Self::Larger => Some(KeyboardShortcut::new(Modifiers::COMMAND, Key::Equals)),
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

    /// What it is about: the heading under which it is listed.
    #[must_use]
    pub fn group(self) -> Group {
        match self {
            Self::New(_) => Group::Car,
            Self::NewCar
            | Self::Open
            | Self::Save
            | Self::SaveAs
            | Self::CloseSetup
            | Self::NextSetup
            | Self::PreviousSetup
            | Self::Print
            | Self::SavePicture(_)
            | Self::Quit => Group::File,
            Self::Undo
            | Self::Redo
            | Self::EditCar
            | Self::Kinds
            | Self::CopyPicture(_)
            | Self::CopyDrawing(_) => Group::Edit,
            Self::KeepReference
            | Self::OpenReference
            | Self::SwapReference
            | Self::ClearReference => Group::Reference,
            Self::Drawer(_) => Group::Drawer,
            Self::Curve(_) => Group::Curve,
            Self::Find | Self::Keys | Self::Hints | Self::About => Group::Help,
            _ => Group::View,
        }
    }

    /// Its keys in words, such as "Ctrl+Shift+Z or Ctrl+Y".
    #[must_use]
    pub fn key_names(self) -> String {
        let keys = [self.shortcut(), self.second_shortcut()];
        let names: Vec<String> = keys
            .into_iter()
            .flatten()
            .map(|key| key.format(&ModifierNames::NAMES, false))
            .collect();
        names.join(" or ")
    }

    /// Whether each press of its key counts, however many come between two frames.
    #[must_use]
    pub fn goes_step_by_step(self) -> bool {
        matches!(self, Self::Undo | Self::Redo)
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
    fn every_command_has_words_and_a_key() {
        for command in Command::all() {
            assert!(command.shortcut().is_some(), "{command:?}");
            assert!(!command.text().is_empty(), "{command:?}");
            assert!(
                command.tooltip().len() > command.text().len() / 2,
                "{command:?}"
            );
        }
    }
}
