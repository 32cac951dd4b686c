//! What is asked of a search: wants, what may change, the parts at hand.

use std::collections::{BTreeMap, BTreeSet};

use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::{Free, Search, Stock};
use steerloft_setup::setup::Setup;

use super::{CurveDraft, WantDraft, behaviour_of};
use crate::state::{Bench, Shown};

/// How many findings are listed.
const KEPT: usize = 12;

/// What is asked of a search.
#[derive(Debug, Clone, PartialEq)]
pub struct SearchForm {
    /// Figures that are wanted.
    pub wants: Vec<WantDraft>,
    /// Whole curves that are wanted, by points.
    pub curves: Vec<CurveDraft>,
    /// Whether the curves of the reference are wanted back.
    pub keeps_behaviour: bool,
    /// Names of the adjustments that stay as they are; all others may change.
    pub held: BTreeSet<String>,
    /// Between which values adjustments are kept that may change: by name, mm or degrees.
    pub ranges: BTreeMap<String, (f64, f64)>,
    /// Most adjustments that may differ from the present setup; none for any number.
    pub most_changes: Option<usize>,
    /// How many spacers of a stock are at hand where that is other than the car says: by the stock's name and the spacer's place
    /// in it.
    pub counts: BTreeMap<(String, usize), u32>,
}

impl Default for SearchForm {
    fn default() -> Self {
        Self {
            wants: vec![WantDraft::of(FigureKind::BumpSteer)],
            curves: Vec::new(),
            keeps_behaviour: false,
            held: BTreeSet::new(),
            ranges: BTreeMap::new(),
            most_changes: Some(2),
            counts: BTreeMap::new(),
        }
    }
}

impl SearchForm {
    /// The search for the setup that is worked on, or what is missing.
    pub(super) fn search(&self, bench: &Bench) -> Result<Search, String> {
        let setup = bench.setup();
        let mut wants: Vec<_> = self.wants.iter().filter_map(WantDraft::want).collect();
        wants.extend(self.curves.iter().map(CurveDraft::want));
        if self.keeps_behaviour {
            let reference: &Shown = bench
                .compared()
                .ok_or("keep or open a reference first: its curves are to come back")?;
            wants.extend(behaviour_of(reference));
        }
        Ok(Search {
            setup: setup.clone(),
            wants,
            free: self.free(setup)?,
            stock: self.stock(setup),
            most_changes: self.most_changes,
            keep: KEPT,
        })
    }

    fn free(&self, setup: &Setup) -> Result<Vec<Free>, String> {
        let adjustments = setup.car.adjustments.iter().enumerate();
        adjustments
            .filter(|(_, adjustment)| !self.held.contains(&adjustment.name))
            .filter_map(
                |(index, adjustment)| match self.ranges.get(&adjustment.name) {
                    Some((least, most)) => Free::within(setup, index, *least, *most),
                    None => Free::all(setup, index).map(Ok),
                },
            )
            .map(|free| free.map_err(|error| error.to_string()))
            .collect()
    }

    fn stock(&self, setup: &Setup) -> Vec<Stock> {
        let mut stocks = Stock::of_car(setup);
        for (stock, of_car) in stocks.iter_mut().zip(&setup.car.stock) {
            for (place, spacer) in stock.spacers.iter_mut().enumerate() {
                if let Some(count) = self.counts.get(&(of_car.name.clone(), place)) {
                    spacer.count = *count;
                }
            }
        }
        stocks
    }
}
