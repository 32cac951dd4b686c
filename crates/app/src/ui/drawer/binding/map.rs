//! The map: filled by how far the limit is, with the limits as lines, the worst point and the pose on screen.

use eframe::egui::epaint::{Mesh, Vertex, WHITE_UV};
use eframe::egui::{
    Align2, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, TextStyle, Ui, WidgetInfo, pos2, vec2,
};
use steerloft_analysis::InputUnit;
use steerloft_analysis::binding::{BindingMap, Concern};

use super::{amount, title};
use crate::format::{short, signed, with_unit};
use crate::state::{Bench, Cursor};
use crate::theme::Tokens;
use crate::ui::{Intent, Intents, units_of};
use crate::units::Units;

/// Room for the marks at the left and below, and for the key above, points.
const LEFT: f32 = 46.0;
const BELOW: f32 = 34.0;
const KEY: f32 = 18.0;

/// Least height of the map, points.
const LEAST_HEIGHT: f32 = 90.0;

/// The map with its place on screen.
struct Placed<'a> {
    map: &'a BindingMap,
    concern: Concern,
    field: Rect,
    /// Least and greatest distance from the limit, negative beyond it.
    margins: [f64; 2],
}

/// Share of the full ink that the place nearest to the limit has in a field that is free all over.
const PALEST: f64 = 0.12;

/// Draws the map; a click poses the car.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    map: &BindingMap,
    concern: Concern,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let units = units_of(ui.ctx());
    let height = ui.available_height().max(LEAST_HEIGHT + BELOW + KEY);
    let size = vec2(ui.available_width(), height);
    let (area, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, "Binding map"));
    let field = Rect::from_min_max(
        area.min + vec2(LEFT, KEY + 4.0),
        area.max - vec2(10.0, BELOW),
    );
    let placed = Placed::new(map, concern, field);
    let painter = ui.painter_at(area);
    painter.rect_filled(field, 0.0, tokens.canvas);
    placed.fill(&painter, tokens);
    placed.limits(&painter, ui, tokens);
    painter.rect_stroke(
        field,
        0.0,
        Stroke::new(1.0, tokens.rule),
        eframe::egui::StrokeKind::Outside,
    );
    placed.axes(&painter, ui, bench, units);
    placed.key(&painter, ui, area, units);
    placed.marks(&painter, bench, tokens);
    if let Some(at) = response.interact_pointer_pos()
        && response.clicked()
        && field.contains(at)
    {
        let [input, travel] = placed.place(at);
        intents.push(Intent::Cursor(Cursor { input, travel }));
    }
    let hovered = response.hover_pos().filter(|at| field.contains(*at));
    if let Some(text) = hovered.and_then(|at| placed.readout(at, bench, units)) {
        response.on_hover_text_at_pointer(text);
    }
}

impl<'a> Placed<'a> {
    fn new(map: &'a BindingMap, concern: Concern, field: Rect) -> Self {
        let margins = map.cells.iter().flatten();
        let margins = margins.filter_map(|cell| cell.margin(concern));
        let ends = margins.fold(None, |ends: Option<[f64; 2]>, margin| {
            let [least, most] = ends.unwrap_or([margin; 2]);
            Some([least.min(margin), most.max(margin)])
        });
        Self {
            map,
            concern,
            field,
            margins: ends.unwrap_or([0.0; 2]),
        }
    }

    /// Ends of the field: steering and travel. A field of one travel is drawn as a strip about it.
    fn ends(&self) -> [[f64; 2]; 2] {
        let ends = |values: &[f64]| {
            let first = values.first().copied().unwrap_or_default();
            let last = values.last().copied().unwrap_or(first);
            if last > first {
                [first, last]
            } else {
                [first - 1.0, first + 1.0]
            }
        };
        [ends(&self.map.inputs), ends(&self.map.travels)]
    }

    /// Where a place of the field lies on screen.
    fn position(&self, [input, travel]: [f64; 2]) -> Pos2 {
        let [inputs, travels] = self.ends();
        #[allow(clippy::cast_possible_truncation, reason = "a share of the screen")]
        let share = |value: f64, [from, to]: [f64; 2]| ((value - from) / (to - from)) as f32;
        pos2(
            self.field.left() + share(input, inputs) * self.field.width(),
            self.field.bottom() - share(travel, travels) * self.field.height(),
        )
    }

    /// The place of the field at a point of the screen.
    fn place(&self, at: Pos2) -> [f64; 2] {
        let [inputs, travels] = self.ends();
        let across = f64::from((at.x - self.field.left()) / self.field.width().max(1.0));
        let up = f64::from((self.field.bottom() - at.y) / self.field.height().max(1.0));
        let travel = if self.map.travels.len() > 1 {
            travels[0] + up * (travels[1] - travels[0])
        } else {
            self.map.travels.first().copied().unwrap_or_default()
        };
        [inputs[0] + across * (inputs[1] - inputs[0]), travel]
    }

