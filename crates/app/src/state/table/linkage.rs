//! The tie rods, and how the linkage passes on.

use steerloft_solver::frame::Sides;

use super::{FigureGroup, FigureRow, Values, axle_if, each, each_signed, text_if};
use crate::format::number;
use crate::state::{Figures, RodFigures};

/// Shares shown as percent.
const PERCENT: f64 = 100.0;

/// The tie rods.
pub(super) fn rod_group(figures: &Figures) -> FigureGroup {
    let of_rods = |value: fn(&RodFigures) -> f64| each(figures.rods.map(|rod| value(&rod)), 2);
    let mut length = FigureRow::new(
        "Rod length",
        "mm",
        "Tie rod from ball centre to ball centre: what to dial in.",
        of_rods(|rod| rod.length),
    )
    .headline();
    if !(figures.rods.left.buildable && figures.rods.right.buildable) {
        length.caution = Some("The rod's parts cannot be screwed to this length.".to_owned());
    }
    let slopes = &figures.pose.rod_angles;
    let rows = vec![
        length,
        FigureRow::new(
            "Cup gap",
            "mm",
            "Gap between the open ends of the rod's two ball cups: the same length, as callipers measure it on the rod.",
            of_rods(|rod| rod.gap),
        )
        .headline(),
        FigureRow::new(
            "Rod angle, top",
            "\u{b0}",
            "Slope of the tie rod seen from above, in the pose shown. Positive: its outer ball lies ahead of the inner one.",
            each_signed(slopes.map(|slope| slope.top.to_degrees()), 2),
        ),
        FigureRow::new(
            "Rod angle, front",
            "\u{b0}",
            "Slope of the tie rod seen from the front, in the pose shown. Positive: its outer ball lies higher than the inner one.",
            each_signed(slopes.map(|slope| slope.front.to_degrees()), 2),
        ),
    ];
    FigureGroup {
        title: "Tie rods",
        pose: "in the pose shown",
        rows,
    }
}

/// How the linkage passes on in the pose shown.
pub(super) fn drive_group(figures: &Figures) -> FigureGroup {
    let pose = &figures.pose;
    let unit = figures.unit;
    let inner = pose
        .inner
        .map(|share| text_if(share, |share| number(share * PERCENT, 1)));
    let rows = vec![
        FigureRow::new(
            "Steering ratio",
            unit.per_degree(),
            "Steering input for each degree that the wheels turn on average. More is slower and finer.",
            axle_if(pose.ratio, |ratio| number(unit.ratio(ratio), 3)),
        ),
        FigureRow::new(
            "Outer transmission",
            "\u{b0}",
            "Angle between tie rod and steering arm. 90\u{b0} passes on most; near 0\u{b0} or 180\u{b0} the steering locks.",
            each(angles(figures), 1),
        ),
        FigureRow::new(
            "Outer share",
            "%",
            "How much of the rod's pull turns the wheel: 100 % is best, 0 % locks.",
            each(pose.outer.map(|outer| outer.share * PERCENT), 1),
        ),
        FigureRow::new(
            "Inner share",
            "%",
            "How much of the inner ball's motion goes along the rod: 100 % is best, 0 % locks.",
            Values::Sides(inner),
        ),
        FigureRow::new(
            "Drive effort",
            unit.effort_unit(),
            "What the servo, column or rack must hold against a moment of 1 Nm at each kingpin. Less is easier, and slower.",
            Values::Axle(number(unit.effort(pose.effort).abs(), 2)),
        ),
    ];
    FigureGroup {
        title: "Drive",
        pose: "in the pose shown",
        rows,
    }
}

fn angles(figures: &Figures) -> Sides<f64> {
    figures.pose.outer.map(|outer| outer.angle.to_degrees())
}
