//! What a change of the car is called in the list of steps that can be undone.

mod lists;

use steerloft_setup::adjustment::{Adjustment, PointName};
use steerloft_setup::car::{
    BuildErrors, Car, Drive, DrivenCrank, InnerBallsOn, Position, RightCorner,
};
use steerloft_setup::edit::{DriveKind, SuspensionKind};
use steerloft_solver::frame::Side;

use super::super::change::from_to;
use super::super::{Part, equipment};
use super::studs::{RodEnd, are_apart, stud};
use super::{Field, NumberField, further_groups, groups};
use crate::format;
use crate::units::Units;

/// The name of a step between two cars that differ.
pub(in super::super) fn label(before: &Car, after: &Car, units: Units) -> String {
    kinds(before, after)
        .or_else(|| adjustments(&before.adjustments, &after.adjustments))
        .or_else(|| sides(before, after))
        .or_else(|| cranks(before, after))
        .or_else(|| lists::obstacles(before, after, units))
        .or_else(|| lists::stocks(before, after))
        .or_else(|| parts(before, after))
        .or_else(|| equipment::label(before, after, units))
        .or_else(|| point(before, after, units))
        .or_else(|| number(before, after, units))
        .or_else(|| joints(before, after))
        .or_else(|| (before.name != after.name).then(|| format!("Car name: {}", after.name)))
        .or_else(|| build_errors(&before.build_errors, &after.build_errors, units))
        .unwrap_or_else(|| "Car notes".to_owned())
}

/// Another suspension or drive.
fn kinds(before: &Car, after: &Car) -> Option<String> {
    let suspensions = [before, after].map(|car| SuspensionKind::of(&car.left.suspension).label());
    let drives = [before, after].map(|car| DriveKind::of(&car.drive).label());
    let changed =
        |what: &str, [was, is]: [&str; 2]| (was != is).then(|| format!("{what}{was} to {is}"));
    match (
        changed("Suspension: ", suspensions),
        changed("Drive: ", drives),
    ) {
        (Some(suspension), Some(_)) => {
            changed("", drives).map(|drive| format!("{suspension}, {drive}"))
        }
        (suspension, drive) => suspension.or(drive),
    }
}

/// What twin cranks are driven by and carry, and struts' slide lines given or not.
fn cranks(before: &Car, after: &Car) -> Option<String> {
    let slides = [before, after].map(|car| car.point(PointName::SlideDirection, Side::Left));
    match slides {
        [None, Some(_)] => return Some("Slide line of its own".to_owned()),
        [Some(_), None] => return Some("Slide line along the steering axis".to_owned()),
        _ => {}
    }
    let (
        Drive::TwinCrank {
            driven: was_driven,
            inner_on: was_on,
            ..
        },
        Drive::TwinCrank {
            driven, inner_on, ..
        },
    ) = (&before.drive, &after.drive)
    else {
        return None;
    };
    if was_driven != driven {
        return Some(match driven {
            DrivenCrank::Left => "Driven crank: right to left".to_owned(),
            DrivenCrank::Right => "Driven crank: left to right".to_owned(),
        });
    }
    (was_on != inner_on).then(|| match inner_on {
        InnerBallsOn::Cranks => "Inner balls on the cranks".to_owned(),
        InnerBallsOn::CrossLink => "Inner balls on the cross link".to_owned(),
    })
}

/// A part given that was left out, or the other way round. What becomes of the servo the equipment tells.
fn parts(before: &Car, after: &Car) -> Option<String> {
    if before.servo.is_some() != after.servo.is_some() {
        return None;
    }
    Part::ALL.into_iter().find_map(|part| {
        let title = capital(part.title());
        match (part.is_given(before), part.is_given(after)) {
            (false, true) => Some(format!("{title} given")),
            (true, false) => Some(format!("{title} left out")),
            _ => None,
        }
    })
}

