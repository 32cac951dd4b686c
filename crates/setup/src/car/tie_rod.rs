//! The tie rods' parts: cups, thread, ball joints.

use serde::{Deserialize, Serialize};

use super::Position;

/// The tie rod's parts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TieRodParts {
    /// From a ball's centre to the open end of its cup, mm.
    pub cup_length: f64,
    /// Shortest centre-to-centre length the parts allow, mm.
    pub shortest: f64,
    /// Longest centre-to-centre length the thread allows, mm.
    pub longest: f64,
    /// The threaded rod between the cups.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thread: Option<Thread>,
}

impl TieRodParts {
    /// Gap between the two cups at a centre-to-centre length, mm.
    #[must_use]
    pub fn gap(&self, length: f64) -> f64 {
        length - 2.0 * self.cup_length
    }

    /// How far the thread sits in each cup at a centre-to-centre length, mm, both cups screwed on alike; nothing
    /// where no thread is given.
    #[must_use]
    pub fn engagement(&self, length: f64) -> Option<f64> {
        let thread = self.thread?;
        Some((thread.rod_length - self.gap(length)) / 2.0)
    }

    /// Whole turns of the rod, lengthening positive, that take one centre-to-centre length to another; nothing
    /// where no thread is given.
    #[must_use]
    pub fn turns(&self, from: f64, to: f64) -> Option<f64> {
        let thread = self.thread?;
        Some((to - from) / thread.length_per_turn())
    }
}

/// The threaded rod of a tie rod.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thread {
    /// Length of one turn of the thread, mm.
    pub pitch: f64,
    /// Length of the whole rod, mm.
    pub rod_length: f64,
    /// Length of the thread at each end, mm: a cup goes on no farther.
    pub thread_length: f64,
    /// Least length of thread that must sit in a cup, mm.
    pub least_engagement: f64,
    /// The hands of its two threads.
    #[serde(default)]
    pub hands: Hands,
}

/// The hands of a rod's two threads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Hands {
    /// A left- and a right-hand thread: turning the rod moves both cups.
    #[default]
    Opposite,
    /// Two right-hand threads: one cup is taken off its ball and turned.
    Same,
}

impl Thread {
    /// How much longer the tie rod gets by one turn, mm.
    #[must_use]
    pub fn length_per_turn(&self) -> f64 {
        match self.hands {
            Hands::Opposite => 2.0 * self.pitch,
            Hands::Same => self.pitch,
        }
    }
}

/// The tie rods' ball joints: where their studs point and how far they swing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BallJoints {
    /// Direction of the left outer ball's stud, on the steering arm; any length.
    pub outer_stud: Position,
    /// The right one's; the mirror image of the left one's if it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outer_stud_right: Option<Position>,
    /// Direction of the left inner ball's stud, on the steering drive; any length.
    pub inner_stud: Position,
    /// The right one's; the mirror image of the left one's if it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inner_stud_right: Option<Position>,
    /// Greatest angle between a rod and the plane square to a stud, degrees.
    pub most: f64,
}
