//! The history of a car: which setup was made from which.

use std::collections::HashMap;

use super::Library;
use crate::compare::{Comparison, compare};

/// The setups of a library in a tree. A setup whose parent is not there is a root.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Tree {
    /// A node for each entry, by the entry's index.
    pub nodes: Vec<Node>,
    /// Entries without a parent here, in their order.
    pub roots: Vec<usize>,
}

/// Where an entry stands in the tree.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Node {
    /// The entry it was made from.
    pub parent: Option<usize>,
    /// Entries made from it, in their order.
    pub children: Vec<usize>,
    /// Name of a parent that is not in the library, as the setup remembers it.
    pub missing_parent: Option<String>,
    /// Earlier entry with the same id: a copy of the same setup.
    pub copy_of: Option<usize>,
}

impl Library {
    /// The tree of the setups. Of several with one id the first stands for it; a ring of parents is cut at its first
    /// entry.
    #[must_use]
    pub fn tree(&self) -> Tree {
        let mut by_id: HashMap<&str, usize> = HashMap::new();
        let mut tree = Tree {
            nodes: vec![Node::default(); self.entries.len()],
            roots: Vec::new(),
        };
        for (index, entry) in self.entries.iter().enumerate() {
            let id = entry.setup.record.id.as_str();
            if id.is_empty() {
                continue;
            }
            match by_id.get(id) {
                Some(first) => tree.nodes[index].copy_of = Some(*first),
                None => {
                    by_id.insert(id, index);
                }
            }
        }
        for (index, entry) in self.entries.iter().enumerate() {
            let Some(parent) = &entry.setup.record.parent else {
                continue;
            };
            match by_id.get(parent.id.as_str()) {
                Some(&found) if !tree.is_above(index, found) => {
                    tree.nodes[index].parent = Some(found);
                }
                Some(_) => {}
                None => tree.nodes[index].missing_parent = Some(parent.name.clone()),
            }
        }
        for index in 0..tree.nodes.len() {
            match tree.nodes[index].parent {
                Some(parent) => tree.nodes[parent].children.push(index),
                None => tree.roots.push(index),
            }
        }
        tree
    }

    /// What an entry changed against the one it was made from.
    #[must_use]
    pub fn change_from_parent(&self, tree: &Tree, entry: usize) -> Option<Comparison> {
        let parent = self.entries.get(tree.nodes.get(entry)?.parent?)?;
        Some(compare(&parent.setup, &self.entries.get(entry)?.setup))
    }
}

impl Tree {
    /// Whether an entry is another or stands above it.
    fn is_above(&self, upper: usize, lower: usize) -> bool {
        let mut at = Some(lower);
        while let Some(entry) = at {
            if entry == upper {
                return true;
            }
            at = self.nodes[entry].parent;
        }
        false
    }

    /// Every entry with its depth, parents before their children.
    #[must_use]
    pub fn in_order(&self) -> Vec<(usize, usize)> {
        let mut order = Vec::with_capacity(self.nodes.len());
        let mut open: Vec<(usize, usize)> =
            self.roots.iter().rev().map(|&root| (root, 0)).collect();
        while let Some((entry, depth)) = open.pop() {
            order.push((entry, depth));
            let children = self.nodes[entry].children.iter().rev();
            open.extend(children.map(|&child| (child, depth + 1)));
        }
        order
    }
}
