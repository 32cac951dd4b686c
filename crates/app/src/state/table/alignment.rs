//! How the wheels and steering axes stand.

use steerloft_solver::figures::CornerFigures;
use steerloft_solver::frame::Sides;

use super::{FigureGroup, FigureRow, Values, each_signed};
use crate::format::{number, signed};
use crate::state::Figures;

/// Wheel alignment in the pose shown.
pub(super) fn group(figures: &Figures) -> FigureGroup {
    let pose = &figures.pose;
    let angle = |value: fn(&CornerFigures) -> f64| {
        each_signed(of(&pose.corners, |corner| value(corner).to_degrees()), 2)
    };
    let length = |value: fn(&CornerFigures) -> f64| each_signed(of(&pose.corners, value), 2);
    let rows = vec![
        FigureRow::new(
            "Toe",
            "\u{b0}",
            "Toe of each wheel with the steering straight ahead, at the wheel travel shown. Positive is toe-in: the fronts of the wheels closer together.",
            each_signed(pose.toe.map(f64::to_degrees), 2),
        )
        .headline(),
        FigureRow::new(
            "Total toe",
            "mm",
            "Gap between the wheels behind less the gap in front, across the diameter of the tyres, steering straight ahead. Positive is toe-in.",
            Values::Axle(signed(pose.toe_length, 2)),
        ),
        FigureRow::new(
            "Camber",
            "\u{b0}",
            "Lean of the wheel against the road. Negative: the top leans towards the car.",
            angle(|corner| corner.camber),
        )
        .headline(),
        FigureRow::new(
            "Caster",
            "\u{b0}",
            "Lean of the steering axis seen from the side. Positive: its top leans back.",
            angle(|corner| corner.caster),
        )
        .headline(),
        FigureRow::new(
            "Kingpin incl.",
            "\u{b0}",
            "Kingpin inclination: lean of the steering axis seen from the front. Positive: its top leans towards the car.",
            angle(|corner| corner.inclination),
        )
        .headline(),
        FigureRow::new(
            "Scrub",
            "mm",
            "Scrub radius: from where the steering axis meets the ground to the middle of the tyre. Positive: the tyre stands outboard of the axis.",
            length(|corner| corner.scrub_radius),
        )
        .headline(),
        FigureRow::new(
            "Trail",
            "mm",
            "Mechanical trail: how far the tyre's middle stands behind where the steering axis meets the ground. More of it centres the steering more.",
            length(|corner| corner.trail),
        )
        .headline(),
        FigureRow::new(
            "Hub offset",
            "mm",
            "From the steering axis out to the wheel centre, at the height of the hub. More of it lets bumps pull harder at the steering.",
            length(|corner| corner.axis_offset),
        ),
        FigureRow::new(
            "Hub trail",
            "mm",
            "How far the wheel centre stands behind the steering axis, at the height of the hub. Negative: ahead of it.",
            length(|corner| corner.castor_offset),
        ),
        FigureRow::new(
            "Track",
            "mm",
            "From the middle of one tyre to that of the other on the road, across the car.",
            Values::Axle(number(pose.track, 2)),
        ),
    ];
    FigureGroup {
        title: "Alignment",
        pose: "in the pose shown",
        rows,
    }
}

fn of(corners: &Sides<CornerFigures>, value: impl Fn(&CornerFigures) -> f64) -> Sides<f64> {
    corners.map(|corner| value(&corner))
}