    /// The share of full ink at a pose; nothing where its margin is not known.
    fn share(&self, column: usize, row: usize) -> Option<f64> {
        let row = row.min(self.map.travels.len().saturating_sub(1));
        let cell = self.map.cell(column, row)?.as_ref().ok()?;
        Some(self.share_of(cell.margin(self.concern)?))
    }

    /// The share of full ink of a margin. Where something binds it is 0 at the limit, 1 farthest within and -1 farthest
    /// beyond; in a field that is free all over it goes from the nearest to the farthest.
    fn share_of(&self, margin: f64) -> f64 {
        let [least, most] = self.margins;
        let of = |part: f64, whole: f64| part / whole.max(f64::MIN_POSITIVE);
        if least >= 0.0 {
            PALEST + (1.0 - PALEST) * of(margin - least, most - least)
        } else if margin >= 0.0 {
            of(margin, most)
        } else {
            -of(-margin, -least)
        }
    }

    /// Fills the meshes between poses; those with a pose out of reach are crossed out.
    fn fill(&self, painter: &Painter, tokens: &Tokens) {
        let travels = self.rows();
        let mut mesh = Mesh::default();
        for (row, pair) in travels.windows(2).enumerate() {
            for (column, inputs) in self.map.inputs.windows(2).enumerate() {
                let [low, high] = [pair[0], pair[1]];
                let [left, right] = [inputs[0], inputs[1]];
                let corners = [[left, low], [right, low], [right, high], [left, high]]
                    .map(|place| self.position(place));
                let shares = [
                    self.share(column, row),
                    self.share(column + 1, row),
                    self.share(column + 1, row + 1),
                    self.share(column, row + 1),
                ];
                if let [Some(a), Some(b), Some(c), Some(d)] = shares {
                    let colors = [a, b, c, d].map(|share| tokens.margin(share));
                    add_quad(&mut mesh, corners, colors);
                } else if self.is_apart(column, row) {
                    painter.line_segment([corners[0], corners[2]], (1.0, tokens.warning));
                    painter.line_segment([corners[1], corners[3]], (1.0, tokens.warning));
                }
            }
        }
        painter.add(Shape::mesh(mesh));
    }

    /// Travels of the rows; of a field of one travel both edges of the strip.
    fn rows(&self) -> Vec<f64> {
        if self.map.travels.len() > 1 {
            self.map.travels.clone()
        } else {
            self.ends()[1].to_vec()
        }
    }

    fn is_apart(&self, column: usize, row: usize) -> bool {
        let corners = [(0, 0), (1, 0), (1, 1), (0, 1)];
        corners.iter().any(|(right, up)| {
            let cell = self.map.cell(column + right, row + up);
            cell.is_some_and(Result::is_err)
        })
    }

    /// The limits of all concerns as lines, that of the map's own the strongest.
    fn limits(&self, painter: &Painter, ui: &Ui, tokens: &Tokens) {
        let font = TextStyle::Small.resolve(ui.style());
        for concern in Concern::ALL {
            let line = self.map.limit_line(concern);
            let own = concern == self.concern;
            let stroke = Stroke::new(if own { 2.5 } else { 1.2 }, tokens.text_strong);
            for piece in &line {
                let ends = piece.map(|place| self.position(place));
                if own {
                    painter.line_segment(ends, stroke);
                } else {
                    painter.extend(Shape::dashed_line(&ends, stroke, 3.0, 3.0));
                }
            }
            if let Some(piece) = line.get(line.len() / 2) {
                let text = format!("limit: {}", title(concern).to_lowercase());
                let text = painter.layout_no_wrap(text, font.clone(), tokens.text_strong);
                let middle = self.field.center();
                // Beside the line, towards the middle of the map.
                let at = self.position(piece[0]);
                let left = if at.x < middle.x {
                    at.x + 5.0
                } else {
                    at.x - 5.0 - text.size().x
                };
                let place = Rect::from_min_size(pos2(left, at.y), text.size());
                painter.rect_filled(place.expand(2.0), 2.0, tokens.canvas.gamma_multiply(0.8));
                painter.galley(place.min, text, tokens.text_strong);
            }
        }
    }

    fn axes(&self, painter: &Painter, ui: &Ui, bench: &Bench, units: Units) {
        let tokens = Tokens::of(ui.ctx());
        let font = TextStyle::Small.resolve(ui.style());
        let [inputs, travels] = self.ends();
        let ink = tokens.text_weak;
        let places = [
            (inputs[0], Align2::LEFT_TOP),
            (0.0, Align2::CENTER_TOP),
            (inputs[1], Align2::RIGHT_TOP),
        ];
        for (input, align) in places {
            if (inputs[0]..=inputs[1]).contains(&input) {
                let at = self.position([input, travels[0]]) + vec2(0.0, 3.0);
                painter.text(at, align, short(input, 1), font.clone(), ink);
            }
        }
        let sign = InputUnit::of(&bench.setup().car).sign();
        painter.text(
            self.field.center_bottom() + vec2(0.0, 17.0),
            Align2::CENTER_TOP,
            format!("steering input, {sign}"),
            font.clone(),
            ink,
        );
        let marks: &[f64] = if self.map.travels.len() > 1 {
            &[travels[0], 0.0, travels[1]]
        } else {
            &[0.0]
        };
        for &travel in marks {
            let at = self.position([inputs[0], travel]) - vec2(4.0, 0.0);
            painter.text(
                at,
                Align2::RIGHT_CENTER,
                units.short(travel, 1),
                font.clone(),
                ink,
            );
        }
        let text = format!("travel, {}", units.sign());
        let at = pos2(self.field.left() - LEFT + 2.0, self.field.top() - 4.0);
        painter.text(at, Align2::LEFT_BOTTOM, text, font, ink);
    }

