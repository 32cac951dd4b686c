//! What a setup does and which parts give what is wanted: figures, curves and the answers drawn from them.
//!
//! Between the document and whatever shows it: window, paper and command line take every number from here, so the same
//! thing has the same value everywhere. Millimetres and degrees; signs are those of the solver.
//!
//! A [`Study`] is a setup assembled. It gives any [`curves::Curve`] and, for any pose, the [`figures::Figures`]; both are
//! computed when they are asked for and not before.
//!
//! The answers take a setup each: [`servo`] choice and centring, [`loads`], [`binding`], [`saver`], what a step of each adjustment
//! does ([`effects`]), how alike the sides are ([`symmetry`]), what build errors do ([`tolerance`]), which car gauge readings
//! tell of ([`fit`]), the [`pit_table`], and everything that is wrong with it ([`inspection`]).

pub mod binding;
pub mod curves;
pub mod effects;
pub mod figures;
pub mod find;
pub mod fit;
pub mod inspection;
pub mod loads;
pub mod pit_table;
pub mod saver;
pub mod servo;
pub mod sweep_table;
pub mod symmetry;
pub mod text;
pub mod tolerance;

mod input;
mod range;
mod study;
mod tie_rod;
mod wheels;

pub use input::InputUnit;
pub use range::{Range, round_step};
pub use study::Study;
pub use tie_rod::TieRod;
