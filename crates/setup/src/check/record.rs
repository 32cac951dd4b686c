//! Checks of the record.

use super::values::{count, name, number, text, whole};
use super::{Fault, Path};
use crate::limits::{MAX_LAP, MAX_LAPS, MAX_RUNS};
use crate::record::is_id;
use crate::setup::{Record, Run};

/// Checks the record.
pub(super) fn check(at: &Path, record: &Record) -> Result<(), Fault> {
    if !record.id.is_empty() {
        check_id(&at.field("id"), &record.id)?;
    }
    if let Some(parent) = &record.parent {
        let at = at.field("parent").item(0);
        check_id(&at.field("id"), &parent.id)?;
        text(&at.field("name"), &parent.name)?;
        if parent.id == record.id {
            return Err(Fault::new(
                &at.field("id"),
                "this setup names itself as its parent",
                "give the id of the setup that it was made from, or leave `parent` out",
            ));
        }
    }
    let fields = [
        ("name", &record.name),
        ("date", &record.date),
        ("event", &record.event),
        ("surface", &record.surface),
        ("grip", &record.grip),
        ("notes", &record.notes),
    ];
    for (field, value) in fields {
        text(&at.field(field), value)?;
    }
    let at = at.field("runs");
    count(&at, record.runs.len(), MAX_RUNS, "runs")?;
    for (index, run) in record.runs.iter().enumerate() {
        check_run(&at.item(index), run)?;
    }
    Ok(())
}

fn check_id(at: &Path, id: &str) -> Result<(), Fault> {
    name(at, id)?;
    if is_id(id) {
        return Ok(());
    }
    Err(Fault::new(
        at,
        "this id holds something else than letters, digits and hyphens",
        "leave the id as the program gave it",
    ))
}

fn check_run(at: &Path, run: &Run) -> Result<(), Fault> {
    let felt = at.field("felt");
    let fields = [
        (at.field("date"), &run.date),
        (at.field("surface"), &run.surface),
        (at.field("grip"), &run.grip),
        (at.field("tyres"), &run.tyres),
        (felt.field("entry"), &run.felt.entry),
        (felt.field("middle"), &run.felt.middle),
        (felt.field("exit"), &run.felt.exit),
        (at.field("notes"), &run.notes),
        (at.field("next_idea"), &run.next_idea),
    ];
    for (at, value) in fields {
        text(&at, value)?;
    }
    if let Some(temperature) = run.temperature {
        let at = at.field("temperature").item(0);
        number(&at, temperature, -60.0, 100.0, "degrees Celsius")?;
    }
    let at = at.field("laps");
    if let Some(laps) = run.laps.count {
        whole(&at.field("count").item(0), laps, 0, MAX_LAPS, "laps")?;
    }
    for (field, lap) in [("best", run.laps.best), ("mean", run.laps.mean)] {
        if let Some(lap) = lap {
            number(&at.field(field).item(0), lap, 0.001, MAX_LAP, "s")?;
        }
    }
    match (run.laps.best, run.laps.mean) {
        (Some(best), Some(mean)) if mean < best => Err(Fault::new(
            &at.field("mean").item(0),
            "the mean lap is quicker than the best",
            "give the mean of all laps, and the quickest as `best`",
        )),
        _ => Ok(()),
    }
}
