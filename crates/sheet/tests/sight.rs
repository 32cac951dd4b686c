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

/// The drawings of every supplied car in every view, at the finest and as coarse as is allowed.
fn pairs(deviation: f64) -> impl Iterator<Item = (Drawing, Drawing)> {
    SUPPLIED.iter().flat_map(move |supplied| {
        let study = Study::new(&supplied.setup()).unwrap();
        View::ALL.map(|view| {
            let fine = front_end(study.layout(), study.rest(), view);
            let coarse = front_end(study.layout(), study.rest(), Sight { view, deviation });
            (fine, coarse)
        })
    })
}

#[test]
fn a_coarse_drawing_strays_no_farther_than_it_may() {
    for deviation in [0.01, 0.1, 1.0] {
        for (fine, coarse) in pairs(deviation) {
            assert_eq!(fine.shapes.len(), coarse.shapes.len());
            for (fine, coarse) in polygons(&fine).zip(polygons(&coarse)) {
                for step in 0..90 {
                    let (sin, cos) = (TAU * f64::from(step) / 90.0).sin_cos();
                    let lacks = reach(fine, [cos, sin]) - reach(coarse, [cos, sin]);
                    assert!((-1e-9..=deviation + 1e-9).contains(&lacks), "{lacks}");
                }
            }
        }
    }
}

#[test]
fn a_coarse_drawing_has_fewer_corners() {
    let corners = |drawing: &Drawing| polygons(drawing).map(<[_]>::len).sum::<usize>();
    for (fine, coarse) in pairs(0.05) {
        let (fine, coarse) = (corners(&fine), corners(&coarse));
        assert!(3 * coarse < 2 * fine, "{coarse} of {fine}");
    }
}

#[test]
fn what_is_no_deviation_asks_for_the_finest_drawing() {
    for deviation in [0.0, -1.0, f64::NAN, f64::NEG_INFINITY] {
        assert!(pairs(deviation).all(|(fine, other)| fine == other));
    }
}
