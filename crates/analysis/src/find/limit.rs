//! Wants that nothing meets: the nearest there is, and what stands in the way.

use steerloft_setup::setup::Chosen;
use steerloft_solver::SolveError;

use super::gauge::Gauge;
use super::keep::Keeper;
use super::space::{Level, number};
use super::tree::Tree;
use super::want::Want;

/// A want that no combination meets, even were it the only one.
#[derive(Debug, Clone, PartialEq)]
pub struct Unmet {
    /// Which want, by its place in the search.
    pub want: usize,
    /// The values that come nearest, one for each wheel meant; none where no combination has such a value.
    pub nearest: Option<Vec<f64>>,
    /// How far they are from the target, in the measure's unit.
    pub deviation: Option<f64>,
    /// What stands in the way of coming nearer. Empty where every neighbour of the nearest combination is possible and
    /// comes no nearer: it is then the geometry itself.
    pub limits: Vec<Limit>,
}

/// What stands in the way of a want.
#[derive(Debug, Clone, PartialEq)]
pub enum Limit {
    /// An adjustment is at the end of what it may be, and going on would help.
    End {
        /// Index of the adjustment in the car.
        adjustment: usize,
        /// The value it ends at.
        at: Chosen,
        /// In words, such as "Servo station ends at 5 mm".
        words: String,
    },
    /// There are too few spacers at hand for the next value of a stack, which would help.
    PartsAtHand {
        /// Index of the adjustment in the car.
        adjustment: usize,
        /// The value that cannot be made besides the others.
        value: Chosen,
    },
    /// More changes would help than are allowed.
    MostChanges(usize),
    /// A neighbour that might help cannot be assembled.
    Apart(SolveError),
    /// The parts of the tie rods do not allow the length, mm, that a nearer combination needs.
    RodLength(f64),
    /// The axle does not get to where the want is measured: an angle beyond its steering, a travel it does not have.
    NotReached,
}

/// The wants that no combination meets.
pub(super) fn unmet(tree: &Tree<'_>, gauge: &Gauge, wants: &[Want], keeper: &Keeper) -> Vec<Unmet> {
    let each = wants.iter().zip(&keeper.nearest).enumerate();
    each.filter(|(_, (want, nearest))| nearest.is_none_or(|(deviation, _)| !want.is_met(deviation)))
        .map(|(number, (want, nearest))| {
            let probe = Probe { tree, gauge, want };
            let misfit = keeper.nearest_misfit.get(number).copied().flatten();
            match nearest {
                Some((deviation, index)) => Unmet {
                    want: number,
                    nearest: probe.values(&tree.values(&tree.picks(*index))),
                    deviation: Some(*deviation),
                    limits: probe.limits(*index, *deviation, misfit),
                },
                None => Unmet {
                    want: number,
                    nearest: None,
                    deviation: None,
                    limits: probe.limits_of_none(keeper),
                },
            }
        })
        .collect()
}

/// Looks round a combination for what stands in the way of one want.
struct Probe<'a> {
    tree: &'a Tree<'a>,
    gauge: &'a Gauge,
    want: &'a Want,
}

