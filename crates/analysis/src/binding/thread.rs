//! Thread in the cups, and shortest and longest rod.

use steerloft_setup::car::TieRodParts;

/// A tie rod against what its parts allow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThreadCheck {
    /// Centre-to-centre length, mm.
    pub length: f64,
    /// How much longer it could get, mm; negative where it is too long already.
    pub to_longest: f64,
    /// How much shorter it could get, mm; negative where it is too short already.
    pub to_shortest: f64,
    /// Thread in each cup, mm, where the thread is known.
    pub engagement: Option<f64>,
    /// That less the least there must be, mm; negative where the cup may come off.
    pub spare_engagement: Option<f64>,
}

impl ThreadCheck {
    /// Whether the rod can be built and holds.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.to_longest >= 0.0
            && self.to_shortest >= 0.0
            && self.spare_engagement.is_none_or(|spare| spare >= 0.0)
    }
}

/// A rod of a centre-to-centre length (mm) against its parts.
#[must_use]
pub fn thread_check(parts: &TieRodParts, length: f64) -> ThreadCheck {
    let engagement = parts.engagement(length);
    ThreadCheck {
        length,
        to_longest: parts.longest - length,
        to_shortest: length - parts.shortest,
        engagement,
        spare_engagement: parts
            .thread
            .zip(engagement)
            .map(|(thread, engagement)| engagement - thread.least_engagement),
    }
}
