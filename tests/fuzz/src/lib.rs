//! What every target holds an answer to: its memory and its processor time.

use std::sync::LazyLock;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::Duration;

use cpu_time::ThreadTime;

/// Greatest memory that one input may take at a time, bytes.
const MOST_MEMORY: u64 = 64 << 20;

/// Greatest processor time that one answer may take: a file, a number, or a pose. `STEERLOFT_FUZZ_MILLISECONDS` gives a slow
/// machine more.
static MOST_TIME: LazyLock<Duration> = LazyLock::new(|| {
    let given = std::env::var("STEERLOFT_FUZZ_MILLISECONDS").ok();
    let given = given.and_then(|text| text.parse().ok());
    Duration::from_millis(given.unwrap_or(100))
});

static MOST_MEMORY_SEEN: AtomicU64 = AtomicU64::new(0);
static MOST_TIME_SEEN: AtomicU64 = AtomicU64::new(0);

/// Runs what answers an input and returns the answer; says when an input took more memory or time than any before.
///
/// # Panics
/// Where it takes more of either than is allowed: the fuzzer keeps the input.
pub fn bounded<T>(run: impl FnOnce() -> T) -> T {
    bounded_for(1, run)
}

/// As [`bounded`], for so many answers in one.
///
/// # Panics
/// As [`bounded`].
pub fn bounded_for<T>(answers: u32, run: impl FnOnce() -> T) -> T {
    let begin = ThreadTime::now();
    let mut answer = None;
    let taken = allocation_counter::measure(|| answer = Some(run()));
    let time = begin.elapsed() / answers;
    let micros = u64::try_from(time.as_micros()).unwrap_or(u64::MAX);
    let more_memory = MOST_MEMORY_SEEN.fetch_max(taken.bytes_max, Ordering::Relaxed);
    let more_time = MOST_TIME_SEEN.fetch_max(micros, Ordering::Relaxed);
    if taken.bytes_max > more_memory || micros > more_time {
        eprintln!(
            "most so far: {} kB, {} us",
            MOST_MEMORY_SEEN.load(Ordering::Relaxed) >> 10,
            MOST_TIME_SEEN.load(Ordering::Relaxed)
        );
    }
    assert!(taken.bytes_max <= MOST_MEMORY, "{} bytes", taken.bytes_max);
    assert!(time <= *MOST_TIME, "{time:?}");
    answer.expect("it was run")
}
