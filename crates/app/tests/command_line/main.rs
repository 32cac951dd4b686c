//! The program from a shell, and what it is built of.

mod cli;
mod common;
mod compare;
mod documented;
mod effects;
mod faults;
mod find;
mod kills;
mod layers;
mod manual;
mod output;
mod sheet;
mod surroundings;
mod sweep;
