//! Plane geometry of outlines.

/// Convex hull of the points, counter-clockwise, without points on its edges.
///
/// Andrew, Another efficient algorithm for convex hulls in two dimensions (1979): one pass along the sorted
/// points for the lower chain, one back for the upper.
pub(crate) fn hull(mut points: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    points.sort_unstable_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    points.dedup();
    if points.len() < 3 {
        return points;
    }
    let mut chain = half_hull(points.iter().copied());
    let upper = half_hull(points.iter().rev().copied());
    chain.extend(upper);
    chain
}

/// Convex hull of convex rings of as many points each, counter-clockwise, whose edges are parallel one by one: circles
/// that stand parallel in space give such rings. Without points on its edges.
///
/// No sorting is needed: of the edges that are parallel, that of the ring which reaches farthest outward is an edge of
/// the hull; where the next one is of another ring, the hull goes from one to the other along points of that place in
/// the rings (derived here).
pub(crate) fn hull_of_similar_rings(rings: &[Vec<[f64; 2]>]) -> Vec<[f64; 2]> {
    let count = rings.iter().map(Vec::len).min().unwrap_or(0);
    let farthest: Vec<usize> = (0..count)
        .map(|place| farthest_out(rings, place, (place + 1) % count))
        .collect();
    let mut outline: Vec<[f64; 2]> = Vec::with_capacity(2 * count);
    for place in 0..count {
        let (came, goes) = (farthest[(place + count - 1) % count], farthest[place]);
        outline.push(rings[came][place]);
        if came != goes {
            wrap(rings, place, [came, goes], &mut outline);
        }
    }
    outline.dedup();
    start_at_least(&mut outline);
    let Some(&first) = outline.first() else {
        return outline;
    };
    half_hull(outline.into_iter().chain([first]))
}

/// The ring whose edge between two places is the farthest out, to the right of the way along it.
fn farthest_out(rings: &[Vec<[f64; 2]>], from: usize, to: usize) -> usize {
    let mut farthest = 0;
    for (index, ring) in rings.iter().enumerate().skip(1) {
        let (held, new) = (&rings[farthest], ring);
        // The longer edge tells the direction: that of a ring without size has none.
        let square = |ring: &[[f64; 2]]| {
            let [x, y] = [ring[to][0] - ring[from][0], ring[to][1] - ring[from][1]];
            x * x + y * y
        };
        let outward = if square(held) >= square(new) {
            -turn(held[from], held[to], new[from])
        } else {
            turn(new[from], new[to], held[from])
        };
        if outward > 0.0 {
            farthest = index;
        }
    }
    farthest
}

/// Goes counter-clockwise around the points that the rings have at a place, from that of one ring to that of another
/// (gift wrapping: R. A. Jarvis, "On the identification of the convex hull of a finite set of points in the plane",
/// 1973).
fn wrap(
    rings: &[Vec<[f64; 2]>],
    place: usize,
    [from, to]: [usize; 2],
    outline: &mut Vec<[f64; 2]>,
) {
    let mut current = from;
    for _ in rings {
        let mut next = to;
        for ring in 0..rings.len() {
            let [now, then, point] = [current, next, ring].map(|ring| rings[ring][place]);
            if turn(now, then, point) < 0.0 {
                next = ring;
            }
        }
        outline.push(rings[next][place]);
        if next == to {
            return;
        }
        current = next;
    }
}

/// Turns a ring so that it starts at its least point, from left to right and then upward.
fn start_at_least(ring: &mut [[f64; 2]]) {
    let order = |a: &[f64; 2], b: &[f64; 2]| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1]));
    let least = (0..ring.len()).min_by(|a, b| order(&ring[*a], &ring[*b]));
    ring.rotate_left(least.unwrap_or(0));
}

