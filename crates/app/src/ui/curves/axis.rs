//! An axis in the unit of lengths that the window shows.

use steerloft_analysis::curves::Axis;

use crate::units::Units;

/// An axis as it is shown, and what its values are multiplied with for that.
pub(super) struct ShownAxis {
    axis: Axis,
    pub(super) factor: f64,
}

impl ShownAxis {
    pub(super) fn new(axis: &Axis, units: Units) -> Self {
        let held = match axis.unit {
            "mm/deg" => "mm/\u{b0}",
            unit => unit,
        };
        let shown = units.unit(held, axis.decimals);
        Self {
            axis: Axis {
                unit: shown.sign,
                decimals: shown.decimals,
                ..axis.clone()
            },
            factor: shown.factor,
        }
    }

    /// The axis in words.
    pub(super) fn label(&self) -> String {
        self.axis.label()
    }

    /// The quantity and a value of it.
    pub(super) fn place(&self, value: f64) -> String {
        format!("{} {}", self.axis.quantity, self.value(value))
    }

    /// A value as it is read off.
    pub(super) fn value(&self, value: f64) -> String {
        self.axis.value(value * self.factor)
    }
}
