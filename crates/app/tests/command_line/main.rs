//! The program from a shell, and what it is built of.

mod binding;
mod check;
mod cli;
mod common;
mod compare;
mod documented;
mod effects;
mod faults;
mod find;
mod fit;
mod history;
mod kills;
mod layers;
mod manual;
mod output;
mod pit_table;
mod servo;
mod sheet;
mod surroundings;
mod sweep;
mod symmetry;
mod tolerance;
