//! A tie rod as it is to be built.

use steerloft_setup::car::TieRodParts;

/// A tie rod as it is to be built.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TieRod {
    /// Ball centre to ball centre, mm.
    pub length: f64,
    /// Gap between the open ends of the two cups, mm.
    pub gap: f64,
    /// How far the length is from the nearer of the shortest and the longest that the parts allow, mm; negative beyond it.
    pub reserve: f64,
}

impl TieRod {
    pub(crate) fn new(length: f64, parts: &TieRodParts) -> Self {
        Self {
            length,
            gap: length - 2.0 * parts.cup_length,
            reserve: (length - parts.shortest).min(parts.longest - length),
        }
    }

    /// Whether the parts can be screwed to this length.
    #[must_use]
    pub fn is_buildable(&self) -> bool {
        self.reserve >= 0.0
    }
}