    /// What the fill means, from the limit outwards.
    fn key(&self, painter: &Painter, ui: &Ui, area: Rect, units: Units) {
        let tokens = Tokens::of(ui.ctx());
        let font = TextStyle::Small.resolve(ui.style());
        let [least, most] = self.margins;
        let width = 90.0;
        let bar = Rect::from_min_size(
            pos2(area.right() - 10.0 - 76.0 - width, area.top() + 3.0),
            vec2(width, 10.0),
        );
        let steps = 24_u8;
        for step in 0..steps {
            let along = f64::from(step) / f64::from(steps - 1);
            let share = self.share_of(least + along * (most - least));
            let left = bar.left() + width * f32::from(step) / f32::from(steps);
            let part = Rect::from_min_size(
                pos2(left, bar.top()),
                vec2(width / f32::from(steps) + 0.5, bar.height()),
            );
            painter.rect_filled(part, 0.0, tokens.margin(share));
        }
        painter.rect_stroke(
            bar,
            0.0,
            Stroke::new(1.0, tokens.rule),
            eframe::egui::StrokeKind::Outside,
        );
        let words = |margin: f64| {
            let amount = amount(self.concern, margin.abs(), units);
            let side = if margin < 0.0 { "beyond" } else { "free" };
            format!("{amount} {side}")
        };
        let (left, right) = (bar.left_center(), bar.right_center());
        let ink = tokens.text_weak;
        painter.text(
            left - vec2(5.0, 0.0),
            Align2::RIGHT_CENTER,
            words(least),
            font.clone(),
            ink,
        );
        painter.text(
            right + vec2(5.0, 0.0),
            Align2::LEFT_CENTER,
            words(most),
            font,
            ink,
        );
    }

    /// The worst point as a ring, the pose on screen as a cross.
    fn marks(&self, painter: &Painter, bench: &Bench, tokens: &Tokens) {
        if let Some(worst) = self.map.worst(self.concern) {
            let at = self.position([worst.input, worst.travel]);
            painter.circle_stroke(at, 6.0, Stroke::new(3.5, tokens.canvas));
            painter.circle_stroke(at, 6.0, Stroke::new(2.0, tokens.text_strong));
        }
        let cursor = bench.cursor();
        let at = self.position([cursor.input, cursor.travel]);
        let stroke = Stroke::new(1.4, tokens.accent);
        painter.hline(self.field.x_range(), at.y, stroke);
        painter.vline(at.x, self.field.y_range(), stroke);
    }

    /// What the map says at a point of the screen.
    fn readout(&self, at: Pos2, bench: &Bench, units: Units) -> Option<String> {
        let [input, travel] = self.place(at);
        let nearest = |values: &[f64], wanted: f64| {
            let distance = |value: &f64| (value - wanted).abs();
            let places = values.iter().enumerate();
            places
                .min_by(|(_, a), (_, b)| distance(a).total_cmp(&distance(b)))
                .map(|(place, _)| place)
        };
        let (column, row) = (
            nearest(&self.map.inputs, input)?,
            nearest(&self.map.travels, travel)?,
        );
        let sign = InputUnit::of(&bench.setup().car).sign();
        let place = format!(
            "{} of steering, {} of travel",
            with_unit(&signed(*self.map.inputs.get(column)?, 1), sign),
            units.signed_length(*self.map.travels.get(row)?, 1)
        );
        let cell = match self.map.cell(column, row)? {
            Ok(cell) => cell,
            Err(error) => return Some(format!("{place}\n{}", units.sentence(&error.to_string()))),
        };
        let values = Concern::ALL.into_iter().filter_map(|concern| {
            let value = amount(concern, cell.value(concern)?, units);
            Some(format!("{}: {value}", title(concern)))
        });
        let lines: Vec<String> = std::iter::once(place).chain(values).collect();
        Some(lines.join("\n"))
    }
}

fn add_quad(mesh: &mut Mesh, corners: [Pos2; 4], colors: [eframe::egui::Color32; 4]) {
    let Ok(first) = u32::try_from(mesh.vertices.len()) else {
        return;
    };
    let vertices = corners.into_iter().zip(colors);
    mesh.vertices.extend(vertices.map(|(pos, color)| Vertex {
        pos,
        uv: WHITE_UV,
        color,
    }));
    mesh.add_triangle(first, first + 1, first + 2);
    mesh.add_triangle(first, first + 2, first + 3);
}
