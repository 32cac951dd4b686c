//! Running a search.

use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::thread;

use steerloft_setup::setup::Setup;

use super::finding::{Finding, Findings};
use super::free::Free;
use super::gauge::Gauge;
use super::keep::{Keeper, Kept};
use super::limit::unmet;
use super::refine::refined;
use super::space::{Level, SearchError, check_wants, levels};
use super::stock::Stock;
use super::tree::{Node, Tree};
use super::want::Want;

/// Most combinations that a search takes on.
const MOST_COMBINATIONS: u64 = 1_000_000_000_000;

/// Branches for each thread, so that none waits long for the last one.
const BRANCHES_A_THREAD: u128 = 256;

/// After how many combinations a thread tells how far it is and asks whether to stop.
const TELL_EVERY: u64 = 128;

/// How many times as many combinations are kept as are asked for where they are refined: neighbours of a grid come down to
/// one.
const KEPT_TO_REFINE: usize = 4;

/// A search for parts that give what is wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Search {
    /// The present setup.
    pub setup: Setup,
    /// What is wanted.
    pub wants: Vec<Want>,
    /// What may change; the rest stays as it is.
    pub free: Vec<Free>,
    /// Spacers at hand that stacks share.
    pub stock: Vec<Stock>,
    /// Most adjustments that may differ from the present setup; none for any number.
    pub most_changes: Option<usize>,
    /// How many findings are to be listed.
    pub keep: usize,
}

/// How far a search, or other work that takes a while, is; shared with whoever watches it.
#[derive(Debug, Default)]
pub struct Progress {
    done: AtomicU64,
    all: AtomicU64,
    whole: AtomicU64,
    stop: AtomicBool,
}

impl Progress {
    /// How many combinations are done, those that were left out for a reason included.
    #[must_use]
    pub fn done(&self) -> u64 {
        self.done.load(Ordering::Relaxed)
    }

    /// How many there are; 0 before the search has started.
    #[must_use]
    pub fn all(&self) -> u64 {
        self.all.load(Ordering::Relaxed)
    }

    /// How many combinations were held against every want. The rest cannot be assembled, or was beaten by what it cost by the
    /// wants that are cheap to measure. It hangs on which thread found what first.
    #[must_use]
    pub fn whole(&self) -> u64 {
        self.whole.load(Ordering::Relaxed)
    }

    /// Begins work of so many parts.
    pub(crate) fn begin(&self, all: u64) {
        self.all.store(all, Ordering::Relaxed);
    }

    /// Tells that so many more are done.
    pub(crate) fn advance(&self, done: u64) {
        self.done.fetch_add(done, Ordering::Relaxed);
    }

    /// Asks the search to stop; it then answers with what it has found.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// Whether the search is to stop.
    #[must_use]
    pub fn is_stopped(&self) -> bool {
        self.stop.load(Ordering::Relaxed)
    }
}

impl Search {
    /// How many combinations there are to try.
    ///
    /// # Errors
    /// As [`Search::run`].
    pub fn combinations(&self) -> Result<u64, SearchError> {
        let levels = levels(&self.setup, &self.free, &self.stock)?;
        Ok(self.tree(&levels)?.size())
    }

    /// Tries every combination on all processors and ranks what comes closest.
    ///
    /// Answers the same whatever the number of threads. Stopped early, it answers with what it has found so far.
    ///
    /// # Errors
    /// [`SearchError`] where the search makes no sense as it is asked for.
    pub fn run(&self, progress: &Progress) -> Result<Findings, SearchError> {
        let threads = thread::available_parallelism().map_or(1, usize::from);
        self.run_on(threads, progress)
    }

