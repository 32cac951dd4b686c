//! Which curves are shown, and how they are arranged: what a user sets up once and wants to find again.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use steerloft_analysis::curves::CurveKind;

use crate::lenient;

/// Which curves are shown, in which order and size.
///
/// It can be kept in a file: curves go by their short names, and a name that is not known any more is left out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct CurveLayout {
    /// The curves shown, in order; each at most once.
    #[serde(serialize_with = "write_names", deserialize_with = "read_names")]
    kinds: Vec<CurveKind>,
    /// Whether they stand in two columns instead of one.
    pub two_columns: bool,
    /// How high their panels are.
    #[serde(deserialize_with = "lenient::or_default")]
    pub height: PanelHeight,
    /// Whether they fill their panels instead of keeping fixed ranges.
    pub fitted: bool,
    /// The steering input of the curve with the wheels turned, in the unit of the car's drive; none for half of what the
    /// car steers.
    pub held_input: Option<f64>,
}

/// How high the panels of curves are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum PanelHeight {
    /// As high as there is room for all, and never less than can be read.
    #[default]
    Shared,
    /// Low.
    Low,
    /// High.
    High,
}

impl PanelHeight {
    /// Every height, in the order of their buttons.
    pub const ALL: [Self; 3] = [Self::Shared, Self::Low, Self::High];

    /// Its name on a button.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Shared => "Shared",
            Self::Low => "Low",
            Self::High => "High",
        }
    }
}

impl Default for CurveLayout {
    fn default() -> Self {
        Self {
            kinds: vec![CurveKind::ToeTravel, CurveKind::InnerOuter],
            two_columns: false,
            height: PanelHeight::default(),
            fitted: false,
            held_input: None,
        }
    }
}

impl CurveLayout {
    /// The curves shown, in order.
    #[must_use]
    pub fn kinds(&self) -> &[CurveKind] {
        &self.kinds
    }

    /// Whether a curve is shown.
    #[must_use]
    pub fn has(&self, kind: CurveKind) -> bool {
        self.kinds.contains(&kind)
    }

    /// Shows a curve after the others, or shows it no more.
    pub fn toggle(&mut self, kind: CurveKind) {
        if self.has(kind) {
            self.kinds.retain(|shown| *shown != kind);
        } else {
            self.kinds.push(kind);
        }
    }

    /// Moves a curve to the place before or after its own; it stays where it is at the end.
    pub fn shift(&mut self, kind: CurveKind, later: bool) {
        let Some(at) = self.kinds.iter().position(|shown| *shown == kind) else {
            return;
        };
        let to = if later {
            Some(at + 1)
        } else {
            at.checked_sub(1)
        };
        if let Some(to) = to.filter(|to| *to < self.kinds.len()) {
            self.kinds.swap(at, to);
        }
    }
}

fn write_names<S: Serializer>(kinds: &[CurveKind], serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_seq(kinds.iter().map(|kind| kind.name()))
}

fn read_names<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Vec<CurveKind>, D::Error> {
    let shown = CurveLayout::default().kinds;
    let names: Vec<String> = lenient::or_else(deserializer, || {
        shown.iter().map(|kind| kind.name().to_owned()).collect()
    })?;
    let mut kinds = Vec::new();
    let known = |name: &String| CurveKind::from_name(name);
    for kind in names.iter().filter_map(known) {
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    Ok(kinds)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn curves_are_moved_one_place_and_stay_at_the_ends() {
        let mut layout = CurveLayout::default();
        layout.toggle(CurveKind::SteeringRatio);
        layout.shift(CurveKind::SteeringRatio, false);
        let order = [
            CurveKind::ToeTravel,
            CurveKind::SteeringRatio,
            CurveKind::InnerOuter,
        ];
        assert_eq!(layout.kinds(), order);
        layout.shift(CurveKind::ToeTravel, false);
        layout.shift(CurveKind::InnerOuter, true);
        layout.shift(CurveKind::RollCamber, true);
        assert_eq!(layout.kinds(), order);
        layout.toggle(CurveKind::ToeTravel);
        assert!(!layout.has(CurveKind::ToeTravel));
    }

    #[test]
    fn a_layout_is_read_as_it_was_written_and_unknown_curves_are_left_out() {
        let mut layout = CurveLayout {
            two_columns: true,
            height: PanelHeight::High,
            held_input: Some(12.5),
            ..CurveLayout::default()
        };
        layout.toggle(CurveKind::RollSteer);
        let text = ron::to_string(&layout).unwrap();
        assert!(text.contains("roll-steer"), "{text}");
        assert_eq!(ron::from_str::<CurveLayout>(&text).unwrap(), layout);
        let text = text.replace("toe-travel", "no-such-curve");
        let read: CurveLayout = ron::from_str(&text).unwrap();
        assert_eq!(read.kinds(), [CurveKind::InnerOuter, CurveKind::RollSteer]);
        assert_eq!(
            ron::from_str::<CurveLayout>("()").unwrap(),
            CurveLayout::default()
        );
    }
}
