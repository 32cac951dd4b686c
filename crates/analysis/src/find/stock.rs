//! Spacers at hand, shared by several stacks.

use steerloft_setup::adjustment::Kind;
use steerloft_setup::setup::{Chosen, Setup};

/// Thicknesses are compared in whole thousandths of a mm.
const GRAINS: f64 = 1000.0;

/// A thickness of spacer at hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StockSpacer {
    /// mm.
    pub thickness: f64,
    /// How many there are, for all stacks together.
    pub count: u32,
}

/// Spacers at hand that several stacks share. What a stack's own parts allow holds besides.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// The spacers.
    pub spacers: Vec<StockSpacer>,
    /// The stacks that take from them: index of the adjustment, and at how many places of the car that stack sits (2 for
    /// one on either side).
    pub stacks: Vec<(usize, u32)>,
}

impl Stock {
    /// The stocks of a setup's car, with the stacks that take from them.
    #[must_use]
    pub fn of_car(setup: &Setup) -> Vec<Self> {
        let stocks = setup.car.stock.iter();
        stocks
            .map(|stock| Self {
                spacers: stock
                    .parts
                    .iter()
                    .map(|part| StockSpacer {
                        thickness: part.thickness,
                        count: part.count,
                    })
                    .collect(),
                stacks: stacks_of(setup, &stock.name),
            })
            .collect()
    }

    /// Whether the spacers make this value of an adjustment where no other stack takes any; always for an adjustment that
    /// takes none.
    pub(super) fn makes_alone(&self, adjustment: usize, value: &Chosen) -> bool {
        let Chosen::Stack(total) = value else {
            return true;
        };
        match self.places(adjustment) {
            Some(places) => self.makes(&[(grains(*total), places)]),
            None => true,
        }
    }

    /// At how many places an adjustment's stack takes from this stock.
    pub(super) fn places(&self, adjustment: usize) -> Option<u32> {
        let mut stacks = self.stacks.iter();
        let stack = stacks.find(|(index, _)| *index == adjustment)?;
        Some(stack.1)
    }

    /// Whether the spacers make all of these stacks at once: totals in grains, each at so many places alike.
    pub(super) fn makes(&self, stacks: &[(i64, u32)]) -> bool {
        let mut left: Vec<(i64, u32)> = self
            .spacers
            .iter()
            .map(|spacer| (grains(spacer.thickness), spacer.count))
            .filter(|(thickness, count)| *thickness > 0 && *count > 0)
            .collect();
        left.sort_by_key(|(thickness, _)| -thickness);
        fill(&mut left, stacks, 0)
    }
}

/// The stacks of a car that take from a stock, each with its places.
fn stacks_of(setup: &Setup, stock: &str) -> Vec<(usize, u32)> {
    let adjustments = setup.car.adjustments.iter().enumerate();
    adjustments
        .filter_map(|(index, adjustment)| match &adjustment.kind {
            Kind::Stack {
                stock: Some(from), ..
            } if from.name == stock => Some((index, from.places)),
            _ => None,
        })
        .collect()
}

/// A thickness in whole thousandths.
#[allow(
    clippy::cast_possible_truncation,
    reason = "the conversion saturates, and thicknesses of a checked setup are far smaller"
)]
pub(super) fn grains(thickness: f64) -> i64 {
    (thickness * GRAINS).round() as i64
}

/// Whether the spacers left fill the stacks, the first of which may use sizes from `size` on: tries the thick ones first.
fn fill(left: &mut [(i64, u32)], stacks: &[(i64, u32)], size: usize) -> bool {
    let Some(((rest, places), others)) = stacks.split_first() else {
        return true;
    };
    if *rest == 0 || *places == 0 {
        return fill(left, others, 0);
    }
    let Some((thickness, count)) = left.get(size).copied() else {
        return false;
    };
    let most = (rest / thickness).min(i64::from(count / places));
    for pieces in (0..=most).rev() {
        let used = u32::try_from(pieces)
            .unwrap_or(u32::MAX)
            .saturating_mul(*places);
        left[size].1 = count - used.min(count);
        let mut going_on = stacks.to_vec();
        going_on[0].0 = rest - pieces * thickness;
        if fill(left, &going_on, size + 1) {
            left[size].1 = count;
            return true;
        }
    }
    left[size].1 = count;
    false
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stock(spacers: &[(f64, u32)]) -> Stock {
        Stock {
            spacers: spacers
                .iter()
                .map(|&(thickness, count)| StockSpacer { thickness, count })
                .collect(),
            stacks: vec![(0, 2), (1, 1)],
        }
    }

    #[test]
    fn stacks_share_what_there_is() {
        let stock = stock(&[(1.0, 3), (0.5, 2)]);
        // Two places of 1 mm take two; 1 mm more is left, and two of 0.5.
        assert!(stock.makes(&[(1000, 2), (2000, 1)]));
        assert!(!stock.makes(&[(1000, 2), (2500, 1)]));
        // 0.5 at two places takes both thin ones.
        assert!(stock.makes(&[(1500, 2), (1000, 1)]));
        assert!(!stock.makes(&[(1500, 2), (500, 1)]));
    }

    #[test]
    fn a_thick_piece_is_left_out_where_only_thin_ones_add_up() {
        let stock = stock(&[(2.0, 1), (1.2, 2), (0.1, 3)]);
        assert!(stock.makes(&[(2400, 1)]));
        assert!(!stock.makes(&[(2500, 2)]));
        assert!(stock.makes(&[(0, 2)]));
    }

    #[test]
    fn only_stacks_that_are_named_take_from_it() {
        let stock = stock(&[(1.0, 1)]);
        assert!(
            !stock.makes_alone(0, &Chosen::Stack(1.0)),
            "two places need two"
        );
        assert!(stock.makes_alone(1, &Chosen::Stack(1.0)));
        assert!(stock.makes_alone(2, &Chosen::Stack(7.0)));
        assert!(stock.makes_alone(0, &Chosen::Slide(7.0)));
    }
}
