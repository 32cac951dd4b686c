//! Checks of the adjustments.

use super::effects::{self, Use};
use super::values::{count, number, one_of, range, text};
use super::{Fault, Path, cross_link, stock, unique_names};
use crate::adjustment::{Adjustment, ChoiceOption, Kind, Spacer, Unit};
use crate::car::Car;
use crate::limits::{
    MAX_ANGLE, MAX_LENGTH, MAX_OPTIONS, MAX_SPACER_SIZES, MAX_SPACERS, MAX_STEPS, MAX_TOTALS,
    SPACER_GRAIN,
};
use crate::setup::Chosen;
use crate::spacers::Totals;
use crate::values::{SAME_VALUE, same_value, short};

pub(super) fn check(at: &Path, car: &Car) -> Result<(), Fault> {
    let names = car
        .adjustments
        .iter()
        .map(|adjustment| adjustment.name.as_str());
    unique_names(names, |index| at.item(index).field("name"), "adjustments")?;
    for (index, adjustment) in car.adjustments.iter().enumerate() {
        check_adjustment(&at.item(index), adjustment, car)?;
    }
    stock::check_taken(at, car)?;
    cross_link::check(at, car)
}

fn check_adjustment(at: &Path, adjustment: &Adjustment, car: &Car) -> Result<(), Fault> {
    text(&at.field("notes"), &adjustment.notes)?;
    let at = at.field("kind");
    match &adjustment.kind {
        Kind::Slide {
            unit,
            range,
            step,
            base,
            effects,
        } => {
            check_slide(&at, *unit, *range, *step, *base)?;
            effects::check(&at.field("effects"), effects, Use::Scaled, car)
        }
        Kind::Stack {
            parts,
            most,
            base,
            effects,
            ..
        } => {
            number(&at.field("most"), *most, SPACER_GRAIN, MAX_LENGTH, "mm")?;
            check_parts(&at.field("parts"), parts)?;
            check_totals(&at, parts, *most)?;
            check_stack_base(&at.field("base"), adjustment, *base)?;
            effects::check(&at.field("effects"), effects, Use::Scaled, car)
        }
        Kind::Choice { options, base } => check_choice(&at, options, base, car),
    }
}

fn check_slide(
    at: &Path,
    unit: Unit,
    limits: (f64, f64),
    step: Option<f64>,
    base: f64,
) -> Result<(), Fault> {
    let (most, unit) = match unit {
        Unit::Millimetres => (MAX_LENGTH, "mm"),
        Unit::Degrees => (MAX_ANGLE, "degrees"),
    };
    range(&at.field("range"), limits, (-most, most), unit, false)?;
    if let Some(step) = step {
        let span = limits.1 - limits.0;
        let least = (span / MAX_STEPS).max(SAME_VALUE * 10.0);
        // `Some` holds the step as its only element.
        number(
            &at.field("step").item(0),
            step,
            least,
            span.max(least),
            unit,
        )?;
    }
    number(&at.field("base"), base, limits.0, limits.1, unit)
}

fn check_parts(at: &Path, parts: &[Spacer]) -> Result<(), Fault> {
    if parts.is_empty() {
        return Err(Fault::new(
            at,
            "this stack has no spacers",
            "give at least one, such as (thickness: 1.0, count: 4)",
        ));
    }
    count(at, parts.len(), MAX_SPACER_SIZES, "sizes of spacer")?;
    for index in 0..parts.len() {
        check_part(&at.item(index), parts, index, MAX_SPACERS)?;
    }
    Ok(())
}

/// Checks one size of spacer in a list; `most` is how many there may be of one size.
pub(super) fn check_part(
    at: &Path,
    parts: &[Spacer],
    index: usize,
    most: u32,
) -> Result<(), Fault> {
    let part = &parts[index];
    let thickness = at.field("thickness");
    number(&thickness, part.thickness, SPACER_GRAIN, MAX_LENGTH, "mm")?;
    let grains = part.thickness / SPACER_GRAIN;
    if (grains - grains.round()).abs() > SAME_VALUE / SPACER_GRAIN {
        return Err(Fault::new(
            &thickness,
            format!(
                "a thickness of {} mm is finer than spacers are made",
                part.thickness
            ),
            format!("give a whole multiple of {SPACER_GRAIN} mm"),
        ));
    }
    if !(1..=most).contains(&part.count) {
        return Err(Fault::new(
            &at.field("count"),
            format!("{} spacers of one size are at hand", part.count),
            format!("give 1 to {most}"),
        ));
    }
    let listed_before = parts[..index]
        .iter()
        .any(|other| (other.thickness - part.thickness).abs() < SAME_VALUE);
    if listed_before {
        return Err(Fault::new(
            &thickness,
            format!("spacers of {} mm are listed twice", short(part.thickness)),
            "list each thickness once, with its count",
        ));
    }
    Ok(())
}

fn check_totals(at: &Path, parts: &[Spacer], most: f64) -> Result<(), Fault> {
    let totals = Totals::new(parts, most);
    if !totals.is_complete() {
        return Err(Fault::new(
            &at.field("parts"),
            format!("these spacers make more than {MAX_TOTALS} different totals"),
            "list fewer spacers, or give a smaller `most`",
        ));
    }
    if totals.ascending().nth(1).is_none() {
        return Err(Fault::new(
            &at.field("most"),
            "no spacer fits under this greatest total",
            "give at least the thickness of the thinnest spacer",
        ));
    }
    Ok(())
}

fn check_stack_base(at: &Path, adjustment: &Adjustment, base: f64) -> Result<(), Fault> {
    number(at, base, 0.0, MAX_LENGTH, "mm")?;
    let wanted = Chosen::Stack(base);
    let nearest = adjustment.nearest(&wanted);
    if same_value(&wanted, &nearest) {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("the spacers cannot make a base of {} mm", short(base)),
        format!("the nearest they make is {}", adjustment.label_of(&nearest)),
    ))
}

fn check_choice(at: &Path, options: &[ChoiceOption], base: &str, car: &Car) -> Result<(), Fault> {
    let options_at = at.field("options");
    count(&options_at, options.len(), MAX_OPTIONS, "options")?;
    if options.len() < 2 {
        return Err(Fault::new(
            &options_at,
            "there is nothing to choose from",
            "give at least two options",
        ));
    }
    let names = options.iter().map(|option| option.name.as_str());
    unique_names(
        names.clone(),
        |index| options_at.item(index).field("name"),
        "options",
    )?;
    for (index, option) in options.iter().enumerate() {
        let effects_at = options_at.item(index).field("effects");
        effects::check(&effects_at, &option.effects, Use::Whole, car)?;
        if option.name == base && !option.effects.is_empty() {
            return Err(Fault::new(
                &effects_at,
                "the base option has effects, but the car's points are given with it chosen",
                "leave its effects out and give the other options what they change against it",
            ));
        }
    }
    if !names.clone().any(|name| name == base) {
        return Err(Fault::new(
            &at.field("base"),
            format!("the base \"{base}\" names no option"),
            one_of(names),
        ));
    }
    Ok(())
}
