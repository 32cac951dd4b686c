//! Search in what the setups of a library say.

use super::Library;
use crate::setup::{Record, Setup};

/// A setup that a search found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hit {
    /// Index of the entry.
    pub entry: usize,
    /// Where the words were found, in the order of the document.
    pub passages: Vec<Passage>,
}

/// A text in which a word was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Passage {
    /// Where it stands, such as "run 2, felt at entry".
    pub place: String,
    /// The line that holds the word.
    pub line: String,
}

impl Library {
    /// The entries in which every word of a query is found somewhere, small and capital letters alike. Words are parts
    /// of a text between blanks; an empty query finds nothing.
    #[must_use]
    pub fn search(&self, query: &str) -> Vec<Hit> {
        let words: Vec<String> = query.split_whitespace().map(str::to_lowercase).collect();
        if words.is_empty() {
            return Vec::new();
        }
        let hits = self.entries.iter().enumerate().filter_map(|(entry, held)| {
            passages(&held.setup, &words).map(|passages| Hit { entry, passages })
        });
        hits.collect()
    }
}

/// Lines that hold one of the words; nothing unless each word is found.
fn passages(setup: &Setup, words: &[String]) -> Option<Vec<Passage>> {
    let mut is_found = vec![false; words.len()];
    let mut passages = Vec::new();
    for (place, text) in texts(setup) {
        for line in text.lines() {
            let lower = line.to_lowercase();
            let mut holds = false;
            for (word, is_found) in words.iter().zip(&mut is_found) {
                if lower.contains(word.as_str()) {
                    *is_found = true;
                    holds = true;
                }
            }
            if holds {
                passages.push(Passage {
                    place: place.clone(),
                    line: line.trim().to_owned(),
                });
            }
        }
    }
    is_found
        .into_iter()
        .all(|is_found| is_found)
        .then_some(passages)
}

/// Every text of a setup that somebody wrote about it, with its place.
fn texts(setup: &Setup) -> Vec<(String, String)> {
    let record = &setup.record;
    let mut texts: Vec<(String, String)> = [
        ("name", &record.name),
        ("date", &record.date),
        ("event", &record.event),
        ("surface", &record.surface),
        ("grip", &record.grip),
        ("notes", &record.notes),
        ("car", &setup.car.name),
        ("about the car", &setup.car.notes),
    ]
    .into_iter()
    .map(|(place, text)| (place.to_owned(), text.clone()))
    .collect();
    texts.extend(texts_of_runs(record));
    let chosen = setup.car.adjustments.iter().filter_map(|adjustment| {
        let value = setup.chosen.get(&adjustment.name)?;
        let text = format!("{}: {}", adjustment.name, adjustment.label_of(value));
        Some(("adjustment".to_owned(), text))
    });
    texts.extend(chosen);
    texts
}

fn texts_of_runs(record: &Record) -> impl Iterator<Item = (String, String)> + '_ {
    record.runs.iter().enumerate().flat_map(|(index, run)| {
        let fields = [
            ("date", &run.date),
            ("surface", &run.surface),
            ("grip", &run.grip),
            ("tyres", &run.tyres),
            ("felt at entry", &run.felt.entry),
            ("felt in the middle", &run.felt.middle),
            ("felt at exit", &run.felt.exit),
            ("notes", &run.notes),
            ("next idea", &run.next_idea),
        ];
        fields.map(|(place, text)| (format!("run {}, {place}", index + 1), text.clone()))
    })
}
