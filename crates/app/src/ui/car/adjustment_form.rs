//! Writing an adjustment: what it is called, how it is set and what it does.

use eframe::egui::{Button, Frame, Margin, Stroke, Ui};
use steerloft_setup::adjustment::Unit;

use super::effect_form::{Per, choose, list};
use super::field::{complain, text_field};
use crate::state::{
    AdjustmentDraft, Bench, CarEditing, Change, DraftFault, DraftKind, DraftPart, OptionDraft,
    TypedNumber,
};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intent, Intents, names, widgets};

/// Width of a field for a value of the adjustment, points.
const FIELD_WIDTH: f32 = 76.0;

pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    let Some(draft) = &mut editing.draft else {
        return;
    };
    let tokens = Tokens::of(ui.ctx());
    let answer = Frame::new()
        .stroke(Stroke::new(1.0, tokens.accent))
        .corner_radius(Metrics::CORNER)
        .inner_margin(Margin::same(8))
        .show(ui, |ui| form(ui, bench, draft))
        .inner;
    match answer {
        Some(Answer::Take(edits)) => {
            intents.push(Intent::Finish);
            for edit in edits {
                intents.push(Intent::Preview(Change::Car(Box::new(edit))));
            }
            intents.push(Intent::Finish);
            editing.draft = None;
        }
        Some(Answer::Leave) => editing.draft = None,
        None => {}
    }
}

enum Answer {
    Take(Vec<steerloft_setup::edit::CarEdit>),
    Leave,
}

fn form(ui: &mut Ui, bench: &Bench, draft: &mut AdjustmentDraft) -> Option<Answer> {
    let edits = draft.edits(bench.setup());
    let fault = edits.as_ref().err();
    line(ui, "Name", "Adjustment name", &mut draft.name);
    complaint(ui, fault, |part| part == DraftPart::Name);
    ui.horizontal(|ui| {
        ui.label("Place");
        let places = names::PLACES.map(|place| (place, names::place(place).to_owned()));
        choose(ui, "Adjustment place", &mut draft.place, places);
    });
    line(ui, "Notes", "Adjustment notes", &mut draft.notes);
    complaint(ui, fault, |part| part == DraftPart::Notes);
    let kinds = DraftKind::ALL.iter().map(|kind| kind.title());
    let chosen = DraftKind::ALL.iter().position(|kind| *kind == draft.kind);
    if let Some(index) = widgets::segments(ui, "Adjustment kind", kinds, chosen) {
        draft.kind = DraftKind::ALL[index];
        if draft.kind == DraftKind::Stack && draft.base.text.trim() == "" {
            draft.base = "0".into();
        }
    }
    let car = &bench.setup().car;
    match draft.kind {
        DraftKind::Slide => {
            slide(ui, draft, fault);
            let per = Per::unit(draft.unit, draft.units);
            list(ui, car, &mut draft.effects, "Adjustment", per);
        }
        DraftKind::Stack => {
            stack(ui, bench, draft, fault);
            let per = Per::unit(Unit::Millimetres, draft.units);
            list(ui, car, &mut draft.effects, "Adjustment", per);
        }
        DraftKind::Choice => options(ui, bench, draft, fault),
    }
    complaint(ui, fault, |part| matches!(part, DraftPart::Effects(_)));
    let (text, name) = match draft.index {
        None => ("Add to the car", "Add to the car"),
        Some(_) => ("Take over", "Take over"),
    };
    ui.horizontal(|ui| {
        let take = widgets::named_button(ui, edits.is_ok(), Button::new(text), name).clicked();
        let leave = ui.button("Leave as it was").clicked();
        match edits {
            Ok(edits) if take => Some(Answer::Take(edits)),
            _ if leave => Some(Answer::Leave),
            _ => None,
        }
    })
    .inner
}

fn line(ui: &mut Ui, title: &str, name: &str, text: &mut String) {
    ui.horizontal(|ui| {
        ui.label(title);
        text_field(ui, text, name, f32::INFINITY, None);
    });
}

fn number(ui: &mut Ui, title: &str, name: &str, number: &mut TypedNumber) {
    ui.label(title);
    text_field(ui, &mut number.text, name, FIELD_WIDTH, None);
}

