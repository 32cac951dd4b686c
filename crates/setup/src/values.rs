//! The values an adjustment can take: base, nearest, the next one, and their labels.

use crate::adjustment::{Adjustment, FromStock, Kind, Unit};
use crate::limits::MAX_STEPS;
use crate::setup::{Chosen, ValueError};
use crate::spacers::Totals;

/// Step by which a slide without steps is nudged, in its unit.
const FREE_STEP: f64 = 0.1;

/// Values closer than this are one value, mm or degrees: a thousandth of what a builder can measure.
pub(crate) const SAME_VALUE: f64 = 1.0 / GRAINS;

/// Stepped values are whole multiples of a part of a unit; a division by this whole number gives the nearest
/// float to a decimal, which a product with a decimal fraction does not.
const GRAINS: f64 = 1e6;

impl Adjustment {
    /// The value at which the car's points are given.
    #[must_use]
    pub fn base(&self) -> Chosen {
        match &self.kind {
            Kind::Slide { base, .. } => Chosen::Slide(*base),
            Kind::Stack { base, .. } => Chosen::Stack(*base),
            Kind::Choice { base, .. } => Chosen::Choice(base.clone()),
        }
    }

    /// Every value that the parts allow, ascending or as listed; `None` for a slide without steps.
    ///
    /// A stepped slide's values are its base and whole steps from there.
    #[must_use]
    pub fn values(&self) -> Option<Vec<Chosen>> {
        match &self.kind {
            Kind::Slide { step: None, .. } => None,
            Kind::Slide {
                range,
                step: Some(step),
                base,
                ..
            } => Some(stepped_values(*range, *step, *base)),
            Kind::Stack { parts, most, .. } => Some(
                Totals::new(parts, *most)
                    .ascending()
                    .map(Chosen::Stack)
                    .collect(),
            ),
            Kind::Choice { options, .. } => Some(
                options
                    .iter()
                    .map(|option| Chosen::Choice(option.name.clone()))
                    .collect(),
            ),
        }
    }

    /// The allowed value nearest to the wanted one: within the range and on a step, a total the spacers at
    /// hand reach, an option there is. The base for a value of another kind or an option there is not.
    #[must_use]
    pub fn nearest(&self, wanted: &Chosen) -> Chosen {
        match (&self.kind, wanted) {
            (
                Kind::Slide {
                    range, step, base, ..
                },
                Chosen::Slide(value),
            ) if value.is_finite() => Chosen::Slide(nearest_on_slide(*range, *step, *base, *value)),
            (Kind::Stack { parts, most, .. }, Chosen::Stack(total)) if total.is_finite() => {
                Chosen::Stack(Totals::new(parts, *most).nearest(*total))
            }
            (Kind::Choice { options, .. }, Chosen::Choice(name))
                if options.iter().any(|option| option.name == *name) =>
            {
                wanted.clone()
            }
            _ => self.base(),
        }
    }

    /// The value some steps up (or, negative, down) from a value: steps of a slide (0.1 of its unit if it has
    /// none), totals of a stack, options of a choice. It stops at the ends.
    #[must_use]
    pub fn step_from(&self, from: &Chosen, steps: i32) -> Chosen {
        if let (
            Kind::Slide {
                range, step, base, ..
            },
            Chosen::Slide(value),
        ) = (&self.kind, from)
        {
            let wanted = value + f64::from(steps) * step.unwrap_or(FREE_STEP);
            return Chosen::Slide(nearest_on_slide(*range, *step, *base, wanted));
        }
        let values = self.values().unwrap_or_default();
        let nearest = self.nearest(from);
        let at = values
            .iter()
            .position(|value| *value == nearest)
            .unwrap_or(0);
        let steps_up = usize::try_from(steps).unwrap_or(0);
        let steps_down = usize::try_from(-i64::from(steps)).unwrap_or(0);
        let to = at
            .saturating_add(steps_up)
            .saturating_sub(steps_down)
            .min(values.len().saturating_sub(1));
        values.into_iter().nth(to).unwrap_or(nearest)
    }

    /// Whether a setup may choose this value: of the adjustment's kind, within its range, a total that its
    /// spacers make, an option it has.
    pub fn accepts(&self, value: &Chosen) -> Result<(), ValueError> {
        match (&self.kind, value) {
            (Kind::Slide { range, .. }, Chosen::Slide(wanted)) => {
                self.accepts_number(*range, *wanted, value)
            }
            (Kind::Stack { most, .. }, Chosen::Stack(total)) => {
                self.accepts_number((0.0, *most), *total, value)?;
                let nearest = self.nearest(value);
                if same_value(value, &nearest) {
                    return Ok(());
                }
                Err(ValueError::NotAchievable {
                    adjustment: self.name.clone(),
                    found: self.label_of(value),
                    nearest: self.label_of(&nearest),
                })
            }
            (Kind::Choice { options, .. }, Chosen::Choice(name)) => {
                if options.iter().any(|option| option.name == *name) {
                    return Ok(());
                }
                Err(ValueError::NoSuchOption {
                    adjustment: self.name.clone(),
                    found: name.clone(),
                    options: listed(options.iter().map(|option| option.name.as_str())),
                })
            }
            _ => Err(ValueError::WrongKind {
                adjustment: self.name.clone(),
                expected: self.base().kind_name(),
                found: value.kind_name(),
            }),
        }
    }

