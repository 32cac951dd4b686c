//! What a car carries over when it becomes one of another kind: servo, adjustments, errors of single points.

use steerloft_solver::frame::Side;

use super::OtherKinds;
use crate::adjustment::{Adjustment, Effect, Kind, Member, PointName};
use crate::car::{Car, Drive, Servo, Spline};
use crate::servo::ServoBody;
use crate::values::same_value;

/// Lays the servo where the new drive has its arm, or gives it up.
pub(super) fn servo(other: &mut OtherKinds, old: &Drive) {
    let car = &mut other.setup.car;
    let Some(servo) = car.servo.take() else {
        return;
    };
    let body = ServoBody::of(&servo, old)
        .ok()
        .or_else(|| servo.class.typical_body());
    let laid = body.and_then(|body| Servo::lying(body, servo.class, &car.drive));
    if let Some(laid) = laid {
        // The arm is a new one: it sits on a tooth of its own.
        let spline = servo.spline.map(|spline| Spline {
            tooth: 0,
            stands_at: 0.0,
            trim: 0.0,
            ..spline
        });
        car.servo = Some(Servo {
            spline,
            action: servo.action,
            ..laid
        });
        other.guessed.push("place of the servo".to_owned());
    } else {
        other.given_up.push("servo".to_owned());
    }
    if car.drive.servo_axis().is_none() && car.saver.take().is_some() {
        other.given_up.push("servo saver".to_owned());
    }
}

/// Gives up the adjustments that cannot mean what they did: those that name something that the car has no more, and with
/// another drive those that name anything of it but the inner balls. The car stands as with them at their base.
pub(super) fn adjustments(other: &mut OtherKinds, has_other_drive: bool) {
    let car = &mut other.setup.car;
    let all = std::mem::take(&mut car.adjustments);
    for adjustment in all {
        if effects(&adjustment).all(|effect| still_holds(effect, car, has_other_drive)) {
            car.adjustments.push(adjustment);
            continue;
        }
        let chosen = other.setup.chosen.remove(&adjustment.name);
        let was_used = chosen.is_some_and(|chosen| !same_value(&chosen, &adjustment.base()));
        let stood = if was_used {
            ", which stood away from its base"
        } else {
            ""
        };
        let text = format!("adjustment \u{201c}{}\u{201d}{stood}", adjustment.name);
        other.given_up.push(text);
    }
}

/// Drops the errors of points that the car has no more.
pub(super) fn build_errors(other: &mut OtherKinds) {
    let car = &other.setup.car;
    let has = |point| point == PointName::SpinAxis || car.point(point, Side::Left).is_some();
    let mut own = car.build_errors.own.clone();
    own.retain(|own| has(own.point));
    other.setup.car.build_errors.own = own;
}

fn effects(adjustment: &Adjustment) -> Box<dyn Iterator<Item = &Effect> + '_> {
    match &adjustment.kind {
        Kind::Slide { effects, .. } | Kind::Stack { effects, .. } => Box::new(effects.iter()),
        Kind::Choice { options, .. } => {
            Box::new(options.iter().flat_map(|option| option.effects.iter()))
        }
    }
}

fn still_holds(effect: &Effect, car: &Car, has_other_drive: bool) -> bool {
    let point_holds = |point: &PointName| {
        let is_guess = has_other_drive && !point.is_of_corner() && *point != PointName::RodInner;
        let is_there = *point == PointName::SpinAxis || car.point(*point, Side::Left).is_some();
        is_there && !is_guess
    };
    match effect {
        Effect::Move { points, .. } => points.iter().all(point_holds),
        Effect::Turn {
            points, through, ..
        }
        | Effect::Reflect {
            points, through, ..
        } => points.iter().all(point_holds) && point_holds(through),
        Effect::Lengthen { member, .. } => {
            let suspension = &car.left.suspension;
            match member {
                Member::UpperArm => suspension.has_upper_arm(),
                Member::LowerArm => suspension.has_lower_arm(),
                Member::DragLink | Member::CrossLink => {
                    !has_other_drive && matches!(car.drive, Drive::TwinCrank { .. })
                }
            }
        }
        Effect::Add { .. } => true,
    }
}
