//! A folder of setups: which was made from which, what each changed, and where words are found in them.

mod json;

use std::collections::BTreeMap;
use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_setup::compare::Comparison;
use steerloft_setup::library::{Entry, Hit, Library, Tree};

use self::json::JsonHistory;
use super::{PROBLEM, WRONG_USE};
use crate::format;

/// What is asked of a folder.
#[derive(Debug, Clone, Args)]
pub struct HistoryArguments {
    /// Folder of setup files
    #[arg(value_hint = ValueHint::DirPath)]
    pub folder: PathBuf,
    /// Only setups in which every one of these words is found, in names, notes, runs or chosen parts
    #[arg(long, value_name = "WORDS")]
    pub search: Option<String>,
    /// As JSON
    #[arg(long)]
    pub json: bool,
}

/// What a folder holds and what was found in it.
struct Told {
    held: Library,
    tree: Tree,
    /// Hits by entry; none where nothing is searched for.
    hits: Option<BTreeMap<usize, Hit>>,
}

/// Prints the tree of a folder's setups.
pub(super) fn run(
    arguments: &HistoryArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let library = match Library::read(&arguments.folder) {
        Ok(library) => library,
        Err(error) => {
            writeln!(errors, "{error}")?;
            return Ok(ExitCode::from(PROBLEM));
        }
    };
    let words = arguments.search.as_deref().map(str::trim);
    if words == Some("") {
        writeln!(errors, "error: --search needs at least one word")?;
        return Ok(ExitCode::from(WRONG_USE));
    }
    let hits = words.map(|words| {
        let hits = library.search(words);
        hits.into_iter().map(|hit| (hit.entry, hit)).collect()
    });
    let told = Told {
        tree: library.tree(),
        held: library,
        hits,
    };
    if arguments.json {
        super::json(&JsonHistory::of(&arguments.folder, &told), out)?;
    } else {
        print(&arguments.folder, &told, out)?;
    }
    tell_what_is_missing(&told.held, errors)
}

fn tell_what_is_missing(library: &Library, errors: &mut impl Write) -> Result<ExitCode> {
    for skipped in &library.skipped {
        writeln!(errors, "skipped: {}", skipped.error)?;
    }
    if library.is_cut {
        writeln!(
            errors,
            "The folder holds more files than are looked at; move older ones to another folder."
        )?;
    }
    Ok(if library.skipped.is_empty() {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(PROBLEM)
    })
}

impl Told {
    /// The entries to tell, with their depths: all, or those in which the words were found.
    fn entries(&self) -> impl Iterator<Item = (usize, usize, &Entry)> {
        let order = self.tree.in_order().into_iter();
        order.filter_map(|(index, depth)| {
            let is_told = self
                .hits
                .as_ref()
                .is_none_or(|hits| hits.contains_key(&index));
            let entry = self.held.entries.get(index)?;
            is_told.then_some((index, depth, entry))
        })
    }
}

fn print(folder: &Path, told: &Told, out: &mut impl Write) -> Result<()> {
    let mut count = 0;
    for (index, depth, entry) in told.entries() {
        count += 1;
        // What a search leaves out would leave holes in a tree: hits stand in a list.
        let indent = "  ".repeat(if told.hits.is_some() { 0 } else { depth });
        writeln!(out, "{indent}{}", heading(entry))?;
        for line in lines(told, index, entry) {
            writeln!(out, "{indent}    {}", format::plain(&line))?;
        }
    }
    match (count, &told.hits) {
        (0, Some(_)) => writeln!(
            out,
            "No setup in {} holds all these words.",
            folder.display()
        ),
        (0, None) => writeln!(out, "There is no setup in {}.", folder.display()),
        _ => Ok(()),
    }
}

/// Name, date and file.
fn heading(entry: &Entry) -> String {
    let record = &entry.setup.record;
    let file = entry.file.file_name().unwrap_or_default();
    let mut words: Vec<&str> = [record.name.trim(), record.date.trim()]
        .into_iter()
        .filter(|word| !word.is_empty())
        .collect();
    if record.name.trim().is_empty() {
        words.insert(0, &entry.setup.car.name);
    }
    format!("{} [{}]", words.join(", "), file.to_string_lossy())
}

fn lines(told: &Told, index: usize, entry: &Entry) -> Vec<String> {
    let mut lines = Vec::new();
    let node = &told.tree.nodes[index];
    if let Some(original) = node.copy_of.and_then(|one| told.held.entries.get(one)) {
        let file = original.file.file_name().unwrap_or_default();
        lines.push(format!(
            "has the same identity as {}: a copy of that file",
            file.to_string_lossy()
        ));
    }
    if let Some(parent) = &node.missing_parent {
        lines.push(format!(
            "made from \"{parent}\", which is not in this folder"
        ));
    }
    if let Some(hit) = told.hits.as_ref().and_then(|hits| hits.get(&index)) {
        let passages = hit.passages.iter();
        lines.extend(passages.map(|passage| format!("{}: {}", passage.place, passage.line)));
        return lines;
    }
    if let Some(change) = told.held.change_from_parent(&told.tree, index) {
        lines.extend(changes(&change));
    }
    match entry.setup.record.runs.len() {
        0 => {}
        1 => lines.push("1 run".to_owned()),
        runs => lines.push(format!("{runs} runs")),
    }
    lines
}

/// What a setup changed against the one it was made from, a line each.
fn changes(change: &Comparison) -> Vec<String> {
    if change.is_empty() {
        return vec!["the same parts as the setup that it was made from".to_owned()];
    }
    let mut lines: Vec<String> = change
        .adjustments
        .iter()
        .map(|one| format!("{}: {one}", one.name))
        .collect();
    for only in &change.only_in_one {
        let what = if only.in_first { "has no" } else { "has a new" };
        lines.push(format!("{what} adjustment \"{}\"", only.name));
    }
    let rods = change.rods.iter().filter_map(|rods| rods.lengths.as_ref());
    for lengths in rods {
        lines.push(format!(
            "tie rods: {} and {} mm instead of {} and {} mm",
            format::number(lengths.left.to, 2),
            format::number(lengths.right.to, 2),
            format::number(lengths.left.from, 2),
            format::number(lengths.right.from, 2)
        ));
    }
    let none = || "not given".to_owned();
    lines.extend(change.data.iter().map(|data| {
        format!(
            "of the car, {}: from {} to {}",
            data.at,
            data.from.clone().unwrap_or_else(none),
            data.to.clone().unwrap_or_else(none)
        )
    }));
    lines
}