/// Another build error.
fn build_errors(before: &BuildErrors, after: &BuildErrors, units: Units) -> Option<String> {
    let numbers = [
        ("Build error of points", before.points, after.points, "mm"),
        (
            "Build error of lengths",
            before.lengths,
            after.lengths,
            "mm",
        ),
        (
            "Build error of angles",
            before.angles,
            after.angles,
            "\u{b0}",
        ),
        ("Play in holes", before.hole_play, after.hole_play, "mm"),
    ];
    let told = |name: &str, was: f64, is: f64, unit| {
        let amount = |value| units.amount(value, unit, 3);
        let changed = was.to_bits() != is.to_bits();
        changed.then(|| format!("{name}: {}", from_to(&amount(was), &amount(is))))
    };
    let mut numbers = numbers.into_iter();
    let number = numbers.find_map(|(name, was, is, unit)| told(name, was, is, unit));
    let pairs = || before.own.iter().zip(&after.own);
    let own = || {
        pairs().find_map(|(was, is)| {
            let name = format!("Build error of {}", is.point.label());
            (was.point == is.point)
                .then(|| told(&name, was.error, is.error, "mm"))
                .flatten()
        })
    };
    number
        .or_else(own)
        .or_else(|| (before != after).then(|| "Build errors".to_owned()))
}

/// What is left of joints and rods beside their numbers.
fn joints(before: &Car, after: &Car) -> Option<String> {
    if before.joints != after.joints {
        let turned = RodEnd::ALL.into_iter().find(|end| {
            Side::BOTH
                .into_iter()
                .any(|side| stud(before, *end, side) != stud(after, *end, side))
        });
        let apart = [before, after].map(are_apart);
        return Some(match (apart, turned) {
            ([false, true], _) => "Right studs given separately".to_owned(),
            ([true, false], _) => "Right studs mirrored".to_owned(),
            (_, Some(end)) => format!("{} turned", end.title()),
            _ => "Ball joints".to_owned(),
        });
    }
    (before.tie_rod != after.tie_rod).then(|| "Hands of the thread".to_owned())
}

fn adjustments(before: &[Adjustment], after: &[Adjustment]) -> Option<String> {
    let missing = |one: &Adjustment, list: &[Adjustment]| {
        let mut others = list.iter();
        !others.any(|other| other.name == one.name)
    };
    let added = after.iter().find(|one| missing(one, before));
    let removed = before.iter().find(|one| missing(one, after));
    match (added, removed) {
        (Some(added), Some(removed)) => Some(format!("{} renamed {}", removed.name, added.name)),
        (Some(added), None) => Some(format!("{} added", added.name)),
        (None, Some(removed)) => Some(format!("{} removed", removed.name)),
        (None, None) => {
            let (was, is) = before.iter().zip(after).find(|(was, is)| was != is)?;
            Some(if was.name == is.name {
                format!("{} described", is.name)
            } else {
                "Adjustments in another order".to_owned()
            })
        }
    }
}

fn sides(before: &Car, after: &Car) -> Option<String> {
    match (&before.right, &after.right) {
        (RightCorner::Mirrored, RightCorner::Given(_)) => {
            Some("Right side given separately".to_owned())
        }
        (RightCorner::Given(_), RightCorner::Mirrored) => Some("Right side mirrored".to_owned()),
        _ => None,
    }
}

fn point(before: &Car, after: &Car, units: Units) -> Option<String> {
    let points = PointName::ALL
        .into_iter()
        .flat_map(|point| Side::BOTH.map(|side| (point, side)));
    for (point, side) in points {
        let (Some(was), Some(is)) = (before.point(point, side), after.point(point, side)) else {
            continue;
        };
        if was != is {
            let name = name_of(point, side);
            return Some(format!(
                "{name}: {} to {}",
                position(was, point, units),
                position(is, point, units)
            ));
        }
    }
    None
}

/// Name of a point with its side, if it has one of its own.
fn name_of(point: PointName, side: Side) -> String {
    let name = capital(point.label());
    if point.is_shared() {
        name
    } else {
        format!("{name}, {side}")
    }
}

/// A text with a capital first letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}

fn position(Position(x, y, z): Position, point: PointName, units: Units) -> String {
    let [x, y, z] = [x, y, z].map(|value| {
        if point.is_direction() {
            format::short(value, 3)
        } else {
            units.short(value, 2)
        }
    });
    format!("({x}, {y}, {z})")
}

fn number(before: &Car, after: &Car, units: Units) -> Option<String> {
    let listed = groups(after).into_iter().chain(further_groups());
    let numbers = listed.flat_map(|group| group.numbers);
    numbers.chain(NumberField::LINKS).find_map(|number| {
        let field = Field::Number(number);
        let (was, is) = (field.value(before)?, field.value(after)?);
        (was.to_bits() != is.to_bits()).then(|| {
            let amount = |value| units.amount(value, field.unit(after), 3);
            format!("{}: {}", number.title(), from_to(&amount(was), &amount(is)))
        })
    })
}
