//! The symmetrical trapezium of two steering arms and one track rod: a planar four-bar. Angles in degrees.
//!
//! The left steering arm is the drive's arm, turning about the left kingpin, and the left wheel is tied to it; the
//! track rod is the right wheel's rod. Pivots w apart, arms of length d, each turned inward by beta from straight
//! back, track rod t = w - 2 d sin(beta).

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod};
use steerloft_solver::drive::{Drive, SwingArm};
use steerloft_solver::figures::{InnerOuter, arm_lines, inner_outer};
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, Point, Side, Sides, Vector};

use super::near;
use super::rig::{LEVEL, knuckle};

struct Trapezium {
    pivots: f64,
    arm: f64,
    /// Inward turn of the arms, degrees.
    beta: f64,
    wheelbase: f64,
}

impl Trapezium {
    fn track_rod(&self) -> f64 {
        self.pivots - 2.0 * self.arm * self.beta.to_radians().sin()
    }

    fn assemble(&self) -> Assembly {
        let (sin, cos) = self.beta.to_radians().sin_cos();
        let arm = |side: Side| {
            Point::new(
                -self.arm * cos,
                (0.5 * self.pivots - self.arm * sin) * side.sign(),
                0.0,
            )
        };
        let kingpin = |side: Side| Point::new(0.0, 0.5 * self.pivots * side.sign(), 0.0);
        let corner = |side: Side| {
            let centre = kingpin(side) + Vector::z() * self.arm;
            Corner {
                knuckle: Knuckle {
                    spin_axis: Vector::y() * side.sign(),
                    steering_arm: arm(side),
                    ..knuckle(kingpin(side), Vector::z(), centre, self.arm)
                },
                suspension: Suspension::FixedKingpin,
            }
        };
        let left = kingpin(Side::Left);
        let axle = FrontAxle {
            corners: Sides::from_fn(corner),
            drive: Drive::SwingArm(SwingArm {
                axis_point: left,
                axis_direction: Vector::z(),
                rod_inner: Sides::new(left + Vector::new(0.0, -self.arm, 0.0), arm(Side::Left)),
            }),
            rods: Sides::new(Rod::HoldToe(0.0), Rod::FixedLength(self.track_rod())),
            wheelbase: self.wheelbase,
            station: 0.0,
            road: LEVEL,
        };
        Assembly::new(&axle).unwrap()
    }
}

/// Inner and outer wheel of a left turn of the inner wheel, and of the mirrored right turn.
#[track_caller]
fn turn(trapezium: &Trapezium, inner: f64) -> InnerOuter {
    let assembly = trapezium.assemble();
    let pose = assembly.pose(inner.to_radians(), Sides::both(0.0)).unwrap();
    let pair = inner_outer(&assembly, &pose).unwrap();
    assert_eq!(pair.inner_side, Side::Left);
    near(pair.inner.to_degrees(), inner, 1e-9);

    let mirrored = assembly.pose(-pair.outer, Sides::both(0.0)).unwrap();
    let mirrored = inner_outer(&assembly, &mirrored).unwrap();
    assert_eq!(mirrored.inner_side, Side::Right);
    near(mirrored.inner.to_degrees(), inner, 1e-9);
    near(mirrored.outer, pair.outer, 1e-12);
    pair
}

/// Closure of the trapezium, which must hold to rounding:
/// (w - d (sin(beta + i) + sin(beta - o)))^2 + d^2 (cos(beta - o) - cos(beta + i))^2 = t^2.
#[track_caller]
fn closes(trapezium: &Trapezium, pair: &InnerOuter) {
    let beta = trapezium.beta.to_radians();
    let (inner, outer) = (beta + pair.inner, beta - pair.outer);
    let across = trapezium.pivots - trapezium.arm * (inner.sin() + outer.sin());
    let along = trapezium.arm * (outer.cos() - inner.cos());
    near(
        across.hypot(along),
        trapezium.track_rod(),
        1e-12 * trapezium.pivots,
    );
}

