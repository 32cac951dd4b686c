//! A car of another kind: what both kinds have is kept, and it is said what is given up and what is a guess.

mod carried;
mod drive;
mod suspension;

pub(super) use suspension::set_slide_lines;

use steerloft_solver::frame::Side;

use super::{DriveKind, EditError, SuspensionKind};
use crate::adjustment::PointName;
use crate::car::{Car, Position, RightCorner};
use crate::check::check;
use crate::setup::Setup;

/// A setup whose car has become one of other kinds, and what that meant.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherKinds {
    /// The setup.
    pub setup: Setup,
    /// What the car had and the new kinds have no place for.
    pub given_up: Vec<String>,
    /// What the new kinds need and the car did not have: guesses in proportion to its track, to be measured.
    pub guessed: Vec<String>,
    /// What was kept and means something else now.
    pub to_check: Vec<String>,
}

impl Setup {
    /// The setup with its car made one of these kinds.
    ///
    /// Wheels, kingpins, steering arms and inner tie-rod balls stay where they are, and so the rods keep their lengths and
    /// the wheels their directions at rest. Hinges of arms that the car has stay too. What is new is guessed in proportion
    /// to the track; positive input goes on steering the same way, about as far as before. Adjustments stay that
    /// name nothing of what has gone or is a guess.
    ///
    /// # Errors
    /// Where the car that this gives would not pass its checks.
    pub fn with_kinds(
        &self,
        suspension: SuspensionKind,
        drive: DriveKind,
    ) -> Result<OtherKinds, EditError> {
        let mut other = OtherKinds {
            setup: self.clone(),
            given_up: Vec::new(),
            guessed: Vec::new(),
            to_check: Vec::new(),
        };
        if suspension != SuspensionKind::of(&self.car.left.suspension) {
            suspension::change(&mut other, suspension);
        }
        let has_other_drive = drive != DriveKind::of(&self.car.drive);
        if has_other_drive {
            drive::change(&mut other, drive);
        }
        points(&mut other, &self.car);
        carried::adjustments(&mut other, has_other_drive);
        carried::build_errors(&mut other);
        check(&other.setup)?;
        Ok(other)
    }
}

/// Scale of a car against one of the size that guesses are for, a 1:10 car whose wheel centres lie 81 mm from the centre line.
fn scale(car: &Car) -> f64 {
    car.left.wheel_centre.1 / 81.0
}

/// A guess to a tenth of a mm.
fn rounded(x: f64, y: f64, z: f64) -> Position {
    let tenth = |value: f64| (value * 10.0).round() / 10.0;
    Position(tenth(x), tenth(y), tenth(z))
}

/// Names the points that have gone and those that are new or elsewhere, before all else that is told.
fn points(other: &mut OtherKinds, before: &Car) {
    let (mut all_gone, mut all_new) = (Vec::new(), Vec::new());
    let after = &other.setup.car;
    let are_apart = matches!(after.right, RightCorner::Given(_));
    for point in PointName::ALL {
        let sides = Side::BOTH.into_iter().filter(|side| {
            *side == Side::Left || !(point.is_shared() || point.is_of_corner() && !are_apart)
        });
        let (mut gone, mut new) = (false, false);
        for side in sides {
            match (before.point(point, side), after.point(point, side)) {
                (Some(_), None) => gone = true,
                (was, Some(is)) if was != Some(is) => new = true,
                _ => {}
            }
        }
        if gone {
            all_gone.push(point.label().to_owned());
        }
        if new {
            all_new.push(point.label().to_owned());
        }
    }
    other.given_up.splice(..0, all_gone);
    other.guessed.splice(..0, all_new);
}
