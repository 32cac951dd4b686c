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
pub(super) fn fit_for_painting(mut corners: Vec<Pos2>) -> Vec<Pos2> {
    keep_distinct(&mut corners);
    let count = corners.len();
    let edges_of = |index: usize| {
        let corner = corners[index];
        let [before, after] = [index + count - 1, index + 1].map(|next| corners[next % count]);
        [before - corner, after - corner]
    };
    let is_sharp_at = |index: usize| is_sharp(edges_of(index));
    if count < 3 || !(0..count).any(is_sharp_at) {
        return corners;
    }
    let mut blunt = Vec::with_capacity(count + 4);
    for (index, &corner) in corners.iter().enumerate() {
        let edges = edges_of(index);
        if is_sharp(edges) {
            blunt.extend(edges.map(|edge| corner + cut(edge)));
        } else {
            blunt.push(corner);
        }
    }
    blunt
}

/// Whether the corner between two edges that lead away from it is sharp.
fn is_sharp([before, after]: [Vec2; 2]) -> bool {
    // The cosine of the turn is compared, without the root that most corners, which are blunt, can do without.
    let along = before.dot(after);
    along > 0.0 && along * along > SHARPEST * SHARPEST * before.length_sq() * after.length_sq()
}

/// How far along an edge its end is cut off.
fn cut(edge: Vec2) -> Vec2 {
    edge.normalized() * CUT.min(edge.length() / 3.0)
}

/// Drops corners that fall on one another on screen, which would have an edge without direction.
fn keep_distinct(corners: &mut Vec<Pos2>) {
    let is_near = |one: Pos2, other: Pos2| one.distance_sq(other) < LEAST_EDGE * LEAST_EDGE;
    corners.dedup_by(|corner, last| is_near(*corner, *last));
    while let [first, .., last] = corners.as_slice()
        && is_near(*first, *last)
    {
        corners.pop();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use eframe::egui::pos2;

    #[test]
    fn corners_on_one_another_are_one() {
        let mut corners = vec![
            pos2(0.0, 0.0),
            pos2(0.0, 0.05),
            pos2(5.0, 0.0),
            pos2(5.0, 5.0),
            pos2(0.1, 0.0),
        ];
        keep_distinct(&mut corners);
        assert_eq!(corners, [pos2(0.0, 0.0), pos2(5.0, 0.0), pos2(5.0, 5.0)]);
        assert!(fit_for_painting(Vec::new()).is_empty());
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
        assert_eq!(fit_for_painting(square.to_vec()), square);
        let sliver = [
            pos2(0.0, 0.0),
            pos2(50.0, 0.3),
            pos2(100.0, 0.0),
            pos2(50.0, -0.3),
        ];
        let blunt = fit_for_painting(sliver.to_vec());
        assert_eq!(blunt.len(), 6, "{blunt:?}");
        assert!(blunt.iter().all(|corner| (0.4..99.6).contains(&corner.x)));
    }
}
