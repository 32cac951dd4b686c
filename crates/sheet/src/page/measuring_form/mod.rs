//! A form that shows from where to where each point of a car is measured, with boxes for what is found.

mod numbered;
mod table;

use steerloft_setup::measuring::{HOW, points};
use steerloft_setup::setup::Setup;

use crate::drawing::{Bounds, Drawing, View};
use crate::front_end::front_end;
use crate::page::Page;
use crate::page::adjustments::{Group, groups};
use crate::page::assembled::{Assembled, SheetError};
use crate::page::blank_sheet::at_base;
use crate::page::columns::{self, Laid};
use crate::page::foot::{self, Cautions};
use crate::page::furniture::{Block, Writing, lines_height};
use crate::page::further_pages::Sheet;
use crate::page::paper::{GAP, MARGIN, Paper};
use crate::page::scale::Scale;
use crate::page::sheet_page::{Column, TABLE};
use crate::text::wrap;

const TITLE: f64 = 5.0;
const TEXT: f64 = 2.6;

/// Draws the form for a car: one page with the points numbered on the car, one with the boxes and the base values of the
/// adjustments, and further ones for what does not go on it.
///
/// # Errors
/// [`SheetError::Setup`] where the car cannot be assembled with every adjustment at its base.
pub fn measuring_form(setup: &Setup, paper: Paper) -> Result<Vec<Page>, SheetError> {
    let base = at_base(setup);
    let car = Assembled::new(&base).map_err(SheetError::Setup)?;
    let axle = &car.study.layout().axle;
    let points = points(axle);
    let [page_width, page_height] = paper.size();
    let width = page_width - 2.0 * MARGIN;
    let title = format!("Measuring form, {}", setup.car.name);
    let foot = || foot::lay_out(&[], Cautions::InBrief, width);

    let mut first = Column::new(page_height);
    first.add(head(&title, HOW, width), GAP);
    let room = first.room_over(&foot());
    let drawings = Drawings::of(&car);
    let scale = drawings.largest_scale([width, room]);
    for (view, drawing, bounds) in drawings.0 {
        let block = numbered::view(view, drawing, &bounds, &points, [scale.ratio(), width]);
        first.add(block, 2.0 * GAP);
    }
    first.add_at_bottom(foot());

    let mut second = Column::new(page_height);
    second.add(head(&title, "", width), GAP);
    second.add(table::of_points(&points, width), GAP);
    second.add(table::of_lengths(width), GAP);
    let heading = "Base values of the adjustments: set them so while you measure";
    let mut base_values = head("", heading, width);
    let groups = without_rods(groups(&base, None, car.pose(), Vec::new()));
    let room = second.room_over(&foot()) - base_values.height;
    let Laid { block, rest } = columns::lay_out(&groups, TABLE, [width, room]);
    let top = -base_values.height;
    base_values.height += block.height;
    base_values.add(block, [0.0, top]);
    second.add(base_values, GAP);
    second.add_at_bottom(foot());

    let page = |column: Column| Page {
        size: paper.size(),
        title: title.clone(),
        placed: column.placed,
    };
    let mut pages = vec![page(first), page(second)];
    let sheet = Sheet {
        paper,
        title: &title,
    };
    pages.extend(sheet.of_adjustments(rest));
    Ok(pages)
}

/// The adjustments without how the rods are set, which is not measured.
fn without_rods(mut groups: Vec<Group>) -> Vec<Group> {
    for group in &mut groups {
        group.rows.retain(|row| !row.is_of_rods);
    }
    groups.retain(|group| !group.rows.is_empty());
    groups
}

fn head(title: &str, text: &str, width: f64) -> Block {
    let mut block = Block::default();
    let lines = wrap(title, TITLE, true, width, 2);
    if !lines.is_empty() {
        block.write_lines(&lines, [0.0, 0.0], &Writing::plain(TITLE).bold(true));
        block.height = lines_height(lines.len(), TITLE) + 0.8;
        block.rule([0.0, -block.height], [width, -block.height]);
    }
    let lines = wrap(text, TEXT, false, width, 8);
    block.height += 1.4;
    block.write_lines(&lines, [0.0, -block.height], &Writing::plain(TEXT));
    block.height += lines_height(lines.len(), TEXT);
    block
}

/// The views of a form.
struct Drawings(Vec<(View, Drawing, Bounds)>);

/// Height that numbers and a title take beside a drawing, with the gap under it, mm.
const BESIDE_DRAWING: f64 = 34.0;
/// Width kept for numbers beside a drawing, mm.
const AROUND_DRAWING: f64 = 10.0;

impl Drawings {
    fn of(car: &Assembled<'_>) -> Self {
        let views = View::ALL.into_iter().filter_map(|view| {
            let drawing = front_end(car.study.layout(), car.pose(), view);
            let bounds = drawing.bounds()?;
            Some((view, drawing, bounds))
        });
        Self(views.collect())
    }

    fn largest_scale(&self, [width, height]: [f64; 2]) -> Scale {
        let fits = |scale: &Scale| {
            let ratio = scale.ratio();
            let each = |(_, _, bounds): &(View, Drawing, Bounds)| {
                (
                    bounds.width() * ratio + AROUND_DRAWING,
                    bounds.height() * ratio + BESIDE_DRAWING,
                )
            };
            let sizes = self.0.iter().map(each);
            sizes.clone().all(|(across, _)| across <= width)
                && sizes.map(|(_, upright)| upright).sum::<f64>() <= height
        };
        Scale::CLOSE
            .into_iter()
            .find(fits)
            .unwrap_or(Scale::SMALLEST)
    }
}
