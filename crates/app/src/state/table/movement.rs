//! What the wheels do when the suspension moves.

use steerloft_solver::figures::{RollGradient, TravelGradient};
use steerloft_solver::frame::Sides;

use super::{FigureGroup, FigureRow, axle_if, each_if};
use crate::format::signed;
use crate::state::{Figures, InstantCentre};

/// What travel does, straight ahead at rest.
pub(super) fn travel_group(figures: &Figures) -> FigureGroup {
    let rest = &figures.rest;
    let rate = |value: fn(&TravelGradient) -> f64, decimals| {
        let per_mm = rest.travel.map(|rate| rate.as_ref().map(value));
        each_if(per_mm.map(|rate| rate.map(f64::to_degrees)), decimals)
    };
    let rows = vec![
        FigureRow::new(
            "Bump steer",
            "\u{b0}/mm",
            "Change of toe with wheel travel, straight ahead at rest. Positive: the wheel toes in when it is pushed up. Zero: it does not steer.",
            rate(|travel| travel.toe, 3),
        )
        .headline(),
        FigureRow::new(
            "Camber gain",
            "\u{b0}/mm",
            "Change of camber with wheel travel. Negative: the wheel's top leans in as it is pushed up, which makes up for roll.",
            rate(|travel| travel.camber, 3),
        ),
        FigureRow::new(
            "Caster gain",
            "\u{b0}/mm",
            "Change of caster with wheel travel. Positive: more caster as the wheel is pushed up.",
            rate(|travel| travel.caster, 3),
        ),
        FigureRow::new(
            "Inclination gain",
            "\u{b0}/mm",
            "Change of kingpin inclination with wheel travel. Positive: the axis leans in more as the wheel is pushed up.",
            rate(|travel| travel.inclination, 3),
        ),
        FigureRow::new(
            "Front-view arm",
            "mm",
            "From the tyre's middle inboard to the front-view instant centre, about which the wheel swings in bumps. Longer: less camber gain. Negative: the centre lies outboard. A dash: so far away that the wheel does not lean.",
            arm(&rest.front_centre),
        ),
        FigureRow::new(
            "Front centre height",
            "mm",
            "Height of the front-view instant centre over the road. Higher raises the roll centre.",
            height(&rest.front_centre),
        ),
        FigureRow::new(
            "Side-view arm",
            "mm",
            "From the tyre's middle rearward to the side-view instant centre. Negative: the centre lies ahead. A dash: so far away that the wheel moves without turning seen from the side.",
            arm(&rest.side_centre),
        ),
        FigureRow::new(
            "Side centre height",
            "mm",
            "Height of the side-view instant centre over the road. With the centre behind the wheel, higher means more anti-dive.",
            height(&rest.side_centre),
        ),
    ];
    FigureGroup {
        title: "Wheel travel",
        pose: "straight ahead at rest",
        rows,
    }
}

/// What roll does, straight ahead at rest, both tyres on the road.
pub(super) fn roll_group(figures: &Figures) -> FigureGroup {
    let rest = &figures.rest;
    let rate = |value: fn(&RollGradient) -> f64, decimals| {
        each_if(rest.roll.map(|rate| rate.as_ref().map(value)), decimals)
    };
    let per_degree = 1_f64.to_radians();
    let travel = rest
        .roll
        .map(|rate| rate.map(|roll| roll.travel * per_degree));
    let rows = vec![
        FigureRow::new(
            "Roll steer",
            "\u{b0}/\u{b0}",
            "Steer of each wheel for each degree of roll with both tyres on the road. Positive: roll to the right steers the wheel to the left. Both alike and positive: the front steers further into the turn that causes the roll.",
            rate(|roll| roll.steer, 3),
        ),
        FigureRow::new(
            "Camber in roll",
            "\u{b0}/\u{b0}",
            "Change of camber against the road for each degree of roll to the right. Nearer to zero: the wheel stays more upright.",
            rate(|roll| roll.camber, 3),
        ),
        FigureRow::new(
            "Travel in roll",
            "mm/\u{b0}",
            "Wheel travel for each degree of roll to the right. Positive: the wheel is pushed up.",
            each_if(travel, 2),
        ),
        FigureRow::new(
            "Roll centre height",
            "mm",
            "Height over the road of the point about which the front rolls at first. Higher: less roll and more jacking.",
            axle_if(rest.roll_centre.map(|centre| centre.height), |height| {
                signed(height, 2)
            }),
        ),
        FigureRow::new(
            "Roll centre offset",
            "mm",
            "How far the roll centre lies left of the centre line; zero for a car whose sides are alike.",
            axle_if(rest.roll_centre.map(|centre| centre.lateral), |lateral| {
                signed(lateral, 2)
            }),
        ),
    ];
    FigureGroup {
        title: "Roll",
        pose: "straight ahead at rest",
        rows,
    }
}

fn arm(centres: &Sides<Option<InstantCentre>>) -> super::Values {
    each_if(centres.map(|centre| centre.map(|centre| centre.arm)), 1)
}

fn height(centres: &Sides<Option<InstantCentre>>) -> super::Values {
    each_if(centres.map(|centre| centre.map(|centre| centre.height)), 1)
}
