//! The program from a shell, and what it is built of.

mod cli;
mod layers;
