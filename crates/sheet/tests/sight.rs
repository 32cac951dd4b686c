//! Drawings made no finer than a screen can show.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::f64::consts::TAU;

use steerloft_analysis::Study;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::{Drawing, Outline, Sight, View, front_end};

fn polygons(drawing: &Drawing) -> impl Iterator<Item = &[[f64; 2]]> {
    drawing
        .shapes
        .iter()
        .filter_map(|shape| match &shape.outline {
            Outline::Polygon(corners) => Some(corners.as_slice()),
            _ => None,
        })
}

/// How far a polygon reaches along a direction.
fn reach(corners: &[[f64; 2]], [u, v]: [f64; 2]) -> f64 {
    let along = corners.iter().map(|corner| corner[0] * u + corner[1] * v);
    along.fold(f64::NEG_INFINITY, f64::max)
}

/// The drawings of every supplied car in every view, at the finest and as coarse as is allowed: by a share of their width.
fn pairs(share: f64) -> impl Iterator<Item = (f64, Drawing, Drawing)> {
    SUPPLIED.iter().flat_map(move |supplied| {
        let study = Study::new(&supplied.setup()).unwrap();
        View::ALL.map(|view| {
            let fine = front_end(study.layout(), study.rest(), view);
            let deviation = share * fine.bounds().unwrap().width();
            let coarse = front_end(study.layout(), study.rest(), Sight { view, deviation });
            (deviation, fine, coarse)
        })
    })
}

#[test]
fn a_coarse_drawing_strays_no_farther_than_it_may() {
    for share in [1e-4, 1e-3, 1e-2] {
        for (deviation, fine, coarse) in pairs(share) {
            assert_eq!(fine.shapes.len(), coarse.shapes.len());
            for (fine, coarse) in polygons(&fine).zip(polygons(&coarse)) {
                for step in 0..90 {
                    let (sin, cos) = (TAU * f64::from(step) / 90.0).sin_cos();
                    let lacks = reach(fine, [cos, sin]) - reach(coarse, [cos, sin]);
                    assert!(lacks.abs() <= deviation, "{lacks} of {deviation}");
                }
            }
        }
    }
}

#[test]
fn a_coarse_drawing_has_fewer_corners() {
    let corners = |drawing: &Drawing| polygons(drawing).map(<[_]>::len).sum::<usize>();
    // A tenth of a pixel of six hundred.
    let (fine, coarse) = pairs(0.1 / 600.0).fold((0, 0), |sums, (_, fine, coarse)| {
        (sums.0 + corners(&fine), sums.1 + corners(&coarse))
    });
    assert!(4 * coarse < 3 * fine, "{coarse} of {fine}");
}

#[test]
fn what_is_no_deviation_asks_for_the_finest_drawing() {
    for share in [0.0, -1.0, f64::NAN, f64::NEG_INFINITY] {
        assert!(pairs(share).all(|(_, fine, other)| fine == other));
    }
}
