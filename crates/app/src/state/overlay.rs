//! What can be shown in the drawings on demand, and which of it is shown.

use serde::{Deserialize, Serialize};

/// Something shown in the drawings on demand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Overlay {
    /// The construction of the turn.
    TurnLines,
    /// The wheels at full bump and full droop.
    Envelope,
    /// The gap between the cups, on each rod.
    RodGaps,
    /// Buttons that add a spacer to a stack and take one away.
    SpacerButtons,
    /// The reference behind the car.
    Reference,
}

impl Overlay {
    /// Every one, as listed in menus.
    pub const ALL: [Self; 5] = [
        Self::TurnLines,
        Self::Envelope,
        Self::RodGaps,
        Self::SpacerButtons,
        Self::Reference,
    ];

    /// Text in menus.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::TurnLines => "Turn-centre lines",
            Self::Envelope => "Wheels at full bump and droop",
            Self::RodGaps => "Gaps between the cups",
            Self::SpacerButtons => "Spacer buttons",
            Self::Reference => "Reference behind",
        }
    }

    /// What it shows, in a sentence.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::TurnLines => {
                "Show where the steering axes meet the road, and each wheel's axis drawn on to the line of the rear axle"
            }
            Self::Envelope => {
                "Draw the wheels lightly at both ends of their travel, with the steering as it stands"
            }
            Self::RodGaps => "Write on each tie rod what a calliper measures between its cups",
            Self::SpacerButtons => {
                "Show a plus and a minus beside each stack of spacers that the pointer comes near"
            }
            Self::Reference => {
                "Draw the reference in thin dashes behind the car, steered and travelled alike"
            }
        }
    }
}

/// What the drawings show beside the car.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[allow(
    clippy::struct_excessive_bools,
    reason = "each is a switch of its own that the user flips"
)]
pub struct Switches {
    /// The side view.
    pub side: bool,
    /// [`Overlay::TurnLines`].
    pub turn_lines: bool,
    /// [`Overlay::Envelope`].
    pub envelope: bool,
    /// [`Overlay::RodGaps`].
    pub rod_gaps: bool,
    /// [`Overlay::SpacerButtons`].
    pub spacer_buttons: bool,
    /// [`Overlay::Reference`].
    pub reference: bool,
}

impl Default for Switches {
    fn default() -> Self {
        Self {
            side: false,
            turn_lines: false,
            envelope: false,
            rod_gaps: true,
            spacer_buttons: true,
            reference: true,
        }
    }
}

impl Switches {
    /// Whether something is shown.
    #[must_use]
    pub const fn has(&self, overlay: Overlay) -> bool {
        match overlay {
            Overlay::TurnLines => self.turn_lines,
            Overlay::Envelope => self.envelope,
            Overlay::RodGaps => self.rod_gaps,
            Overlay::SpacerButtons => self.spacer_buttons,
            Overlay::Reference => self.reference,
        }
    }

    /// Shows something, or hides it.
    pub const fn toggle(&mut self, overlay: Overlay) {
        let switch = match overlay {
            Overlay::TurnLines => &mut self.turn_lines,
            Overlay::Envelope => &mut self.envelope,
            Overlay::RodGaps => &mut self.rod_gaps,
            Overlay::SpacerButtons => &mut self.spacer_buttons,
            Overlay::Reference => &mut self.reference,
        };
        *switch = !*switch;
    }
}
