//! Stacks of spacers: the totals that the parts at hand reach, each with the fewest pieces.

use std::collections::BTreeMap;

use crate::adjustment::Spacer;
use crate::limits::{MAX_SPACER_SIZES, MAX_TOTALS, SPACER_GRAIN};

/// How many spacers of each size make up a total, in the order of the sizes.
type Counts = [u32; MAX_SPACER_SIZES];

/// The totals a stack can have.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Totals {
    sizes: Vec<f64>,
    by_grains: BTreeMap<i64, Counts>,
    complete: bool,
}

impl Totals {
    /// Every total up to `most` (mm) that the parts reach.
    ///
    /// Sizes that are not positive are left out. No more than [`MAX_SPACER_SIZES`] sizes, the thickest, are looked
    /// at and no more than [`MAX_TOTALS`] totals kept; [`Self::is_complete`] tells whether that was enough.
    pub(crate) fn new(parts: &[Spacer], most: f64) -> Self {
        let mut parts: Vec<Spacer> = parts
            .iter()
            .copied()
            .filter(|part| grains(part.thickness) > 0)
            .collect();
        parts.sort_by(|a, b| b.thickness.total_cmp(&a.thickness));
        let complete = parts.len() <= MAX_SPACER_SIZES;
        parts.truncate(MAX_SPACER_SIZES);
        let mut totals = Self {
            sizes: parts.iter().map(|part| part.thickness).collect(),
            by_grains: BTreeMap::from([(0, Counts::default())]),
            complete,
        };
        for (size, part) in parts.iter().enumerate() {
            totals.add_size(size, *part, grains(most));
        }
        totals
    }

    /// Whether all totals are known.
    pub(crate) fn is_complete(&self) -> bool {
        self.complete
    }

    /// The totals in ascending order, mm.
    pub(crate) fn ascending(&self) -> impl DoubleEndedIterator<Item = f64> {
        self.by_grains.keys().map(|&total| millimetres(total))
    }

    /// The total at hand nearest to `wanted`, mm; of two equally near the thinner.
    pub(crate) fn nearest(&self, wanted: f64) -> f64 {
        let nearest = self
            .ascending()
            .min_by(|a, b| (a - wanted).abs().total_cmp(&(b - wanted).abs()));
        nearest.unwrap_or(0.0)
    }

    /// Thicknesses that make up `total` with the fewest pieces, thickest first; none if it cannot be made.
    pub(crate) fn pieces(&self, total: f64) -> Option<Vec<f64>> {
        if (total - millimetres(grains(total))).abs() > SPACER_GRAIN / 10.0 {
            return None;
        }
        let counts = self.by_grains.get(&grains(total))?;
        let mut pieces = Vec::new();
        for (&count, &thickness) in counts.iter().zip(&self.sizes) {
            pieces.extend((0..count).map(|_| thickness));
        }
        Some(pieces)
    }

    fn add_size(&mut self, size: usize, part: Spacer, most: i64) {
        let without: Vec<(i64, Counts)> = self
            .by_grains
            .iter()
            .map(|(&total, &counts)| (total, counts))
            .collect();
        for (total, counts) in without {
            for count in 1..=part.count {
                let sum =
                    total.saturating_add(grains(part.thickness).saturating_mul(i64::from(count)));
                if sum > most {
                    break;
                }
                let mut with = counts;
                with[size] = count;
                self.offer(sum, with);
            }
        }
    }

    fn offer(&mut self, total: i64, counts: Counts) {
        let pieces = |counts: &Counts| counts.iter().sum::<u32>();
        let full = self.by_grains.len() >= MAX_TOTALS;
        match self.by_grains.get_mut(&total) {
            Some(known) if pieces(known) > pieces(&counts) => *known = counts,
            Some(_) => {}
            None if !full => {
                self.by_grains.insert(total, counts);
            }
            None => self.complete = false,
        }
    }
}

/// A thickness in whole grains.
#[allow(
    clippy::cast_possible_truncation,
    reason = "the conversion saturates, and a checked document holds far smaller thicknesses"
)]
fn grains(thickness: f64) -> i64 {
    (thickness / SPACER_GRAIN).round() as i64
}

/// Thickness of whole grains, mm; divided so that a decimal total is the nearest number to it.
#[allow(
    clippy::cast_precision_loss,
    reason = "totals are far below the integers that a float holds exactly"
)]
fn millimetres(grains: i64) -> f64 {
    grains as f64 / (1.0 / SPACER_GRAIN).round()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts(sizes: &[(f64, u32)]) -> Vec<Spacer> {
        sizes
            .iter()
            .map(|&(thickness, count)| Spacer { thickness, count })
            .collect()
    }

    #[test]
    fn totals_are_the_bounded_sums() {
        let totals = Totals::new(&parts(&[(0.5, 1), (1.0, 2)]), 2.4);
        assert_eq!(
            totals.ascending().collect::<Vec<_>>(),
            [0.0, 0.5, 1.0, 1.5, 2.0]
        );
        assert!(totals.is_complete());
    }

    #[test]
    fn fewest_pieces_thickest_first() {
        let totals = Totals::new(&parts(&[(0.5, 4), (2.0, 1), (1.0, 4)]), 10.0);
        assert_eq!(totals.pieces(3.5), Some(vec![2.0, 1.0, 0.5]));
        assert_eq!(totals.pieces(0.0), Some(vec![]));
        assert_eq!(totals.pieces(0.25), None);
        assert_eq!(totals.pieces(8.5), None);
        // 1.2 twice beats 2.0 with two of 0.2, though a thicker piece goes first.
        let totals = Totals::new(&parts(&[(2.0, 1), (1.2, 2), (0.2, 2)]), 10.0);
        assert_eq!(totals.pieces(2.4), Some(vec![1.2, 1.2]));
    }

    #[test]
    fn decimal_totals_are_exact() {
        let totals = Totals::new(&parts(&[(0.1, 9)]), 1.0);
        assert!(
            totals
                .ascending()
                .any(|total| total.to_bits() == 0.3_f64.to_bits())
        );
    }

    #[test]
    fn nearest_prefers_the_thinner_of_two() {
        let totals = Totals::new(&parts(&[(1.0, 3)]), 3.0);
        assert_eq!(totals.nearest(1.5).to_bits(), 1.0_f64.to_bits());
        assert_eq!(totals.nearest(9.0).to_bits(), 3.0_f64.to_bits());
        assert_eq!(totals.nearest(-9.0).to_bits(), 0.0_f64.to_bits());
    }

    #[test]
    fn too_many_totals_are_cut_and_told() {
        let fine = parts(&[(0.001, 50), (0.051, 50), (2.601, 50)]);
        assert!(!Totals::new(&fine, 1000.0).is_complete());
    }

    #[test]
    fn nonsense_parts_are_left_out() {
        let totals = Totals::new(&parts(&[(0.0, 5), (-1.0, 5), (f64::NAN, 5), (1.0, 1)]), 3.0);
        assert_eq!(totals.ascending().collect::<Vec<_>>(), [0.0, 1.0]);
    }
}
