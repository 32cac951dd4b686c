//! A folder of setups as a tree of what was made from what, with what each changed, in words.

use std::path::{Path, PathBuf};

use steerloft_setup::compare::Comparison;
use steerloft_setup::library::{Entry, Hit, Library, LibraryError};

use crate::format;

/// The setups of a folder.
#[derive(Debug, Clone, PartialEq)]
pub struct SetupTree {
    held: Library,
    rows: Vec<TreeRow>,
}

/// A setup in the tree.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TreeRow {
    /// Its place among the entries of the folder.
    pub entry: usize,
    /// How many setups stand above it.
    pub depth: usize,
    /// Its file.
    pub file: PathBuf,
    /// Name, or the car's, and date.
    pub title: String,
    /// File of the setup that it was made from.
    pub parent: Option<PathBuf>,
    /// Name of the setup that it was made from, where that is not in the folder.
    pub missing_parent: Option<String>,
    /// File of an earlier setup with the same identity.
    pub copy_of: Option<PathBuf>,
    /// What it changed against the setup that it was made from, a line each.
    pub changes: Vec<String>,
    /// How many runs it has.
    pub runs: usize,
}

impl SetupTree {
    /// Reads a folder.
    ///
    /// # Errors
    /// Where the folder itself cannot be read.
    pub fn read(folder: &Path) -> Result<Self, LibraryError> {
        let held = Library::read(folder)?;
        let tree = held.tree();
        let file = |entry: usize| held.entries.get(entry).map(|entry| entry.file.clone());
        let order = tree.in_order().into_iter();
        let rows = order.filter_map(|(entry, depth)| {
            let (node, of) = (tree.nodes.get(entry)?, held.entries.get(entry)?);
            let change = held.change_from_parent(&tree, entry);
            Some(TreeRow {
                entry,
                depth,
                file: of.file.clone(),
                title: title(of),
                parent: node.parent.and_then(file),
                missing_parent: node.missing_parent.clone(),
                copy_of: node.copy_of.and_then(file),
                changes: change.as_ref().map(changes).unwrap_or_default(),
                runs: of.setup.record.runs.len(),
            })
        });
        Ok(Self {
            rows: rows.collect(),
            held,
        })
    }

    /// The setups, parents before what was made from them.
    #[must_use]
    pub fn rows(&self) -> &[TreeRow] {
        &self.rows
    }

    /// The folder's contents.
    #[must_use]
    pub const fn held(&self) -> &Library {
        &self.held
    }

    /// The setups in which every word is found, in the order of the tree; none for no words.
    #[must_use]
    pub fn search(&self, words: &str) -> Vec<(&TreeRow, Hit)> {
        let mut hits = self.held.search(words);
        let rows = self.rows.iter().filter_map(|row| {
            let at = hits.iter().position(|hit| hit.entry == row.entry)?;
            Some((row, hits.swap_remove(at)))
        });
        rows.collect()
    }
}

impl TreeRow {
    /// The file's name.
    #[must_use]
    pub fn file_name(&self) -> String {
        name_of(&self.file)
    }

    /// What is to be known of it, a line each.
    #[must_use]
    pub fn lines(&self) -> Vec<String> {
        let mut lines = Vec::new();
        if let Some(original) = &self.copy_of {
            let name = name_of(original);
            lines.push(format!(
                "has the same identity as {name}: a copy of that file"
            ));
        }
        if let Some(parent) = &self.missing_parent {
            lines.push(format!(
                "made from \"{parent}\", which is not in this folder"
            ));
        }
        lines.extend(self.changes.iter().cloned());
        match self.runs {
            0 => {}
            1 => lines.push("1 run".to_owned()),
            runs => lines.push(format!("{runs} runs")),
        }
        lines
    }
}

fn name_of(file: &Path) -> String {
    file.file_name()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned()
}

fn title(entry: &Entry) -> String {
    let record = &entry.setup.record;
    let name = match record.name.trim() {
        "" => entry.setup.car.name.trim(),
        name => name,
    };
    match record.date.trim() {
        "" => name.to_owned(),
        date => format!("{name}, {date}"),
    }
}

/// What a setup changed against the one it was made from, a line each.
fn changes(change: &Comparison) -> Vec<String> {
    if change.is_empty() {
        return vec!["the same parts as the setup that it was made from".to_owned()];
    }
    let adjustments = change.adjustments.iter();
    let mut lines: Vec<String> = adjustments
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
