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

/// The chain that keeps every sorted point on its left or on it, without its last point.
fn half_hull(points: impl Iterator<Item = [f64; 2]>) -> Vec<[f64; 2]> {
    let mut chain: Vec<[f64; 2]> = Vec::new();
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
    use super::hull;

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
