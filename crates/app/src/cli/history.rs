//! A folder of setups: which was made from which, what each changed, and where words are found in them.

mod json;

use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_setup::library::{Hit, Library};

use self::json::JsonHistory;
use super::{PROBLEM, WRONG_USE};
use crate::format;
use crate::state::{SetupTree, TreeRow};

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

/// A setup to tell, with the places where words were found in it if they were looked for.
type Told<'a> = (&'a TreeRow, Option<Hit>);

/// Prints the tree of a folder's setups.
pub(super) fn run(
    arguments: &HistoryArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let tree = match SetupTree::read(&arguments.folder) {
        Ok(tree) => tree,
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
    let told: Vec<Told<'_>> = match words {
        Some(words) => {
            let hits = tree.search(words).into_iter();
            hits.map(|(row, hit)| (row, Some(hit))).collect()
        }
        None => tree.rows().iter().map(|row| (row, None)).collect(),
    };
    if arguments.json {
        super::json(&JsonHistory::of(&arguments.folder, &tree, &told), out)?;
    } else {
        print(&arguments.folder, &told, words.is_some(), out)?;
    }
    tell_what_is_missing(tree.held(), errors)
}

fn tell_what_is_missing(folder: &Library, errors: &mut impl Write) -> Result<ExitCode> {
    for skipped in &folder.skipped {
        writeln!(errors, "skipped: {}", skipped.error)?;
    }
    if folder.is_cut {
        writeln!(
            errors,
            "The folder holds more files than are looked at; move older ones to another folder."
        )?;
    }
    Ok(if folder.skipped.is_empty() {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(PROBLEM)
    })
}

fn print(folder: &Path, told: &[Told<'_>], is_search: bool, out: &mut impl Write) -> Result<()> {
    for (row, hit) in told {
        // What a search leaves out would leave holes in a tree: hits stand in a list.
        let indent = "  ".repeat(if is_search { 0 } else { row.depth });
        writeln!(out, "{indent}{} [{}]", row.title, row.file_name())?;
        let lines = match hit {
            Some(hit) => {
                let passages = hit.passages.iter();
                passages
                    .map(|passage| format!("{}: {}", passage.place, passage.line))
                    .collect()
            }
            None => row.lines(),
        };
        for line in lines {
            writeln!(out, "{indent}    {}", format::plain(&line))?;
        }
    }
    match (told.is_empty(), is_search) {
        (true, true) => writeln!(
            out,
            "No setup in {} holds all these words.",
            folder.display()
        ),
        (true, false) => writeln!(out, "There is no setup in {}.", folder.display()),
        (false, _) => Ok(()),
    }
}
