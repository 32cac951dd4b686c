//! A folder of setups for programs.

use std::path::{Path, PathBuf};

use serde::Serialize;
use steerloft_setup::setup::Record;

use super::Told;
use crate::state::SetupTree;

/// The tree as JSON holds it: parents before what was made from them.
#[derive(Serialize)]
pub(super) struct JsonHistory<'a> {
    folder: String,
    is_cut: bool,
    setups: Vec<JsonEntry<'a>>,
    skipped: Vec<JsonSkipped>,
}

#[derive(Serialize)]
struct JsonEntry<'a> {
    file: String,
    car: &'a str,
    record: &'a Record,
    depth: usize,
    /// File of the setup that it was made from.
    parent: Option<String>,
    /// Name of the setup that it was made from, where that is not in the folder.
    missing_parent: Option<&'a str>,
    copy_of: Option<String>,
    /// What it changed against its parent, in words.
    changes: &'a [String],
    found: Vec<JsonPassage<'a>>,
}

#[derive(Serialize)]
struct JsonPassage<'a> {
    place: &'a str,
    line: &'a str,
}

#[derive(Serialize)]
struct JsonSkipped {
    file: String,
    reason: String,
}

impl<'a> JsonHistory<'a> {
    pub(super) fn of(folder: &Path, tree: &'a SetupTree, told: &'a [Told<'_>]) -> Self {
        let skipped = tree.held().skipped.iter().map(|skipped| JsonSkipped {
            file: skipped.file.display().to_string(),
            reason: skipped.error.to_string(),
        });
        Self {
            folder: folder.display().to_string(),
            is_cut: tree.held().is_cut,
            setups: told
                .iter()
                .filter_map(|told| JsonEntry::of(tree, told))
                .collect(),
            skipped: skipped.collect(),
        }
    }
}

impl<'a> JsonEntry<'a> {
    fn of(tree: &'a SetupTree, (row, hit): &'a Told<'_>) -> Option<Self> {
        let entry = tree.held().entries.get(row.entry)?;
        let passages = hit.iter().flat_map(|hit| &hit.passages);
        let shown = |file: &Option<PathBuf>| file.as_ref().map(|file| file.display().to_string());
        Some(Self {
            file: row.file.display().to_string(),
            car: &entry.setup.car.name,
            record: &entry.setup.record,
            depth: row.depth,
            parent: shown(&row.parent),
            missing_parent: row.missing_parent.as_deref(),
            copy_of: shown(&row.copy_of),
            changes: &row.changes,
            found: passages
                .map(|passage| JsonPassage {
                    place: &passage.place,
                    line: &passage.line,
                })
                .collect(),
        })
    }
}
