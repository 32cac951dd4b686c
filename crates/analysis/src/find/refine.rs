//! Refining a combination between the grid values of slides that have no step.

use steerloft_setup::setup::Chosen;

use super::gauge::Gauge;
use super::space::number;
use super::tree::Tree;
use super::want::Want;

/// Values are refined to this, mm or degrees: finer than can be set.
pub(super) const FINEST: f64 = 0.002;

/// Most rounds over all slides.
const MOST_ROUNDS: usize = 200;

/// The values with those slides moved that have no step and differ from the present setup, as long as it comes closer: by
/// steps of one after the other, halved where none helps. They stay between the first and the last value tried.
pub(super) fn refined(
    tree: &Tree<'_>,
    gauge: &Gauge,
    wants: &[Want],
    values: Vec<Chosen>,
) -> Vec<Chosen> {
    let slides: Vec<Slide> = slides(tree, &values);
    if slides.is_empty() {
        return values;
    }
    let mut best = values;
    let Some(mut least) = cost(tree, gauge, wants, &best) else {
        return best;
    };
    let mut share = 0.5;
    for _ in 0..MOST_ROUNDS {
        let mut has_moved = false;
        for slide in &slides {
            for step in [slide.spacing * share, -slide.spacing * share] {
                let Some(tried) = slide.moved(&best, step) else {
                    continue;
                };
                if let Some(cost) = cost(tree, gauge, wants, &tried)
                    && cost < least
                {
                    best = tried;
                    least = cost;
                    has_moved = true;
                    break;
                }
            }
        }
        if !has_moved {
            share *= 0.5;
            let finest = slides
                .iter()
                .all(|slide| slide.spacing * share < 0.25 * FINEST);
            if finest {
                break;
            }
        }
    }
    best
}

/// A slide without steps that a combination changes.
struct Slide {
    level: usize,
    least: f64,
    most: f64,
    /// Distance of the values that were tried.
    spacing: f64,
}

impl Slide {
    fn moved(&self, values: &[Chosen], by: f64) -> Option<Vec<Chosen>> {
        let mut moved = values.to_vec();
        let value = moved.get_mut(self.level)?;
        let from = number(value)?;
        let to = (from + by).clamp(self.least, self.most);
        *value = Chosen::Slide(to);
        ((to - from).abs() > 0.0).then_some(moved)
    }
}

fn slides(tree: &Tree<'_>, values: &[Chosen]) -> Vec<Slide> {
    let pairs = tree.levels.iter().zip(values).enumerate();
    pairs
        .filter(|(_, (level, value))| {
            let now = tree.setup.value(level.adjustment);
            level.is_smooth && !super::space::is_same(&now, value)
        })
        .filter_map(|(index, (level, _))| {
            let least = number(level.values.first()?)?;
            let most = number(level.values.last()?)?;
            #[allow(clippy::cast_precision_loss, reason = "a grid has few values")]
            let gaps = level.values.len().saturating_sub(1).max(1) as f64;
            Some(Slide {
                level: index,
                least,
                most,
                spacing: (most - least) / gaps,
            })
        })
        .filter(|slide| slide.spacing > 0.0)
        .collect()
}

/// Cost of a combination; none where it cannot be built or has no value for a want.
fn cost(tree: &Tree<'_>, gauge: &Gauge, wants: &[Want], values: &[Chosen]) -> Option<f64> {
    let assembly = tree.assemble_with(values).ok()?;
    let mut gauged = gauge.take(&assembly);
    if !gauged.rods_fit() {
        return None;
    }
    wants.iter().try_fold(0.0, |sum, want| {
        Some(sum + want.cost(gauged.deviation(want))?)
    })
}
