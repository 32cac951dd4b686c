//! Format 1: what a file of it may hold, and the way to format 2.
//!
//! It knew of a servo only its case, and no thread, ball joints, loads, clearances, obstacles, build errors or stock;
//! a run had a date and notes. What has not changed since is read as it is now.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::adjustment::{Adjustment, ChoiceOption, Effect, Kind, Place, Spacer, Unit};
use crate::car::{
    BuildErrors, Car, CornerPoints, Drive, Ranges, RightCorner, Servo, ServoCase, TieRodParts,
};
use crate::check::Path;
use crate::setup::{Chosen, Record, Rods, Run, Setup};

/// A file of format 1.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "Setup")]
pub(super) struct Document1 {
    #[serde(rename = "format")]
    _format: u32,
    car: Car1,
    #[serde(default)]
    chosen: BTreeMap<String, Chosen>,
    rods: Rods,
    #[serde(default)]
    record: Record1,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "Car")]
struct Car1 {
    name: String,
    #[serde(default)]
    notes: String,
    left: CornerPoints,
    right: RightCorner,
    drive: Drive,
    #[serde(default)]
    servo: Option<ServoCase>,
    wheelbase: f64,
    ride_height: f64,
    #[serde(default)]
    pitch: f64,
    #[serde(default)]
    roll: f64,
    ranges: Ranges,
    tie_rod: TieRodParts1,
    adjustments: Vec<Adjustment1>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "TieRodParts")]
struct TieRodParts1 {
    cup_length: f64,
    shortest: f64,
    longest: f64,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "Adjustment")]
struct Adjustment1 {
    name: String,
    place: Place,
    #[serde(default)]
    notes: String,
    kind: Kind1,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "Kind")]
enum Kind1 {
    Slide {
        unit: Unit,
        range: (f64, f64),
        #[serde(default)]
        step: Option<f64>,
        base: f64,
        effects: Vec<Effect>,
    },
    Stack {
        parts: Vec<Spacer>,
        most: f64,
        base: f64,
        effects: Vec<Effect>,
    },
    Choice {
        options: Vec<ChoiceOption>,
        base: String,
    },
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default, rename = "Record")]
struct Record1 {
    name: String,
    date: String,
    event: String,
    surface: String,
    grip: String,
    notes: String,
    runs: Vec<Run1>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default, rename = "Run")]
struct Run1 {
    date: String,
    notes: String,
}

/// Where a value stands in a text of this format: the servo's case was the whole servo.
pub(super) fn place(path: Path) -> Path {
    path.without("case")
}

impl Document1 {
    /// The same setup in what the program holds now. Nothing is lost; what the format did not know is left out.
    pub(super) fn into_setup(self) -> Setup {
        Setup {
            car: self.car.into_car(),
            chosen: self.chosen,
            rods: self.rods,
            record: self.record.into_record(),
        }
    }
}

impl Car1 {
    fn into_car(self) -> Car {
        let adjustments = self.adjustments.into_iter();
        Car {
            name: self.name,
            notes: self.notes,
            left: self.left,
            right: self.right,
            drive: self.drive,
            servo: self.servo.map(Servo::from),
            saver: None,
            wheelbase: self.wheelbase,
            ride_height: self.ride_height,
            pitch: self.pitch,
            roll: self.roll,
            ranges: self.ranges,
            tie_rod: TieRodParts {
                cup_length: self.tie_rod.cup_length,
                shortest: self.tie_rod.shortest,
                longest: self.tie_rod.longest,
                thread: None,
            },
            joints: None,
            loads: None,
            clearances: None,
            obstacles: Vec::new(),
            build_errors: BuildErrors::default(),
            stock: Vec::new(),
            adjustments: adjustments.map(Adjustment1::into_adjustment).collect(),
        }
    }
}

impl Adjustment1 {
    fn into_adjustment(self) -> Adjustment {
        Adjustment {
            name: self.name,
            place: self.place,
            notes: self.notes,
            kind: match self.kind {
                Kind1::Slide {
                    unit,
                    range,
                    step,
                    base,
                    effects,
                } => Kind::Slide {
                    unit,
                    range,
                    step,
                    base,
                    effects,
                },
                Kind1::Stack {
                    parts,
                    most,
                    base,
                    effects,
                } => Kind::Stack {
                    parts,
                    stock: None,
                    most,
                    base,
                    effects,
                },
                Kind1::Choice { options, base } => Kind::Choice { options, base },
            },
        }
    }
}

impl Record1 {
    fn into_record(self) -> Record {
        let runs = self.runs.into_iter();
        Record {
            id: String::new(),
            parent: None,
            name: self.name,
            date: self.date,
            event: self.event,
            surface: self.surface,
            grip: self.grip,
            notes: self.notes,
            runs: runs
                .map(|run| Run {
                    date: run.date,
                    notes: run.notes,
                    ..Run::default()
                })
                .collect(),
        }
    }
}
