//! The tree of combinations: one level for each free adjustment, in the car's order.

use steerloft_setup::adjustment::Adjustment;
use steerloft_setup::layout::Laying;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::{Assembly, SolveError};

use super::space::Level;
use super::stock::{Stock, grains};

/// The combinations of a search.
#[derive(Debug)]
pub(super) struct Tree<'a> {
    pub(super) setup: &'a Setup,
    pub(super) levels: &'a [Level],
    pub(super) stock: &'a [Stock],
    pub(super) most_changes: usize,
    /// The car with every adjustment applied that comes before the first level.
    root: Laying,
    /// For each level, and for each number of changes that may still be made from there on: how many leaves lie below.
    allowed: Vec<Vec<u64>>,
    /// For each level: how many indices belong to a node before it, whatever can be picked below, allowed or not.
    indices: Vec<u128>,
}

/// A node: the first levels have their value.
#[derive(Clone, Copy)]
pub(super) struct Node {
    laying: Laying,
    /// How many of them differ from the present setup.
    pub(super) changes: usize,
}

impl<'a> Tree<'a> {
    /// None where there are more combinations than can be numbered.
    pub(super) fn new(
        setup: &'a Setup,
        levels: &'a [Level],
        stock: &'a [Stock],
        most_changes: usize,
    ) -> Option<Self> {
        let most_changes = most_changes.min(levels.len());
        let mut tree = Self {
            setup,
            levels,
            stock,
            most_changes,
            root: Laying::at_base(&setup.car, setup.rods),
            allowed: allowed(levels, most_changes),
            indices: indices(levels)?,
        };
        let mut root = tree.root;
        tree.apply_fixed(&mut root, 0);
        tree.root = root;
        Some(tree)
    }

    /// How many combinations there are to try, as far as the number of changes tells; as many as can be counted where there
    /// are more.
    pub(super) fn size(&self) -> u64 {
        self.leaves_below(0, 0)
    }

    /// How many combinations lie below a node before a level, with so many changes made above it.
    pub(super) fn leaves_below(&self, level: usize, changes: usize) -> u64 {
        let left = self.most_changes.checked_sub(changes);
        let below = left.and_then(|left| self.allowed.get(level)?.get(left));
        below.copied().unwrap_or(0)
    }

    /// How many indices belong to a node before a level.
    pub(super) fn indices(&self, level: usize) -> u128 {
        self.indices.get(level).copied().unwrap_or(1)
    }

    /// How many of the first levels differ from the present setup.
    pub(super) fn changes(&self, picks: &[usize]) -> usize {
        let picked = self.levels.iter().zip(picks);
        picked
            .filter(|(level, pick)| level.present != Some(**pick))
            .count()
    }

    pub(super) const fn root(&self) -> Node {
        Node {
            laying: self.root,
            changes: 0,
        }
    }

    /// The child of a node at a level with one of its values; none where everything below is left out for a reason.
    /// `picks` are those of the levels above, and this one's last.
    pub(super) fn child(&self, node: &Node, picks: &[usize]) -> Option<Node> {
        let (&pick, above) = picks.split_last()?;
        let level = self.levels.get(above.len())?;
        let value = level.values.get(pick)?;
        let changes = node.changes + usize::from(level.present != Some(pick));
        if changes > self.most_changes || !self.parts_suffice_for(level, picks) {
            return None;
        }
        let mut laying = node.laying;
        laying.apply(self.adjustment(level), value);
        self.apply_fixed(&mut laying, picks.len());
        Some(Node { laying, changes })
    }

    /// The mechanism of a leaf.
    pub(super) fn assemble(&self, leaf: &Node) -> Result<Assembly, SolveError> {
        leaf.laying.assemble(&self.setup.car)
    }

    /// The mechanism with any value on each level, laid out from the root.
    pub(super) fn assemble_with(&self, values: &[Chosen]) -> Result<Assembly, SolveError> {
        let mut laying = self.root;
        for (index, (level, value)) in self.levels.iter().zip(values).enumerate() {
            laying.apply(self.adjustment(level), value);
            self.apply_fixed(&mut laying, index + 1);
        }
        laying.assemble(&self.setup.car)
    }

    /// The values of picks.
    pub(super) fn values(&self, picks: &[usize]) -> Vec<Chosen> {
        let picked = self.levels.iter().zip(picks);
        picked
            .filter_map(|(level, pick)| level.values.get(*pick).cloned())
            .collect()
    }