/// The chain that keeps every point, sorted along a line or around a ring, on its left or on it, without its last
/// point.
fn half_hull(points: impl Iterator<Item = [f64; 2]>) -> Vec<[f64; 2]> {
    let (least, most) = points.size_hint();
    let mut chain: Vec<[f64; 2]> = Vec::with_capacity(most.unwrap_or(least));
    for point in points {
        while let [.., before, last] = chain[..] {
            if turn(before, last, point) > 0.0 {
                break;
            }
            chain.pop();
        }
        chain.push(point);
    }
    chain.pop();
    chain
}

/// Twice the signed area of the triangle, positive counter-clockwise.
fn turn(a: [f64; 2], b: [f64; 2], c: [f64; 2]) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

#[cfg(test)]
mod tests {
    use std::f64::consts::TAU;

    use super::{hull, hull_of_similar_rings, turn};

    /// Points around an ellipse of the axes given, turned by 0.4 rad.
    fn ring(centre: [f64; 2], axes: [f64; 2]) -> Vec<[f64; 2]> {
        let (sin, cos) = 0.4_f64.sin_cos();
        (0..24)
            .map(|step| {
                let angle = TAU * f64::from(step) / 24.0;
                let (a, b) = (axes[0] * angle.cos(), axes[1] * angle.sin());
                [centre[0] + a * cos - b * sin, centre[1] + a * sin + b * cos]
            })
            .collect()
    }

    fn area(outline: &[[f64; 2]]) -> f64 {
        let next = outline.iter().cycle().skip(1);
        let crossed = outline.iter().zip(next);
        crossed
            .map(|(a, b)| (a[0] * b[1] - a[1] * b[0]) / 2.0)
            .sum()
    }

    #[test]
    fn similar_rings_have_the_hull_of_their_points() {
        let cases = [
            vec![ring([0.0, 0.0], [3.0, 5.0])],
            vec![ring([0.0, 0.0], [3.0, 5.0]), ring([9.0, 2.0], [3.0, 5.0])],
            vec![ring([0.0, 0.0], [3.0, 5.0]), ring([7.0, -4.0], [0.6, 1.0])],
            vec![ring([0.0, 0.0], [3.0, 5.0]), ring([0.2, 0.1], [0.3, 0.5])],
            vec![ring([0.0, 0.0], [0.0, 5.0]), ring([4.0, 2.0], [0.0, 3.0])],
            vec![ring([0.0, 0.0], [0.0, 0.0]), ring([4.0, 2.0], [1.0, 3.0])],
        ];
        for rings in cases {
            let (outline, sorted) = (hull_of_similar_rings(&rings), hull(rings.concat()));
            let (now, whole) = (area(&outline), area(&sorted));
            assert!((whole - now).abs() < 1e-9, "{now} {whole}");
            let from_the_rings = |point| rings.iter().any(|ring| ring.contains(point));
            assert!(outline.iter().all(from_the_rings));
            let around = outline.iter().chain(&outline);
            let around: Vec<[f64; 2]> = around.copied().collect();
            let turns = around
                .windows(3)
                .map(|corner| turn(corner[0], corner[1], corner[2]));
            assert!(
                turns.take(outline.len()).all(|turn| turn > 0.0),
                "{outline:?}"
            );
        }
        assert!(hull_of_similar_rings(&[]).is_empty());
    }

    #[test]
    fn hull_of_a_grid_is_its_four_corners() {
        let grid = (0..5)
            .flat_map(|i| (0..4).map(move |j| [f64::from(i), f64::from(j)]))
            .collect();
        assert_eq!(hull(grid), [[0.0, 0.0], [4.0, 0.0], [4.0, 3.0], [0.0, 3.0]]);
    }

    #[test]
    fn hull_of_points_on_one_line_is_its_ends() {
        let line = (0..6).map(|i| [f64::from(i), 2.0 * f64::from(i)]).collect();
        assert_eq!(hull(line), [[0.0, 0.0], [5.0, 10.0]]);
    }

    #[test]
    fn hull_of_one_place_is_one_point() {
        assert_eq!(hull(vec![[1.0, 1.0]; 4]), [[1.0, 1.0]]);
        assert_eq!(hull(Vec::new()), Vec::<[f64; 2]>::new());
    }
}
