//! The application worked through its real widgets in a window without a screen.

mod common;

mod adjustments;
mod car;
mod commands;
mod cursor;
mod curves;
mod disk;
mod drawers;
mod effects;
mod entry;
mod every_car;
mod files;
mod handles;
mod memory;
mod monkey;
mod paper;
mod pictures;
mod reference;
mod same_numbers;
mod search;
mod setups;
mod trouble;
mod views;