    /// Picks of the leaf of an index, which counts leaves in the order of the tree.
    pub(super) fn picks(&self, index: u128) -> Vec<usize> {
        let mut rest = index;
        let mut picks: Vec<usize> = self
            .levels
            .iter()
            .rev()
            .map(|level| {
                let count = level.values.len() as u128;
                let pick = rest % count;
                rest /= count;
                usize::try_from(pick).unwrap_or(usize::MAX)
            })
            .collect();
        picks.reverse();
        picks
    }

    /// Whether the parts at hand make every stack of the levels picked so far.
    pub(super) fn parts_suffice(&self, picks: &[usize]) -> bool {
        self.stock.iter().all(|stock| self.suffices(stock, picks))
    }

    /// Likewise where it is known that they do without the pick of the last level.
    fn parts_suffice_for(&self, level: &Level, picks: &[usize]) -> bool {
        let is_first = picks.len() == 1;
        let mut stocks = self.stock.iter();
        stocks.all(|stock| {
            let draws = is_first || stock.places(level.adjustment).is_some();
            !draws || self.suffices(stock, picks)
        })
    }

    fn suffices(&self, stock: &Stock, picks: &[usize]) -> bool {
        let mut stacks = self.fixed_stacks(stock);
        let picked = self.levels.iter().zip(picks);
        stacks.extend(picked.filter_map(|(level, pick)| {
            let places = stock.places(level.adjustment)?;
            match level.values.get(*pick) {
                Some(Chosen::Stack(total)) => Some((grains(*total), places)),
                _ => None,
            }
        }));
        stock.makes(&stacks)
    }

    /// What the stacks that are not free take from a stock.
    fn fixed_stacks(&self, stock: &Stock) -> Vec<(i64, u32)> {
        let is_free = |adjustment: usize| {
            let mut levels = self.levels.iter();
            levels.any(|level| level.adjustment == adjustment)
        };
        let stacks = stock.stacks.iter().copied();
        stacks
            .filter(|(adjustment, _)| !is_free(*adjustment))
            .filter_map(|(adjustment, places)| {
                let adjustment = self.setup.car.adjustments.get(adjustment)?;
                match self.setup.value_of(adjustment) {
                    Chosen::Stack(total) => Some((grains(total), places)),
                    _ => None,
                }
            })
            .collect()
    }

    fn adjustment(&self, level: &Level) -> &'a Adjustment {
        &self.setup.car.adjustments[level.adjustment]
    }

    /// Applies the adjustments that are not free from the level before `next` up to it.
    fn apply_fixed(&self, laying: &mut Laying, next: usize) {
        let from = match next.checked_sub(1) {
            Some(before) => self
                .levels
                .get(before)
                .map_or(0, |level| level.adjustment + 1),
            None => 0,
        };
        let adjustments = &self.setup.car.adjustments;
        let to = self
            .levels
            .get(next)
            .map_or(adjustments.len(), |level| level.adjustment);
        for adjustment in adjustments.get(from..to).unwrap_or_default() {
            if let Some(value) = self.setup.chosen.get(&adjustment.name) {
                laying.apply(adjustment, value);
            }
        }
    }
}

/// How many leaves lie below each level for each number of changes still allowed, up to `most`.
fn allowed(levels: &[Level], most: usize) -> Vec<Vec<u64>> {
    let mut allowed = vec![vec![1_u64; most + 1]];
    for level in levels.iter().rev() {
        let same = u64::from(level.present.is_some());
        let other = level.values.len() as u64 - same;
        let below = allowed.last().map(Vec::as_slice).unwrap_or_default();
        let with_changes = |left: usize| {
            let unchanged = same.saturating_mul(below[left]);
            let changed = left.checked_sub(1).map_or(0, |left| below[left]);
            unchanged.saturating_add(other.saturating_mul(changed))
        };
        allowed.push((0..=most).map(with_changes).collect());
    }
    allowed.reverse();
    allowed
}

/// How many picks there are from each level on; none where they cannot be counted.
fn indices(levels: &[Level]) -> Option<Vec<u128>> {
    let mut indices = vec![1_u128];
    for level in levels.iter().rev() {
        let below = *indices.last()?;
        indices.push(below.checked_mul(level.values.len() as u128)?);
    }
    indices.reverse();
    Some(indices)
}
