//! What the steering works against: wheel loads, clearances, and what stands in the way.

use serde::{Deserialize, Serialize};

use super::Position;

/// Load and grip of the front wheels, for the moment that it takes to steer a car that stands.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Loads {
    /// Weight on both front wheels together, N.
    pub front_axle: f64,
    /// Coefficient of friction between tyre and road.
    pub friction: f64,
}

/// Sizes of parts that could touch; what is left out is not checked.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Clearances {
    /// The inside of the wheel, round which the rod's end swings.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rim: Option<Rim>,
    /// Greatest diameter of the tie rod with its cups, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rod_diameter: Option<f64>,
    /// Diameter of the round body that the knuckle is taken for, along the steering axis and along its arm, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub knuckle_diameter: Option<f64>,
}

/// The inside of a wheel: a bore about the spin axis, closed by the wheel's disc.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rim {
    /// Radius of the bore, mm.
    pub inner_radius: f64,
    /// How far the bore reaches inboard of the wheel centre, mm.
    pub inboard: f64,
    /// How far the disc's inner face lies inboard of the wheel centre, mm; outboard of it negative.
    pub disc: f64,
}

/// Something fixed in the chassis that parts must stay clear of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Obstacle {
    /// Plain name, unique in the car, such as "battery".
    pub name: String,
    /// Its shape.
    pub shape: Shape,
    /// Whether its mirror image stands on the other side too.
    #[serde(default)]
    pub mirrored: bool,
}

/// Shape of an obstacle, chassis axes, mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Shape {
    /// A box along chassis axes, such as a post or a battery.
    Box {
        /// Centre.
        centre: Position,
        /// Size along x, y and z.
        size: Position,
    },
    /// A plane that ends the free space, such as the line of the battery or the chassis centre line.
    Plane {
        /// A point of the plane.
        point: Position,
        /// Direction in which the space is free; any length.
        free: Position,
    },
}
