//! Steerloft: the program.

use std::process::ExitCode;

fn main() -> ExitCode {
    steerloft::cli::run()
}
