//! What build errors do to figures and curves, as text or JSON.

mod json;

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_analysis::curves::{CurveKind, Trace};
use steerloft_analysis::effects::{Effects, INNER};
use steerloft_analysis::find::Progress;
use steerloft_analysis::tolerance::{
    Band, BandLine, MOST_SAMPLES, Request, SAMPLES, Spread, Tolerance,
};
use steerloft_setup::adjustment::Unit;
use steerloft_setup::car::BuildErrors;
use steerloft_setup::setup::Setup;

use self::json::JsonTolerance;
use super::arguments::wheel_angle;
use super::{assembled, ended, table};
use crate::format;

/// What is asked about build errors.
#[derive(Debug, Clone, Args)]
pub struct ToleranceArguments {
    /// The setup
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// How many cars within the build errors are drawn
    #[arg(long, value_name = "N", default_value_t = SAMPLES, value_parser = samples)]
    pub samples: usize,
    /// A curve whose band is wanted, such as camber-travel; without one, toe-travel and inner-outer
    #[arg(long = "curve", value_name = "CURVE", value_parser = curve)]
    pub curves: Vec<CurveKind>,
    /// Angle of the inner wheel at which the Ackermann share is taken, degrees
    #[arg(long, value_name = "ANGLE", default_value_t = INNER, value_parser = wheel_angle)]
    pub steer: f64,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

fn samples(text: &str) -> std::result::Result<usize, String> {
    let count = text.trim().parse().ok();
    count
        .filter(|count| (10..=MOST_SAMPLES).contains(count))
        .ok_or_else(|| format!("give a number from 10 to {MOST_SAMPLES}"))
}

fn curve(text: &str) -> std::result::Result<CurveKind, String> {
    CurveKind::from_name(text.trim()).ok_or_else(|| {
        let names: Vec<&str> = CurveKind::ALL.iter().map(|kind| kind.name()).collect();
        format!("there are {}", names.join(", "))
    })
}

/// What is printed.
struct Answer {
    setup: Setup,
    tolerance: Tolerance,
    effects: Effects,
}

/// Prints what build errors do.
pub(super) fn run(
    arguments: &ToleranceArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    ended(answer(arguments), errors, |answer| {
        if arguments.json {
            super::json(&JsonTolerance::of(arguments, &answer), out)
        } else {
            print(&answer, out)
        }
    })
}

fn answer(arguments: &ToleranceArguments) -> std::result::Result<Answer, String> {
    let (document, _) = assembled(&arguments.file)?;
    let setup = document.setup().clone();
    let mut request = Request {
        samples: arguments.samples,
        ..Request::usual(arguments.steer)
    };
    if !arguments.curves.is_empty() {
        request.curves.clone_from(&arguments.curves);
    }
    let problem = |reason| format!("{}: {reason}.", arguments.file.display());
    let tolerance = Tolerance::of(&setup, &request, &Progress::default()).map_err(problem)?;
    let effects = Effects::of(&setup, arguments.steer).map_err(problem)?;
    Ok(Answer {
        setup,
        tolerance,
        effects,
    })
}

/// Most dimensions that are listed.
const MOST_MATTERS: usize = 12;

/// Most dimensions that are told for a figure.
const MOST_SHARES: usize = 3;

fn print(answer: &Answer, out: &mut impl Write) -> Result<()> {
    let Answer {
        setup, tolerance, ..
    } = answer;
    let [drawn, apart] = [tolerance.samples, tolerance.apart];
    writeln!(
        out,
        "{drawn} cars within the build errors drawn; {apart} cannot be assembled"
    )?;
    if setup.car.build_errors == BuildErrors::default() {
        writeln!(
            out,
            "The build errors are typical ones (common practice, no source): the car's file gives none of its own."
        )?;
    }
    writeln!(out)?;
    writeln!(out, "Figures: nine in ten cars lie between 5 % and 95 %")?;
    table::aligned(&spread_rows(&tolerance.spreads), 1, out)?;
    writeln!(out)?;
    writeln!(
        out,
        "What matters most, by what it moves all figures (in noticeable differences)"
    )?;
    table::aligned(&matter_rows(answer), 1, out)?;
    writeln!(out)?;
    writeln!(out, "What the spread of each figure is due to")?;
    table::aligned(&share_rows(tolerance), 2, out)?;
    for band in &tolerance.bands {
        writeln!(out)?;
        print_band(band, out)?;
    }
    print_hidden(answer, out)
}

fn number(value: f64, decimals: usize) -> String {
    format::plain(&format::number(value, decimals))
}

fn spread_rows(spreads: &[Spread]) -> Vec<Vec<String>> {
    let heading = ["", "exact", "least", "5 %", "middle", "95 %", "greatest"];
    let mut rows = vec![heading.map(str::to_owned).to_vec()];
    rows.extend(spreads.iter().filter_map(|spread| {
        let quantiles = spread.quantiles?;
        let decimals = spread
            .measure
            .figure()
            .map_or(2, |kind| kind.facts().decimals);
        let mut row = vec![format::plain(&spread.measure.label())];
        row.push(
            spread
                .exact
                .map_or("-".to_owned(), |exact| number(exact, decimals)),
        );
        let values = [
            quantiles.least,
            quantiles.low,
            quantiles.middle,
            quantiles.high,
            quantiles.greatest,
        ];
        row.extend(values.map(|value| number(value, decimals)));
        Some(row)
    }));
    rows
}

fn matter_rows(answer: &Answer) -> Vec<Vec<String>> {
    let input = answer.setup.car.drive.input_unit();
    let matters = answer.tolerance.matters.iter().take(MOST_MATTERS);
    matters
        .map(|matter| {
            let unit = match matter.source.unit(input) {
                Unit::Degrees => "deg",
                Unit::Millimetres => "mm",
            };
            vec![
                matter.source.to_string(),
                format!("+-{} {unit}", number(matter.error, 2)),
                number(matter.effect, 2),
            ]
        })
        .collect()
}

fn share_rows(tolerance: &Tolerance) -> Vec<Vec<String>> {
    let spreads = tolerance.spreads.iter();
    spreads
        .filter(|spread| !spread.shares.is_empty())
        .map(|spread| {
            let shares = spread.shares.iter().take(MOST_SHARES);
            let parts: Vec<String> = shares
                .map(|share| {
                    let source = &tolerance.matters[share.source].source;
                    format!("{source} {:.0} %", 100.0 * share.share)
                })
                .collect();
            vec![format::plain(&spread.measure.label()), parts.join("; ")]
        })
        .collect()
}

fn print_band(band: &Band, out: &mut impl Write) -> Result<()> {
    writeln!(out, "{}", band.kind.title())?;
    if band.lines.is_empty() {
        return writeln!(out, "  this car has no such curve");
    }
    let heading = [
        "", "at", "exact", "least", "5 %", "middle", "95 %", "greatest",
    ];
    let mut rows = vec![heading.map(str::to_owned).to_vec()];
    rows.extend(band.lines.iter().flat_map(line_rows));
    table::aligned(&rows, 1, out)
}

/// Every third place will do for a reader.
const EVERY: usize = 3;

fn line_rows(line: &BandLine) -> impl Iterator<Item = Vec<String>> + '_ {
    let name = match line.trace {
        Trace::Left => "left",
        Trace::Right => "right",
        Trace::Axle | Trace::Ideal | Trace::Parallel => "axle",
    };
    line.points.iter().step_by(EVERY).map(move |point| {
        let quantiles = &point.quantiles;
        let values = [
            point.exact,
            quantiles.least,
            quantiles.low,
            quantiles.middle,
            quantiles.high,
            quantiles.greatest,
        ];
        let mut row = vec![name.to_owned(), number(point.at, 2)];
        row.extend(values.map(|value| number(value, 3)));
        row
    })
}

fn print_hidden(answer: &Answer, out: &mut impl Write) -> Result<()> {
    let hidden = answer.tolerance.hidden(&answer.effects);
    writeln!(out)?;
    if hidden.is_empty() {
        return writeln!(
            out,
            "Every step of an adjustment changes some figure by more than the build errors do."
        );
    }
    writeln!(
        out,
        "Steps that change every figure by less than the build errors may:"
    )?;
    for row in hidden {
        let step = &answer.effects.rows[row].step;
        let words = format!("{}: {} to {}", step.name, step.from, step.to);
        writeln!(out, "  {}", format::plain(&words))?;
    }
    Ok(())
}
