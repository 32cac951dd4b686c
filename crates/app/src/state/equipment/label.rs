//! What a change of the equipment is called in the list of steps that can be undone.

use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::Car;
use steerloft_solver::frame::Side;

use super::Equipment;
use crate::format;
use crate::units::Units;

/// Smaller differences come of rounding.
const DUST: f64 = 1e-9;

/// What the step between two cars is called whose equipment differs, such as "Torque: 900 to 1000 N mm"; nothing where the
/// equipment is the same.
pub(in super::super) fn label(before: &Car, after: &Car, units: Units) -> Option<String> {
    if before.servo != after.servo {
        match (&before.servo, &after.servo) {
            (None, Some(_)) => return Some("Servo given".to_owned()),
            (Some(_), None) => return Some("Servo taken out".to_owned()),
            (Some(was), Some(is)) if was.class != is.class => {
                let (was, is) = (was.class.label(), is.class.label());
                return Some(format!("Servo: {was} to {is}"));
            }
            (Some(was), Some(is)) if was.case.size != is.case.size => {
                return number(before, after, &Equipment::CASE, units)
                    .or_else(|| Some("Servo body".to_owned()));
            }
            _ => {}
        }
        let numbers: Vec<Equipment> =
            [&Equipment::CASE[..], &Equipment::SPLINE, &Equipment::ACTION].concat();
        return number(before, after, &numbers, units).or_else(|| Some("Servo".to_owned()));
    }
    if has_moved_as_a_whole(before, after) {
        return number(before, after, &Equipment::CASE, units);
    }
    if before.saver != after.saver {
        let named = number(before, after, &Equipment::SAVER, units);
        return named.or_else(|| Some("Servo saver".to_owned()));
    }
    if before.loads != after.loads {
        let named = number(before, after, &Equipment::LOADS, units);
        return named.or_else(|| Some("Wheel loads".to_owned()));
    }
    number(before, after, &Equipment::SIZES, units)
}

/// Whether the servo arm has moved with the balls it carries, as another body moves it: by hand points move one by one.
fn has_moved_as_a_whole(before: &Car, after: &Car) -> bool {
    let moved =
        |point: &PointName| before.point(*point, Side::Left) != after.point(*point, Side::Left);
    after.servo.is_some() && PointName::ALL.iter().filter(|point| moved(point)).count() > 1
}

fn number(before: &Car, after: &Car, numbers: &[Equipment], units: Units) -> Option<String> {
    numbers.iter().find_map(|number| {
        let (was, is) = (number.value(before)?, number.value(after)?);
        let unit = units.unit(number.unit(), number.decimals());
        let from = format::short(was * unit.factor, unit.decimals);
        let to = units.amount(is, number.unit(), number.decimals());
        ((was - is).abs() > DUST).then(|| format!("{}: {from} to {to}", number.title()))
    })
}
