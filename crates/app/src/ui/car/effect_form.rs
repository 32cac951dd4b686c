//! Writing what an adjustment does to the car.

use eframe::egui::{Button, ComboBox, Ui};
use steerloft_setup::adjustment::{EffectSides, Member, PointName, Scalar, Unit};
use steerloft_setup::car::Car;
use steerloft_solver::frame::Side;

use super::field::text_field;
use crate::state::{CarNumber, EffectDraft, EffectKind, TypedNumber};
use crate::ui::{names, widgets};
use crate::units::Units;

/// Width of a field for a number, of which three stand in a row, points.
const NUMBER_WIDTH: f32 = 58.0;

const SIDES: [(EffectSides, &str); 4] = [
    (EffectSides::Mirrored, "mirrored"),
    (EffectSides::Together, "together"),
    (EffectSides::Left, "left"),
    (EffectSides::Right, "right"),
];

const MEMBERS: [Member; 4] = [
    Member::UpperArm,
    Member::LowerArm,
    Member::DragLink,
    Member::CrossLink,
];

const SCALARS: [Scalar; 8] = [
    Scalar::Wheelbase,
    Scalar::FrontStation,
    Scalar::RideHeight,
    Scalar::TyreRadius,
    Scalar::TyreWidth,
    Scalar::Camber,
    Scalar::Pitch,
    Scalar::Roll,
];

/// For what of an adjustment an effect is told, and in which unit of lengths.
#[derive(Debug, Clone, Copy)]
pub(super) struct Per {
    /// In words, such as "per mm".
    what: &'static str,
    units: Units,
}

impl Per {
    /// For each unit of a slide or a stack.
    pub(super) fn unit(unit: Unit, units: Units) -> Self {
        let what = match (unit, units) {
            (Unit::Degrees, _) => "per degree",
            (Unit::Millimetres, Units::Millimetres) => "per mm",
            (Unit::Millimetres, Units::Inches) => "per inch",
        };
        Self { what, units }
    }

    /// For a position of a choice.
    pub(super) fn choice(units: Units) -> Self {
        let what = "against the base";
        Self { what, units }
    }

    fn length(self) -> String {
        format!("{} {}", self.units.sign(), self.what)
    }

    fn angle(self) -> String {
        format!("degrees {}", self.what)
    }
}

/// Draws a list of effects to be written.
pub(super) fn list(ui: &mut Ui, car: &Car, effects: &mut Vec<EffectDraft>, owner: &str, per: Per) {
    let mut gone = None;
    for (index, effect) in effects.iter_mut().enumerate() {
        let name = format!("{owner} effect {}", index + 1);
        ui.push_id(&name, |ui| {
            ui.horizontal(|ui| {
                kind(ui, effect, &name);
                let remove = Button::new("\u{d7}").small();
                if widgets::named_button(ui, true, remove, &format!("Remove {name}")).clicked() {
                    gone = Some(index);
                }
            });
            ui.indent("effect", |ui| one(ui, car, effect, &name, per));
        });
    }
    if let Some(index) = gone {
        effects.remove(index);
    }
    let add = Button::new("Add an effect").small();
    if widgets::named_button(ui, true, add, &format!("{owner}: add an effect")).clicked() {
        effects.push(EffectDraft::default());
    }
}

fn kind(ui: &mut Ui, effect: &mut EffectDraft, name: &str) {
    choose(
        ui,
        &format!("{name} kind"),
        &mut effect.kind,
        EffectKind::ALL.map(|kind| (kind, kind.title().to_owned())),
    );
}

