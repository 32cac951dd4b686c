//! One view or one chart as a picture of its own.

use steerloft_setup::layout::Layout;
use steerloft_setup::setup::Setup;
use steerloft_solver::drive::Drive;
use steerloft_solver::pose::AxlePose;

use crate::chart::{self, Shown};
use crate::drawing::{Bounds, View};
use crate::front_end::front_end;
use crate::page::assembled::{Assembled, SheetError};
use crate::page::furniture::{Block, Writing, lines_height};
use crate::page::scale::{self, Scale};
use crate::page::setup_sheet::curve_of;
use crate::page::title_block::name_of;
use crate::page::{Ink, Page, Placed};
use crate::text::wrap;
use steerloft_analysis::curves::{Curve, CurveKind};
use steerloft_analysis::text::signed;

/// Margin around a picture, mm.
const MARGIN: f64 = 5.0;
const GAP: f64 = 3.0;
const NAME: f64 = 4.0;
const SUBJECT: f64 = 2.8;
/// Size of a chart without its head, mm.
const CHART: [f64; 2] = [150.0, 95.0];
/// Greatest and least width of a view, mm, and its greatest height.
const MOST_VIEW: [f64; 2] = [180.0, 180.0];
const LEAST_VIEW: f64 = 110.0;

/// What is asked of the picture of a view.
#[derive(Debug, Clone, Copy)]
pub struct ViewPicture<'a> {
    /// The setup, for its name.
    pub setup: &'a Setup,
    /// The setup laid out.
    pub layout: &'a Layout,
    /// A pose of its axle.
    pub pose: &'a AxlePose,
    /// A setup to compare with, laid out and posed; its outlines are drawn over the car.
    pub reference: Option<(&'a Layout, &'a AxlePose)>,
    /// From where.
    pub view: View,
}

/// Draws one view with the setup's name, what is seen in which pose, and its scale: the largest usual one that keeps the
/// picture within 180 mm either way.
#[must_use]
pub fn picture_of_view(picture: &ViewPicture<'_>) -> Page {
    let drawing = front_end(picture.layout, picture.pose, picture.view);
    let reference = picture
        .reference
        .map(|(layout, pose)| front_end(layout, pose, picture.view));
    let bounds = reference
        .iter()
        .chain([&drawing])
        .filter_map(crate::drawing::Drawing::bounds)
        .reduce(Bounds::union)
        .unwrap_or(Bounds {
            min: [0.0; 2],
            max: [0.0; 2],
        });
    let fits = |scale: &Scale| {
        bounds.width() * scale.ratio() <= MOST_VIEW[0]
            && bounds.height() * scale.ratio() <= MOST_VIEW[1]
    };
    let scale = Scale::CLOSE
        .into_iter()
        .find(fits)
        .unwrap_or(Scale::SMALLEST);
    let ratio = scale.ratio();
    let width = (bounds.width() * ratio).max(LEAST_VIEW);
    let mut subject = format!("{}{}", picture.view.title(), pose_in_words(picture));
    if reference.is_some() {
        subject.push_str("; the reference dashed");
    }
    let mut block = head(picture.setup, &subject, width);
    let at = [
        width / 2.0 - ratio * f64::midpoint(bounds.min[0], bounds.max[0]),
        -block.height - ratio * bounds.max[1],
    ];
    block.draw(drawing, ratio, at);
    if let Some(drawing) = reference {
        block.place(Placed {
            drawing,
            ink: Ink::Reference,
            scale: ratio,
            at,
        });
    }
    block.height += bounds.height() * ratio + GAP;
    let bar = scale::bar(scale, width);
    let top = -block.height;
    block.height += bar.height;
    block.add(bar, [0.0, top]);
    page(block, width, picture.setup, picture.view.title())
}

/// How the car is posed, if it is not at rest.
fn pose_in_words(picture: &ViewPicture<'_>) -> String {
    let pose = picture.pose;
    let mut words = String::new();
    let (input, unit) = match picture.layout.axle.drive {
        Drive::SwingArm(_) | Drive::TwinCrank(_) => (pose.input.to_degrees(), "°"),
        Drive::Slider(_) => (pose.input, " mm"),
    };
    if pose.input != 0.0 {
        words = format!(", steering input {}{unit}", signed(input, 1));
    }
    let travel = &pose.travel;
    if travel.left != 0.0 || travel.right != 0.0 {
        let [left, right] = [travel.left, travel.right].map(|value| signed(value, 2));
        let both = if left == right {
            left
        } else {
            format!("{left} left, {right} right")
        };
        words = format!("{words}, wheel travel {both} mm");
    }
    words
}

/// Draws one curve of a setup, and of a reference where one is given, with title, axes, legend and the setup's name.
///
/// # Errors
/// [`SheetError`] where the setup or the reference cannot be assembled.
pub fn picture_of_chart(
    setup: &Setup,
    reference: Option<&Setup>,
    kind: CurveKind,
) -> Result<Page, SheetError> {
    let own = Assembled::new(setup).map_err(SheetError::Setup)?;
    let other = reference.map(Assembled::new).transpose();
    let other = other.map_err(SheetError::Reference)?;
    let curve = curve_of(&own, other.as_ref(), kind);
    Ok(picture_of_curve(setup, reference, &curve))
}

/// As [`picture_of_chart`], of a curve that is known already.
#[must_use]
pub fn picture_of_curve(setup: &Setup, reference: Option<&Setup>, curve: &Curve) -> Page {
    let [width, height] = CHART;
    let compared = reference.map(|other| format!("; reference (ref.): {}", name_of(other)));
    let subject = format!("{}{}", setup.car.name, compared.unwrap_or_default());
    let mut block = head(setup, &subject, width);
    let chart = chart::side_by_side(
        std::slice::from_ref(curve),
        1,
        [width, height],
        Shown::Lines,
    );
    let top = -block.height;
    block.height += chart.height;
    block.add(chart, [0.0, top]);
    page(block, width, setup, curve.kind.title())
}

/// The setup's name over what is shown.
fn head(setup: &Setup, subject: &str, width: f64) -> Block {
    let mut block = Block::default();
    let name = wrap(&name_of(setup), NAME, true, width, 2);
    block.write_lines(&name, [0.0, 0.0], &Writing::plain(NAME).bold(true));
    block.height = lines_height(name.len(), NAME);
    let subject = wrap(subject, SUBJECT, false, width, 3);
    block.write_lines(&subject, [0.0, -block.height], &Writing::caption(SUBJECT));
    block.height += lines_height(subject.len(), SUBJECT) + GAP;
    block
}

fn page(block: Block, width: f64, setup: &Setup, what: &str) -> Page {
    let height = block.height + 2.0 * MARGIN;
    Page {
        size: [width + 2.0 * MARGIN, height],
        title: format!("{}, {what}", name_of(setup)),
        placed: block.placed([MARGIN, height - MARGIN]).collect(),
    }
}
