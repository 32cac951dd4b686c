//! Every figure of a setup by name: its value in a pose, its unit and decimals, what it means.
//!
//! [`FigureKind`] is the catalogue; [`Figures`] computes, for one pose of one setup, whatever is asked for. Values are in
//! the units shown: mm, degrees, percent.

mod catalogue;
mod figure;
mod kind;
mod lock;
mod parts;
mod symmetry;
mod values;

pub use catalogue::{Facts, Scope};
pub use figure::{Figure, Texts, Values};
pub use kind::{FigureGroup, FigureKind};
pub use parts::Figures;
