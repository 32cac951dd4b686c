//! The key figures of a setup at rest, with the decimals that they are shown with.

use steerloft_solver::figures::instant_centre::roll_centre;
use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::figures::{
    CornerFigures, corner_figures, roll_gradient, steering_ratio, travel_gradient, turning,
};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::pose::{AxlePose, CornerPose};

use crate::curves::{Sweeps, Turn, TurnSample};
use crate::number::{number, signed};

/// A figure with its unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Plain name.
    pub name: &'static str,
    /// Unit, empty if it has none.
    pub unit: &'static str,
    /// Decimals shown: what can be built and measured.
    pub decimals: usize,
    /// Whether its sign is always shown.
    pub is_signed: bool,
    /// Whether it is read off gauges on the car, as far as it can be read at all.
    pub is_gauged: bool,
    /// Its values in its unit; none where the setup has no such figure.
    pub values: Values,
}

/// The values of a figure.
#[derive(Debug, Clone, PartialEq)]
pub enum Values {
    /// One for each wheel, or for a turn to each side.
    Sides(Sides<Option<f64>>),
    /// One for the axle.
    Axle(Option<f64>),
}

/// What is written for a value that a setup does not have.
const NONE: &str = "\u{2013}";

impl Figure {
    /// A value as it is shown.
    #[must_use]
    pub fn text(&self, value: Option<f64>) -> String {
        match value {
            Some(value) if self.is_signed => signed(value, self.decimals),
            Some(value) => number(value, self.decimals),
            None => NONE.to_owned(),
        }
    }
}

/// The figures of an axle at rest and at the ends of its steering, in the order in which they are listed.
#[must_use]
pub fn key_figures(sweeps: &Sweeps) -> Vec<Figure> {
    let mut figures = of_alignment(sweeps);
    figures.extend(of_movement(sweeps));
    figures.extend(of_steering(sweeps));
    figures.extend(of_locks(sweeps));
    figures
}

fn figure(name: &'static str, unit: &'static str, decimals: usize, values: Values) -> Figure {
    Figure {
        name,
        unit,
        decimals,
        is_signed: false,
        is_gauged: false,
        values,
    }
}

fn gauged(figure: Figure) -> Figure {
    Figure {
        is_gauged: true,
        ..figure
    }
}

fn with_sign(name: &'static str, unit: &'static str, decimals: usize, values: Values) -> Figure {
    Figure {
        is_signed: true,
        ..figure(name, unit, decimals, values)
    }
}

fn of_alignment(sweeps: &Sweeps) -> Vec<Figure> {
    let corners = &sweeps.assembly.static_pose().corners;
    let road = &sweeps.assembly.axle().road;
    let each = |value: fn(&CornerFigures) -> f64| {
        Values::Sides(Sides::from_fn(|side| {
            Some(value(&corner_figures(corners.get(side), road)))
        }))
    };
    vec![
        gauged(with_sign(
            "Toe (in +)",
            "°",
            2,
            each(|corner| corner.toe.to_degrees()),
        )),
        gauged(with_sign(
            "Camber (top out +)",
            "°",
            2,
            each(|corner| corner.camber.to_degrees()),
        )),
        gauged(with_sign(
            "Caster (top back +)",
            "°",
            2,
            each(|corner| corner.caster.to_degrees()),
        )),
        with_sign(
            "Kingpin inclination (top in +)",
            "°",
            2,
            each(|corner| corner.inclination.to_degrees()),
        ),
        with_sign("Scrub radius", "mm", 2, each(|corner| corner.scrub_radius)),
        with_sign("Trail", "mm", 2, each(|corner| corner.trail)),
    ]
}

fn of_movement(sweeps: &Sweeps) -> Vec<Figure> {
    let pose = sweeps.assembly.static_pose();
    let road = &sweeps.assembly.axle().road;
    let each = |value: &dyn Fn(&CornerPose) -> Option<f64>| {
        Values::Sides(Sides::from_fn(|side| value(pose.corners.get(side))))
    };
    vec![
        with_sign(
            "Bump steer (bump toes in +)",
            "°/mm",
            3,
            each(&|corner| Some(travel_gradient(corner, road)?.toe.to_degrees())),
        ),
        with_sign(
            "Camber gain in bump",
            "°/mm",
            3,
            each(&|corner| Some(travel_gradient(corner, road)?.camber.to_degrees())),
        ),
        with_sign(
            "Roll steer (left +)",
            "°/°",
            3,
            each(&|corner| Some(roll_gradient(corner, road)?.steer)),
        ),
        figure(
            "Roll centre height",
            "mm",
            1,
            Values::Axle(roll_centre(pose, road).map(|centre| centre.height)),
        ),
    ]
}

