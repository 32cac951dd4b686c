//! Spacers at hand that several stacks share, so that none is fitted twice.

use serde::{Deserialize, Serialize};

use crate::adjustment::{Adjustment, FromStock, Kind, Spacer};
use crate::setup::{Chosen, Setup};
use crate::values::SAME_VALUE;

/// A named box of spacers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stock {
    /// Plain name, unique in the car, such as "M3 washers".
    pub name: String,
    /// What is in it, for the whole car.
    pub parts: Vec<Spacer>,
}

/// Most combinations of piles looked at before a stock is called unsure.
const MOST_TRIED: usize = 100_000;

/// Whether a stock serves all the stacks that take from it.
#[derive(Debug, Clone, PartialEq)]
pub enum Supply {
    /// It does; the spacers of one place of each stack, thicknesses in mm, thickest first, with the adjustment's index.
    Enough(Vec<(usize, Vec<f64>)>),
    /// It does not: these adjustments cannot be built all at once.
    Short(Vec<usize>),
    /// Too many combinations to tell.
    Unsure,
}

/// A stack's demand on a stock.
struct Demand {
    adjustment: usize,
    places: u32,
    /// Ways to make the total in one place: pieces of each size of the stock, those with the fewest pieces first.
    ways: Vec<Vec<u32>>,
}

/// Whether the setup's stacks can be built all at once from a stock of its car.
///
/// A stack takes its spacers for each of its places. Of the ways to make a total, those with fewer pieces come first.
#[must_use]
pub fn supply(setup: &Setup, stock: &Stock) -> Supply {
    supply_of(&setup.car.adjustments, stock, |_, adjustment| {
        match setup.value_of(adjustment) {
            Chosen::Stack(total) => total,
            Chosen::Slide(_) | Chosen::Choice(_) => 0.0,
        }
    })
}

/// As [`supply`], with the total of each stack, mm, as told for its index and adjustment.
#[must_use]
pub fn supply_of(
    adjustments: &[Adjustment],
    stock: &Stock,
    total_of: impl Fn(usize, &Adjustment) -> f64,
) -> Supply {
    let mut demands = Vec::new();
    for (index, adjustment) in adjustments.iter().enumerate() {
        if let Kind::Stack {
            parts,
            stock: Some(FromStock { name, places }),
            ..
        } = &adjustment.kind
            && *name == stock.name
        {
            demands.push(Demand {
                adjustment: index,
                places: *places,
                ways: ways(parts, stock, *places, total_of(index, adjustment)),
            });
        }
    }
    let mut left: Vec<u32> = stock.parts.iter().map(|part| part.count).collect();
    let mut tried = 0;
    let mut taken = Vec::new();
    match assign(&demands, &mut left, &mut taken, &mut tried) {
        Some(true) => Supply::Enough(piles(&demands, &taken, stock)),
        Some(false) => Supply::Short(demands.iter().map(|demand| demand.adjustment).collect()),
        None => Supply::Unsure,
    }
}

/// Every way to make a total in one place from the sizes that both the stack and the stock have.
fn ways(parts: &[Spacer], stock: &Stock, places: u32, total: f64) -> Vec<Vec<u32>> {
    let most: Vec<u32> = stock
        .parts
        .iter()
        .map(|held| {
            let fits = parts
                .iter()
                .find(|part| (part.thickness - held.thickness).abs() < SAME_VALUE);
            fits.map_or(0, |part| part.count.min(held.count / places.max(1)))
        })
        .collect();
    let mut found = Vec::new();
    let mut counts = vec![0; most.len()];
    fill(stock, &most, 0, total, &mut counts, &mut found);
    found.sort_by_key(|counts: &Vec<u32>| counts.iter().sum::<u32>());
    found
}

fn fill(
    stock: &Stock,
    most: &[u32],
    size: usize,
    rest: f64,
    counts: &mut Vec<u32>,
    found: &mut Vec<Vec<u32>>,
) {
    if rest.abs() < SAME_VALUE {
        found.push(counts.clone());
        return;
    }
    if size == most.len() || found.len() >= MOST_TRIED {
        return;
    }
    let thickness = stock.parts[size].thickness;
    for count in 0..=most[size] {
        let left = rest - f64::from(count) * thickness;
        if left < -SAME_VALUE {
            break;
        }
        counts[size] = count;
        fill(stock, most, size + 1, left, counts, found);
    }
    counts[size] = 0;
}

/// Takes one way for each demand so that nothing runs out; `None` when too much was tried.
fn assign(
    demands: &[Demand],
    left: &mut Vec<u32>,
    taken: &mut Vec<usize>,
    tried: &mut usize,
) -> Option<bool> {
    let Some((first, others)) = demands.split_first() else {
        return Some(true);
    };
    for (index, way) in first.ways.iter().enumerate() {
        *tried += 1;
        if *tried > MOST_TRIED {
            return None;
        }
        let needs = || way.iter().map(|count| count * first.places);
        if needs().zip(left.iter()).any(|(need, have)| need > *have) {
            continue;
        }
        let before = left.clone();
        for (have, need) in left.iter_mut().zip(needs()) {
            *have -= need;
        }
        taken.push(index);
        if assign(others, left, taken, tried)? {
            return Some(true);
        }
        taken.pop();
        *left = before;
    }
    Some(false)
}

fn piles(demands: &[Demand], taken: &[usize], stock: &Stock) -> Vec<(usize, Vec<f64>)> {
    let pile = |way: &[u32]| {
        let pieces = way.iter().zip(&stock.parts);
        let mut pile: Vec<f64> = pieces
            .flat_map(|(&count, part)| (0..count).map(|_| part.thickness))
            .collect();
        pile.sort_by(|a, b| b.total_cmp(a));
        pile
    };
    demands
        .iter()
        .zip(taken)
        .map(|(demand, &way)| (demand.adjustment, pile(&demand.ways[way])))
        .collect()
}
