//! A figure of the left side against that of the right.

use steerloft_solver::Assembly;

use crate::find::{Gauge, Measure, Wheel};
use crate::text;

/// A figure of both sides.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// What is measured on the left, or in the turn to the left.
    pub measure: Measure,
    /// Its value on the left; none where the axle does not get there.
    pub left: Option<f64>,
    /// Its value on the right.
    pub right: Option<f64>,
}

impl Difference {
    /// Left less right, in the measure's unit; none where a side has no value.
    #[must_use]
    pub fn difference(&self) -> Option<f64> {
        Some(self.left? - self.right?)
    }

    /// Left less right, in differences that a builder just notices; 0 where a side has no value.
    #[must_use]
    pub fn in_noticeable(&self) -> f64 {
        self.difference().unwrap_or_default() / self.measure.noticeable()
    }

    /// Whether a builder notices it.
    #[must_use]
    pub fn is_noticeable(&self) -> bool {
        self.in_noticeable().abs() >= 1.0
    }

    /// What is measured, without the side: "Bump steer", "Inner wheel at lock".
    #[must_use]
    pub fn title(&self) -> String {
        match self.measure {
            Measure::LockLeft(Wheel::Right) => "Outer wheel at lock".to_owned(),
            Measure::LockLeft(_) => "Inner wheel at lock".to_owned(),
            _ => self.measure.with_wheel(Wheel::Both).label(),
        }
    }

    /// How the sides differ: "Left locks 1.4° earlier".
    #[must_use]
    pub fn words(&self) -> String {
        let difference = self.difference().unwrap_or_default();
        let facts = self.measure.figure().map(crate::figures::FigureKind::facts);
        let decimals = facts.map_or(2, |facts| facts.decimals);
        let amount = |unit: &str| text::with_unit(&text::number(difference.abs(), decimals), unit);
        if let Measure::LockLeft(Wheel::Left) = self.measure {
            let (side, amount) = (
                if difference < 0.0 { "Left" } else { "Right" },
                amount("\u{b0}"),
            );
            return format!("{side} locks {amount} earlier");
        }
        let unit = match self.measure {
            Measure::BumpSteer(_) | Measure::CamberGain(_) => "\u{b0}/mm",
            Measure::RodLength(_) | Measure::CupGap(_) => "mm",
            Measure::Ackermann { .. } => "%",
            _ => "\u{b0}",
        };
        let more = if difference > 0.0 { "left" } else { "right" };
        format!("{}: {more} is {} more", self.title(), amount(unit))
    }
}

/// What is compared: on the left and on the right.
pub(super) fn pairs(inner: f64) -> Vec<[Measure; 2]> {
    let of_wheels: [fn(Wheel) -> Measure; 9] = [
        Measure::Toe,
        Measure::Camber,
        Measure::Caster,
        Measure::Inclination,
        Measure::BumpSteer,
        Measure::CamberGain,
        Measure::ToeAtBump,
        Measure::ToeAtDroop,
        Measure::RodLength,
    ];
    let sides = [Wheel::Left, Wheel::Right];
    let mut pairs: Vec<[Measure; 2]> = of_wheels.iter().map(|one| sides.map(one)).collect();
    pairs.push(sides.map(|turn| Measure::Ackermann { turn, inner }));
    pairs.push([
        Measure::LockLeft(Wheel::Left),
        Measure::LockRight(Wheel::Right),
    ]);
    pairs.push([
        Measure::LockLeft(Wheel::Right),
        Measure::LockRight(Wheel::Left),
    ]);
    pairs
}

/// The figures of both sides of an axle.
pub(super) fn differences(
    gauge: &Gauge,
    assembly: &Assembly,
    pairs: &[[Measure; 2]],
) -> Vec<Difference> {
    let values = gauge.values(assembly, pairs.as_flattened());
    let values = values.chunks_exact(2);
    let both = pairs.iter().zip(values);
    both.map(|(pair, values)| Difference {
        measure: pair[0].clone(),
        left: values[0],
        right: values[1],
    })
    .collect()
}
