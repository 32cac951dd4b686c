//! The reader of setup files, migration included: it never panics, and what was read and written again is equal.
#![no_main]

use libfuzzer_sys::fuzz_target;
use steerloft_analysis::Study;
use steerloft_fuzz::bounded;
use steerloft_setup::file::{read_text, to_text};

#[path = "../../../crates/solver/tests/common/words.rs"]
mod words;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    let Ok(setup) = bounded(|| read_text(text)) else {
        return;
    };
    let written = bounded(|| to_text(&setup));
    let again = bounded(|| read_text(&written)).expect("what was written can be read");
    assert!(setup == again, "read again it is another setup");
    assert_eq!(written, to_text(&again), "written again it is another text");
    if let Ok(study) = bounded(|| Study::new(&setup)) {
        let words = words::in_words(study.assembly(), study.rest());
        assert!(words::all_numbers(&words), "{words}");
    }
});
