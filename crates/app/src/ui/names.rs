//! Plain names of the car's places and pivots.

use steerloft_setup::adjustment::{Place, PointName};
use steerloft_sheet::View;
use steerloft_solver::frame::Side;

/// Places in the order in which groups of adjustments are listed.
pub const PLACES: [Place; 7] = [
    Place::Servo,
    Place::SteeringDrive,
    Place::TieRod,
    Place::Knuckle,
    Place::Suspension,
    Place::Chassis,
    Place::Wheel,
];

/// Heading of a group of adjustments.
#[must_use]
pub const fn place(place: Place) -> &'static str {
    match place {
        Place::Servo => "Servo",
        Place::SteeringDrive => "Steering drive",
        Place::TieRod => "Rod ends",
        Place::Knuckle => "Knuckle",
        Place::Suspension => "Suspension",
        Place::Chassis => "Chassis",
        Place::Wheel => "Wheel and tyre",
    }
}

/// Name of a pivot with its side, if it has one of its own, such as "Outer tie-rod ball, left".
#[must_use]
pub fn pivot(name: PointName, side: Side) -> String {
    let point = sentence(name.label());
    if name.is_shared() {
        point
    } else {
        format!("{point}, {side}")
    }
}

/// Short name of a view within a text, such as "top view".
#[must_use]
pub fn view(view: View) -> String {
    let title = view.title().split(',').next().unwrap_or_default();
    title.to_lowercase()
}

/// A text with a capital first letter.
#[must_use]
pub fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
