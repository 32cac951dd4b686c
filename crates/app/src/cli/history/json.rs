//! A folder of setups for programs.

use std::path::Path;

use serde::Serialize;
use steerloft_setup::library::{Entry, Library};
use steerloft_setup::setup::Record;

use super::{Told, changes};

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
    changes: Vec<String>,
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
    pub(super) fn of(folder: &Path, told: &'a Told) -> Self {
        let skipped = told.held.skipped.iter().map(|skipped| JsonSkipped {
            file: skipped.file.display().to_string(),
            reason: skipped.error.to_string(),
        });
        Self {
            folder: folder.display().to_string(),
            is_cut: told.held.is_cut,
            setups: told
                .entries()
                .map(|(index, depth, entry)| JsonEntry::of(told, index, depth, entry))
                .collect(),
            skipped: skipped.collect(),
        }
    }
}

impl<'a> JsonEntry<'a> {
    fn of(told: &'a Told, index: usize, depth: usize, entry: &'a Entry) -> Self {
        let node = &told.tree.nodes[index];
        let change = told.held.change_from_parent(&told.tree, index);
        let hit = told.hits.as_ref().and_then(|hits| hits.get(&index));
        let passages = hit.into_iter().flat_map(|hit| &hit.passages);
        Self {
            file: entry.file.display().to_string(),
            car: &entry.setup.car.name,
            record: &entry.setup.record,
            depth,
            parent: node.parent.and_then(|parent| file_of(&told.held, parent)),
            missing_parent: node.missing_parent.as_deref(),
            copy_of: node.copy_of.and_then(|one| file_of(&told.held, one)),
            changes: change.as_ref().map(changes).unwrap_or_default(),
            found: passages
                .map(|passage| JsonPassage {
                    place: &passage.place,
                    line: &passage.line,
                })
                .collect(),
        }
    }
}

fn file_of(library: &Library, entry: usize) -> Option<String> {
    let entry = library.entries.get(entry)?;
    Some(entry.file.display().to_string())
}