fn complaint(ui: &mut Ui, fault: Option<&DraftFault>, is_here: impl Fn(DraftPart) -> bool) {
    if let Some(fault) = fault.filter(|fault| is_here(fault.part)) {
        complain(ui, &format!("{}.", names::sentence(&fault.text)));
    }
}

fn slide(ui: &mut Ui, draft: &mut AdjustmentDraft, fault: Option<&DraftFault>) {
    let units = [Unit::Millimetres, Unit::Degrees];
    let chosen = units.iter().position(|unit| *unit == draft.unit);
    let titles = [draft.units.sign(), "degrees"].into_iter();
    if let Some(index) = widgets::segments(ui, "Adjustment unit", titles, chosen) {
        draft.unit = units[index];
    }
    ui.horizontal(|ui| {
        number(ui, "from", "Least value", &mut draft.least);
        number(ui, "to", "Greatest value", &mut draft.most);
    });
    complaint(ui, fault, |part| part == DraftPart::Range);
    ui.horizontal(|ui| {
        number(ui, "step", "Step", &mut draft.step);
        number(ui, "base", "Base value", &mut draft.base);
    });
    complaint(ui, fault, |part| {
        matches!(part, DraftPart::Step | DraftPart::Base)
    });
}

fn stack(ui: &mut Ui, bench: &Bench, draft: &mut AdjustmentDraft, fault: Option<&DraftFault>) {
    let unit = draft.units.sign();
    line(
        ui,
        &format!("Spacers, {unit}"),
        "Spacers at hand",
        &mut draft.parts,
    );
    complaint(ui, fault, |part| part == DraftPart::Parts);
    from_stock(ui, bench, draft);
    complaint(ui, fault, |part| part == DraftPart::Places);
    ui.horizontal(|ui| {
        let most = format!("at most, {unit}");
        number(ui, &most, "Greatest total", &mut draft.most);
        number(ui, "base", "Base value", &mut draft.base);
    });
    complaint(ui, fault, |part| {
        matches!(part, DraftPart::Range | DraftPart::Base)
    });
}

/// Which box of spacers the stack takes from, if the car has one, and how often it is built.
fn from_stock(ui: &mut Ui, bench: &Bench, draft: &mut AdjustmentDraft) {
    let stock = &bench.setup().car.stock;
    if stock.is_empty() {
        return;
    }
    ui.horizontal(|ui| {
        ui.label("from");
        let boxes = stock
            .iter()
            .map(|one| (Some(one.name.clone()), one.name.clone()));
        let options = std::iter::once((None, "spacers of its own".to_owned())).chain(boxes);
        choose(ui, "Box of spacers", &mut draft.stock, options);
    });
    if draft.stock.is_some() {
        ui.horizontal(|ui| {
            ui.label("built in");
            text_field(
                ui,
                &mut draft.places,
                "Places of the stack",
                FIELD_WIDTH,
                None,
            );
            ui.label("places");
        });
    }
}

fn options(ui: &mut Ui, bench: &Bench, draft: &mut AdjustmentDraft, fault: Option<&DraftFault>) {
    let mut gone = None;
    for (index, option) in draft.options.iter_mut().enumerate() {
        ui.push_id(("option", index), |ui| {
            let owner = format!("Position {}", index + 1);
            ui.horizontal(|ui| {
                let is_base = draft.base_option == index;
                let base = Button::selectable(is_base, "base").small();
                if widgets::named_button(ui, true, base, &format!("{owner} is the base")).clicked()
                {
                    draft.base_option = index;
                }
                text_field(ui, &mut option.name, &format!("{owner} name"), 110.0, None);
                let remove = Button::new("\u{d7}").small();
                if widgets::named_button(ui, true, remove, &format!("Remove {owner}")).clicked() {
                    gone = Some(index);
                }
            });
            ui.indent("effects", |ui| {
                list(
                    ui,
                    &bench.setup().car,
                    &mut option.effects,
                    &owner,
                    Per::choice(draft.units),
                );
            });
            complaint(ui, fault, |part| part == DraftPart::Options(Some(index)));
        });
    }
    if let Some(index) = gone {
        draft.options.remove(index);
        draft.base_option = draft.base_option.min(draft.options.len().saturating_sub(1));
    }
    if ui.button("Add a position").clicked() {
        draft.options.push(OptionDraft::default());
    }
    complaint(ui, fault, |part| {
        matches!(part, DraftPart::Options(None) | DraftPart::Base)
    });
}
