//! Whether a setup can be built and moves freely over its whole range: everything that is wrong with it.

mod finding;
mod motion;
mod parts;

pub use finding::{Finding, FindingKind, Measure};

use steerloft_setup::setup::Setup;

use crate::Study;

/// Everything that is wrong with a setup; nothing if it is sound.
///
/// It is assembled, moved over its steering and its travel and over a field of both, and its rods, its servo's throw and its
/// spacers are held against what the car gives. What the car does not give is not looked at.
#[must_use]
pub fn inspect(setup: &Setup) -> Vec<Finding> {
    let mut findings = match Study::new(setup) {
        Ok(study) => {
            let mut findings = motion::findings(setup, &study);
            findings.extend(parts::rods(&study, &setup.car.tie_rod));
            findings
        }
        Err(cause) => vec![Finding::new(
            FindingKind::Assembly,
            format!("cannot be assembled: {cause}"),
        )],
    };
    findings.extend(parts::servo_throw(&setup.car));
    findings.extend(parts::spacers(setup));
    findings
}
