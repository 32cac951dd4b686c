//! Steerloft: a bench for the steering and suspension linkages of small cars.
//!
//! The window and the command line over the setup document, the solver and the drawings. [`state`] holds what is open
//! and what follows from it and knows no screen; [`commands`] lists what the user can ask for; [`ui`] draws the state
//! and gathers what the user wants; [`entry`] reads what is typed, [`units`] converts what is shown; [`app`] joins them; [`cli`] is the command line of the same program.

pub mod app;
pub mod cli;
pub mod command_search;
pub mod commands;
pub mod dialogs;
pub mod entry;
pub mod format;
pub mod heap;
mod lenient;
pub mod memory;
pub mod state;
pub mod theme;
pub mod ui;
pub mod units;
