//! The record: what a setup is called, where it comes from, and what was found with it.

use serde::{Deserialize, Serialize};

use crate::limits::MAX_RUNS;
use crate::list::at_most;
use crate::setup::Setup;

/// What the setup is for and what was found with it.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Record {
    /// What the setup is known by in a library for good, whatever it is called; empty until it is given one.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub id: String,
    /// The setup it was made from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub parent: Option<Parent>,
    /// Name of the setup.
    pub name: String,
    /// Date, as the user writes it.
    pub date: String,
    /// Event or track.
    pub event: String,
    /// Surface.
    pub surface: String,
    /// Grip.
    pub grip: String,
    /// Free notes.
    pub notes: String,
    /// Runs made with it.
    #[serde(deserialize_with = "at_most::<MAX_RUNS, _, _>")]
    pub runs: Vec<Run>,
}

/// Whether a text may be an id: letters, digits and hyphens of the basic alphabet.
pub(crate) fn is_id(text: &str) -> bool {
    !text.is_empty()
        && text
            .bytes()
            .all(|byte| byte.is_ascii_alphanumeric() || byte == b'-')
}

/// The setup from which another was made.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Parent {
    /// Its id.
    pub id: String,
    /// Its name at that time.
    #[serde(default)]
    pub name: String,
}

/// One run.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Run {
    /// Date or time, as the user writes it.
    pub date: String,
    /// Surface, such as "carpet".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub surface: String,
    /// Grip, such as "high".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub grip: String,
    /// Temperature, degrees Celsius, of the track or as the user takes it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Option<f64>,
    /// Tyres and what was done to them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub tyres: String,
    /// What was felt through a corner.
    #[serde(skip_serializing_if = "Felt::is_empty")]
    pub felt: Felt,
    /// Lap figures.
    #[serde(skip_serializing_if = "Laps::is_empty")]
    pub laps: Laps,
    /// What was found.
    pub notes: String,
    /// What to try next.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub next_idea: String,
}

/// What was felt through a corner.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Felt {
    /// Turning in.
    pub entry: String,
    /// In the middle of the corner.
    pub middle: String,
    /// Coming out.
    pub exit: String,
}

impl Felt {
    /// Whether nothing is written.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// Lap figures of a run.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Laps {
    /// Laps driven.
    pub count: Option<u32>,
    /// Best lap, s.
    pub best: Option<f64>,
    /// Mean lap, s.
    pub mean: Option<f64>,
}

impl Laps {
    /// Whether nothing is written.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// A new id: 128 bits that the system's random numbers give, as 32 hexadecimal digits.
#[must_use]
pub(crate) fn fresh_id() -> String {
    use std::hash::{BuildHasher as _, RandomState};
    // Each state is keyed with random numbers of the system, and no two states alike.
    let half = || RandomState::new().hash_one("setup");
    format!("{:016x}{:016x}", half(), half())
}

impl Setup {
    /// Gives the setup an id, if it has none.
    pub fn give_id(&mut self) {
        if self.record.id.is_empty() {
            self.record.id = fresh_id();
        }
    }

    /// A setup made from this one, to be changed: the same car and choices under a new name and id, with this one as its
    /// parent and without its runs and notes. This one must have an id for it to be named; without, the child has no parent.
    #[must_use]
    pub fn child(&self, name: &str) -> Self {
        let parent = (!self.record.id.is_empty()).then(|| Parent {
            id: self.record.id.clone(),
            name: self.record.name.clone(),
        });
        Self {
            record: Record {
                id: fresh_id(),
                parent,
                name: name.to_owned(),
                notes: String::new(),
                runs: Vec::new(),
                ..self.record.clone()
            },
            ..self.clone()
        }
    }
}
