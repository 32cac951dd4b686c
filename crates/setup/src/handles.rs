//! Handles: the pivots that can be dragged, the adjustments that move them, and the value a drag asks for.

use solver::axle::FrontAxle;
use solver::frame::{Point, Side, Vector};
use steerloft_solver as solver;

use crate::adjustment::{Kind, PointName};
use crate::layout::{Layout, STILL, axle_with};
use crate::points;
use crate::setup::{Chosen, Setup};

/// How often the value of a dragged slide is bettered; a turned point leaves its chord, and each round takes
/// out most of what is left of that.
const ROUNDS: usize = 4;

/// A pivot that at least one adjustment moves.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Handle {
    /// The pivot.
    pub point: PointName,
    /// Its side; what both sides share is there once, as the left side's.
    pub side: Side,
    /// Indices of the adjustments that move it, ascending.
    pub adjustments: Vec<usize>,
}

/// Every pivot that can be dragged, in the order of [`PointName::ALL`], left before right.
#[must_use]
pub fn handles(setup: &Setup) -> Vec<Handle> {
    let moves: Vec<Vec<FrontAxle>> = (0..setup.car.adjustments.len())
        .map(|index| axles_over(setup, index))
        .collect();
    let now = axle_with(setup, None);
    let mut handles = Vec::new();
    for point in PointName::ALL {
        for side in sides_of(point) {
            let Some(from) = points::point_of(&now, point, side) else {
                continue;
            };
            let adjustments: Vec<usize> = (0..moves.len())
                .filter(|&index| {
                    let places = moves[index].iter();
                    places
                        .filter_map(|axle| points::point_of(axle, point, side))
                        .any(|to| (to - from).norm() > STILL)
                })
                .collect();
            if !adjustments.is_empty() {
                handles.push(Handle {
                    point,
                    side,
                    adjustments,
                });
            }
        }
    }
    handles
}

/// The named point as drawn, before the mechanism is closed (chassis axes, mm); nothing for a direction or a
/// point the car does not have. The upper kingpin point of a swinging arm is the arm's ball.
#[must_use]
pub fn point_of(layout: &Layout, point: PointName, side: Side) -> Option<Point> {
    points::point_of(&layout.axle, point, side)
}

/// How far the point moves, mm in chassis axes, for one unit more of the adjustment from its current value;
/// for a choice, from here to the option that takes it farthest. Zero for what does not move it.
#[must_use]
pub fn displacement(setup: &Setup, adjustment: usize, point: PointName, side: Side) -> Vector {
    let Some(from) = place(setup, None, point, side) else {
        return Vector::zeros();
    };
    let farthest = over(setup, adjustment)
        .iter()
        .filter_map(|value| place(setup, Some((adjustment, value)), point, side))
        .map(|to| to - from)
        .max_by(|a, b| a.norm().total_cmp(&b.norm()));
    farthest.unwrap_or_else(Vector::zeros)
}

/// The value of the adjustment that brings the point nearest to where it is wanted (as drawn, chassis axes,
/// mm).
///
/// `in_view` holds the unit axes of the drawing plane, along which distance counts; none means all of space.
/// A slide's value lies on its steps unless `free`. What does not move the point in this view keeps its value.
#[must_use]
pub fn value_nearest(
    setup: &Setup,
    adjustment: usize,
    point: PointName,
    side: Side,
    wanted: Point,
    in_view: &[Vector],
    free: bool,
) -> Chosen {
    let current = setup.value(adjustment);
    let drag = Drag {
        setup,
        adjustment,
        point,
        side,
        wanted,
        in_view,
    };
    match &setup.car.adjustments[adjustment].kind {
        Kind::Slide { range, .. } => match drag.nearest_on_slide(*range, &current) {
            Some(value) if free => value,
            Some(value) => setup.car.adjustments[adjustment].nearest(&value),
            None => current,
        },
        Kind::Stack { .. } | Kind::Choice { .. } => drag.nearest_of_several(current),
    }
}

/// One drag of one point through one adjustment.
struct Drag<'a> {
    setup: &'a Setup,
    adjustment: usize,
    point: PointName,
    side: Side,
    wanted: Point,
    in_view: &'a [Vector],
}

impl Drag<'_> {
    /// What the eye sees of a displacement in this view.
    fn seen(&self, displacement: Vector) -> Vector {
        if self.in_view.is_empty() {
            return displacement;
        }
        let axes = self.in_view.iter();
        axes.map(|axis| axis * axis.dot(&displacement)).sum()
    }

    /// From the point at a value to where it is wanted, as seen.
    fn miss(&self, value: &Chosen) -> Option<Vector> {
        let at = (self.adjustment, value);
        let place = place(self.setup, Some(at), self.point, self.side)?;
        Some(self.seen(self.wanted - place))
    }

    /// Projects the wanted place on the chord of the point's path, then on the chord from there, and so on.
    fn nearest_on_slide(&self, range: (f64, f64), current: &Chosen) -> Option<Chosen> {
        let Chosen::Slide(current) = *current else {
            return None;
        };
        let span = range.1 - range.0;
        let mut value = current.max(range.0).min(range.1);
        for _ in 0..ROUNDS {
            // A chord to whichever end of the range is farther keeps well clear of rounding.
            let reach = if value - range.0 > span / 2.0 {
                -span / 2.0
            } else {
                span / 2.0
            };
            let miss = self.miss(&Chosen::Slide(value))?;
            let step = reach * CHORD;
            let chord = miss - self.miss(&Chosen::Slide(value + step))?;
            if chord.norm() <= STILL {
                return None;
            }
            let steps = miss.dot(&chord) / chord.norm_squared();
            value = (value + steps * step).max(range.0).min(range.1);
        }
        Some(Chosen::Slide(value))
    }

    /// The candidate seen nearest; the current value if none is nearer.
    fn nearest_of_several(&self, current: Chosen) -> Chosen {
        let distance = |value: &Chosen| self.miss(value).map_or(f64::INFINITY, |miss| miss.norm());
        let mut nearest = (distance(&current), current);
        let values = self.setup.car.adjustments[self.adjustment].values();
        for value in values.unwrap_or_default() {
            let candidate = distance(&value);
            if candidate < nearest.0 - STILL {
                nearest = (candidate, value);
            }
        }
        nearest.1
    }
}

/// Length of the chord that stands for the tangent of a slide's path, as a share of half its range.
const CHORD: f64 = 0.01;

/// The values whose effect shows what an adjustment moves from where it stands.
fn over(setup: &Setup, adjustment: usize) -> Vec<Chosen> {
    match setup.value(adjustment) {
        Chosen::Slide(value) => vec![Chosen::Slide(value + 1.0)],
        Chosen::Stack(total) => vec![Chosen::Stack(total + 1.0)],
        Chosen::Choice(_) => setup.car.adjustments[adjustment]
            .values()
            .unwrap_or_default(),
    }
}

fn axles_over(setup: &Setup, adjustment: usize) -> Vec<FrontAxle> {
    let values = over(setup, adjustment);
    values
        .iter()
        .map(|value| axle_with(setup, Some((adjustment, value))))
        .collect()
}

fn place(
    setup: &Setup,
    instead: Option<(usize, &Chosen)>,
    point: PointName,
    side: Side,
) -> Option<Point> {
    points::point_of(&axle_with(setup, instead), point, side)
}

fn sides_of(point: PointName) -> impl Iterator<Item = Side> {
    let sides = Side::BOTH.into_iter();
    sides.filter(move |&side| !point.is_shared() || side == Side::Left)
}
