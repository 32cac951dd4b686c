//! Which parts give what is wanted: the search over the parts at hand, and keeping the behaviour of another setup.

mod answer;
mod wanted;

use std::io::{IsTerminal, Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::mpsc::{RecvTimeoutError, channel};
use std::thread;
use std::time::Duration;

use clap::{Args, ValueHint};
use steerloft_analysis::find::{Findings, Free, Progress, Search, Stock, Want};
use steerloft_setup::file;
use steerloft_setup::setup::Setup;

use super::{PROBLEM, WRONG_USE, assembled};
use crate::state::search::behaviour_of;
use wanted::number;

/// How often progress is told.
const TELL_EVERY: Duration = Duration::from_millis(200);

/// What is asked of a search.
#[derive(Debug, Clone, Args)]
pub struct FindArguments {
    /// The present setup
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// What is wanted: NAME=VALUE or NAME=LEAST..MOST, such as bump-steer=0, camber.left=-1.5..-1, ackermann@20=100 (with the
    /// inner wheel at 20 degrees); or a whole curve by points, such as "toe-travel=-1:0.1 0:0 2:-0.1" (mm and degrees) or
    /// "inner-outer=10:9.5 20:18 +-0.2" (degrees, with a tolerance); *WEIGHT at its end says how much it matters
    #[arg(
        long = "want",
        value_name = "WANT",
        required = true,
        allow_hyphen_values = true
    )]
    pub wants: Vec<String>,
    /// What may change, and what becomes of the answer
    #[command(flatten)]
    pub space: SpaceArguments,
}

/// What is asked of a search for the behaviour of another setup.
#[derive(Debug, Clone, Args)]
pub struct MatchArguments {
    /// The setup to change
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// The setup whose toe against travel and outer against inner angle are to come back
    #[arg(long, value_name = "REFERENCE", value_hint = ValueHint::FilePath)]
    pub like: PathBuf,
    /// What may change, and what becomes of the answer
    #[command(flatten)]
    pub space: SpaceArguments,
}

