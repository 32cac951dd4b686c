//! The axles that are measured, and what is measured on them.

use steerloft_solver::figures::camber::camber_of;
use steerloft_solver::figures::steering_axis::{caster_of, inclination_of};
use steerloft_solver::figures::toe::{steer_of, toe_of};
use steerloft_solver::figures::{
    corner_figures, inner_outer, steering_ratio, travel_gradient, turning,
};
use steerloft_solver::frame::{Road, RoadAxes, Side};
use steerloft_solver::sweep::{SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Assembly, AxlePose, Sides, Vector};

use crate::common::{front_axle, input, numbers, table};
use crate::general_newton::axle::{Division, GeneralAxle};

/// Points of a curve on screen.
pub(crate) const POINTS: usize = 121;

/// An axle with the ranges it is used over.
pub(crate) struct Case {
    /// What it is.
    pub(crate) name: &'static str,
    pub(crate) assembly: Assembly,
    /// Greatest input, rad or mm.
    pub(crate) input: f64,
    /// Greatest travel, mm.
    pub(crate) travel: f64,
}

/// One axle for each suspension kind, and each drive.
pub(crate) fn cases() -> Vec<Case> {
    [
        ("fixed kingpin, column", "fk_sa_02.json"),
        ("sliding kingpin, swing arm", "sk_sa_01.json"),
        ("swinging upper arm, swing arm", "sua_sa_01.json"),
        ("double wishbone, rack", "dw_sl_01.json"),
        ("double wishbone, twin crank", "dw_tc_01.json"),
        ("strut, rack", "st_sl_01.json"),
    ]
    .map(|(name, file)| {
        let case = table("independent", file);
        let last = |values: &[f64]| values.last().copied().unwrap_or(0.0);
        Case {
            name,
            assembly: Assembly::new(&front_axle(&case)).expect("the reference cars assemble"),
            input: input(&case, last(&numbers(&case["input_sweep"]))),
            travel: last(&numbers(&case["travel_sweep"])),
        }
    })
    .into()
}

impl Case {
    /// The inputs of a sweep there and back, so that the last is a step from the first.
    pub(crate) fn inputs(&self) -> Vec<f64> {
        let there = SweepRange {
            from: -self.input,
            to: self.input,
            count: POINTS,
        };
        there.values().chain(there.values().rev()).collect()
    }

    /// A pose of the axle at the first of the inputs.
    pub(crate) fn first(&self) -> AxlePose {
        self.assembly
            .pose(-self.input, Sides::both(0.0))
            .expect("the reference cars reach their range")
    }

    /// The general closure of the axle at the first of the inputs, led there in small steps.
    pub(crate) fn general(&self, division: Division) -> GeneralAxle {
        let mut general = GeneralAxle::new(&self.assembly, division);
        let way = SweepRange {
            from: 0.0,
            to: -self.input,
            count: POINTS,
        };
        for input in way.values() {
            assert!(
                general.close(input, 0.0),
                "the general closure fails at {input}"
            );
        }
        general
    }
}

/// Toe, camber, caster and kingpin inclination of a wheel, rad.
pub(crate) type Angles = [f64; 4];

fn angles(side: Side, spin_axis: &Vector, kingpin: &Vector, road: &RoadAxes) -> Angles {
    [
        toe_of(side, steer_of(&(spin_axis * side.sign()), road)),
        camber_of(spin_axis, &road.up),
        caster_of(kingpin, road),
        inclination_of(side, kingpin, road),
    ]
}

/// Both corners' angles at an input, by the solver.
pub(crate) fn pose_angles(assembly: &Assembly, near: &mut AxlePose, input: f64) -> Sides<Angles> {
    *near = assembly
        .pose_near(near, input, Sides::both(0.0))
        .expect("the reference cars reach their range");
    let road = assembly.axle().road.axes();
    near.corners.map(|corner| {
        let kingpin = corner.kingpin_upper - corner.kingpin_lower;
        angles(corner.side, &corner.spin_axis, &kingpin, &road)
    })
}

/// Both corners' angles at an input, by the general closure.
pub(crate) fn general_angles(
    assembly: &Assembly,
    general: &mut GeneralAxle,
    input: f64,
) -> Sides<Angles> {
    assert!(
        general.close(input, 0.0),
        "the general closure fails at {input}"
    );
    let road = assembly.axle().road.axes();
    Sides::from_fn(|side| {
        let drawn = assembly
            .axle()
            .corners
            .get(side)
            .knuckle
            .spin_axis
            .normalize();
        let spin_axis = general.knuckle(side).direction(&drawn);
        angles(side, &spin_axis, &general.kingpin(side), &road)
    })
}

/// Makes sure that the solver and the general closure say the same at every input: to a millionth of a degree and of a mm.
pub(crate) fn agree(case: &Case, division: Division) {
    let (mut near, mut general) = (case.first(), case.general(division));
    for input in case.inputs() {
        let ours = pose_angles(&case.assembly, &mut near, input);
        let theirs = general_angles(&case.assembly, &mut general, input);
        for side in Side::BOTH {
            let drawn = &case.assembly.axle().corners.get(side).knuckle;
            let knuckle = general.knuckle(side);
            let corner = near.corners.get(side);
            for (one, other) in [
                (corner.wheel_centre, drawn.wheel_centre),
                (corner.steering_arm, drawn.steering_arm),
            ] {
                let apart = (one - knuckle.point(&other)).norm();
                assert!(apart < 1e-6, "{} at {input}: {apart} mm apart", case.name);
            }
            for (one, other) in ours.get(side).iter().zip(theirs.get(side)) {
                let apart = (one - other).to_degrees().abs();
                assert!(
                    apart < 1e-6,
                    "{} at {input}: {apart} degrees apart",
                    case.name
                );
            }
        }
    }
}

/// Everything that is drawn of one setup: steer, bump and roll sweeps of both corners with their figures. Returns
/// how many numbers that is, so that none is computed for nothing.
pub(crate) fn curves_on_screen(case: &Case) -> usize {
    let assembly = &case.assembly;
    let range = |most: f64| SweepRange {
        from: -most,
        to: most,
        count: POINTS,
    };
    let road = assembly.axle().road;
    let mut numbers = 0;
    let mut take = |pose: &AxlePose, road: &Road| {
        for corner in [&pose.corners.left, &pose.corners.right] {
            let figures = corner_figures(corner, road);
            let gradient = travel_gradient(corner, road);
            numbers += usize::from(figures.toe.is_finite()) * 11;
            numbers += usize::from(gradient.is_some()) * 4;
        }
        numbers += usize::from(inner_outer(assembly, pose).is_some()) * 4;
        numbers += usize::from(steering_ratio(pose, road).is_some());
        let behind = assembly.axle().rear_axle_behind();
        numbers += usize::from(turning(pose, road, behind).is_some()) * 6;
    };
    for pose in &steer_sweep(assembly, range(case.input), Sides::both(0.0)).poses {
        take(pose, &road);
    }
    if assembly.has_travel() {
        let bump = bump_sweep(assembly, range(case.travel), 0.0);
        for pose in bump.iter().flat_map(|sweep| &sweep.poses) {
            take(pose, &road);
        }
        let mut near = *assembly.static_pose();
        for roll in range(2.0_f64.to_radians()).values() {
            let tilted = Road {
                roll: road.roll + roll,
                ..road
            };
            if let Ok(pose) = assembly.pose_on_road(&near, 0.0, &tilted) {
                near = pose;
                take(&pose, &tilted);
            }
        }
    }
    numbers
}
