//! What may change: an adjustment, over everything that it can be or within a range.

use steerloft_setup::adjustment::{Adjustment, Kind};
use steerloft_setup::setup::{Chosen, Setup};

use super::space::{SAME, number};

/// Values tried of a slide without steps, both ends included; what is found is then refined.
const GRID: u32 = 9;

/// An adjustment that may change, and the values it may take.
#[derive(Debug, Clone, PartialEq)]
pub struct Free {
    /// Index of the adjustment in the car.
    pub adjustment: usize,
    /// The values it may take.
    pub values: Vec<Chosen>,
}

impl Free {
    /// An adjustment free over everything that it can be. None where the car has no such adjustment.
    #[must_use]
    pub fn all(setup: &Setup, adjustment: usize) -> Option<Self> {
        let values = values_of(setup, setup.car.adjustments.get(adjustment)?);
        Some(Self { adjustment, values })
    }

    /// As [`Free::all`], with numbers kept from `least` to `most`: mm, or degrees of a slide in degrees. None where the car has
    /// no such adjustment.
    ///
    /// # Errors
    /// [`RangeError`] where that leaves nothing, or makes no sense.
    #[must_use]
    pub fn within(
        setup: &Setup,
        adjustment: usize,
        least: f64,
        most: f64,
    ) -> Option<Result<Self, RangeError>> {
        let one = setup.car.adjustments.get(adjustment)?;
        Some(narrowed(setup, one, least, most).map(|values| Self { adjustment, values }))
    }
}

/// Why an adjustment cannot be kept within a range.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RangeError {
    /// The range does not go from less to more.
    #[error(
        "\"{name}\" cannot be kept from {least} to {most}: give finite numbers, the lesser one first"
    )]
    NoRange {
        /// Name of the adjustment.
        name: String,
        /// The least value asked for.
        least: f64,
        /// The greatest value asked for.
        most: f64,
    },
    /// The adjustment is a choice of options.
    #[error("\"{name}\" is a choice and has no range; it can be {options}")]
    NoNumbers {
        /// Name of the adjustment.
        name: String,
        /// What can be chosen.
        options: String,
    },
    /// None of the values that it can take lies in the range.
    #[error("\"{name}\" can take no value from {least} to {most}; it can be {values}")]
    NoneWithin {
        /// Name of the adjustment.
        name: String,
        /// The least value asked for.
        least: f64,
        /// The greatest value asked for.
        most: f64,
        /// What it can be, with unit.
        values: String,
    },
}

/// The values of an adjustment from `least` to `most`; of a slide without steps as many as of its whole range.
fn narrowed(
    setup: &Setup,
    adjustment: &Adjustment,
    least: f64,
    most: f64,
) -> Result<Vec<Chosen>, RangeError> {
    let name = adjustment.name.clone();
    if let Kind::Choice { options, .. } = &adjustment.kind {
        let options: Vec<&str> = options.iter().map(|option| option.name.as_str()).collect();
        let options = options.join(", ");
        return Err(RangeError::NoNumbers { name, options });
    }
    if !(least.is_finite() && most.is_finite() && least <= most) {
        return Err(RangeError::NoRange { name, least, most });
    }
    let inside = least - SAME..=most + SAME;
    let all = values_of(setup, adjustment);
    let values: Vec<Chosen> = match adjustment.kind {
        Kind::Slide {
            range: (from, to),
            step: None,
            ..
        } if least.max(from) <= most.min(to) + SAME => {
            let now = number(&setup.value_of(adjustment)).filter(|now| inside.contains(now));
            spread(least.max(from), most.min(to).max(least.max(from)), now)
        }
        _ => {
            let within =
                |value: &&Chosen| number(value).is_some_and(|value| inside.contains(&value));
            all.iter().filter(within).cloned().collect()
        }
    };
    if values.is_empty() {
        let end = |value: Option<&Chosen>| {
            value.map_or(String::new(), |value| adjustment.label_of(value))
        };
        let values = format!("from {} to {}", end(all.first()), end(all.last()));
        return Err(RangeError::NoneWithin {
            name,
            least,
            most,
            values,
        });
    }
    Ok(values)
}

/// The values an adjustment can take: all of its steps, totals or options; of a slide without steps evenly spaced ones and
/// the one it has.
fn values_of(setup: &Setup, adjustment: &Adjustment) -> Vec<Chosen> {
    let Kind::Slide {
        range: (from, to),
        step: None,
        ..
    } = adjustment.kind
    else {
        return adjustment.values().unwrap_or_default();
    };
    spread(from, to, number(&setup.value_of(adjustment)))
}

/// Evenly spaced values of a slide, both ends included, and the one it has.
fn spread(from: f64, to: f64, now: Option<f64>) -> Vec<Chosen> {
    let mut grid: Vec<f64> = (0..GRID)
        .map(|index| from + (to - from) * f64::from(index) / f64::from(GRID - 1))
        .collect();
    grid.extend(now);
    grid.sort_by(f64::total_cmp);
    grid.dedup_by(|a, b| (*a - *b).abs() <= SAME);
    grid.into_iter().map(Chosen::Slide).collect()
}
