//! A setup put together, for everything that a sheet shows of it.

use steerloft_analysis::Study;
use steerloft_setup::setup::Setup;
use steerloft_solver::error::SolveError;
use steerloft_solver::pose::AxlePose;

/// Why there is no sheet of a setup.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SheetError {
    /// The setup itself cannot be assembled.
    #[error("the setup cannot be assembled: {0}")]
    Setup(SolveError),
    /// The setup to compare with cannot be assembled.
    #[error("the reference setup cannot be assembled: {0}")]
    Reference(SolveError),
}

/// A setup with its points, its poses and its curves.
pub(crate) struct Assembled<'a> {
    pub(crate) setup: &'a Setup,
    pub(crate) study: Study,
}

impl<'a> Assembled<'a> {
    pub(crate) fn new(setup: &'a Setup) -> Result<Self, SolveError> {
        Ok(Self {
            setup,
            study: Study::new(setup)?,
        })
    }

    /// The pose at rest, the wheels straight ahead.
    pub(crate) fn pose(&self) -> &AxlePose {
        self.study.rest()
    }
}