fn of_steering(sweeps: &Sweeps) -> Vec<Figure> {
    let pose = sweeps.assembly.static_pose();
    let road = &sweeps.assembly.axle().road;
    let unit = sweeps.input_unit();
    let to_degrees = 1.0_f64.to_radians() / unit.in_solver;
    let ratio = steering_ratio(pose, road).map(|ratio| ratio.abs() * to_degrees);
    let ratio_unit = if unit.name == "mm" { "mm/°" } else { "°/°" };
    vec![
        figure(
            "Steering ratio, straight ahead",
            ratio_unit,
            3,
            Values::Axle(ratio),
        ),
        gauged(figure(
            "Track at the contacts",
            "mm",
            1,
            Values::Axle(Some(track(sweeps))),
        )),
        gauged(figure(
            "Wheelbase",
            "mm",
            1,
            Values::Axle(Some(sweeps.assembly.axle().wheelbase)),
        )),
    ]
}

/// Distance of the contact centres across the car, mm.
fn track(sweeps: &Sweeps) -> f64 {
    let road = &sweeps.assembly.axle().road;
    let contacts = sweeps
        .assembly
        .static_pose()
        .corners
        .map(|corner| corner_figures(&corner, road).contact_centre);
    (contacts.left - contacts.right).dot(&road.axes().leftward)
}

fn of_locks(sweeps: &Sweeps) -> Vec<Figure> {
    let ends = Turn::BOTH.map(|turn| sweeps.full_lock(turn));
    let [to_left, to_right] = &ends;
    let wheels = |end: &Option<TurnSample>| {
        Values::Sides(Sides::from_fn(|side| {
            let end = end.as_ref()?;
            let inner = Turn::with_inner(side) == end.turn;
            let angle = if inner {
                end.angles.inner
            } else {
                end.angles.outer
            };
            Some(angle.to_degrees())
        }))
    };
    let of_turns = |value: &dyn Fn(&TurnSample) -> Option<f64>| {
        let of = |end: &Option<TurnSample>| end.as_ref().and_then(value);
        Values::Sides(Sides::new(of(to_left), of(to_right)))
    };
    vec![
        gauged(figure("Wheels at left lock", "°", 1, wheels(to_left))),
        gauged(figure("Wheels at right lock", "°", 1, wheels(to_right))),
        figure(
            "Ackermann share at lock",
            "%",
            0,
            of_turns(&|end| end.angles.ackermann_share),
        ),
        figure(
            "Swept radius at lock",
            "mm",
            0,
            of_turns(&|end| swept_radius(sweeps, end)),
        ),
        figure(
            "Least transmission angle",
            "°",
            0,
            Values::Sides(Sides::from_fn(|side| least_transmission(sweeps, side))),
        ),
    ]
}

fn swept_radius(sweeps: &Sweeps, end: &TurnSample) -> Option<f64> {
    let axle = sweeps.assembly.axle();
    let pose = pose_at(sweeps, end.input)?;
    Some(turning(pose, &axle.road, axle.rear_axle_behind())?.swept_radius)
}

fn pose_at(sweeps: &Sweeps, input: f64) -> Option<&AxlePose> {
    let mut poses = sweeps.steer.poses.iter();
    poses.find(|pose| pose.input.to_bits() == input.to_bits())
}

/// Angle between rod and steering arm, folded to at most a right angle, where it is least over the steering, degrees.
fn least_transmission(sweeps: &Sweeps, side: Side) -> Option<f64> {
    let poses = sweeps.steer.poses.iter();
    let folded = poses.map(|pose| {
        let angle = outer_transmission(pose.corners.get(side))
            .angle
            .to_degrees();
        angle.min(180.0 - angle)
    });
    folded.reduce(f64::min)
}
