//! Pages after the front page: adjustments that did not go on it, the log of runs, and more curves.

use crate::chart::{self, Shown};
use crate::page::Page;
use crate::page::adjustments::Group;
use crate::page::columns::{self, Laid};
use crate::page::foot::{self, Cautions};
use crate::page::furniture::{Block, Writing, lines_height};
use crate::page::paper::{GAP, MARGIN, Paper};
use crate::page::runs;
use crate::page::sheet_page::{Column, TABLE};
use crate::text::wrap;
use steerloft_analysis::curves::Curve;
use steerloft_setup::setup::Run;

const TITLE: f64 = 4.0;
const SUBJECT: f64 = 2.7;
/// Charts side by side and over one another.
const ACROSS: u8 = 2;
const DOWN: u8 = 4;
/// Greatest height of a chart, mm.
const MOST_CHART: f64 = 66.0;

/// What further pages belong to.
pub(crate) struct Sheet<'a> {
    pub(crate) paper: Paper,
    pub(crate) title: &'a str,
}

impl Sheet<'_> {
    fn width(&self) -> f64 {
        self.paper.size()[0] - 2.0 * MARGIN
    }

    fn start(&self, subject: &str) -> Column {
        let width = self.width();
        let mut head = Block::default();
        let title = wrap(self.title, TITLE, true, width, 2);
        head.write_lines(&title, [0.0, 0.0], &Writing::plain(TITLE).bold(true));
        head.height = lines_height(title.len(), TITLE);
        let subject = [subject.to_owned()];
        head.write_lines(&subject, [0.0, -head.height], &Writing::caption(SUBJECT));
        head.height += lines_height(1, SUBJECT) + 0.8;
        head.rule([0.0, -head.height], [width, -head.height]);
        let mut column = Column::new(self.paper.size()[1]);
        column.add(head, GAP);
        column
    }

    fn finish(&self, mut column: Column, foot: Block) -> Page {
        column.add_at_bottom(foot);
        Page {
            size: self.paper.size(),
            title: self.title.to_owned(),
            placed: column.placed,
        }
    }

    /// Pages for adjustments that did not go on the front page.
    pub(crate) fn of_adjustments(&self, mut groups: Vec<Group>) -> Vec<Page> {
        let mut pages = Vec::new();
        while !groups.is_empty() {
            let mut column = self.start("Adjustments, continued");
            let foot = foot::lay_out(&[], Cautions::InBrief, self.width());
            let room = [self.width(), column.room_over(&foot)];
            let before = count(&groups);
            let Laid { block, rest } = columns::lay_out(&groups, TABLE, room);
            column.add(block, GAP);
            pages.push(self.finish(column, foot));
            groups = rest;
            if count(&groups) == before {
                break;
            }
        }
        pages
    }

    /// Pages for the log of runs, the first run first.
    pub(crate) fn of_runs(&self, runs: &[Run]) -> Vec<Page> {
        let mut pages = Vec::new();
        let mut open: Option<(Column, Block)> = None;
        for (index, run) in runs.iter().enumerate() {
            let block = runs::block(index + 1, run, self.width());
            let full = open
                .take_if(|(column, foot)| column.room_over(foot) < block.height)
                .map(|(column, foot)| self.finish(column, foot));
            pages.extend(full);
            let (column, _) = open.get_or_insert_with(|| {
                let foot = foot::lay_out(&[], Cautions::InBrief, self.width());
                (self.start("Runs"), foot)
            });
            column.add(block, 0.0);
        }
        pages.extend(open.map(|(column, foot)| self.finish(column, foot)));
        pages
    }

    /// Pages of charts.
    pub(crate) fn of_curves(&self, curves: &[Curve]) -> Vec<Page> {
        curves
            .chunks(usize::from(ACROSS * DOWN))
            .map(|curves| {
                let mut column = self.start("Curves");
                let foot = foot::lay_out(&[], Cautions::InBrief, self.width());
                let room = column.room_over(&foot);
                column.add(charts(curves, self.width(), room), GAP);
                self.finish(column, foot)
            })
            .collect()
    }
}

fn count(groups: &[Group]) -> usize {
    groups.iter().map(|group| group.rows.len()).sum()
}

fn charts(curves: &[Curve], width: f64, room: f64) -> Block {
    let height = ((room + chart::BETWEEN) / f64::from(DOWN) - chart::BETWEEN).min(MOST_CHART);
    let mut block = Block::default();
    for row in curves.chunks(usize::from(ACROSS)) {
        let top = -block.height;
        let charts = chart::side_by_side(row, ACROSS, [width, height], Shown::Lines);
        block.height += charts.height.max(height) + chart::BETWEEN;
        block.add(charts, [0.0, top]);
    }
    block
}
