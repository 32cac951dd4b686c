//! The reader of gauge readings: it never panics, and what was read and written again is equal.
#![no_main]

use libfuzzer_sys::fuzz_target;
use steerloft_fuzz::bounded;
use steerloft_setup::file::{read_readings_text, readings_to_text};

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    let Ok(readings) = bounded(|| read_readings_text(text)) else {
        return;
    };
    for reading in readings.all() {
        assert!(reading.value.is_finite(), "{reading}");
    }
    let written = bounded(|| readings_to_text(&readings));
    let again = bounded(|| read_readings_text(&written)).expect("what was written can be read");
    assert!(readings == again, "read again they are other readings");
    assert_eq!(
        written,
        readings_to_text(&again),
        "written again it is another text"
    );
});
