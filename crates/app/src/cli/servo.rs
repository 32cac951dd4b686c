//! The servo of a setup: tooth, trim, end points, load, fit and saver.

mod json;
mod saver;

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_analysis::InputUnit;
use steerloft_analysis::loads::{LoadCurve, LoadPoint};
use steerloft_analysis::saver::{Blows, blows};
use steerloft_analysis::servo::{Asymmetry, Centring, EndPoint, Ends, Question, ServoFit, Survey};
use steerloft_setup::car::{ServoAction, Spline};
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::Side;

use self::json::JsonServo;
use super::{assembled, ended, finite, table};
use crate::format;

/// What is asked about a servo.
#[derive(Debug, Clone, Args)]
pub struct ServoArguments {
    /// Setup file
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// Steering input at which the arm is wanted at the centre pulse, degrees (mm of a rack)
    #[arg(long, value_name = "INPUT", default_value_t = 0.0, allow_negative_numbers = true, value_parser = finite)]
    pub arm: f64,
    /// Teeth of the spline, such as 23, 24 or 25, in the place of those of the setup
    #[arg(long, value_name = "COUNT", value_parser = clap::value_parser!(u32).range(1..=200))]
    pub teeth: Option<u32>,
    /// How many teeth beside the nearest are shown
    #[arg(long, value_name = "COUNT", default_value_t = 2)]
    pub next: u8,
    /// End points that give this lock of the inner wheel to each side, degrees; without it, those for equal turning circles
    #[arg(long, value_name = "DEGREES", value_parser = finite)]
    pub lock: Option<f64>,
    /// Moment of a blow about one wheel's kingpin that the servo saver is tried with, N mm; without it, half more than
    /// opens it
    #[arg(long, value_name = "MOMENT", value_parser = finite)]
    pub blow: Option<f64>,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// What is told.
struct Answer {
    setup: Setup,
    survey: Survey,
    blows: Option<Blows>,
}

/// Prints what there is to know of a setup's servo.
pub(super) fn run(
    arguments: &ServoArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    ended(answer(arguments), errors, |answer| {
        if arguments.json {
            super::json(&JsonServo::of(&arguments.file, &answer), out)
        } else {
            print(&answer, out)
        }
    })
}

fn answer(arguments: &ServoArguments) -> std::result::Result<Answer, String> {
    let (document, _) = assembled(&arguments.file)?;
    let mut setup = document.setup().clone();
    if let (Some(teeth), Some(servo)) = (arguments.teeth, &mut setup.car.servo) {
        let stands_at = servo.spline.map_or(0.0, |spline| spline.stands_at);
        servo.spline = Some(Spline {
            teeth,
            tooth: 0,
            stands_at,
            trim: 0.0,
        });
    }
    let question = Question {
        arm: arguments.arm,
        next_teeth: arguments.next.into(),
        ends: arguments.lock.map_or(Ends::EqualCircles, Ends::Lock),
    };
    let problem = |error: &dyn std::fmt::Display| format!("{}: {error}", arguments.file.display());
    Ok(Answer {
        survey: Survey::new(&setup, &question).map_err(|error| problem(&error))?,
        blows: blows(&setup, arguments.blow).map_err(|error| problem(&error))?,
        setup,
    })
}

fn print(answer: &Answer, out: &mut impl Write) -> Result<()> {
    let survey = &answer.survey;
    writeln!(out, "{}", answer.setup.car.name)?;
    print_servo(&answer.setup, out)?;
    print_centring(&answer.setup, &survey.centring, survey.unit, out)?;
    print_ends(survey, out)?;
    if let Some(load) = &survey.load {
        print_load(load, survey.unit, out)?;
    }
    if let Some(fit) = &survey.fit {
        print_fit(fit, out)?;
    }
    if let Some(blows) = &answer.blows {
        saver::print(blows, out)?;
    }
    let cautions = survey.cautions();
    if !cautions.is_empty() {
        writeln!(out)?;
    }
    for caution in cautions {
        writeln!(out, "CAUTION: {}", format::plain(&caution))?;
    }
    writeln!(out)?;
    writeln!(out, "{CARE}")
}

/// What is said wherever somebody is about to set a servo.
const CARE: &str = "Wheels off the ground and power off before you work on linkages: a servo can trap fingers. Check full lock\n\
     by hand for binding before you power the steering. Figures are geometry, not a promise of handling.";

/// A number for a terminal.
fn number(value: f64, decimals: usize) -> String {
    format::plain(&format::number(value, decimals))
}

fn signed(value: f64, decimals: usize) -> String {
    format::plain(&format::signed(value, decimals))
}

fn or_none(value: Option<String>) -> String {
    value.unwrap_or_else(|| "-".to_owned())
}

fn print_servo(setup: &Setup, out: &mut impl Write) -> Result<()> {
    let Some(servo) = &setup.car.servo else {
        return writeln!(out, "No servo is given; `servo` in the file describes one.");
    };
    let size = servo.case.size;
    writeln!(
        out,
        "Servo: {}, body {} x {} x {} mm",
        servo.class.label(),
        format::short(size.0, 2),
        format::short(size.1, 2),
        format::short(size.2, 2)
    )?;
    let Some(action) = &servo.action else {
        return writeln!(out, "Its speed and torque are not given.");
    };
    let ServoAction {
        speed,
        torque,
        voltage,
        throw,
        pulse,
    } = action;
    writeln!(
        out,
        "  {torque} N mm and {speed} s for 60 deg at {voltage} V; throw {throw} deg each way, pulse {} +/- {} us",
        pulse.centre, pulse.side
    )
}

fn print_centring(
    setup: &Setup,
    centring: &Centring,
    unit: InputUnit,
    out: &mut impl Write,
) -> Result<()> {
    let word = unit.word();
    writeln!(out)?;
    writeln!(
        out,
        "Centre: arm wanted at {} {word}; locks of the inner wheel with the arm turned {} {word} each way",
        number(centring.wanted, 2),
        number(centring.throw, 2)
    )?;
    if let Some(spline) = setup.car.servo.and_then(|servo| servo.spline) {
        writeln!(
            out,
            "  {} teeth, {} deg from tooth to tooth; now on tooth {} with {} deg of trim, standing at {} deg",
            spline.teeth,
            number(spline.step(), 2),
            spline.tooth,
            number(spline.trim, 2),
            number(spline.centre_input(), 2)
        )?;
    }
    let mut rows = vec![
        [
            "",
            "stands at",
            "left over",
            "trim",
            "trim",
            "left",
            "right",
            "difference",
        ]
        .map(str::to_owned)
        .to_vec(),
        ["", word, word, word, "us", "deg", "deg", "deg"]
            .map(str::to_owned)
            .to_vec(),
    ];
    for choice in &centring.teeth {
        let tooth = &choice.tooth;
        let mut row = vec![
            format!("  tooth {}", tooth.tooth),
            signed(tooth.stands_at, 2),
            signed(tooth.error, 2),
            signed(tooth.trim, 2),
            or_none(tooth.trim_microseconds.map(|pulse| signed(pulse, 0))),
        ];
        row.extend(lock_cells(choice.untrimmed));
        rows.push(row);
    }
    let mut trimmed = vec![
        "  trimmed".to_owned(),
        signed(centring.wanted, 2),
        String::new(),
        String::new(),
        String::new(),
    ];
    trimmed.extend(lock_cells(centring.trimmed));
    rows.push(trimmed);
    table::aligned(&rows, 1, out)?;
    match centring.equal_locks {
        Some(centre) => writeln!(
            out,
            "Equal locks to both sides: arm at {} {word}",
            signed(centre, 2)
        ),
        None => writeln!(out, "No arm angle near straight ahead gives equal locks."),
    }
}

fn lock_cells(locks: Option<Asymmetry>) -> [String; 3] {
    locks.map_or(["-"; 3].map(str::to_owned), |locks| {
        [
            number(locks.left, 2),
            number(locks.right, 2),
            signed(locks.difference(), 2),
        ]
    })
}

fn print_ends(survey: &Survey, out: &mut impl Write) -> Result<()> {
    writeln!(out)?;
    writeln!(out, "End points")?;
    let word = survey.unit.word();
    let mut rows = vec![
        ["", "arm", "of throw", "pulse", "lock", "circle"]
            .map(str::to_owned)
            .to_vec(),
        ["", word, "%", "us", "deg", "radius mm"]
            .map(str::to_owned)
            .to_vec(),
    ];
    for side in Side::BOTH {
        let cells = survey
            .ends
            .get(side)
            .map_or(["-"; 5].map(str::to_owned), |end| end_cells(&end));
        rows.push(
            [format!("  {side}")]
                .into_iter()
                .chain(cells)
                .collect::<Vec<_>>(),
        );
    }
    table::aligned(&rows, 1, out)
}

fn end_cells(end: &EndPoint) -> [String; 5] {
    [
        signed(end.input, 2),
        or_none(end.share.map(|share| number(share, 1))),
        or_none(end.pulse.map(|pulse| number(pulse, 0))),
        number(end.lock, 2),
        or_none(end.swept_radius.map(|radius| number(radius, 0))),
    ]
}

/// How many points of the load curve are printed.
const ROWS: usize = 5;

fn print_load(load: &LoadCurve, unit: InputUnit, out: &mut impl Write) -> Result<()> {
    writeln!(out)?;
    writeln!(
        out,
        "Load of the standing car, by Gough's relation M = mu W sqrt(b^2/8 + e^2)"
    )?;
    let effort = if unit.word() == "deg" { "N mm" } else { "N" };
    let advantage = if unit.word() == "deg" { "" } else { "mm" };
    let mut rows = vec![
        [
            "  input",
            "left wheel",
            "right wheel",
            "asked of it",
            "advantage",
            "margin",
            "speed",
        ]
        .map(str::to_owned)
        .to_vec(),
        [
            &format!("  {}", unit.word()),
            "N mm",
            "N mm",
            effort,
            advantage,
            "",
            "deg/s",
        ]
        .map(str::to_owned)
        .to_vec(),
    ];
    let last = load.points.len().saturating_sub(1);
    let shown = (0..ROWS).filter_map(|row| load.points.get(row * last / (ROWS - 1)));
    rows.extend(shown.map(load_row));
    table::aligned(&rows, 0, out)?;
    if let Some(margin) = load.least_margin() {
        writeln!(
            out,
            "Least margin of torque {}; below 1 the servo stalls",
            number(margin, 2)
        )?;
    }
    if let Some(unloaded) = load.unloaded_time {
        let loaded = load.loaded_time.map_or_else(
            || "it does not get there against the load of the standing car".to_owned(),
            |time| format!("{} s against that load", number(time, 3)),
        );
        writeln!(
            out,
            "From lock to lock {} s without load; {loaded}",
            number(unloaded, 3)
        )?;
    }
    Ok(())
}

fn load_row(point: &LoadPoint) -> Vec<String> {
    vec![
        format!("  {}", signed(point.input, 1)),
        number(point.moments.left, 1),
        number(point.moments.right, 1),
        number(point.effort, 1),
        number(point.advantage, 3),
        or_none(point.margin.map(|margin| number(margin, 2))),
        or_none(point.speed.map(|speed| number(speed, 0))),
    ]
}

fn print_fit(fit: &ServoFit, out: &mut impl Write) -> Result<()> {
    writeln!(out)?;
    writeln!(out, "Fit of the body")?;
    let line = if fit.centre_line < 0.0 {
        format!("reaches {} mm over it", number(-fit.centre_line, 2))
    } else {
        format!("{} mm beside it", number(fit.centre_line, 2))
    };
    writeln!(out, "  chassis centre line: {line}")?;
    writeln!(
        out,
        "  underside of the chassis plate: {} mm over it",
        number(fit.over_chassis, 2)
    )?;
    for one in &fit.obstacles {
        let clear = if one.clearance < 0.0 {
            format!("runs {} mm into it", number(-one.clearance, 2))
        } else {
            format!("{} mm clear of it", number(one.clearance, 2))
        };
        writeln!(out, "  {}: {clear}", one.obstacle)?;
    }
    Ok(())
}
