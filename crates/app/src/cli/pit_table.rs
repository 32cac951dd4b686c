//! From what was felt on the track to adjustments worth trying on this very car.

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use clap::{Args, ValueHint};
use serde::Serialize;
use steerloft_analysis::pit_table::{Advice, CAUTION, Symptom, Try, advice};
use steerloft_setup::setup::Setup;

use super::{assembled, ended, table};
use crate::format;

/// What is asked of the pit table.
#[derive(Debug, Clone, Args)]
pub struct PitTableArguments {
    /// Setup file
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// What was felt; without it, everything in turn
    #[arg(value_parser = symptoms())]
    pub symptom: Option<Symptom>,
    /// How many adjustments are listed for each figure, the strongest first
    #[arg(long, value_name = "COUNT", default_value_t = 3)]
    pub most: usize,
    /// As JSON, in full precision, with every adjustment
    #[arg(long)]
    pub json: bool,
}

/// Reads a symptom by its name.
fn symptoms() -> impl TypedValueParser<Value = Symptom> {
    let names =
        Symptom::ALL.map(|symptom| PossibleValue::new(symptom.name()).help(symptom.label()));
    PossibleValuesParser::new(names).map(|name| {
        let named = Symptom::ALL.into_iter().find(|one| one.name() == name);
        named.unwrap_or(Symptom::PushesAtEntry)
    })
}

/// Prints what is usually tried, with what a step of each adjustment does on this car.
pub(super) fn run(
    arguments: &PitTableArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let wanted = arguments
        .symptom
        .map_or(Symptom::ALL.to_vec(), |symptom| vec![symptom]);
    let answer = assembled(&arguments.file).and_then(|(document, _)| {
        let setup = document.setup().clone();
        let advised: std::result::Result<Vec<_>, _> = wanted
            .iter()
            .map(|&symptom| advice(&setup, symptom).map(|advice| (symptom, advice)))
            .collect();
        advised
            .map(|advised| (setup, advised))
            .map_err(|error| format!("{}: {error}", arguments.file.display()))
    });
    ended(answer, errors, |(setup, advised)| {
        if arguments.json {
            super::json(&JsonPitTable::of(arguments, &setup, &advised), out)
        } else {
            print(&setup, &advised, arguments.most, out)
        }
    })
}

fn print(
    setup: &Setup,
    advised: &[(Symptom, Vec<Advice>)],
    most: usize,
    out: &mut impl Write,
) -> Result<()> {
    writeln!(out, "{}", setup.car.name)?;
    for (symptom, advice) in advised {
        writeln!(out)?;
        writeln!(out, "{} ({})", symptom.label(), symptom.name())?;
        for (place, advice) in advice.iter().enumerate() {
            print_advice(place + 1, advice, most, out)?;
        }
    }
    writeln!(out)?;
    writeln!(out, "{CAUTION}")
}

fn print_advice(place: usize, advice: &Advice, most: usize, out: &mut impl Write) -> Result<()> {
    let figure = advice.aim.figure;
    let amount = |value: String| format::plain(&format::with_unit(&value, figure.unit()));
    let now = advice.now.map_or("this car has none".to_owned(), |now| {
        format!("now {}", amount(format::number(now, figure.decimals())))
    });
    writeln!(
        out,
        "  {place}. {} {}, {now}",
        advice.aim.direction.label(),
        figure.label()
    )?;
    writeln!(out, "     {}", advice.aim.tendency)?;
    let rows: Vec<Vec<String>> = advice
        .tries
        .iter()
        .take(most)
        .map(|step| {
            vec![
                format!("       {}", step.name),
                format::plain(&format!("{} to {}", step.from, step.to)),
                amount(format::signed(step.effect, figure.decimals())),
            ]
        })
        .collect();
    table::aligned(&rows, 2, out)?;
    if advice.now.is_some() && rows.is_empty() {
        writeln!(out, "       no step of an adjustment of this car does that")?;
    }
    Ok(())
}

/// The pit table as JSON holds it.
#[derive(Serialize)]
struct JsonPitTable<'a> {
    file: String,
    car: &'a str,
    caution: &'static str,
    symptoms: Vec<JsonSymptom<'a>>,
}

#[derive(Serialize)]
struct JsonSymptom<'a> {
    name: &'static str,
    felt: &'static str,
    advice: Vec<JsonAdvice<'a>>,
}

#[derive(Serialize)]
struct JsonAdvice<'a> {
    figure: &'static str,
    unit: String,
    direction: &'static str,
    tendency: &'static str,
    now: Option<f64>,
    tries: Vec<JsonTry<'a>>,
}

#[derive(Serialize)]
struct JsonTry<'a> {
    adjustment: &'a str,
    from: &'a str,
    to: &'a str,
    effect: f64,
}

impl<'a> JsonPitTable<'a> {
    fn of(
        arguments: &PitTableArguments,
        setup: &'a Setup,
        advised: &'a [(Symptom, Vec<Advice>)],
    ) -> Self {
        let symptoms = advised.iter().map(|(symptom, advice)| JsonSymptom {
            name: symptom.name(),
            felt: symptom.label(),
            advice: advice.iter().map(JsonAdvice::of).collect(),
        });
        Self {
            file: arguments.file.display().to_string(),
            car: &setup.car.name,
            caution: CAUTION,
            symptoms: symptoms.collect(),
        }
    }
}

impl<'a> JsonAdvice<'a> {
    fn of(advice: &'a Advice) -> Self {
        let one = |step: &'a Try| JsonTry {
            adjustment: &step.name,
            from: &step.from,
            to: &step.to,
            effect: step.effect,
        };
        Self {
            figure: advice.aim.figure.label(),
            unit: format::plain(advice.aim.figure.unit()),
            direction: advice.aim.direction.label(),
            tendency: advice.aim.tendency,
            now: advice.now,
            tries: advice.tries.iter().map(one).collect(),
        }
    }
}
