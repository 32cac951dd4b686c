//! What a search answers.

use std::cmp::Ordering;

use steerloft_setup::setup::{Chosen, Setup, ValueError};
use steerloft_solver::SolveError;

use super::change::Change;
use super::gauge::{Gauge, Gauged};
use super::limit::Unmet;
use super::space::{is_same, number};
use super::tree::Tree;
use super::want::Want;

/// What a search has found.
#[derive(Debug, Clone, PartialEq)]
pub struct Findings {
    /// The closest combinations, closest first, among equals those with fewer changes first.
    pub list: Vec<Finding>,
    /// The trade-off: for each number of changes the closest combination, as far as it is closer than all with fewer.
    pub front: Vec<Finding>,
    /// Wants that no combination meets.
    pub unmet: Vec<Unmet>,
    /// How many combinations were measured.
    pub evaluated: u64,
    /// How many of them cannot be assembled.
    pub apart: u64,
    /// Why the first of those cannot.
    pub apart_because: Option<SolveError>,
    /// How many of them need a tie rod that the parts do not allow; none of those is listed.
    pub misfits: u64,
    /// Whether the search ran to its end.
    pub is_complete: bool,
}

/// One combination.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// The value of each free adjustment, by its index in the car.
    pub values: Vec<(usize, Chosen)>,
    /// What differs from the present setup, in the car's order.
    pub changes: Vec<Change>,
    /// How far off it is on average over the wants and their weights, in differences that a builder just notices; 0 is
    /// exactly as wanted.
    pub off: f64,
    /// What became of each want, in their order.
    pub results: Vec<WantResult>,
}

/// What became of a want.
#[derive(Debug, Clone, PartialEq)]
pub struct WantResult {
    /// Its values, one for each wheel meant; of a whole curve the root of its mean square deviation.
    pub values: Vec<f64>,
    /// How far the farthest of them is from the target, in the measure's unit.
    pub deviation: f64,
}

impl Finding {
    /// Measures a combination; nothing where it cannot be assembled or has no value for a want.
    pub(super) fn of(
        tree: &Tree<'_>,
        gauge: &Gauge,
        wants: &[Want],
        values: &[Chosen],
    ) -> Option<Self> {
        let assembly = tree.assemble_with(values).ok()?;
        let mut gauged = gauge.take(&assembly);
        let results = wants
            .iter()
            .map(|want| result(&mut gauged, want))
            .collect::<Option<Vec<_>>>()?;
        let costs = wants.iter().zip(&results);
        let cost: f64 = costs
            .filter_map(|(want, result)| want.cost(Some(result.deviation)))
            .sum();
        let weights: f64 = wants.iter().map(|want| want.weight).sum();
        let by_level = tree.levels.iter().zip(values);
        let values: Vec<(usize, Chosen)> = by_level
            .map(|(level, value)| (level.adjustment, value.clone()))
            .collect();
        let changes = values
            .iter()
            .filter(|(adjustment, value)| !is_same(&tree.setup.value(*adjustment), value))
            .map(|(adjustment, value)| Change::of(tree.setup, *adjustment, value))
            .collect();
        Some(Self {
            values,
            changes,
            off: (cost / weights).sqrt(),
            results,
        })
    }

    /// The setup with this finding's values.
    ///
    /// # Errors
    /// [`ValueError`] for a setup of another car.
    pub fn applied_to(&self, setup: &Setup) -> Result<Setup, ValueError> {
        let mut changed = setup.clone();
        for (adjustment, value) in &self.values {
            changed.set(*adjustment, value.clone())?;
        }
        Ok(changed)
    }

    /// Closest first, among equals the fewest changes; then as they are.
    pub(super) fn order(&self, other: &Self) -> Ordering {
        let step = |finding: &Self| (finding.off * finding.off * 1e9).round();
        step(self)
            .total_cmp(&step(other))
            .then(self.changes.len().cmp(&other.changes.len()))
    }

    /// Whether another finding is the same for a builder.
    pub(super) fn is_alike(&self, other: &Self) -> bool {
        let pairs = self.values.iter().zip(&other.values);
        pairs
            .map(|((_, one), (_, other))| (one, other))
            .all(|(one, other)| match (number(one), number(other)) {
                (Some(one), Some(other)) => (one - other).abs() <= super::refine::FINEST,
                _ => one == other,
            })
    }
}

fn result(gauged: &mut Gauged<'_>, want: &Want) -> Option<WantResult> {
    let values = gauged.values(want).collect::<Option<Vec<f64>>>()?;
    let deviation = want.deviation(values.iter().copied().map(Some))?;
    Some(WantResult { values, deviation })
}
