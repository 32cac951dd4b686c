//! The answer of a search, as text and as JSON.

use std::io::{Result, Write};

use serde::Serialize;
use steerloft_analysis::find::{Finding, Findings, Limit, Search, Unmet, Want};

use crate::cli::table;
use crate::format;

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
            count(finding.changes.len())
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
                count(finding.changes.len()),
                format::plain(&format::number(finding.off, 2))
            )?;
        }
    }
    for unmet in &findings.unmet {
        writeln!(out)?;
        writeln!(out, "{}", unmet_in_words(search, unmet))?;
    }
    Ok(())
}

fn count(changes: usize) -> String {
    match changes {
        0 => "no change".to_owned(),
        1 => "1 change".to_owned(),
        more => format!("{more} changes"),
    }
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

fn unmet_in_words(search: &Search, unmet: &Unmet) -> String {
    let title = search
        .wants
        .get(unmet.want)
        .map_or("A want", |want: &Want| want.measure.title());
    let nearest = match &unmet.nearest {
        Some(values) => {
            let values: Vec<String> = values.iter().map(|value| text(*value)).collect();
            format!("the nearest is {}", values.join(" and "))
        }
        None => "no combination has a value".to_owned(),
    };
    let limits: Vec<String> = unmet
        .limits
        .iter()
        .map(|limit| limit_in_words(search, limit))
        .collect();
    let way = if limits.is_empty() {
        "no neighbour comes nearer".to_owned()
    } else {
        format!("in the way: {}", limits.join("; "))
    };
    format!("{title} cannot be met: {nearest}; {way}.")
}

fn limit_in_words(search: &Search, limit: &Limit) -> String {
    let name = |index: usize| {
        let adjustment = search.setup.car.adjustments.get(index);
        adjustment.map_or(String::new(), |adjustment| adjustment.name.clone())
    };
    match limit {
        Limit::End { words, .. } => format::plain(words),
        Limit::PartsAtHand { adjustment, .. } => {
            format!("too few spacers at hand for {}", name(*adjustment))
        }
        Limit::MostChanges(most) => format!("no more than {} allowed", count(*most)),
        Limit::Apart(because) => because.to_string(),
        Limit::RodLength(length) => format!(
            "a tie rod of {} mm cannot be made from its parts",
            format::plain(&format::number(*length, 2))
        ),
        Limit::NotReached => "the axle does not get there".to_owned(),
    }
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
                .map(|limit| limit_in_words(search, limit))
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
