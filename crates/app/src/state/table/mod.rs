//! The key figures as a table of texts, shared by the window's strip and the printed report.

use steerloft_solver::frame::Sides;

use super::{Figures, FullLock, RodFigures, Turn};
use crate::format::{number, signed};

/// One figure with its name, unit and meaning.
#[derive(Debug, Clone, PartialEq)]
pub struct FigureRow {
    /// Plain name.
    pub name: &'static str,
    /// Unit, empty if it has none.
    pub unit: &'static str,
    /// What it means and which way is more.
    pub meaning: &'static str,
    /// The values as text.
    pub values: Values,
    /// Something about the values that needs attention.
    pub caution: Option<String>,
}

/// The values of a figure as text.
#[derive(Debug, Clone, PartialEq)]
pub enum Values {
    /// One for each side.
    Sides(Sides<String>),
    /// One for the axle.
    Axle(String),
}

/// Text for a value that does not exist in this pose.
const NONE: &str = "\u{2013}";

/// All key figures as texts, in the order in which they are shown.
#[must_use]
pub fn figure_table(figures: &Figures) -> Vec<FigureRow> {
    let mut rows = alignment_rows(figures);
    rows.extend(rod_rows(figures));
    rows.extend(turn_rows(figures));
    rows
}

fn alignment_rows(figures: &Figures) -> Vec<FigureRow> {
    let corners = &figures.corners;
    let each = |value: fn(&steerloft_solver::figures::CornerFigures) -> f64, decimals| {
        Values::Sides(Sides::new(
            signed(value(&corners.left), decimals),
            signed(value(&corners.right), decimals),
        ))
    };
    vec![
        row(
            "Toe",
            "\u{b0}",
            "Toe of each wheel with the steering straight ahead, at the wheel travel shown. Positive is toe-in: the fronts of the wheels closer together.",
            Values::Sides(figures.toe.map(|toe| signed(toe.to_degrees(), 2))),
        ),
        row(
            "Camber",
            "\u{b0}",
            "Lean of the wheel against the road. Negative: the top leans towards the car.",
            each(|corner| corner.camber.to_degrees(), 2),
        ),
        row(
            "Caster",
            "\u{b0}",
            "Lean of the steering axis seen from the side. Positive: its top leans back.",
            each(|corner| corner.caster.to_degrees(), 2),
        ),
        row(
            "Kingpin incl.",
            "\u{b0}",
            "Kingpin inclination: lean of the steering axis seen from the front. Positive: its top leans towards the car.",
            each(|corner| corner.inclination.to_degrees(), 2),
        ),
        row(
            "Scrub",
            "mm",
            "Scrub radius: from where the steering axis meets the ground to the middle of the tyre. Positive: the tyre stands outboard of the axis.",
            each(|corner| corner.scrub_radius, 2),
        ),
        row(
            "Trail",
            "mm",
            "Mechanical trail: how far the tyre's middle stands behind where the steering axis meets the ground. More of it centres the steering more.",
            each(|corner| corner.trail, 2),
        ),
        row(
            "Bump steer",
            "\u{b0}/mm",
            "Change of toe with wheel travel, straight ahead at rest. Positive: the wheel toes in when it is pushed up. Zero: it does not steer.",
            Values::Sides(figures.bump_steer.map(|gradient| {
                gradient.map_or_else(|| NONE.to_owned(), |g| signed(g.to_degrees(), 3))
            })),
        ),
    ]
}

fn rod_rows(figures: &Figures) -> Vec<FigureRow> {
    let of_rods = |value: fn(&RodFigures) -> f64| {
        Values::Sides(Sides::new(
            number(value(&figures.rods.left), 2),
            number(value(&figures.rods.right), 2),
        ))
    };
    let mut length = row(
        "Rod length",
        "mm",
        "Tie rod from ball centre to ball centre: what to dial in.",
        of_rods(|rod| rod.length),
    );
    if !(figures.rods.left.buildable && figures.rods.right.buildable) {
        length.caution = Some("The rod's parts cannot be screwed to this length.".to_owned());
    }
    vec![
        length,
        row(
            "Cup gap",
            "mm",
            "Gap between the open ends of the rod's two ball cups: the same length, as callipers measure it on the rod.",
            of_rods(|rod| rod.gap),
        ),
    ]
}

fn turn_rows(figures: &Figures) -> Vec<FigureRow> {
    let steer = figures
        .corners
        .map(|corner| signed(corner.steer.to_degrees(), 2));
    let share = figures.turn.and_then(|turn| turn.ackermann_share);
    let [left, right] = &figures.full_lock;
    vec![
        row(
            "Steer angle",
            "\u{b0}",
            "Angle of each wheel from the car's centre line in the pose shown. Positive: to the left.",
            Values::Sides(steer),
        ),
        row(
            "Ackermann",
            "%",
            "Ackermann share of the pose shown: how much more the inner wheel turns than the outer one. 0 % is parallel, 100 % the ideal pair without scrubbing, negative reversed. It has no value straight ahead.",
            Values::Axle(share.map_or_else(|| NONE.to_owned(), |share| number(share, 0))),
        ),
        lock_row(
            "Lock left",
            "Angles of the wheels from straight ahead at the end of steering to the left.",
            left.as_ref(),
        ),
        lock_row(
            "Lock right",
            "Angles of the wheels from straight ahead at the end of steering to the right.",
            right.as_ref(),
        ),
    ]
}

fn lock_row(name: &'static str, meaning: &'static str, lock: Option<&FullLock>) -> FigureRow {
    let values = lock.map_or_else(
        || Sides::new(NONE.to_owned(), NONE.to_owned()),
        |lock| {
            let (inner, outer) = (number(lock.sample.inner, 1), number(lock.sample.outer, 1));
            match lock.sample.turn {
                Turn::Left => Sides::new(inner, outer),
                Turn::Right => Sides::new(outer, inner),
            }
        },
    );
    let mut row = row(name, "\u{b0}", meaning, Values::Sides(values));
    row.caution = lock.and_then(|lock| lock.cause.clone());
    row
}

fn row(name: &'static str, unit: &'static str, meaning: &'static str, values: Values) -> FigureRow {
    FigureRow {
        name,
        unit,
        meaning,
        values,
        caution: None,
    }
}