impl Probe<'_> {
    fn values(&self, values: &[Chosen]) -> Option<Vec<f64>> {
        let assembly = self.tree.assemble_with(values).ok()?;
        self.gauge.take(&assembly).values(self.want).collect()
    }

    fn deviation(&self, values: &[Chosen]) -> Result<Option<f64>, SolveError> {
        let assembly = self.tree.assemble_with(values)?;
        Ok(self.gauge.take(&assembly).deviation(self.want))
    }

    fn limits(&self, index: u128, deviation: f64, misfit: Option<(f64, u128)>) -> Vec<Limit> {
        let picks = self.tree.picks(index);
        let mut limits = Vec::new();
        if let Some((nearer, index)) = misfit
            && nearer < deviation
            && let Some(length) = self.misfit_length(index)
        {
            limits.push(Limit::RodLength(length));
        }
        for (level, &pick) in picks.iter().enumerate() {
            for is_up in [false, true] {
                let limit = self.limit_of(&picks, level, pick, is_up, deviation);
                if let Some(limit) = limit
                    && !limits.contains(&limit)
                {
                    limits.push(limit);
                }
            }
        }
        limits
    }

    /// What stands in the way of going one value on at a level, if going on would help.
    fn limit_of(
        &self,
        picks: &[usize],
        at: usize,
        pick: usize,
        is_up: bool,
        deviation: f64,
    ) -> Option<Limit> {
        let level = self.tree.levels.get(at)?;
        let mut values = self.tree.values(picks);
        let next = if is_up {
            pick.checked_add(1)
                .filter(|next| *next < level.values.len())
        } else {
            pick.checked_sub(1)
        };
        let Some(next) = next else {
            *values.get_mut(at)? = beyond(level, is_up)?;
            let helps = matches!(self.deviation(&values), Ok(Some(off)) if off < deviation);
            return helps.then(|| self.end(level, pick)).flatten();
        };
        level.values.get(next)?.clone_into(values.get_mut(at)?);
        match self.deviation(&values) {
            Err(because) => Some(Limit::Apart(because)),
            Ok(Some(off)) if off < deviation => {
                let mut picks = picks.to_vec();
                *picks.get_mut(at)? = next;
                if self.tree.parts_suffice(&picks) {
                    let changes = self.tree.most_changes;
                    (changes < picks.len()).then_some(Limit::MostChanges(changes))
                } else {
                    Some(Limit::PartsAtHand {
                        adjustment: level.adjustment,
                        value: level.values.get(next)?.clone(),
                    })
                }
            }
            Ok(_) => None,
        }
    }

    fn end(&self, level: &Level, pick: usize) -> Option<Limit> {
        let at = level.values.get(pick)?.clone();
        let adjustment = &self.tree.setup.car.adjustments[level.adjustment];
        let words = format!("{} ends at {}", adjustment.name, adjustment.label_of(&at));
        Some(Limit::End {
            adjustment: level.adjustment,
            at,
            words,
        })
    }

    /// The length of the rod that does not fit at a combination.
    fn misfit_length(&self, index: u128) -> Option<f64> {
        let values = self.tree.values(&self.tree.picks(index));
        let assembly = self.tree.assemble_with(&values).ok()?;
        let (shortest, longest) = self.gauge.rod_lengths();
        let lengths = assembly.rod_lengths();
        [lengths.left, lengths.right]
            .into_iter()
            .find(|length| !(shortest..=longest).contains(length))
    }

    fn limits_of_none(&self, keeper: &Keeper) -> Vec<Limit> {
        let misfit = keeper.misfits > 0;
        let length = keeper
            .nearest_misfit
            .iter()
            .flatten()
            .find_map(|(_, index)| self.misfit_length(*index));
        match (length.filter(|_| misfit), keeper.apart_because) {
            (Some(length), _) => vec![Limit::RodLength(length)],
            (None, Some((_, because)))
                if keeper.list.is_empty() && keeper.nearest.iter().all(Option::is_none) =>
            {
                vec![Limit::Apart(because)]
            }
            _ => vec![Limit::NotReached],
        }
    }
}

/// A value one step beyond the last, or before the first, of a level; none for options.
fn beyond(level: &Level, is_up: bool) -> Option<Chosen> {
    let (end, inner) = if is_up {
        (level.values.last()?, level.values.iter().rev().nth(1))
    } else {
        (level.values.first()?, level.values.get(1))
    };
    let at = number(end)?;
    let step = inner
        .and_then(number)
        .map_or(if is_up { 1.0 } else { -1.0 }, |inner| at - inner);
    Some(match end {
        Chosen::Stack(_) if at + step < 0.0 => return None,
        Chosen::Stack(_) => Chosen::Stack(at + step),
        _ => Chosen::Slide(at + step),
    })
}
