//! The foot of a sheet: how to read it, and the cautions.

use crate::page::furniture::{Block, Writing, lines_height};
use crate::text::wrap;

const NOTES: [&str; 5] = [
    "Values in bold differ from the car's base.",
    "Wheels off the ground and power off before you work on linkages: a servo can trap fingers.",
    "Check full lock by hand for binding before you power the steering.",
    "Karts and anything that carries a person: have the design and the work checked by someone qualified; follow \
     local rules and scrutineering.",
    "Figures are geometry, not a promise of handling.",
];

const SIZE: f64 = 2.3;

/// The notes under a line across the page.
pub(super) fn lay_out(width: f64) -> Block {
    let mut block = Block::default();
    let lines = wrap(&NOTES.join(" "), SIZE, false, width, 8);
    block.rule([0.0, 0.0], [width, 0.0]);
    block.write_lines(&lines, [0.0, -1.4], &Writing::caption(SIZE));
    block.height = 1.4 + lines_height(lines.len(), SIZE);
    block
}
