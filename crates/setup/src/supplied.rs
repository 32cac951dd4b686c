//! The supplied cars.

use crate::file::read_text;
use crate::setup::Setup;

/// A car that comes with the program, as a setup file's text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Supplied {
    /// Plain name, as a menu shows it.
    pub title: &'static str,
    /// Name of a file for it.
    pub file_name: &'static str,
    /// Text of the setup file.
    pub text: &'static str,
}

/// The supplied cars, in the order in which a menu shows them.
pub const SUPPLIED: &[Supplied] = &[
    Supplied {
        title: "1:12 pan car, swinging upper arm",
        file_name: "pan-car-swinging-arm.ron",
        text: include_str!("../../../assets/cars/pan-car-swinging-arm.ron"),
    },
    Supplied {
        title: "1:12 pan car, sliding kingpin",
        file_name: "pan-car-sliding-kingpin.ron",
        text: include_str!("../../../assets/cars/pan-car-sliding-kingpin.ron"),
    },
    Supplied {
        title: "1:10 touring car, double wishbone",
        file_name: "touring-car.ron",
        text: include_str!("../../../assets/cars/touring-car.ron"),
    },
    Supplied {
        title: "1:10 buggy, front end with kick-up",
        file_name: "buggy-front-end.ron",
        text: include_str!("../../../assets/cars/buggy-front-end.ron"),
    },
    Supplied {
        title: "Kart, fixed kingpins",
        file_name: "kart.ron",
        text: include_str!("../../../assets/cars/kart.ron"),
    },
    Supplied {
        title: "Small formula car, double wishbone",
        file_name: "formula-corner.ron",
        text: include_str!("../../../assets/cars/formula-corner.ron"),
    },
    Supplied {
        title: "Small road car, strut",
        file_name: "strut-corner.ron",
        text: include_str!("../../../assets/cars/strut-corner.ron"),
    },
];

impl Supplied {
    /// The setup, read anew.
    #[must_use]
    #[allow(
        clippy::expect_used,
        clippy::missing_panics_doc,
        reason = "the text is part of the program, and a test reads every one"
    )]
    pub fn setup(&self) -> Setup {
        read_text(self.text).expect("a supplied car is a valid setup")
    }
}
