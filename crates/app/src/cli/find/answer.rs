//! The answer of a search, as text and as JSON.

use std::io::{Result, Write};

use serde::Serialize;
use steerloft_analysis::find::{Finding, Findings, Search, Unmet};

use crate::cli::table;
use crate::format;
use crate::state::search::{changes_in_words, limit_in_words, unmet_in_words};

/// Prints the findings, the trade-off with the number of changes, and what cannot be met.
pub(super) fn print(search: &Search, findings: &Findings, out: &mut impl Write) -> Result<()> {
    writeln!(
        out,
        "{} combinations of at most {} changes tried; {} cannot be assembled, {} need another tie rod",
        findings.evaluated,
        search.most_changes.unwrap_or(search.free.len()),
        findings.apart,
        findings.misfits
    )?;
    for (place, finding) in findings.list.iter().enumerate() {
        writeln!(out)?;
        writeln!(
            out,
            "{}. off by {} noticeable differences, {}",
            place + 1,
            format::plain(&format::number(finding.off, 2)),
            changes_in_words(finding.changes.len())
        )?;
        for change in &finding.changes {
            writeln!(out, "   {}", format::plain(&change.words))?;
        }
        table::aligned(&result_rows(search, finding), 2, out)?;
    }
    if findings.front.len() > 1 {
        writeln!(out)?;
        writeln!(out, "Closest with so many changes")?;
        for finding in &findings.front {
            writeln!(
                out,
                "  {:<12} off by {}",
                changes_in_words(finding.changes.len()),
                format::plain(&format::number(finding.off, 2))
            )?;
        }
    }
    for unmet in &findings.unmet {
        writeln!(out)?;
        let words = unmet_in_words(search, unmet, |_, value| text(value));
        writeln!(out, "{}", format::plain(&words))?;
    }
    Ok(())
}

fn result_rows(search: &Search, finding: &Finding) -> Vec<Vec<String>> {
    let results = search.wants.iter().zip(&finding.results);
    results
        .map(|(want, result)| {
            let mut row = vec!["  ".to_owned(), want.measure.title().to_owned()];
            row.extend(result.values.iter().map(|value| text(*value)));
            row
        })
        .collect()
}

fn text(value: f64) -> String {
    format::plain(&format::signed(value, 3))
}

/// The answer as JSON holds it.
#[derive(Serialize)]
pub(super) struct JsonFindings {
    evaluated: u64,
    apart: u64,
    misfits: u64,
    is_complete: bool,
    findings: Vec<JsonFinding>,
    front: Vec<JsonFinding>,
    unmet: Vec<JsonUnmet>,
}

#[derive(Serialize)]
struct JsonFinding {
    off: f64,
    changes: Vec<String>,
    wants: Vec<JsonResult>,
}

#[derive(Serialize)]
struct JsonResult {
    title: &'static str,
    values: Vec<f64>,
    deviation: f64,
}

#[derive(Serialize)]
struct JsonUnmet {
    title: &'static str,
    nearest: Option<Vec<f64>>,
    deviation: Option<f64>,
    limits: Vec<String>,
}

impl JsonFindings {
    pub(super) fn of(search: &Search, findings: &Findings) -> Self {
        let finding = |finding: &Finding| JsonFinding::of(search, finding);
        let unmet = |unmet: &Unmet| JsonUnmet {
            title: search
                .wants
                .get(unmet.want)
                .map_or("", |want| want.measure.title()),
            nearest: unmet.nearest.clone(),
            deviation: unmet.deviation,
            limits: unmet
                .limits
                .iter()
                .map(|limit| format::plain(&limit_in_words(search, limit)))
                .collect(),
        };
        Self {
            evaluated: findings.evaluated,
            apart: findings.apart,
            misfits: findings.misfits,
            is_complete: findings.is_complete,
            findings: findings.list.iter().map(finding).collect(),
            front: findings.front.iter().map(finding).collect(),
            unmet: findings.unmet.iter().map(unmet).collect(),
        }
    }
}

impl JsonFinding {
    fn of(search: &Search, finding: &Finding) -> Self {
        let results = search.wants.iter().zip(&finding.results);
        Self {
            off: finding.off,
            changes: finding
                .changes
                .iter()
                .map(|change| change.words.clone())
                .collect(),
            wants: results
                .map(|(want, result)| JsonResult {
                    title: want.measure.title(),
                    values: result.values.clone(),
                    deviation: result.deviation,
                })
                .collect(),
        }
    }
}
