//! The line in the field along which a limit is just reached.

use super::{BindingMap, Concern};

/// A piece of a line in the field: two places of steering input (degrees or mm) and travel (mm).
pub type Piece = [[f64; 2]; 2];

impl BindingMap {
    /// The line along which a concern just reaches its limit, in pieces; none where it is everywhere on one side.
    ///
    /// Each mesh of four poses is cut into two triangles, in which the margin is taken to be plane (derived here: what is
    /// plane is cut by its zero in one straight piece, so the pieces join). Meshes with a pose that is not known have no
    /// line.
    #[must_use]
    pub fn limit_line(&self, concern: Concern) -> Vec<Piece> {
        let mut pieces = Vec::new();
        for row in 1..self.travels.len() {
            for column in 1..self.inputs.len() {
                let corner = |right: usize, up: usize| {
                    self.corner(concern, column + right - 1, row + up - 1)
                };
                let corners = (corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1));
                let (Some(a), Some(b), Some(c), Some(d)) = corners else {
                    continue;
                };
                pieces.extend(zero_in([a, b, c]));
                pieces.extend(zero_in([a, c, d]));
            }
        }
        pieces
    }

    /// A place of the field with the concern's margin there.
    fn corner(&self, concern: Concern, column: usize, row: usize) -> Option<([f64; 2], f64)> {
        let margin = self.cell(column, row)?.as_ref().ok()?.margin(concern)?;
        Some(([*self.inputs.get(column)?, *self.travels.get(row)?], margin))
    }
}

/// Where a plane over a triangle is zero.
fn zero_in(corners: [([f64; 2], f64); 3]) -> Option<Piece> {
    let edges = [[0, 1], [1, 2], [2, 0]];
    let mut crossings = edges.into_iter().filter_map(|[from, to]| {
        let ((from, before), (to, after)) = (corners[from], corners[to]);
        // Zero counts as within, so that a line through a corner is met once.
        if (before >= 0.0) == (after >= 0.0) {
            return None;
        }
        let share = before / (before - after);
        Some([0, 1].map(|axis| from[axis] + share * (to[axis] - from[axis])))
    });
    Some([crossings.next()?, crossings.next()?])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plane_is_cut_where_it_is_zero() {
        // Margin x - 0.25 over the unit triangle.
        let corners = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0]].map(|at: [f64; 2]| (at, at[0] - 0.25));
        let piece = zero_in(corners);
        assert!(piece.is_some_and(|piece| {
            piece
                .iter()
                .all(|at| (at[0] - 0.25).abs() < 1e-12 && (0.0..=0.25).contains(&at[1]))
        }));
        assert_eq!(
            zero_in(corners.map(|(at, margin)| (at, margin + 1.0))),
            None
        );
    }
}
