//! The columns of a sweep's table and the figures they hold.

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::figures::{
    CornerFigures, InnerOuter, corner_figures, inner_outer, steering_ratio, travel_gradient,
    turning,
};
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::pose::CornerPose;

use super::{Along, Column, Posed};
use crate::InputUnit;

/// A column with how its value is read off a pose.
pub(super) struct Figure {
    pub(super) column: Column,
    of: Of,
}

type OfCorner = fn(&CornerFigures) -> f64;
type OfMotion = fn(&CornerPose, &Road) -> Option<f64>;
type OfPose = fn(&Posed) -> Option<f64>;
type OfTurn = fn(&InnerOuter) -> Option<f64>;

/// Where a value comes from.
enum Of {
    Corner(Side, OfCorner),
    Motion(Side, OfMotion),
    Pose(OfPose),
    /// The steering input.
    Input(InputUnit),
    /// Input for each degree of mean steer.
    Ratio(InputUnit),
    Turn(OfTurn),
    SweptRadius,
}

impl Figure {
    /// The value at a pose, in the column's unit; none where there is no finite one.
    pub(super) fn value(&self, assembly: &Assembly, posed: &Posed) -> Option<f64> {
        let Posed { pose, road, .. } = posed;
        let value = match &self.of {
            Of::Corner(side, of) => Some(of(&corner_figures(pose.corners.get(*side), road))),
            Of::Motion(side, of) => of(pose.corners.get(*side), road),
            Of::Pose(of) => of(posed),
            Of::Input(unit) => Some(unit.from_solver(pose.input)),
            Of::Ratio(unit) => steering_ratio(pose, road).map(|ratio| unit.ratio(ratio)),
            Of::Turn(of) => inner_outer(assembly, pose).as_ref().and_then(of),
            Of::SweptRadius => turning(pose, road, assembly.axle().rear_axle_behind())
                .map(|turning| turning.swept_radius),
        };
        // No "-0" in a table.
        value
            .filter(|value| value.is_finite())
            .map(|value| value + 0.0)
    }
}

/// The columns of a sweep.
pub(super) fn columns(along: Along, input: InputUnit) -> Vec<Figure> {
    let mut columns = moved(along, input);
    columns.extend(of_wheels(along));
    columns.extend(of_axle(along, input));
    columns
}

/// What is moved and what is held.
fn moved(along: Along, input: InputUnit) -> Vec<Figure> {
    let moves = |what: Along| along == what;
    let mut columns = vec![axle(
        "steering input",
        input.word(),
        2,
        moves(Along::Steer),
        Of::Input(input),
    )];
    let travels: [(Side, OfPose); 2] = [
        (Side::Left, |posed| Some(posed.pose.travel.left)),
        (Side::Right, |posed| Some(posed.pose.travel.right)),
    ];
    for (side, of) in travels {
        let is_main = !moves(Along::Steer) && (side == Side::Left || moves(Along::Roll));
        columns.push(figure(
            ("wheel travel", Some(side)),
            "mm",
            2,
            is_main,
            Of::Pose(of),
        ));
    }
    if moves(Along::Roll) {
        columns.insert(
            0,
            axle("roll", "deg", 2, true, Of::Pose(|posed| Some(posed.roll))),
        );
    }
    columns
}

fn of_wheels(along: Along) -> Vec<Figure> {
    let corner: [(&'static str, &'static str, bool, OfCorner); 7] = [
        ("steer", "deg", along != Along::Bump, |of| {
            of.steer.to_degrees()
        }),
        ("toe", "deg", along == Along::Bump, |of| of.toe.to_degrees()),
        ("camber", "deg", true, |of| of.camber.to_degrees()),
        ("caster", "deg", along == Along::Bump, |of| {
            of.caster.to_degrees()
        }),
        ("kingpin inclination", "deg", false, |of| {
            of.inclination.to_degrees()
        }),
        ("scrub radius", "mm", along == Along::Steer, |of| {
            of.scrub_radius
        }),
        ("trail", "mm", false, |of| of.trail),
    ];
    let motion: [(&'static str, &'static str, usize, OfMotion); 3] = [
        ("bump steer", "deg/mm", 4, |pose, road| {
            Some(travel_gradient(pose, road)?.toe.to_degrees())
        }),
        ("camber gain", "deg/mm", 4, |pose, road| {
            Some(travel_gradient(pose, road)?.camber.to_degrees())
        }),
        ("transmission angle", "deg", 1, |pose, _| {
            Some(outer_transmission(pose).angle.to_degrees())
        }),
    ];
    let mut columns = Vec::new();
    for (quantity, unit, is_main, of) in corner {
        // Toe is told of wheels that point ahead.
        if quantity == "toe" && along == Along::Steer {
            continue;
        }
        for side in Side::BOTH {
            columns.push(figure(
                (quantity, Some(side)),
                unit,
                3,
                is_main,
                Of::Corner(side, of),
            ));
        }
    }
    for (quantity, unit, decimals, of) in motion {
        for side in Side::BOTH {
            columns.push(figure(
                (quantity, Some(side)),
                unit,
                decimals,
                false,
                Of::Motion(side, of),
            ));
        }
    }
    columns
}

fn of_axle(along: Along, input: InputUnit) -> Vec<Figure> {
    let ratio = if input.word() == "mm" {
        "mm/deg"
    } else {
        "deg/deg"
    };
    let is_main = along == Along::Steer;
    let mut columns = vec![
        axle(
            "track",
            "mm",
            2,
            !is_main,
            Of::Pose(|posed| Some(track(posed))),
        ),
        axle("steering ratio", ratio, 3, false, Of::Ratio(input)),
    ];
    if is_main {
        columns.extend([
            axle(
                "inner wheel",
                "deg",
                3,
                true,
                Of::Turn(|turn| Some(turn.inner.to_degrees())),
            ),
            axle(
                "outer wheel",
                "deg",
                3,
                true,
                Of::Turn(|turn| Some(turn.outer.to_degrees())),
            ),
            axle(
                "ideal outer wheel",
                "deg",
                3,
                true,
                Of::Turn(|turn| Some(turn.ideal_outer.to_degrees())),
            ),
            axle(
                "ackermann share",
                "%",
                1,
                true,
                Of::Turn(|turn| turn.ackermann_share),
            ),
            axle("swept radius", "mm", 1, false, Of::SweptRadius),
        ]);
    }
    columns
}

/// Distance of the contact centres across the car, mm.
fn track(posed: &Posed) -> f64 {
    let contacts = posed
        .pose
        .corners
        .map(|corner| corner_figures(&corner, &posed.road).contact_centre);
    (contacts.left - contacts.right).dot(&posed.road.axes().leftward)
}

fn axle(
    quantity: &'static str,
    unit: &'static str,
    decimals: usize,
    is_main: bool,
    of: Of,
) -> Figure {
    figure((quantity, None), unit, decimals, is_main, of)
}

fn figure(
    (quantity, side): (&'static str, Option<Side>),
    unit: &'static str,
    decimals: usize,
    is_main: bool,
    of: Of,
) -> Figure {
    Figure {
        column: Column {
            quantity,
            side,
            unit,
            decimals,
            is_main,
        },
        of,
    }
}
