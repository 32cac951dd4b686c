//! The key figures as a table, with those of a reference beside them.

use std::slice::from_ref;

use crate::drawing::Role;
use crate::page::furniture::{Block, Writing, lines_height};
use crate::text::wrap;
use steerloft_analysis::figures::{Figure, Scope, Texts};

/// Font size, mm.
const SIZE: f64 = 2.5;
/// Widths of columns, mm: a value, a unit.
const VALUE: f64 = 15.0;
const UNIT: f64 = 9.5;
/// Space between the lines of a row and its neighbours, mm.
const PAD: f64 = 0.25;
/// Height of a row to write in by hand, mm.
const BLANK: f64 = 6.0;
/// Space between a name and its unit, mm.
const NAME_GAP: f64 = 1.5;
/// Least width of the names, mm, with which they take two lines at most.
const LEAST_NAME: f64 = 36.0;

/// What a table shows.
#[derive(Clone, Copy)]
pub(crate) enum Contents<'a> {
    /// The figures.
    Own,
    /// The figures beside those of a reference, in the same order.
    Compared(&'a [Figure]),
    /// Boxes to be filled in.
    Blank,
}

/// The least width of a table, mm.
pub(crate) fn least_width(contents: Contents<'_>) -> f64 {
    LEAST_NAME + UNIT + value_columns(contents) * VALUE
}

fn value_columns(contents: Contents<'_>) -> f64 {
    match contents {
        Contents::Own | Contents::Blank => 2.0,
        Contents::Compared(_) => 4.0,
    }
}

/// The table, as wide as given, mm.
pub(crate) fn lay_out(figures: &[Figure], contents: Contents<'_>, width: f64) -> Block {
    let table = Table {
        contents,
        width,
        name: width - UNIT - value_columns(contents) * VALUE,
    };
    let mut block = Block::default();
    table.add_heading(&mut block);
    for (index, figure) in figures.iter().enumerate() {
        table.add_row(&mut block, figure, index);
    }
    block
}

struct Table<'a> {
    contents: Contents<'a>,
    /// Of the whole table and of its names, mm.
    width: f64,
    name: f64,
}

impl Table<'_> {
    /// Right edges of the columns: left and right wheel, then those of the reference.
    fn edges(&self) -> Vec<f64> {
        let mut edges = Vec::new();
        let mut right = self.name + UNIT;
        while right + VALUE <= self.width + 1e-9 {
            right += VALUE;
            edges.push(right);
        }
        edges
    }

    fn add_heading(&self, block: &mut Block) {
        let top = -block.height;
        let title = match self.contents {
            Contents::Blank => "Gauge readings".to_owned(),
            Contents::Own | Contents::Compared(_) => "Figures at rest".to_owned(),
        };
        block.write_lines(&[title], [0.0, top], &Writing::plain(3.0).bold(true));
        let names = ["left", "right", "ref. left", "ref. right"];
        let lower = top - lines_height(1, 3.0) + lines_height(1, SIZE);
        for (edge, name) in self.edges().into_iter().zip(names) {
            let writing = Writing::caption(SIZE).to_the_right();
            block.write_lines(&[name.to_owned()], [edge, lower], &writing);
        }
        block.height += lines_height(1, 3.0) + 0.6;
        block.rule([0.0, -block.height], [self.width, -block.height]);
    }

    fn add_row(&self, block: &mut Block, figure: &Figure, index: usize) {
        let reference = match self.contents {
            Contents::Compared(figures) => figures.get(index),
            Contents::Own | Contents::Blank => None,
        };
        let own = figure.texts();
        let old = reference.map(Figure::texts);
        let changed = old.as_ref().is_some_and(|old| *old != own);
        let name = wrap(
            &figure.facts().title_with_sign(),
            SIZE,
            changed,
            self.name - NAME_GAP,
            2,
        );
        let is_blank = matches!(self.contents, Contents::Blank);
        let lines = lines_height(name.len().max(1), SIZE) + 2.0 * PAD;
        let height = if is_blank { lines.max(BLANK) } else { lines };
        let top = -block.height;
        if index % 2 == 1 && !is_blank {
            block.band([0.0, top - height], [self.width, top]);
        }
        let spare = (height - lines) / 2.0;
        let first = top - spare - PAD - (lines_height(1, SIZE) - SIZE) / 2.0;
        let writing = Writing::plain(SIZE).bold(changed);
        block.write_lines(&name, [0.0, first], &writing);
        let unit = [figure.unit.to_owned()];
        block.write_lines(&unit, [self.name, first], &Writing::caption(SIZE));
        let edges = self.edges();
        if is_blank {
            add_boxes(block, figure.facts().scope, &edges, [top, height]);
        } else {
            add_values(block, &own, &edges, first, &writing);
            if let (Some(old), Some(edges)) = (old, edges.get(2..)) {
                add_values(block, &old, edges, first, &Writing::caption(SIZE));
            }
        }
        block.height += height;
    }
}

/// Writes values into the first two of the columns; a value of the axle stands in the middle of both.
fn add_values(block: &mut Block, texts: &Texts, edges: &[f64], top: f64, writing: &Writing) {
    let [first, second, ..] = edges else {
        return;
    };
    match texts {
        Texts::Sides(sides) => {
            let writing = writing.to_the_right();
            block.write_lines(from_ref(&sides.left), [*first, top], &writing);
            block.write_lines(from_ref(&sides.right), [*second, top], &writing);
        }
        Texts::Axle(value) => {
            // Centred on the gap between the columns.
            let middle = first + 0.1 * VALUE;
            block.write_lines(from_ref(value), [middle, top], &writing.in_the_middle());
        }
    }
}

/// Boxes in the first two columns; one over both for a value of the axle.
fn add_boxes(block: &mut Block, scope: Scope, edges: &[f64], [top, height]: [f64; 2]) {
    let [first, second, ..] = edges else {
        return;
    };
    let gap = 1.0;
    let mut add = |left: f64, right: f64| {
        let corners = [[left, top - height + 0.3], [right, top - 0.3]];
        block.rectangle(Role::Rule, corners[0], corners[1]);
    };
    match scope {
        Scope::Wheels | Scope::Turns => {
            add(first - VALUE + gap, *first);
            add(second - VALUE + gap, *second);
        }
        Scope::Axle => add(first - VALUE + gap, *second),
    }
}
