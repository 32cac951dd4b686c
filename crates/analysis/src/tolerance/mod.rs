//! How much it matters that a car is not built exactly: bands on curves, spreads of figures, and the dimensions that matter
//! most.
//!
//! Every dimension is off by its build error at most, with any value within it as likely (a rectangular distribution, which
//! the Guide to the Expression of Uncertainty in Measurement, JCGM 100:2008, 4.3.7, takes where only bounds are known; cited
//! from memory). Cars are drawn from that by a Sobol sequence with Owen's scrambling (Burley, "Practical Hash-based Owen
//! Scrambling", Journal of Computer Graphics Techniques 9(4), 2020, in the library `sobol_burley`), which fills the space
//! evenly, so that a few thousand cars do; the seed is fixed and the answer does not depend on the number of threads. Each
//! is laid out, assembled and measured as any other setup.

mod band;
mod car;
mod quantiles;
mod run;
mod source;
mod spread;

pub use band::{Band, BandLine, BandPoint};
pub use quantiles::Quantiles;
pub use run::{MOST_SAMPLES, Request, SAMPLES, Tolerance};
pub use source::{Matter, Source};
pub use spread::{Share, Spread};
