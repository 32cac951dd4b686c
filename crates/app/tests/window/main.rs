//! The application worked through its real widgets in a window without a screen.

mod common;

mod adjustments;
mod answers;
mod binding;
mod car;
mod car_parts;
mod commands;
mod cursor;
mod curves;
mod disk;
mod drawers;
mod effects;
mod entry;
mod every_car;
mod files;
mod fit;
mod handles;
mod memory;
mod monkey;
mod paper;
mod pictures;
mod pit_table;
mod reference;
mod runs;
mod same_numbers;
mod search;
mod servo;
mod setup_tree;
mod setups;
mod trouble;
mod views;
