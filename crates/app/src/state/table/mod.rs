//! All figures as a table of texts, shared by the window and the printed report.

mod alignment;
mod linkage;
mod movement;
mod steering;

use steerloft_solver::frame::Sides;

use super::Figures;
use crate::format::{number, signed};

/// One figure with its name, unit and meaning.
#[derive(Debug, Clone, PartialEq)]
pub struct FigureRow {
    /// Plain name.
    pub name: &'static str,
    /// Unit, empty if it has none.
    pub unit: &'static str,
    /// What it means and which way is more.
    pub meaning: &'static str,
    /// The values as text.
    pub values: Values,
    /// Something about the values that needs attention.
    pub caution: Option<String>,
    /// Whether it is one of the few that are always on screen.
    pub headline: bool,
}

/// Figures that belong together.
#[derive(Debug, Clone, PartialEq)]
pub struct FigureGroup {
    /// What they are about.
    pub title: &'static str,
    /// In which pose they are taken.
    pub pose: &'static str,
    /// The figures.
    pub rows: Vec<FigureRow>,
}

/// The values of a figure as text.
#[derive(Debug, Clone, PartialEq)]
pub enum Values {
    /// One for each side.
    Sides(Sides<String>),
    /// One for the axle.
    Axle(String),
}

/// Text for a value that does not exist in this pose or for this car.
const NONE: &str = "\u{2013}";

/// All figures as texts, in the order in which they are shown.
#[must_use]
pub fn figure_table(figures: &Figures) -> Vec<FigureGroup> {
    vec![
        alignment::group(figures),
        movement::travel_group(figures),
        movement::roll_group(figures),
        linkage::rod_group(figures),
        steering::turn_group(figures),
        linkage::drive_group(figures),
        steering::straight_group(figures),
        steering::lock_group(figures),
    ]
}

/// The few figures that are always on screen.
#[must_use]
pub fn headline_figures(figures: &Figures) -> Vec<FigureRow> {
    figure_table(figures)
        .into_iter()
        .flat_map(|group| group.rows)
        .filter(|row| row.headline)
        .collect()
}

impl FigureRow {
    fn new(name: &'static str, unit: &'static str, meaning: &'static str, values: Values) -> Self {
        Self {
            name,
            unit,
            meaning,
            values,
            caution: None,
            headline: false,
        }
    }

    /// The same, always on screen.
    fn headline(self) -> Self {
        Self {
            headline: true,
            ..self
        }
    }
}

/// A value of each side, with its sign.
fn each_signed(values: Sides<f64>, decimals: usize) -> Values {
    Values::Sides(values.map(|value| signed(value, decimals)))
}

/// A value of each side that has no sign.
fn each(values: Sides<f64>, decimals: usize) -> Values {
    Values::Sides(values.map(|value| number(value, decimals)))
}

/// A value of each side that may not exist, with its sign.
fn each_if(values: Sides<Option<f64>>, decimals: usize) -> Values {
    Values::Sides(values.map(|value| text_if(value, |value| signed(value, decimals))))
}

/// A value of the axle that may not exist.
fn axle_if(value: Option<f64>, text: impl FnOnce(f64) -> String) -> Values {
    Values::Axle(text_if(value, text))
}

fn text_if(value: Option<f64>, text: impl FnOnce(f64) -> String) -> String {
    value.map_or_else(|| NONE.to_owned(), text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::{Cursor, Derived, Document};
    use steerloft_setup::supplied::SUPPLIED;

    fn table_of(car: usize, share_of_input: f64) -> Vec<FigureGroup> {
        let setup = SUPPLIED[car].setup();
        let input = setup.car.ranges.input.1 * share_of_input;
        let cursor = Cursor { input, travel: 0.0 };
        let derived = Derived::new(&Document::unnamed(setup), cursor);
        derived
            .shown()
            .map(|shown| figure_table(&shown.figures))
            .unwrap_or_default()
    }

    #[test]
    fn no_figure_of_a_supplied_car_is_anything_but_a_number_or_a_dash() {
        for (index, car) in SUPPLIED.iter().enumerate() {
            for share in [0.0, 0.4, 1.0] {
                for row in table_of(index, share).iter().flat_map(|group| &group.rows) {
                    let texts = match &row.values {
                        Values::Sides(sides) => vec![&sides.left, &sides.right],
                        Values::Axle(value) => vec![value],
                    };
                    for text in texts {
                        let number = text.replace('\u{2212}', "-");
                        assert!(
                            text == NONE || number.parse::<f64>().is_ok_and(f64::is_finite),
                            "{}: {} is {text}",
                            car.title,
                            row.name
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn no_two_figures_share_a_name_and_each_says_what_it_means() {
        let rows: Vec<FigureRow> = table_of(0, 0.5)
            .into_iter()
            .flat_map(|group| group.rows)
            .collect();
        for (index, row) in rows.iter().enumerate() {
            assert!(row.meaning.len() > 30, "{}", row.name);
            assert!(
                rows[index + 1..].iter().all(|other| other.name != row.name),
                "{}",
                row.name
            );
        }
    }
}
