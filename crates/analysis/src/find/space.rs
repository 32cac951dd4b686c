//! The space that is searched: the values that each free adjustment may take, checked.

use steerloft_setup::adjustment::Kind;
use steerloft_setup::setup::{Chosen, Setup};

use super::free::Free;
use super::stock::Stock;
use super::want::{Target, Want};

/// Numbers closer than this are one value, mm or degrees.
pub(super) const SAME: f64 = 1e-6;

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
            let right =
                "give at least one point, all of finite numbers, and a tolerance of 0 or more";
            let tolerance = want.measure.tolerance();
            let is_tolerance = tolerance.is_finite() && tolerance >= 0.0;
            if !is_tolerance {
                return Err(bad(format!("a tolerance of {tolerance}"), right));
            }
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