/// What may change, and what becomes of the answer.
#[derive(Debug, Clone, Args)]
pub struct SpaceArguments {
    /// An adjustment that may change, by its name, or NAME=LEAST..MOST to keep it within a range, such as "Outer rod spacers=1..3";
    /// every adjustment where none is named
    #[arg(long = "free", value_name = "ADJUSTMENT")]
    pub free: Vec<String>,
    /// Most adjustments that may differ from the present setup
    #[arg(long, value_name = "N", default_value_t = 2)]
    pub most_changes: usize,
    /// How many findings to list
    #[arg(long, value_name = "N", default_value_t = 8)]
    pub keep: usize,
    /// Write a finding as a setup file
    #[arg(long, value_name = "SETUP", value_hint = ValueHint::FilePath)]
    pub save: Option<PathBuf>,
    /// Which finding of the list to write
    #[arg(long, value_name = "PLACE", default_value_t = 1)]
    pub take: usize,
    /// Replace a file that is there already
    #[arg(long)]
    pub force: bool,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// Searches for parts that give what is wanted.
pub(super) fn run(
    arguments: &FindArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let wants: std::result::Result<Vec<Want>, String> = arguments
        .wants
        .iter()
        .map(|text| wanted::read(text))
        .collect();
    let wants = match wants {
        Ok(wants) => wants,
        Err(problem) => {
            writeln!(errors, "{problem}")?;
            return Ok(ExitCode::from(WRONG_USE));
        }
    };
    match assembled(&arguments.file) {
        Ok((document, _)) => {
            let setup = document.setup().clone();
            searched(setup, wants, &arguments.space, out, errors)
        }
        Err(problem) => refused(&problem, errors),
    }
}

/// Searches for parts that bring the curves of another setup back.
pub(super) fn run_match(
    arguments: &MatchArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let (setup, reference) = match (assembled(&arguments.file), assembled(&arguments.like)) {
        (Ok((setup, _)), Ok((_, reference))) => (setup.setup().clone(), reference),
        (setup, reference) => {
            for problem in [setup.err(), reference.err()].into_iter().flatten() {
                writeln!(errors, "{problem}")?;
            }
            return Ok(ExitCode::from(PROBLEM));
        }
    };
    let wants = behaviour_of(&reference);
    searched(setup, wants, &arguments.space, out, errors)
}

fn refused(problem: &str, errors: &mut impl Write) -> Result<ExitCode> {
    writeln!(errors, "{problem}")?;
    Ok(ExitCode::from(PROBLEM))
}

fn searched(
    setup: Setup,
    wants: Vec<Want>,
    space: &SpaceArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let free = match free(&setup, &space.free) {
        Ok(free) => free,
        Err(problem) => {
            writeln!(errors, "{problem}")?;
            return Ok(ExitCode::from(WRONG_USE));
        }
    };
    let search = Search {
        stock: Stock::of_car(&setup),
        setup,
        wants,
        free,
        most_changes: Some(space.most_changes),
        keep: space.keep,
    };
    let findings = match findings(&search) {
        Ok(findings) => findings,
        Err(problem) => return refused(&problem, errors),
    };
    if space.json {
        super::json(&answer::JsonFindings::of(&search, &findings), out)?;
    } else {
        answer::print(&search, &findings, out)?;
    }
    match saved(&search, &findings, space) {
        Ok(()) if findings.list.is_empty() => {
            refused("No combination has a value for every want.", errors)
        }
        Ok(()) => Ok(ExitCode::SUCCESS),
        Err(problem) => refused(&problem, errors),
    }
}

/// The adjustments of these names, some kept within a range; all of them where none is named.
fn free(setup: &Setup, names: &[String]) -> std::result::Result<Vec<Free>, String> {
    let all = &setup.car.adjustments;
    if names.is_empty() {
        return Ok((0..all.len())
            .filter_map(|index| Free::all(setup, index))
            .collect());
    }
    let known = || {
        let names: Vec<String> = all.iter().map(|one| format!("\"{}\"", one.name)).collect();
        names.join(", ")
    };
    let index = |name: &str| {
        all.iter()
            .position(|one| one.name.eq_ignore_ascii_case(name.trim()))
    };
    let unknown = |name: &str| {
        let known = known();
        format!("There is no adjustment \"{name}\"; the car has {known}.")
    };
    let read = |text: &String| {
        if let Some(index) = index(text) {
            return Free::all(setup, index).ok_or_else(|| unknown(text));
        }
        let Some((name, range)) = text.rsplit_once('=') else {
            return Err(unknown(text));
        };
        let index = index(name).ok_or_else(|| unknown(name))?;
        let ends = range.split_once("..");
        let ends = ends.and_then(|(least, most)| Some((number(least)?, number(most)?)));
        let (least, most) = ends.ok_or_else(|| {
            format!("--free \"{text}\": write NAME=LEAST..MOST, such as \"{name}=1..3\".")
        })?;
        let free = Free::within(setup, index, least, most).ok_or_else(|| unknown(name))?;
        free.map_err(|error| format!("--free \"{text}\": {error}."))
    };
    names.iter().map(read).collect()
}

/// Runs a search, with its progress on a terminal.
fn findings(search: &Search) -> std::result::Result<Findings, String> {
    let progress = Progress::default();
    let shown = std::io::stderr().is_terminal();
    thread::scope(|scope| {
        let (tell, told) = channel::<()>();
        let worker = scope.spawn(|| {
            let found = search.run(&progress);
            drop(tell);
            found
        });
        while let Err(RecvTimeoutError::Timeout) = told.recv_timeout(TELL_EVERY) {
            if shown {
                // Progress that cannot be shown is no reason to stop.
                let _ = write!(
                    std::io::stderr(),
                    "\r\u{1b}[K{} of {} combinations",
                    progress.done(),
                    progress.all()
                );
            }
        }
        if shown {
            let _ = write!(std::io::stderr(), "\r\u{1b}[K");
        }
        match worker.join() {
            Ok(found) => found.map_err(|error| format!("{error}.")),
            Err(_) => Err("The search has failed; free other adjustments.".to_owned()),
        }
    })
}

/// Writes the finding that is to be kept, if one is.
fn saved(
    search: &Search,
    findings: &Findings,
    space: &SpaceArguments,
) -> std::result::Result<(), String> {
    let Some(path) = &space.save else {
        return Ok(());
    };
    let place = space.take.checked_sub(1);
    let Some(finding) = place.and_then(|place| findings.list.get(place)) else {
        return Err(format!(
            "There is no finding {}; the list has {}.",
            space.take,
            findings.list.len()
        ));
    };
    if path.exists() && !space.force {
        return Err(format!(
            "{}: there is such a file already; give another name, or --force to replace it",
            path.display()
        ));
    }
    let setup = finding
        .applied_to(&search.setup)
        .map_err(|error| error.to_string())?;
    file::write(path, &setup).map_err(|error| error.to_string())
}
