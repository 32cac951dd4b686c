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
pub(crate) struct Field {
    caption: &'static str,
    content: String,
    /// Share of the block's width.
    share: f64,
    writing: Writing,
    most_lines: usize,
}

impl Field {
    /// A field that takes a share of the block's width.
    pub(crate) fn new(caption: &'static str, content: &str, share: f64) -> Self {
        Self {
            caption,
            content: content.to_owned(),
            share,
            writing: Writing::plain(3.2),
            most_lines: 3,
        }
    }

    /// The field in large bold letters.
    pub(crate) fn large(self) -> Self {
        Self {
            writing: Writing::plain(5.0).bold(true),
            ..self
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
pub(crate) fn name_of(setup: &Setup) -> String {
    let name = on_one_line(&setup.record.name);
    if name.is_empty() {
        "Setup without a name".to_owned()
    } else {
        name
    }
}

/// Rows of fields, as wide as given, mm, in a frame.
pub(crate) fn lay_out(rows: &[Vec<Field>], width: f64) -> Block {
    let mut block = Block::default();
    for row in rows {
        add_row(&mut block, row, width);
    }
    let height = block.height;
    block.rule([0.0, 0.0], [width, 0.0]);
    block.rule([0.0, 0.0], [0.0, -height]);
    block.rule([width, 0.0], [width, -height]);
    block
}

/// The rows of a page of drawings, which states its scale.
pub(crate) fn rows_of_drawing(setup: &Setup, scale: Scale, width: f64) -> Vec<Vec<Field>> {
    let record = &setup.record;
    let name = |share: f64| Field::new("Setup", &name_of(setup), share).large();
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
    rows.extend(notes(setup));
    rows
}

/// The rows of a setup sheet; fields without content can be filled in by hand.
pub(crate) fn rows_of_sheet(setup: &Setup, reference: Option<&Setup>) -> Vec<Vec<Field>> {
    let record = &setup.record;
    let mut rows = vec![
        vec![
            Field::new("Setup", &name_of(setup), 0.75).large(),
            Field::new("Date", &record.date, 0.25),
        ],
        vec![
            Field::new("Car", &setup.car.name, 0.5),
            Field::new("Event", &record.event, 0.5),
        ],
    ];
    let mut conditions = vec![
        Field::new("Surface", &record.surface, 0.5),
        Field::new("Grip", &record.grip, 0.5),
    ];
    if let Some(reference) = reference {
        for field in &mut conditions {
            field.share = 0.3;
        }
        conditions.push(Field::new("Compared with", &name_of(reference), 0.4));
    }
    rows.push(conditions);
    rows.extend(notes(setup));
    rows
}

/// The rows of a sheet to be filled in by hand.
pub(crate) fn blank_rows(setup: &Setup) -> Vec<Vec<Field>> {
    let blank = |caption, share| Field::new(caption, "", share);
    vec![
        vec![blank("Setup", 0.75).large(), blank("Date", 0.25)],
        vec![Field::new("Car", &setup.car.name, 0.5), blank("Event", 0.5)],
        vec![
            blank("Surface", 0.25),
            blank("Grip", 0.25),
            blank("Driver", 0.25),
            blank("Tyres", 0.25),
        ],
        vec![blank("Notes", 1.0)],
    ]
}

fn notes(setup: &Setup) -> Option<Vec<Field>> {
    if on_one_line(&setup.record.notes).is_empty() {
        return None;
    }
    Some(vec![Field {
        writing: Writing::plain(2.8),
        most_lines: 4,
        ..Field::new("Notes", &setup.record.notes, 1.0)
    }])
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