    fn accepts_number(
        &self,
        range: (f64, f64),
        wanted: f64,
        value: &Chosen,
    ) -> Result<(), ValueError> {
        if (range.0 - SAME_VALUE..=range.1 + SAME_VALUE).contains(&wanted) {
            return Ok(());
        }
        Err(ValueError::OutOfRange {
            adjustment: self.name.clone(),
            least: self.label_of(&Chosen::Slide(range.0)),
            greatest: self.label_of(&Chosen::Slide(range.1)),
            found: self.label_of(value),
        })
    }

    /// Whether the parts allow the value as it is: a slide off its steps is only thought, not built.
    #[must_use]
    pub fn is_buildable(&self, value: &Chosen) -> bool {
        same_value(value, &self.nearest(value))
    }

    /// The spacers that make up a stack's total with the fewest pieces, thicknesses in mm, thickest first.
    /// `None` if this is no stack or its spacers cannot make that total.
    #[must_use]
    pub fn spacers_for(&self, total: f64) -> Option<Vec<f64>> {
        match &self.kind {
            Kind::Stack { parts, most, .. } => Totals::new(parts, *most).pieces(total),
            Kind::Slide { .. } | Kind::Choice { .. } => None,
        }
    }

    /// Unit of its value: a slide's own, else millimetres.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        match &self.kind {
            Kind::Slide { unit, .. } => *unit,
            Kind::Stack { .. } | Kind::Choice { .. } => Unit::Millimetres,
        }
    }

    /// Where a stack's spacers come from, where it tells.
    #[must_use]
    pub const fn stock(&self) -> Option<&FromStock> {
        match &self.kind {
            Kind::Stack { stock, .. } => stock.as_ref(),
            Kind::Slide { .. } | Kind::Choice { .. } => None,
        }
    }

    /// A value in words, such as "2.5 mm", "-1.5°" or "rear hole".
    #[must_use]
    pub fn label_of(&self, value: &Chosen) -> String {
        match value {
            Chosen::Slide(value) | Chosen::Stack(value) => match self.unit() {
                Unit::Millimetres => format!("{} mm", short(*value)),
                Unit::Degrees => format!("{}°", short(*value)),
            },
            Chosen::Choice(name) => name.clone(),
        }
    }
}

/// Whether two values are the same for a builder.
pub(crate) fn same_value(a: &Chosen, b: &Chosen) -> bool {
    match (a, b) {
        (Chosen::Slide(a), Chosen::Slide(b)) | (Chosen::Stack(a), Chosen::Stack(b)) => {
            (a - b).abs() <= SAME_VALUE
        }
        (Chosen::Choice(a), Chosen::Choice(b)) => a == b,
        _ => false,
    }
}

/// Names quoted and joined by commas.
pub(crate) fn listed<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let quoted: Vec<String> = names.map(|name| format!("\"{name}\"")).collect();
    quoted.join(", ")
}

/// A number with at most three decimals and no trailing zeros.
pub(crate) fn short(value: f64) -> String {
    let fixed = format!("{value:.3}");
    let trimmed = fixed.trim_end_matches('0').trim_end_matches('.');
    if trimmed == "-0" {
        "0".to_owned()
    } else {
        trimmed.to_owned()
    }
}

/// First and last whole step from base that lie in the range.
fn step_bounds(range: (f64, f64), step: f64, base: f64) -> (f64, f64) {
    let slack = SAME_VALUE / step;
    let first = ((range.0 - base) / step - slack).ceil();
    let last = ((range.1 - base) / step + slack).floor();
    (first.max(-MAX_STEPS), last.min(MAX_STEPS))
}

/// The value some whole steps from base, free of the dust that decimals leave in binary fractions.
fn on_step(base: f64, step: f64, steps: f64) -> f64 {
    let value = base + steps * step;
    (value * GRAINS).round() / GRAINS
}

fn stepped_values(range: (f64, f64), step: f64, base: f64) -> Vec<Chosen> {
    let (first, last) = step_bounds(range, step, base);
    let mut values = Vec::new();
    let mut steps = first;
    while steps <= last {
        values.push(Chosen::Slide(on_step(base, step, steps)));
        steps += 1.0;
    }
    values
}

fn nearest_on_slide(range: (f64, f64), step: Option<f64>, base: f64, wanted: f64) -> f64 {
    match step {
        None => wanted.max(range.0).min(range.1),
        Some(step) => {
            let (first, last) = step_bounds(range, step, base);
            let steps = ((wanted - base) / step).round().max(first).min(last);
            on_step(base, step, steps)
        }
    }
}
