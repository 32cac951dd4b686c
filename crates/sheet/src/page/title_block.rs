//! The title block: what the sheet is of, when, and for what.

use steerloft_setup::setup::Setup;

use crate::page::furniture::{Block, Writing, lines_height};
use crate::page::scale::Scale;
use crate::text::{on_one_line, wrap};

/// Inner margin of a field, mm.
const PAD: f64 = 1.4;
const CAPTION: f64 = 2.1;
/// From this width on, the first fields stand in one row, mm.
const WIDE: f64 = 240.0;

/// A framed field: a small caption over its content.
struct Field {
    caption: &'static str,
    content: String,
    /// Share of the block's width.
    share: f64,
    writing: Writing,
    most_lines: usize,
}

impl Field {
    fn new(caption: &'static str, content: &str, share: f64) -> Self {
        Self {
            caption,
            content: content.to_owned(),
            share,
            writing: Writing::plain(3.2),
            most_lines: 3,
        }
    }

    fn lines(&self, width: f64) -> Vec<String> {
        let room = self.share * width - 2.0 * PAD;
        wrap(
            &self.content,
            self.writing.size,
            self.writing.bold,
            room,
            self.most_lines,
        )
    }

    /// Height of the field, with room to write by hand where it is empty.
    fn height(&self, width: f64) -> f64 {
        let count = self.lines(width).len().max(1);
        2.0 * PAD + lines_height(1, CAPTION) + lines_height(count, self.writing.size)
    }
}

/// Name of a setup as shown: a name is never empty.
pub(super) fn name_of(setup: &Setup) -> String {
    let name = on_one_line(&setup.record.name);
    if name.is_empty() {
        "Setup without a name".to_owned()
    } else {
        name
    }
}

/// The block, as wide as the page's writing.
pub(super) fn lay_out(setup: &Setup, scale: Scale, width: f64) -> Block {
    let mut block = Block::default();
    for row in rows(setup, scale, width) {
        add_row(&mut block, &row, width);
    }
    let height = block.height;
    block.rule([0.0, 0.0], [width, 0.0]);
    block.rule([0.0, 0.0], [0.0, -height]);
    block.rule([width, 0.0], [width, -height]);
    block
}

fn rows(setup: &Setup, scale: Scale, width: f64) -> Vec<Vec<Field>> {
    let record = &setup.record;
    let name = |share: f64| Field {
        writing: Writing::plain(5.0).bold(true),
        ..Field::new("Setup", &name_of(setup), share)
    };
    let car = |share: f64| Field::new("Car", &setup.car.name, share);
    let event = |share: f64| Field::new("Event", &record.event, share);
    let date = |share: f64| Field::new("Date", &record.date, share);
    let scale = |share: f64| Field::new("Scale", &scale.label(), share);
    let mut rows = if width > WIDE {
        vec![vec![
            name(0.38),
            car(0.21),
            event(0.21),
            date(0.12),
            scale(0.08),
        ]]
    } else {
        vec![
            vec![name(0.75), date(0.25)],
            vec![car(0.375), event(0.375), scale(0.25)],
        ]
    };
    if !on_one_line(&record.surface).is_empty() || !on_one_line(&record.grip).is_empty() {
        rows.push(vec![
            Field::new("Surface", &record.surface, 0.5),
            Field::new("Grip", &record.grip, 0.5),
        ]);
    }
    if !on_one_line(&record.notes).is_empty() {
        rows.push(vec![Field {
            writing: Writing::plain(2.8),
            most_lines: 4,
            ..Field::new("Notes", &record.notes, 1.0)
        }]);
    }
    rows
}

/// Adds a row of fields under what the block holds, with lines under and between them.
fn add_row(block: &mut Block, fields: &[Field], width: f64) {
    let top = -block.height;
    let height = fields
        .iter()
        .map(|field| field.height(width))
        .fold(0.0, f64::max);
    let mut left = 0.0;
    for field in fields {
        if left > 0.0 {
            block.rule([left, top], [left, top - height]);
        }
        let caption = [field.caption.to_owned()];
        block.write_lines(
            &caption,
            [left + PAD, top - PAD],
            &Writing::caption(CAPTION),
        );
        let content_top = top - PAD - lines_height(1, CAPTION);
        block.write_lines(
            &field.lines(width),
            [left + PAD, content_top],
            &field.writing,
        );
        left += field.share * width;
    }
    block.rule([0.0, top - height], [width, top - height]);
    block.height += height;
}
