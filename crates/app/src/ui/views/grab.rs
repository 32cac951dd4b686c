//! How near a pointer must come to something to take it, a finger being coarser than a mouse, and how it holds it.

use eframe::egui::{Event, Key, Pos2, Ui};

use crate::theme::Metrics;
use crate::ui::{Intent, Intents};

/// What points at the drawings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Pointer {
    /// A mouse, a touch pad or a pen.
    Fine,
    /// A finger on the screen.
    Finger,
}

impl Pointer {
    /// What points at the drawings in this frame.
    pub(super) fn of(ui: &Ui) -> Self {
        let finger = ui.input(|input| {
            input.any_touches()
                || input
                    .events
                    .iter()
                    .any(|event| matches!(event, Event::Touch { .. }))
        });
        if finger { Self::Finger } else { Self::Fine }
    }

    /// Distance within which it takes something, points.
    pub(super) const fn reach(self) -> f32 {
        match self {
            Self::Fine => Metrics::HANDLE_REACH,
            Self::Finger => Metrics::FINGER_REACH,
        }
    }
}

/// The place in a list of the one nearest to a pointer within its reach.
pub(super) fn nearest(
    places: impl Iterator<Item = Pos2>,
    pointer: Pos2,
    reach: f32,
) -> Option<usize> {
    places
        .map(|place| place.distance(pointer))
        .enumerate()
        .filter(|(_, distance)| *distance <= reach)
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(index, _)| index)
}

/// Where something is held.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hold {
    /// The pointer; none while it is outside the window.
    pub(super) pointer: Option<Pos2>,
    /// Whether it may go between steps.
    pub(super) free: bool,
}

/// Follows what is held: Escape takes the drag back, letting go ends it and gives none.
pub(super) fn hold(ui: &Ui, cancelled: &mut bool, intents: &mut Intents) -> Option<Hold> {
    let (pointer, down, escape, free) = ui.input(|input| {
        (
            input.pointer.interact_pos(),
            input.pointer.primary_down(),
            input.key_pressed(Key::Escape),
            input.modifiers.alt,
        )
    });
    if escape && !*cancelled {
        *cancelled = true;
        intents.push(Intent::Cancel);
    }
    if !down {
        intents.push(Intent::Finish);
        return None;
    }
    Some(Hold { pointer, free })
}

#[cfg(test)]
mod tests {
    use super::*;
    use eframe::egui::pos2;

    #[test]
    fn of_several_within_reach_the_nearest_is_taken() {
        let places = [pos2(0.0, 0.0), pos2(10.0, 0.0), pos2(40.0, 0.0)];
        let at = |x: f32, reach| nearest(places.into_iter(), pos2(x, 0.0), reach);
        assert_eq!(at(4.0, 12.0), Some(0));
        assert_eq!(at(6.0, 12.0), Some(1));
        assert_eq!(at(25.0, 12.0), None);
        assert_eq!(at(24.0, Pointer::Finger.reach()), Some(1));
    }
}
