//! What a search keeps while it runs: the closest combinations, the closest for each number of changes, and for each
//! want alone the nearest.

use std::cmp::Ordering;

use steerloft_solver::SolveError;

use super::want::Want;

/// Costs that differ by less than this are alike, and the fewer changes decide.
const ALIKE: f64 = 1e-9;

/// A combination that is kept.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Kept {
    pub(super) cost: f64,
    pub(super) changes: usize,
    /// Which leaf of the tree.
    pub(super) index: u128,
}

impl Kept {
    /// Closest first, among equals the fewest changes, among those the first of the tree. The order is the same
    /// whichever thread finds which.
    pub(super) fn order(&self, other: &Self) -> Ordering {
        step(self.cost)
            .total_cmp(&step(other.cost))
            .then(self.changes.cmp(&other.changes))
            .then(self.index.cmp(&other.index))
    }

    /// Whether it is closer, however many changes it takes.
    pub(super) fn is_closer(&self, other: &Self) -> bool {
        step(self.cost) < step(other.cost)
    }
}

fn step(cost: f64) -> f64 {
    (cost / ALIKE).round()
}

/// What one thread, or all of them, have found.
#[derive(Debug, Clone)]
pub(super) struct Keeper {
    keep: usize,
    /// In order.
    pub(super) list: Vec<Kept>,
    /// By number of changes.
    pub(super) by_changes: Vec<Option<Kept>>,
    /// For each want alone: the least deviation, and which leaf.
    pub(super) nearest: Vec<Option<(f64, u128)>>,
    /// Likewise among combinations whose tie rods the parts do not allow.
    pub(super) nearest_misfit: Vec<Option<(f64, u128)>>,
    /// How many combinations cannot be assembled, with the first one's reason.
    pub(super) apart: u64,
    pub(super) apart_because: Option<(u128, SolveError)>,
    /// How many need a tie rod that the parts do not allow.
    pub(super) misfits: u64,
}

impl Keeper {
    pub(super) fn new(keep: usize, levels: usize, wants: usize) -> Self {
        Self {
            keep,
            list: Vec::with_capacity(keep + 1),
            by_changes: vec![None; levels + 1],
            nearest: vec![None; wants],
            nearest_misfit: vec![None; wants],
            apart: 0,
            apart_because: None,
            misfits: 0,
        }
    }

    /// Takes a combination with its cost.
    pub(super) fn offer(&mut self, kept: Kept) {
        self.offer_for_changes(&kept);
        self.offer_for_list(kept);
    }

    /// Whether a combination is known to come neither into the list nor into the front, if it costs at least so much.
    pub(super) fn is_beaten(&self, cost: f64, changes: usize) -> bool {
        let cost = step(cost);
        let beats = |kept: &Kept| step(kept.cost) < cost;
        let list_beats = self.list.len() >= self.keep && self.list.last().is_some_and(beats);
        let mut as_few = self.by_changes.iter().take(changes + 1).flatten();
        list_beats && as_few.any(beats)
    }

    /// Whether a combination that can be built is known to meet a want.
    pub(super) fn is_met(&self, number: usize, want: &Want) -> bool {
        let nearest = self.nearest.get(number).copied().flatten();
        nearest.is_some_and(|(deviation, _)| want.is_met(deviation))
    }

    fn offer_for_changes(&mut self, kept: &Kept) {
        if let Some(best) = self.by_changes.get_mut(kept.changes)
            && best.as_ref().is_none_or(|best| kept.order(best).is_lt())
        {
            *best = Some(kept.clone());
        }
    }

    fn offer_for_list(&mut self, kept: Kept) {
        let is_full = self.list.len() >= self.keep;
        if is_full && self.list.last().is_none_or(|last| kept.order(last).is_gt()) {
            return;
        }
        let at = self
            .list
            .partition_point(|other| other.order(&kept).is_lt());
        self.list.insert(at, kept);
        self.list.truncate(self.keep);
    }

    /// Takes how far a combination is from a want alone.
    pub(super) fn offer_nearest(&mut self, want: usize, deviation: f64, index: u128, fits: bool) {
        let all = if fits {
            &mut self.nearest
        } else {
            &mut self.nearest_misfit
        };
        if let Some(nearest) = all.get_mut(want) {
            take_nearer(nearest, (deviation, index));
        }
    }

    /// Takes a combination that cannot be assembled.
    pub(super) fn offer_apart(&mut self, index: u128, because: SolveError) {
        self.apart += 1;
        if self.apart_because.is_none_or(|(first, _)| index < first) {
            self.apart_because = Some((index, because));
        }
    }

    /// Takes what another thread has found.
    pub(super) fn merge(&mut self, other: Self) {
        for kept in other.list {
            self.offer_for_list(kept);
        }
        for kept in other.by_changes.iter().flatten() {
            self.offer_for_changes(kept);
        }
        let pairs = |own: &mut Vec<Option<(f64, u128)>>, others: Vec<Option<(f64, u128)>>| {
            for (own, other) in own.iter_mut().zip(others) {
                if let Some(other) = other {
                    take_nearer(own, other);
                }
            }
        };
        pairs(&mut self.nearest, other.nearest);
        pairs(&mut self.nearest_misfit, other.nearest_misfit);
        if let Some((index, because)) = other.apart_because {
            self.offer_apart(index, because);
            self.apart -= 1;
        }
        self.apart += other.apart;
        self.misfits += other.misfits;
    }

    /// The best for each number of changes that is closer than all with fewer.
    pub(super) fn front(&self) -> Vec<Kept> {
        let mut front: Vec<Kept> = Vec::new();
        for kept in self.by_changes.iter().flatten() {
            if front.last().is_none_or(|last| kept.is_closer(last)) {
                front.push(kept.clone());
            }
        }
        front
    }
}

fn take_nearer(nearest: &mut Option<(f64, u128)>, other: (f64, u128)) {
    let is_nearer = nearest.is_none_or(|(deviation, index)| {
        let order = other.0.total_cmp(&deviation);
        order.then(other.1.cmp(&index)).is_lt()
    });
    if is_nearer {
        *nearest = Some(other);
    }
}
