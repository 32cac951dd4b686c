//! What is remembered from one start to the next, apart from documents.

use serde::{Deserialize, Deserializer, Serialize};

use crate::lenient;
use crate::units::Units;

/// Choices of the user that hold for every document.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Preferences {
    /// The unit of lengths on screen.
    #[serde(deserialize_with = "lenient::or_default")]
    pub units: Units,
    /// How large everything is drawn, percent of the desktop's own scale.
    #[serde(deserialize_with = "read_scale")]
    pub scale: u16,
    /// Whether the hints for the first start have been seen or dismissed.
    pub hints_seen: bool,
}

impl Default for Preferences {
    fn default() -> Self {
        Self {
            units: Units::Millimetres,
            scale: Self::LEAST_SCALE,
            hints_seen: false,
        }
    }
}

impl Preferences {
    /// Least scale, percent.
    pub const LEAST_SCALE: u16 = 100;
    /// Greatest scale, percent.
    pub const GREATEST_SCALE: u16 = 200;
    /// Step from one scale to the next, percent.
    const SCALE_STEP: u16 = 10;

    /// The next larger scale.
    pub fn enlarge(&mut self) {
        self.scale = bounded(self.scale.saturating_add(Self::SCALE_STEP));
    }

    /// The next smaller scale.
    pub fn reduce(&mut self) {
        self.scale = bounded(self.scale.saturating_sub(Self::SCALE_STEP));
    }

    /// The scale as a factor, within its bounds whatever was read from a file.
    #[must_use]
    pub fn factor(&self) -> f32 {
        f32::from(bounded(self.scale)) / 100.0
    }
}

fn read_scale<'de, D: Deserializer<'de>>(deserializer: D) -> Result<u16, D::Error> {
    lenient::or_else(deserializer, || Preferences::LEAST_SCALE)
}

fn bounded(scale: u16) -> u16 {
    scale.clamp(Preferences::LEAST_SCALE, Preferences::GREATEST_SCALE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_keeps_within_its_bounds() {
        let mut preferences = Preferences::default();
        preferences.reduce();
        assert_eq!(preferences.scale, 100);
        for _ in 0..20 {
            preferences.enlarge();
        }
        assert_eq!(preferences.scale, 200);
        preferences.scale = 7;
        assert!((preferences.factor() - 1.0).abs() < 1e-6);
    }
}
