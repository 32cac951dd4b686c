//! How the wheels turn against each other.

use steerloft_solver::frame::Sides;

use super::{FigureGroup, FigureRow, NONE, Values, axle_if, each_signed, text_if};
use crate::format::{number, signed};
use crate::state::{Figures, FullLock, Turn};

/// The turn of the pose shown.
pub(super) fn turn_group(figures: &Figures) -> FigureGroup {
    let pose = &figures.pose;
    let share = pose.turn.and_then(|turn| turn.ackermann_share);
    let turning = pose.turning.as_ref();
    let radius = |value: Option<f64>| text_if(value, |radius| number(radius, 0));
    let rows = vec![
        FigureRow::new(
            "Steer angle",
            "\u{b0}",
            "Angle of each wheel from the car's centre line in the pose shown. Positive: to the left.",
            each_signed(pose.corners.map(|corner| corner.steer.to_degrees()), 2),
        )
        .headline(),
        FigureRow::new(
            "Ackermann",
            "%",
            "Ackermann share of the pose shown: how much more the inner wheel turns than the outer one. 0 % is parallel, 100 % the ideal pair without scrubbing, negative reversed. It has no value straight ahead.",
            axle_if(share, |share| number(share, 0)),
        )
        .headline(),
        FigureRow::new(
            "Ideal outer angle",
            "\u{b0}",
            "Angle at which the outer wheel would not scrub, with the inner wheel where it is. Turn it less for more Ackermann.",
            axle_if(pose.turn.map(|turn| turn.ideal_outer), |outer| {
                number(outer.to_degrees(), 2)
            }),
        ),
        FigureRow::new(
            "Turn radius",
            "mm",
            "From each tyre's middle to the point of the rear-axle line about which that wheel alone would roll.",
            Values::Sides(Sides::new(
                radius(turning.map(|turning| turning.centres.left.radius)),
                radius(turning.map(|turning| turning.centres.right.radius)),
            )),
        ),
        FigureRow::new(
            "Turn-centre spread",
            "mm",
            "Distance of the two wheels' turn centres on the rear-axle line. Zero for the ideal pair; more means more scrubbing.",
            axle_if(turning.map(|turning| turning.spread), |spread| {
                number(spread, 1)
            }),
        ),
        FigureRow::new(
            "Swept circle",
            "mm",
            "Diameter of the circle that the outer front tyre's outer edge sweeps in this pose, without slip.",
            axle_if(turning.map(|turning| 2.0 * turning.swept_radius), |swept| {
                number(swept, 0)
            }),
        ),
    ];
    FigureGroup {
        title: "Turn",
        pose: "in the pose shown",
        rows,
    }
}

/// What holds straight ahead at rest.
pub(super) fn straight_group(figures: &Figures) -> FigureGroup {
    let rest = &figures.rest;
    let rows = vec![
        FigureRow::new(
            "Ackermann at centre",
            "%",
            "The value that the Ackermann share comes to as the steering comes to straight ahead: a limit, from derivatives. It exists only where both wheels start to turn alike, as in a car whose sides are alike.",
            axle_if(rest.straight_share, |share| number(share, 1)),
        ),
        FigureRow::new(
            "Arm lines",
            "%",
            "A second measure in use: wheelbase over the distance behind the front axle at which the lines from kingpin to outer rod ball meet. 100 % is the old rule that they meet on the rear axle. It looks at the arms alone, not at the rods.",
            axle_if(rest.arm_lines.map(|lines| lines.share), |share| {
                number(share, 1)
            }),
        ),
        FigureRow::new(
            "Arm lines meet",
            "mm",
            "How far behind the front axle the lines from kingpin to outer rod ball meet. Negative: ahead of it.",
            axle_if(
                rest.arm_lines
                    .map(|lines| lines.behind)
                    .filter(|behind| behind.abs() < FARTHEST),
                |behind| signed(behind, 1),
            ),
        ),
        FigureRow::new(
            "Kingpin distance",
            "mm",
            "Distance of the points where the steering axes meet the road: with the wheelbase it gives the ideal pair of angles.",
            Values::Axle(number(rest.kingpin_distance, 2)),
        ),
    ];
    FigureGroup {
        title: "Ackermann straight ahead",
        pose: "at rest",
        rows,
    }
}

/// Lines that meet farther away than this are as good as parallel, mm.
const FARTHEST: f64 = 1e6;

/// Both ends of steering.
pub(super) fn lock_group(figures: &Figures) -> FigureGroup {
    let [left, right] = &figures.full_lock;
    let circle = |lock: &Option<FullLock>| {
        text_if(lock.as_ref().and_then(|lock| lock.circle), |circle| {
            number(circle, 0)
        })
    };
    let rows = vec![
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
        FigureRow::new(
            "Circle at lock",
            "mm",
            "Diameter of the smallest circle that the outer front tyre sweeps: in the left column turning left, in the right one turning right.",
            Values::Sides(Sides::new(circle(left), circle(right))),
        ),
    ];
    FigureGroup {
        title: "Full lock",
        pose: "at the travel shown",
        rows,
    }
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
    let mut row = FigureRow::new(name, "\u{b0}", meaning, Values::Sides(values)).headline();
    row.caution = lock.and_then(|lock| lock.cause.clone());
    row
}
