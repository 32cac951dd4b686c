//! Closed outlines made fit for the painter, which draws long spikes at very sharp corners.

use eframe::egui::{Pos2, Vec2};

/// Edges shorter than this are left out, points: what they round off cannot be seen, and each costs the painter time.
const LEAST_EDGE: f32 = 0.8;

/// Cosine of the sharpest turn that a corner is left with.
const SHARPEST: f32 = -0.2;

/// Distance from a sharp corner at which its edges are cut, points.
const CUT: f32 = 0.5;

/// The ends of an outline that is on average thinner than this, points: seen so nearly edge-on that it is but a line.
pub(super) fn as_line(corners: &[Pos2], thinnest: f32) -> Option<[Pos2; 2]> {
    let first = corners.first()?;
    let farthest_from = |from: Pos2| {
        let squares = corners.iter().map(|to| (*to, from.distance_sq(*to)));
        squares.max_by(|a, b| a.1.total_cmp(&b.1))
    };
    let (one, _) = farthest_from(*first)?;
    let (other, square) = farthest_from(one)?;
    let length = square.sqrt();
    let next = corners.iter().cycle().skip(1);
    let twice_area: f32 = corners
        .iter()
        .zip(next)
        .map(|(a, b)| (a.x - one.x) * (b.y - one.y) - (b.x - one.x) * (a.y - one.y))
        .sum();
    (twice_area.abs() < 2.0 * thinnest * length).then_some([one, other])
}

/// The corners of an outline without those that fall on one another, and with sharp ones cut blunt.
pub(super) fn fit_for_painting(corners: impl Iterator<Item = Pos2>) -> Vec<Pos2> {
    let corners = distinct(corners);
    if corners.len() < 3 {
        return corners;
    }
    let count = corners.len();
    let mut blunt = Vec::with_capacity(count + 4);
    for (index, &corner) in corners.iter().enumerate() {
        let before = corners[(index + count - 1) % count] - corner;
        let after = corners[(index + 1) % count] - corner;
        if is_sharp(before, after) {
            blunt.extend([before, after].map(|edge| corner + cut(edge)));
        } else {
            blunt.push(corner);
        }
    }
    blunt
}

/// Whether the corner between two edges that lead away from it is sharp.
fn is_sharp(before: Vec2, after: Vec2) -> bool {
    // The cosine of the turn is compared, without the root that most corners, which are blunt, can do without.
    let along = before.dot(after);
    along > 0.0 && along * along > SHARPEST * SHARPEST * before.length_sq() * after.length_sq()
}

/// How far along an edge its end is cut off.
fn cut(edge: Vec2) -> Vec2 {
    edge.normalized() * CUT.min(edge.length() / 3.0)
}

/// Corners without those that fall on one another on screen, which would have an edge without direction.
fn distinct(corners: impl Iterator<Item = Pos2>) -> Vec<Pos2> {
    let mut kept: Vec<Pos2> = Vec::new();
    for corner in corners {
        if kept
            .last()
            .is_none_or(|last| last.distance_sq(corner) >= LEAST_EDGE * LEAST_EDGE)
        {
            kept.push(corner);
        }
    }
    while let [first, .., last] = kept.as_slice()
        && first.distance_sq(*last) < LEAST_EDGE * LEAST_EDGE
    {
        kept.pop();
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use eframe::egui::pos2;

    #[test]
    fn corners_on_one_another_are_one() {
        let corners = [
            pos2(0.0, 0.0),
            pos2(0.0, 0.05),
            pos2(5.0, 0.0),
            pos2(5.0, 5.0),
            pos2(0.1, 0.0),
        ];
        let kept = distinct(corners.into_iter());
        assert_eq!(kept, [pos2(0.0, 0.0), pos2(5.0, 0.0), pos2(5.0, 5.0)]);
        assert!(distinct(std::iter::empty()).is_empty());
    }

    #[test]
    fn what_is_seen_edge_on_is_a_line() {
        let sliver = [
            pos2(0.0, 0.0),
            pos2(50.0, 0.3),
            pos2(100.0, 0.0),
            pos2(50.0, -0.3),
        ];
        assert_eq!(as_line(&sliver, 1.0), Some([sliver[2], sliver[0]]));
        let square = [
            pos2(0.0, 0.0),
            pos2(9.0, 0.0),
            pos2(9.0, 9.0),
            pos2(0.0, 9.0),
        ];
        assert_eq!(as_line(&square, 1.0), None);
        assert_eq!(as_line(&[], 1.0), None);
    }

    #[test]
    fn a_square_stays_and_a_sliver_loses_its_tips() {
        let square = [
            pos2(0.0, 0.0),
            pos2(9.0, 0.0),
            pos2(9.0, 9.0),
            pos2(0.0, 9.0),
        ];
        assert_eq!(fit_for_painting(square.into_iter()), square);
        let sliver = [
            pos2(0.0, 0.0),
            pos2(50.0, 0.3),
            pos2(100.0, 0.0),
            pos2(50.0, -0.3),
        ];
        let blunt = fit_for_painting(sliver.into_iter());
        assert_eq!(blunt.len(), 6, "{blunt:?}");
        assert!(blunt.iter().all(|corner| (0.4..99.6).contains(&corner.x)));
    }
}
