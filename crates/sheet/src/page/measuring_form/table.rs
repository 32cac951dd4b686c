//! The table of points with boxes, and the boxes for what is no point.

use steerloft_setup::measuring::Measured;

use crate::drawing::{Outline, Role};
use crate::page::Ink;
use crate::page::furniture::{Block, Writing, lines_height};
use crate::text::wrap;

const SIZE: f64 = 2.6;
const SMALL: f64 = 2.1;
/// Widths of the number's column and of a box, mm.
const NUMBER: f64 = 7.0;
const BOX: f64 = 17.0;
/// Height of a box, mm, at least, and the space around it.
const BOX_HEIGHT: f64 = 5.6;
const PAD: f64 = 0.5;
const AXES: [&str; 3] = ["x", "y", "z"];

/// A row for each point: number, name and place, and a box for each coordinate of the left and the right one.
pub(super) fn of_points(points: &[Measured], width: f64) -> Block {
    let first_box = width - 6.0 * BOX;
    let mut block = Block::default();
    add_heading(&mut block, first_box, width);
    for (index, point) in points.iter().enumerate() {
        add_point(&mut block, index, point, [first_box, width]);
    }
    block
}

fn add_heading(block: &mut Block, first_box: f64, width: f64) {
    let strong = Writing::plain(SIZE).bold(true);
    let line = lines_height(1, SIZE);
    block.write_lines(&["Point".to_owned()], [NUMBER, -line], &strong);
    for (side, name) in ["left", "right"].into_iter().enumerate() {
        let middle = first_box + BOX * if side == 0 { 1.5 } else { 4.5 };
        block.write_lines(&[name.to_owned()], [middle, 0.0], &strong.in_the_middle());
    }
    for place in 0..6_u8 {
        let middle = first_box + (f64::from(place) + 0.5) * BOX;
        let name = AXES[usize::from(place % 3)].to_owned();
        block.write_lines(&[name], [middle, -line], &strong.in_the_middle());
    }
    block.height = 2.0 * line + 0.6;
    block.rule([0.0, -block.height], [width, -block.height]);
}

fn add_point(block: &mut Block, index: usize, point: &Measured, [first_box, width]: [f64; 2]) {
    let room = first_box - NUMBER - 2.0;
    let name = wrap(point.name, SIZE, true, room, 2);
    let place = wrap(point.place, SMALL, false, room, 3);
    let lines = lines_height(name.len(), SIZE) + lines_height(place.len(), SMALL);
    let height = lines.max(BOX_HEIGHT) + 2.0 * PAD;
    let top = -block.height;
    if index > 0 {
        let line = Outline::Line([[0.0, top], [width, top]]);
        block.push_inked(Ink::Faint, Role::Rule, line);
    }
    let strong = Writing::plain(SIZE).bold(true);
    block.write_lines(&[(index + 1).to_string()], [1.0, top - PAD], &strong);
    block.write_lines(&name, [NUMBER, top - PAD], &strong);
    let below = top - PAD - lines_height(name.len(), SIZE);
    block.write_lines(&place, [NUMBER, below], &Writing::caption(SMALL));
    let boxes = if point.has_pair { 6_u8 } else { 3 };
    for place in 0..boxes {
        let left = first_box + f64::from(place) * BOX;
        let corners = [
            [left + 0.6, top - height + PAD],
            [left + BOX - 0.6, top - PAD],
        ];
        block.rectangle(Role::Rule, corners[0], corners[1]);
    }
    block.height += height;
}

/// What is measured beside points: name, unit and how.
const LENGTHS: [[&str; 2]; 10] = [
    ["Wheelbase, mm", "front-axle station to rear axle"],
    [
        "Ride height, mm",
        "road to the underside of the chassis at the front-axle station",
    ],
    [
        "Tyre radius, mm",
        "road to wheel centre, the car standing on its wheels",
    ],
    ["Tyre width, mm", "across the tread"],
    ["Camber, deg", "against the chassis, top out +"],
    [
        "Cup length, mm",
        "centre of a ball to the open end of its cup",
    ],
    ["Shortest rod, mm", "ball to ball, screwed in all the way"],
    [
        "Longest rod, mm",
        "ball to ball, with thread enough left to hold",
    ],
    [
        "Steering, to both sides",
        "turn of the servo or column, deg, or way of the rack, mm",
    ],
    ["Travel, mm", "wheel up (bump) and down (droop) from rest"],
];

/// A box for each length and angle, in two columns.
pub(super) fn of_lengths(width: f64) -> Block {
    let gap = 6.0;
    let column = (width - gap) / 2.0;
    let mut block = Block::default();
    for pair in LENGTHS.chunks(2) {
        let top = -block.height;
        let mut tallest = BOX_HEIGHT;
        let mut left = 0.0;
        for [name, how] in pair {
            let room = column - 2.0 * BOX - 2.0;
            let name = wrap(name, SIZE, true, room, 1);
            let how = wrap(how, SMALL, false, room, 2);
            block.write_lines(&name, [left, top - PAD], &Writing::plain(SIZE).bold(true));
            let below = top - PAD - lines_height(1, SIZE);
            block.write_lines(&how, [left, below], &Writing::caption(SMALL));
            tallest = tallest.max(lines_height(1, SIZE) + lines_height(how.len(), SMALL));
            let right = left + column;
            let box_left = right - 2.0 * BOX;
            block.rectangle(
                Role::Rule,
                [box_left, top - PAD - BOX_HEIGHT],
                [right, top - PAD],
            );
            left += column + gap;
        }
        block.height += tallest + 2.0 * PAD;
    }
    block
}
