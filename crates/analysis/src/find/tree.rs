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
}

/// A node: the first levels have their value.
#[derive(Clone, Copy)]
pub(super) struct Node {
    laying: Laying,
    /// How many of them differ from the present setup.
    pub(super) changes: usize,
}

impl<'a> Tree<'a> {
    pub(super) fn new(
        setup: &'a Setup,
        levels: &'a [Level],
        stock: &'a [Stock],
        most_changes: usize,
    ) -> Self {
        let mut tree = Self {
            setup,
            levels,
            stock,
            most_changes,
            root: Laying::at_base(&setup.car, setup.rods),
        };
        let mut root = tree.root;
        tree.apply_fixed(&mut root, 0);
        tree.root = root;
        tree
    }

    /// How many combinations there are, those that are left out included.
    pub(super) fn size(&self) -> u64 {
        self.sizes(0)
    }

    /// How many leaves lie below a node before a level.
    pub(super) fn sizes(&self, level: usize) -> u64 {
        let below = self.levels.get(level..).unwrap_or_default();
        below
            .iter()
            .map(|level| level.values.len() as u64)
            .product()
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
        if changes > self.most_changes || !self.parts_suffice(picks) {
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
    pub(super) fn picks(&self, index: u64) -> Vec<usize> {
        let mut rest = index;
        let mut picks: Vec<usize> = self
            .levels
            .iter()
            .rev()
            .map(|level| {
                let count = level.values.len() as u64;
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
        self.stock.iter().all(|stock| {
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
        })
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
