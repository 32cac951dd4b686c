//! The file's root: the format number before the setup.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::version::NEWEST_FORMAT;
use crate::car::Car;
use crate::setup::{Chosen, Record, Rods, Setup};

/// A file of the newest format, as read.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "Setup")]
pub(super) struct Document {
    #[serde(rename = "format")]
    _format: u32,
    car: Car,
    #[serde(default)]
    chosen: BTreeMap<String, Chosen>,
    rods: Rods,
    #[serde(default)]
    record: Record,
}

impl Document {
    pub(super) fn into_setup(self) -> Setup {
        Setup {
            car: self.car,
            chosen: self.chosen,
            rods: self.rods,
            record: self.record,
        }
    }
}

/// A file of the newest format, to write.
#[derive(Debug, Serialize)]
#[serde(rename = "Setup")]
pub(super) struct WrittenDocument<'a> {
    format: u32,
    car: &'a Car,
    chosen: &'a BTreeMap<String, Chosen>,
    rods: Rods,
    record: &'a Record,
}

impl<'a> WrittenDocument<'a> {
    pub(super) fn of(setup: &'a Setup) -> Self {
        Self {
            format: NEWEST_FORMAT,
            car: &setup.car,
            chosen: &setup.chosen,
            rods: setup.rods,
            record: &setup.record,
        }
    }
}
