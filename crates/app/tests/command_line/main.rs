//! The program from a shell, and what it is built of.

mod cli;
mod faults;
mod kills;
mod layers;
mod surroundings;