    /// As [`Search::run`], on so many threads.
    ///
    /// # Errors
    /// As [`Search::run`].
    pub fn run_on(&self, threads: usize, progress: &Progress) -> Result<Findings, SearchError> {
        check_wants(&self.wants)?;
        let levels = levels(&self.setup, &self.free, &self.stock)?;
        let tree = self.tree(&levels)?;
        progress.all.store(tree.size(), Ordering::Relaxed);
        let is_smooth = levels.iter().any(|level| level.is_smooth);
        let keep = self.keep.max(1);
        let kept = if is_smooth {
            keep.saturating_mul(KEPT_TO_REFINE)
        } else {
            keep
        };
        let order = by_effort(&self.wants);
        let worker = || Worker {
            wants: &self.wants,
            order: &order,
            gauge: Gauge::of(&self.setup),
            tree: &tree,
            progress,
            keeper: Keeper::new(kept, levels.len(), self.wants.len()),
            picks: Vec::with_capacity(levels.len()),
            untold: 0,
            evaluated: 0,
            whole: 0,
        };
        let (keeper, evaluated) = shared_out(threads.max(1), &tree, worker);
        Ok(self.findings(&tree, &keeper, evaluated, !progress.is_stopped(), keep))
    }

    fn tree<'a>(&'a self, levels: &'a [Level]) -> Result<Tree<'a>, SearchError> {
        let most_changes = self.most_changes.unwrap_or(usize::MAX);
        let tree = Tree::new(&self.setup, levels, &self.stock, most_changes);
        tree.filter(|tree| tree.size() <= MOST_COMBINATIONS)
            .ok_or_else(|| {
                #[allow(clippy::cast_precision_loss, reason = "a count of values is small")]
                let about = levels.iter().map(|level| level.values.len() as f64);
                SearchError::TooMany(about.product())
            })
    }

    fn findings(
        &self,
        tree: &Tree<'_>,
        keeper: &Keeper,
        evaluated: u64,
        is_complete: bool,
        keep: usize,
    ) -> Findings {
        let gauge = Gauge::of(&self.setup);
        let finding = |kept: &Kept| {
            let values = tree.values(&tree.picks(kept.index));
            let values = refined(tree, &gauge, &self.wants, values);
            Finding::of(tree, &gauge, &self.wants, &values)
        };
        let mut list: Vec<Finding> = keeper.list.iter().filter_map(finding).collect();
        list.sort_by(Finding::order);
        list.dedup_by(|one, other| one.is_alike(other));
        list.truncate(keep);
        let mut front: Vec<Finding> = keeper.front().iter().filter_map(finding).collect();
        front.sort_by_key(|finding| finding.changes.len());
        // What the grid of a slide missed, refining may have met.
        let mut unmet = unmet(tree, &gauge, &self.wants, keeper);
        unmet.retain(|one| {
            let want = &self.wants[one.want];
            let mut found = list.iter().chain(&front);
            !found.any(|finding| want.is_met(finding.results[one.want].deviation))
        });
        Findings {
            unmet,
            list,
            front,
            evaluated,
            apart: keeper.apart,
            apart_because: keeper.apart_because.map(|(_, because)| because),
            misfits: keeper.misfits,
            is_complete,
        }
    }
}

/// Shares the tree's branches out between threads.
fn shared_out<'a>(
    threads: usize,
    tree: &Tree<'a>,
    worker: impl Fn() -> Worker<'a>,
) -> (Keeper, u64) {
    let (depth, branches) = branches(tree, threads);
    let next = AtomicU64::new(0);
    let work = |mut worker: Worker<'a>| {
        loop {
            let branch = u128::from(next.fetch_add(1, Ordering::Relaxed));
            if branch >= branches || worker.progress.is_stopped() {
                break;
            }
            worker.branch(depth, branch);
        }
        worker.tell();
        worker
            .progress
            .whole
            .fetch_add(worker.whole, Ordering::Relaxed);
        (worker.keeper, worker.evaluated)
    };
    if threads == 1 {
        return work(worker());
    }
    thread::scope(|scope| {
        let handles: Vec<_> = (0..threads)
            .map(|_| {
                let worker = worker();
                scope.spawn(|| work(worker))
            })
            .collect();
        let (mut keeper, mut evaluated) = work_of_none(&worker());
        for handle in handles {
            if let Ok((found, tried)) = handle.join() {
                keeper.merge(found);
                evaluated += tried;
            }
        }
        (keeper, evaluated)
    })
}

fn work_of_none(worker: &Worker<'_>) -> (Keeper, u64) {
    (worker.keeper.clone(), 0)
}

