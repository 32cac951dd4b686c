//! The setup document of a car: its points, what can be changed, what is chosen, and its file.
//!
//! Data flows one way: a file is read into a [`setup::Setup`], which [`layout::layout`] lays out as the
//! points the solver poses. Millimetres and degrees in documents, radians in what the solver is given.

pub mod adjustment;
pub mod car;
pub mod check;
pub mod compare;
pub mod dimension;
pub mod edit;
pub mod file;
pub mod handles;
pub mod history;
pub mod layout;
pub mod library;
pub mod limits;
pub mod measuring;
pub mod readings;
pub mod servo;
pub mod setup;
pub mod stock;
pub mod supplied;

mod effects;
mod list;
mod motion;
mod points;
mod record;
mod spacers;
mod values;
