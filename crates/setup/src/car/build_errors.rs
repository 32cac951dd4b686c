//! How far a car as built may be off its dimensions.

use serde::{Deserialize, Serialize};

use crate::adjustment::PointName;

/// Errors of the dimensions, each the most it is off either way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct BuildErrors {
    /// Of a point's coordinates as measured with callipers, mm.
    pub points: f64,
    /// Of a length: spacers, arms, links, rods, radii, wheelbase, ride height, mm.
    pub lengths: f64,
    /// Of an angle, degrees.
    pub angles: f64,
    /// Play of a ball in its cup or a pin in its hole, mm; it adds to the error of a point.
    pub hole_play: f64,
    /// Points known better or worse.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub own: Vec<PointError>,
}

/// The error of one point's coordinates.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PointError {
    /// The point, on both sides.
    pub point: PointName,
    /// The most each coordinate is off either way, play included, mm.
    pub error: f64,
}

impl Default for BuildErrors {
    /// What callipers and a well-kept small car leave (common practice, no source).
    fn default() -> Self {
        Self {
            points: 0.1,
            lengths: 0.05,
            angles: 0.25,
            hole_play: 0.05,
            own: Vec::new(),
        }
    }
}

impl BuildErrors {
    /// The most that a coordinate of the point is off either way, mm.
    #[must_use]
    pub fn of_point(&self, point: PointName) -> f64 {
        let own = self.own.iter().find(|own| own.point == point);
        own.map_or(self.points + self.hole_play, |own| own.error)
    }

    /// Whether nothing is said beyond what is usual.
    #[must_use]
    pub(crate) fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}
