//! Numbers as people type them: any text is a finite value or an error, and a value written in full is read back.
#![no_main]

use libfuzzer_sys::fuzz_target;
use steerloft_fuzz::bounded;

// The modules stand by themselves: the window's libraries are not built for this.
#[allow(dead_code)]
#[path = "../../../crates/app/src/entry/mod.rs"]
mod entry;
#[allow(dead_code)]
#[path = "../../../crates/app/src/format.rs"]
mod format;
#[allow(dead_code)]
#[path = "../../../crates/app/src/units.rs"]
mod units;

use entry::Measure;
use units::Units;

fuzz_target!(|text: &str| {
    let _ = entry::is_reckoned(text);
    for measure in [Measure::Length, Measure::Angle, Measure::Plain("%")] {
        for units in Units::ALL {
            let Ok(value) = bounded(|| entry::read(text, measure, units)) else {
                continue;
            };
            assert!(value.is_finite(), "{text} is {value}");
            // In the unit in which values are held nothing is converted.
            let written = value.to_string();
            if written.chars().count() <= entry::LONGEST {
                let again = entry::read(&written, measure, Units::Millimetres);
                assert_eq!(again.ok(), Some(value), "{written}");
            }
        }
    }
});