fn one(ui: &mut Ui, car: &Car, effect: &mut EffectDraft, name: &str, per: Per) {
    let moves_points = matches!(
        effect.kind,
        EffectKind::Move | EffectKind::Turn | EffectKind::Reflect
    );
    if moves_points {
        points(ui, car, effect, name);
        if effect.kind != EffectKind::Move {
            let places = points_of(car)
                .into_iter()
                .filter(|point| !point.is_direction());
            labelled(ui, "through", |ui| {
                let options = places.map(|point| (point, point.label().to_owned()));
                choose(ui, &format!("{name} through"), &mut effect.through, options);
            });
        }
        let what = match effect.kind {
            EffectKind::Move => format!("by, {}", per.length()),
            EffectKind::Turn => "about the direction".to_owned(),
            _ => "square to the direction".to_owned(),
        };
        ui.label(what);
        ui.horizontal(|ui| {
            for (part, axis) in effect.vector.iter_mut().zip(["x", "y", "z"]) {
                ui.label(axis);
                number(ui, part, &format!("{name} {axis}"));
            }
        });
    }
    match effect.kind {
        EffectKind::Lengthen => labelled(ui, "member", |ui| {
            let options = MEMBERS.map(|member| (member, member.label().to_owned()));
            choose(ui, &format!("{name} member"), &mut effect.member, options);
        }),
        EffectKind::Add => labelled(ui, "number", |ui| {
            let title = |scalar| CarNumber::Scalar(scalar).title().to_owned();
            let options = SCALARS.map(|scalar| (scalar, title(scalar)));
            choose(ui, &format!("{name} number"), &mut effect.scalar, options);
        }),
        _ => {}
    }
    match effect.kind {
        EffectKind::Move | EffectKind::Reflect => {}
        EffectKind::Turn => labelled(ui, &per.angle(), |ui| {
            number(ui, &mut effect.amount, &format!("{name} degrees"));
        }),
        EffectKind::Lengthen | EffectKind::Add => {
            let is_angle =
                effect.kind == EffectKind::Add && CarNumber::Scalar(effect.scalar).is_angle();
            let what = if is_angle { per.angle() } else { per.length() };
            labelled(ui, &what, |ui| {
                number(ui, &mut effect.amount, &format!("{name} amount"));
            });
        }
    }
    if effect.kind != EffectKind::Add {
        let chosen = SIDES.iter().position(|(sides, _)| *sides == effect.sides);
        let options = SIDES.iter().map(|(_, title)| *title);
        if let Some(index) = widgets::segments(ui, &format!("{name} sides"), options, chosen) {
            effect.sides = SIDES[index].0;
        }
    }
}

/// The chosen points as buttons that drop them, and a list of the others to add.
fn points(ui: &mut Ui, car: &Car, effect: &mut EffectDraft, name: &str) {
    let turns = effect.kind != EffectKind::Move;
    let mut dropped = None;
    ui.horizontal_wrapped(|ui| {
        for (index, point) in effect.points.iter().enumerate() {
            let button = Button::new(format!("{} \u{d7}", point.label())).small();
            let label = format!("{name}: leave out {}", point.label());
            if widgets::named_button(ui, true, button, &label).clicked() {
                dropped = Some(index);
            }
        }
    });
    if let Some(index) = dropped {
        effect.points.remove(index);
    }
    let others: Vec<PointName> = points_of(car)
        .into_iter()
        .filter(|point| turns || !point.is_direction())
        .filter(|point| !effect.points.contains(point))
        .collect();
    let list = ComboBox::from_id_salt(("points", name))
        .selected_text("add a point\u{2026}")
        .width(160.0);
    let response = list
        .show_ui(ui, |ui| {
            for point in others {
                if ui
                    .selectable_label(false, names::sentence(point.label()))
                    .clicked()
                {
                    effect.points.push(point);
                }
            }
        })
        .response;
    response.accessible_name(format!("{name}: add a point"));
}

/// Points and directions that the car has.
fn points_of(car: &Car) -> Vec<PointName> {
    let all = PointName::ALL.into_iter();
    all.filter(|point| *point == PointName::SpinAxis || car.point(*point, Side::Left).is_some())
        .collect()
}

fn number(ui: &mut Ui, number: &mut TypedNumber, name: &str) {
    text_field(ui, &mut number.text, name, NUMBER_WIDTH, None);
}

fn labelled(ui: &mut Ui, text: &str, add: impl FnOnce(&mut Ui)) {
    ui.horizontal(|ui| {
        ui.label(text);
        add(ui);
    });
}

/// A list of which one is chosen.
pub(super) fn choose<T: Clone + PartialEq>(
    ui: &mut Ui,
    name: &str,
    chosen: &mut T,
    options: impl IntoIterator<Item = (T, String)>,
) {
    let options: Vec<(T, String)> = options.into_iter().collect();
    let text = options
        .iter()
        .find(|(option, _)| option == chosen)
        .map_or("", |(_, text)| text.as_str());
    let list = ComboBox::from_id_salt(name)
        .selected_text(text)
        .width(150.0);
    let response = list
        .show_ui(ui, |ui| {
            for (option, text) in &options {
                ui.selectable_value(chosen, option.clone(), names::sentence(text));
            }
        })
        .response;
    response.accessible_name(name);
}
