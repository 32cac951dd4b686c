//! What the servo, its saver and the loads are: fields to be edited.

use eframe::egui::{ComboBox, Ui};
use steerloft_setup::car::{Servo, ServoClass};
use steerloft_setup::edit::CarEdit;
use steerloft_setup::servo::ServoPart;

use crate::state::{Bench, Equipment, Part};
use crate::theme::Tokens;
use crate::ui::drawer::equipment::{fields, heading};
use crate::ui::part::give_or_leave_out;
use crate::ui::{Intents, car_change};

pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    refused: &mut Option<String>,
    intents: &mut Intents,
) {
    let car = &bench.setup().car;
    if let Some(servo) = &car.servo {
        servo_fields(ui, bench, servo, refused, intents);
    } else {
        give_or_leave_out(ui, bench, Part::Servo, intents);
        if car.drive.servo_axis().is_none() {
            ui.weak("A rack has no servo arm: there is no servo to describe.");
        } else if Part::Servo.given(car).is_none() {
            ui.weak("The arm's axis lies along no edge of a case: a servo, if there is one, is described in the file.");
        }
    }
    heading(ui, "Servo saver");
    fields(ui, bench, &Equipment::SAVER, intents);
    give_or_leave_out(ui, bench, Part::Saver, intents);
    heading(ui, "Wheel loads");
    fields(ui, bench, &Equipment::LOADS, intents);
    give_or_leave_out(ui, bench, Part::Loads, intents);
}

fn servo_fields(
    ui: &mut Ui,
    bench: &Bench,
    servo: &Servo,
    refused: &mut Option<String>,
    intents: &mut Intents,
) {
    class(ui, bench, servo, refused, intents);
    heading(ui, "Speed and torque");
    fields(ui, bench, &Equipment::ACTION, intents);
    give_or_leave_out(ui, bench, Part::Action, intents);
    heading(ui, "Spline");
    fields(ui, bench, &Equipment::SPLINE, intents);
    give_or_leave_out(ui, bench, Part::Spline, intents);
    heading(ui, "Body and place");
    fields(ui, bench, &Equipment::CASE, intents);
    give_or_leave_out(ui, bench, Part::Servo, intents);
}

/// The class; another one is fitted with its typical body.
fn class(
    ui: &mut Ui,
    bench: &Bench,
    servo: &Servo,
    refused: &mut Option<String>,
    intents: &mut Intents,
) {
    ui.horizontal(|ui| {
        let name = ui.label("Class");
        let chosen = ComboBox::from_id_salt("servo class")
            .selected_text(servo.class.label())
            .show_ui(ui, |ui| {
                let classes = ServoClass::USUAL.into_iter();
                classes
                    .filter(|class| {
                        let is_chosen = *class == servo.class;
                        ui.selectable_label(is_chosen, class.label()).clicked() && !is_chosen
                    })
                    .last()
            });
        chosen.response.labelled_by(name.id).on_hover_text(
            "Another class is fitted with a body that is typical of it, to start from; measure your own. The mounts stay, and the arm moves to where such a servo has it.",
        );
        if let Some(class) = chosen.inner.flatten() {
            *refused = fit(bench, servo, class, intents).err();
        }
    });
    if let Some(reason) = refused {
        let tokens = Tokens::of(ui.ctx());
        ui.colored_label(tokens.warning, format!("Not fitted: {reason}"));
    }
}

/// Fits a typical servo of a class, or says why it cannot be.
fn fit(
    bench: &Bench,
    servo: &Servo,
    class: ServoClass,
    intents: &mut Intents,
) -> Result<(), String> {
    let Some(body) = class.typical_body() else {
        return Ok(());
    };
    let edit = CarEdit::FitServo(ServoPart {
        class,
        body,
        teeth: servo.spline.map(|spline| spline.teeth),
        action: servo.action,
    });
    bench
        .setup()
        .edited(&edit)
        .map_err(|error| error.to_string())?;
    intents.apply(car_change(edit));
    Ok(())
}