/// How many levels are split into branches, and how many branches that gives.
fn branches(tree: &Tree<'_>, threads: usize) -> (usize, u128) {
    let enough = if threads == 1 {
        1
    } else {
        BRANCHES_A_THREAD * threads as u128
    };
    let (mut depth, mut branches) = (0, 1);
    while branches < enough && depth + 1 < tree.levels.len() {
        branches *= tree.levels[depth].values.len() as u128;
        depth += 1;
    }
    (depth, branches)
}

/// The wants in the order in which a combination is held against them: the cheaper ones first, so that the dearer ones need
/// not be measured of what is beaten already.
fn by_effort(wants: &[Want]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..wants.len()).collect();
    order.sort_by_key(|number| wants[*number].measure.poses());
    order
}

/// One thread of a search.
struct Worker<'a> {
    wants: &'a [Want],
    /// In which order they are measured.
    order: &'a [usize],
    gauge: Gauge,
    tree: &'a Tree<'a>,
    progress: &'a Progress,
    keeper: Keeper,
    picks: Vec<usize>,
    /// Combinations done that the progress does not tell yet.
    untold: u64,
    evaluated: u64,
    whole: u64,
}

impl Worker<'_> {
    /// Tries all leaves of a branch: of the node with the given number above `depth`.
    fn branch(&mut self, depth: usize, number: u128) {
        let first = number * self.tree.indices(depth);
        let mut picks = self.tree.picks(first);
        picks.truncate(depth);
        self.picks.clear();
        let mut node = self.tree.root();
        for pick in &picks {
            self.picks.push(*pick);
            let Some(child) = self.tree.child(&node, &self.picks) else {
                let changes = self.tree.changes(&picks);
                self.done(self.tree.leaves_below(depth, changes));
                return;
            };
            node = child;
        }
        self.descend(&node, first);
    }

    /// Tries all leaves below a node, the first of which has an index.
    fn descend(&mut self, node: &Node, first: u128) {
        let level = self.picks.len();
        let Some(values) = self.tree.levels.get(level).map(|level| level.values.len()) else {
            self.leaf(node, first);
            return;
        };
        let below = self.tree.indices(level + 1);
        let mut index = first;
        for pick in 0..values {
            if self.progress.is_stopped() {
                return;
            }
            self.picks.push(pick);
            if let Some(child) = self.tree.child(node, &self.picks) {
                self.descend(&child, index);
            } else {
                let changes = self.tree.changes(&self.picks);
                self.done(self.tree.leaves_below(level + 1, changes));
            }
            self.picks.pop();
            index += below;
        }
    }

    /// Holds a combination against the wants. What cannot come into the list any more is measured only for wants that
    /// nothing meets so far.
    fn leaf(&mut self, node: &Node, index: u128) {
        self.done(1);
        self.evaluated += 1;
        let assembly = match self.tree.assemble(node) {
            Ok(assembly) => assembly,
            Err(because) => {
                self.keeper.offer_apart(index, because);
                return;
            }
        };
        let mut gauged = self.gauge.take(&assembly);
        let fits = gauged.rods_fit();
        self.keeper.misfits += u64::from(!fits);
        // What it costs at the least, by the wants measured; none once it is out.
        let mut cost = fits.then_some(0.0);
        let mut is_whole = true;
        for &number in self.order {
            let want = &self.wants[number];
            cost = cost.filter(|cost| !self.keeper.is_beaten(*cost, node.changes));
            if cost.is_none() && self.keeper.is_met(number, want) {
                is_whole = false;
                continue;
            }
            let deviation = gauged.deviation(want);
            if let Some(deviation) = deviation {
                self.keeper.offer_nearest(number, deviation, index, fits);
            }
            cost = cost.zip(want.cost(deviation)).map(|(sum, cost)| sum + cost);
        }
        self.whole += u64::from(is_whole);
        if let Some(cost) = cost {
            self.keeper.offer(Kept {
                cost,
                changes: node.changes,
                index,
            });
        }
    }

    fn done(&mut self, count: u64) {
        self.untold += count;
        if self.untold >= TELL_EVERY {
            self.tell();
        }
    }

    fn tell(&mut self) {
        self.progress.done.fetch_add(self.untold, Ordering::Relaxed);
        self.untold = 0;
    }
}
