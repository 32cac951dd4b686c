//! What may change: the values that each free adjustment may take.

use steerloft_setup::adjustment::{Adjustment, Kind};
use steerloft_setup::setup::{Chosen, Setup};

use super::stock::Stock;
use super::want::{Target, Want};

/// Values tried of a slide without steps, both ends included; what is found is then refined.
const GRID: u32 = 9;

/// Numbers closer than this are one value, mm or degrees.
const SAME: f64 = 1e-6;

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

    /// As [`Free::all`], with numbers kept from `least` to `most`.
    #[must_use]
    pub fn within(setup: &Setup, adjustment: usize, least: f64, most: f64) -> Option<Self> {
        let mut free = Self::all(setup, adjustment)?;
        let inside = least - SAME..=most + SAME;
        free.values
            .retain(|value| number(value).is_none_or(|value| inside.contains(&value)));
        Some(free)
    }
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
    let mut grid: Vec<f64> = (0..GRID)
        .map(|index| from + (to - from) * f64::from(index) / f64::from(GRID - 1))
        .collect();
    grid.extend(number(&setup.value_of(adjustment)));
    grid.sort_by(f64::total_cmp);
    grid.dedup_by(|a, b| (*a - *b).abs() <= SAME);
    grid.into_iter().map(Chosen::Slide).collect()
}

/// A value as a number; none for an option.
pub(super) fn number(value: &Chosen) -> Option<f64> {
    match value {
        Chosen::Slide(value) | Chosen::Stack(value) => Some(*value),
        Chosen::Choice(_) => None,
    }
}

/// Whether two values are the same for a builder.
pub(super) fn is_same(one: &Chosen, other: &Chosen) -> bool {
    match (number(one), number(other)) {
        (Some(one), Some(other)) => (one - other).abs() <= SAME,
        _ => one == other,
    }
}

/// Why a search cannot be made.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SearchError {
    /// Nothing is wanted.
    #[error("nothing is wanted: name at least one figure and what it should be")]
    NothingWanted,
    /// Nothing may change.
    #[error("nothing may change: free at least one adjustment")]
    NothingFree,
    /// There is no such adjustment.
    #[error("the car has no adjustment {0}; they count from 0")]
    NoSuchAdjustment(usize),
    /// An adjustment is free twice.
    #[error("\"{0}\" is free twice")]
    FreeTwice(String),
    /// An adjustment is free but may take no value.
    #[error("\"{0}\" may take no value: widen its limits or the parts at hand")]
    NoValues(String),
    /// A value is none the adjustment can take.
    #[error(transparent)]
    BadValue(#[from] steerloft_setup::setup::ValueError),
    /// A want that is no want.
    #[error("\"{want}\" asks for {found}; {right}")]
    BadWant {
        /// Title of its measure.
        want: &'static str,
        /// What is wrong.
        found: String,
        /// What would be right.
        right: &'static str,
    },
    /// Far too many combinations.
    #[error(
        "{0:.1e} combinations are too many to try: free fewer adjustments or narrow their values"
    )]
    TooMany(f64),
}

/// One free adjustment as the search walks it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Level {
    pub(super) adjustment: usize,
    /// In ascending order for numbers.
    pub(super) values: Vec<Chosen>,
    /// Which of the values is the present one.
    pub(super) present: Option<usize>,
    /// Whether values between those are possible too.
    pub(super) is_smooth: bool,
}

/// The levels of a search, in the car's order, each checked.
pub(super) fn levels(
    setup: &Setup,
    free: &[Free],
    stock: &[Stock],
) -> Result<Vec<Level>, SearchError> {
    if free.is_empty() {
        return Err(SearchError::NothingFree);
    }
    let mut levels = Vec::with_capacity(free.len());
    for free in free {
        levels.push(level(setup, free, stock)?);
    }
    levels.sort_by_key(|level| level.adjustment);
    for pair in levels.windows(2) {
        if pair[0].adjustment == pair[1].adjustment {
            let name = setup.car.adjustments[pair[0].adjustment].name.clone();
            return Err(SearchError::FreeTwice(name));
        }
    }
    Ok(levels)
}

fn level(setup: &Setup, free: &Free, stock: &[Stock]) -> Result<Level, SearchError> {
    let adjustments = &setup.car.adjustments;
    let adjustment = adjustments
        .get(free.adjustment)
        .ok_or(SearchError::NoSuchAdjustment(free.adjustment))?;
    let mut values = free.values.clone();
    for value in &values {
        adjustment.accepts(value)?;
    }
    values.retain(|value| {
        stock
            .iter()
            .all(|stock| stock.makes_alone(free.adjustment, value))
    });
    values.sort_by(|a, b| match (number(a), number(b)) {
        (Some(a), Some(b)) => a.total_cmp(&b),
        _ => std::cmp::Ordering::Equal,
    });
    values.dedup_by(|a, b| is_same(a, b));
    if values.is_empty() {
        return Err(SearchError::NoValues(adjustment.name.clone()));
    }
    let now = setup.value_of(adjustment);
    Ok(Level {
        adjustment: free.adjustment,
        present: values.iter().position(|value| is_same(value, &now)),
        values,
        is_smooth: matches!(adjustment.kind, Kind::Slide { step: None, .. }),
    })
}

/// Checks that wants are wants.
pub(super) fn check_wants(wants: &[Want]) -> Result<(), SearchError> {
    if wants.is_empty() {
        return Err(SearchError::NothingWanted);
    }
    for want in wants {
        let bad = |found: String, right| SearchError::BadWant {
            want: want.measure.title(),
            found,
            right,
        };
        let weighs = want.weight.is_finite() && want.weight > 0.0;
        if !weighs {
            let found = format!("a weight of {}", want.weight);
            return Err(bad(found, "give a weight above 0"));
        }
        if let Some(points) = want.measure.curve() {
            let right = "give at least one point, all of finite numbers";
            if points.is_empty() {
                return Err(bad("a curve without points".to_owned(), right));
            }
            if !points.iter().flatten().all(|value| value.is_finite()) {
                return Err(bad("a point that is no number".to_owned(), right));
            }
            continue;
        }
        let sound = match want.target {
            Target::Value(value) => value.is_finite(),
            Target::Range(least, most) => least.is_finite() && most.is_finite() && least <= most,
        };
        if !sound {
            let found = format!("{:?}", want.target);
            return Err(bad(
                found,
                "give a finite value, or a range from less to more",
            ));
        }
    }
    Ok(())
}