/// w = 1.25 m, d = 0.150 m, t = 1.20 m, L = 2.8 m. Problem published: set MEG-10, gyansagar.co.in, question 16667;
/// the angles computed here, by coordinates and by the closed form.
#[test]
fn problem_of_an_assignment() {
    let beta = (1.0_f64 / 6.0).asin().to_degrees();
    near(beta, 9.5941, 1e-4);
    let trapezium = Trapezium {
        pivots: 1.25,
        arm: 0.15,
        beta,
        wheelbase: 2.8,
    };
    near(trapezium.assemble().rod_lengths().right, 1.2, 1e-12);
    let table = [
        (10.0, 9.6978, 9.2835, 0.4144),
        (20.0, 18.7809, 17.3851, 1.3957),
        (30.0, 27.1672, 24.6568, 2.5104),
        (40.0, 34.6811, 31.4013, 3.2798),
    ];
    for (inner, outer, ideal, difference) in table {
        let pair = turn(&trapezium, inner);
        closes(&trapezium, &pair);
        near(pair.outer.to_degrees(), outer, 1e-4);
        near(pair.ideal_outer.to_degrees(), ideal, 1e-4);
        near(
            (pair.outer - pair.ideal_outer).to_degrees(),
            difference,
            1e-4,
        );
        // The whole range is short of the ideal.
        let share = pair.ackermann_share.unwrap();
        assert!(share > 0.0 && share < 100.0, "{share}");
    }
}

/// w = 2.4 m, L = 4.8 m, d = 0.4 m, beta = 18. Dimensions of an example of R. N. Jazar, Vehicle Dynamics (from
/// memory); table computed here. The linkage crosses the ideal between 35 and 40.
#[test]
fn dimensions_of_a_textbook() {
    let trapezium = Trapezium {
        pivots: 2.4,
        arm: 0.4,
        beta: 18.0,
        wheelbase: 4.8,
    };
    let table = [
        (5.0, 4.8462, 4.7914),
        (10.0, 9.3961, 9.2043),
        (15.0, 13.6569, 13.2947),
        (20.0, 17.6248, 17.1152),
        (25.0, 21.2870, 20.7137),
        (30.0, 24.6231, 24.1333),
        (35.0, 27.6061, 27.4127),
        (40.0, 30.2032, 30.5874),
        (45.0, 32.3773, 33.6901),
    ];
    for (inner, outer, ideal) in table {
        let pair = turn(&trapezium, inner);
        closes(&trapezium, &pair);
        near(pair.outer.to_degrees(), outer, 1e-4);
        near(pair.ideal_outer.to_degrees(), ideal, 1e-4);
        assert_eq!(pair.ackermann_share.unwrap() > 100.0, inner > 37.5);
    }
}

/// Parallel arms make a parallelogram: the wheels stay parallel. Elementary.
#[test]
fn parallelogram() {
    let trapezium = Trapezium {
        pivots: 1.25,
        arm: 0.15,
        beta: 0.0,
        wheelbase: 2.8,
    };
    for inner in [5.0, 20.0, 40.0, 60.0] {
        let pair = turn(&trapezium, inner);
        near(pair.outer, pair.inner, 1e-12);
        near(pair.ackermann_share.unwrap(), 0.0, 1e-9);
    }
}

/// Arms aimed at the middle of the rear axle: tan(beta) = w / (2 L). Published: 15.47 (cut off) at a track of 1600 mm with
/// kingpins 80 mm inboard and L = 2600 mm, in the design page of a university solar-car team, uwmidsun.atlassian.net,
/// page 36052240; formula examveda.com, question 54100. From memory: 12.5 at 1.2 m and 2.7 m, the Davis gear of R. S.
/// Khurmi and J. K. Gupta, Theory of Machines. 14.0362 at 2.4 m and 4.8 m is computed here.
#[test]
fn arms_aimed_at_the_rear_axle() {
    for (pivots, wheelbase, beta, printed) in [
        (1.44, 2.6, 15.479, 0.01),
        (1.2, 2.7, 12.529, 0.03),
        (2.4, 4.8, 14.0362, 1e-4),
    ] {
        let trapezium = |beta| Trapezium {
            pivots,
            arm: 0.15,
            beta,
            wheelbase,
        };
        let aimed = f64::atan(pivots / (2.0 * wheelbase)).to_degrees();
        near(aimed, beta, printed);
        let lines = arm_lines(&trapezium(aimed).assemble()).unwrap();
        near(lines.behind, wheelbase, 1e-12 * wheelbase);
        near(lines.share, 100.0, 1e-10);
        // Arms turned in more meet nearer, which counts as more.
        assert!(arm_lines(&trapezium(aimed + 1.0).assemble()).unwrap().share > 100.0);
        assert!(arm_lines(&trapezium(0.0).assemble()).is_none());
    }
}
