//! The planar four-bar: a crank on the drive, a rod, a steering arm as rocker. Angles in degrees.
//!
//! Ground d along +x from the crank's pivot, crank a at t2, coupler b at t3, rocker c at t4. Freudenstein's equation:
//! K1 cos t4 - K2 cos t2 + K3 = cos(t2 - t4), K1 = d / a, K2 = d / c, K3 = (a^2 - b^2 + c^2 + d^2) / (2 a c).

use steerloft_solver::error::{Member, Miss};
use steerloft_solver::{Point, Sides, SolveError, Vector};

use super::near;
use super::rig::Levers;

#[derive(Clone, Copy)]
struct FourBar {
    a: f64,
    b: f64,
    c: f64,
    d: f64,
}

impl FourBar {
    /// The linkage with its crank at `t2`, drawn near the rocker angles of its two branches.
    fn levers(self, t2: f64, drawn: Sides<f64>) -> Levers {
        let (sin, cos) = t2.to_radians().sin_cos();
        Levers {
            crank_pivot: Point::origin(),
            crank_axis: Vector::z(),
            crank_ball: Point::new(self.a * cos, self.a * sin, 0.0),
            rocker_pivot: Point::new(self.d, 0.0, 0.0),
            rocker_axis: Vector::z(),
            rocker_arm: Vector::new(self.c, 0.0, 0.0),
            drawn,
            rod: self.b,
        }
    }

    /// By how much angles miss Freudenstein's equation.
    fn miss(self, t2: f64, t4: f64) -> f64 {
        let Self { a, b, c, d } = self;
        let k3 = (a * a - b * b + c * c + d * d) / (2.0 * a * c);
        let (t2, t4) = (t2.to_radians(), t4.to_radians());
        d / a * t4.cos() - d / c * t2.cos() + k3 - (t2 - t4).cos()
    }

    /// Checks rocker and coupler angles of both branches at one crank angle, and Freudenstein's equation over a
    /// range of crank angles from there.
    #[track_caller]
    fn check(self, t2: f64, t4: Sides<f64>, t3: Option<Sides<f64>>, range: f64) {
        let levers = self.levers(t2, Sides::new(t4.left - 15.0, t4.right + 15.0));
        let assembly = levers.assemble().unwrap();
        let angles = levers.rocker_angles(&assembly, 0.0);
        near(angles.left, t4.left, 1e-4);
        near(angles.right, t4.right, 1e-4);
        let coupler = assembly.static_pose().corners.map(|corner| {
            let rod = corner.steering_arm - corner.rod_inner;
            rod.y.atan2(rod.x).to_degrees()
        });
        if let Some(t3) = t3 {
            near(coupler.left, t3.left, 1e-4);
            near(coupler.right, t3.right, 1e-4);
        }
        for step in -24..=24 {
            let input = f64::from(step) / 24.0 * range;
            let angles = levers.rocker_angles(&assembly, input);
            near(self.miss(t2 + input, angles.left), 0.0, 1e-12);
            near(self.miss(t2 + input, angles.right), 0.0, 1e-12);
        }
    }
}

/// a, b, c, d = 2, 7, 9, 6 at 30: open 117.2861 with coupler at 88.8372, crossed -143.6596 with -115.2108. Inputs
/// published in a script "fourbarcomplex" of a public code collection; the open branch's values from memory of its
/// printed result; all recomputed. The crank turns fully (2 + 9 < 6 + 7).
#[test]
fn crank_rocker_of_a_script() {
    let linkage = FourBar {
        a: 2.0,
        b: 7.0,
        c: 9.0,
        d: 6.0,
    };
    let t4 = Sides::new(117.2861, -143.6596);
    let t3 = Sides::new(88.8372, -115.2108);
    linkage.check(30.0, t4, Some(t3), 180.0);
}

/// a, b, c, d = 1, 2, 3, 4 at 40: 132.1062 and -154.5896. Exercise published at answersarena.com, which prints
/// Freudenstein's equation as above; answer computed here.
#[test]
fn exercise_at_forty() {
    let linkage = FourBar {
        a: 1.0,
        b: 2.0,
        c: 3.0,
        d: 4.0,
    };
    linkage.check(40.0, Sides::new(132.1062, -154.5896), None, 35.0);
}

/// a, b, c, d = 1, 2, 4, 5 at 60: 143.2842 and -165.0710. Exercise published at homework.zookal.com; answer computed
/// here.
#[test]
fn exercise_at_sixty() {
    let linkage = FourBar {
        a: 1.0,
        b: 2.0,
        c: 4.0,
        d: 5.0,
    };
    linkage.check(60.0, Sides::new(143.2842, -165.0710), None, 50.0);
}

/// a, b, c, d = 40, 90, 70, 100 at 45: rocker 83.2000 with coupler at 27.2605, other branch -126.2480. Link set
/// published in an article on synthesis for function generation (name withheld); angles computed here.
#[test]
fn crank_rocker_of_an_article() {
    let linkage = FourBar {
        a: 40.0,
        b: 90.0,
        c: 70.0,
        d: 100.0,
    };
    let t4 = Sides::new(83.2000, -126.2480);
    linkage.check(45.0, t4, None, 180.0);
    let levers = linkage.levers(45.0, t4);
    let corner = levers.assemble().unwrap().static_pose().corners.left;
    let rod = corner.steering_arm - corner.rod_inner;
    near(rod.y.atan2(rod.x).to_degrees(), 27.2605, 1e-4);
}

/// Five pairs fitted by Freudenstein's equation with least squares: input 40, 45, 50, 55, 60, ground 180 mm. Data
/// published in a student's laboratory project on a public code host; the fit gives a = 176.460, b = 83.675,
/// c = 112.131, and run forward 69.942, 76.108, 83.022, 90.844, 100.091 (computed here). The pairs asked for were
/// 70, 76, 83, 91, 100.
#[test]
fn fitted_function_generator() {
    let (k1, k2, k3) = (1.020_060, 1.605_263, 1.746_380);
    let d = 180.0;
    let (a, c) = (d / k1, d / k2);
    let b = f64::sqrt(a * a + c * c + d * d - 2.0 * a * c * k3);
    near(a, 176.460, 1e-3);
    near(b, 83.675, 1e-3);
    near(c, 112.131, 1e-3);
    let levers = FourBar { a, b, c, d }.levers(40.0, Sides::both(70.0));
    let assembly = levers.assemble().unwrap();
    let table = [
        (40.0, 69.942, 70.0),
        (45.0, 76.108, 76.0),
        (50.0, 83.022, 83.0),
        (55.0, 90.844, 91.0),
        (60.0, 100.091, 100.0),
    ];
    for (t2, t4, wanted) in table {
        let angle = levers.rocker_angles(&assembly, t2 - 40.0).left;
        near(angle, t4, 1e-3);
        near(angle, wanted, 0.2);
    }
}

/// What a guess at a loop leaves open: ground 40, crank 20 at 0, rocker 30 at 60, coupler 40 guessed at 45 miss each other
/// by 6.715728752538098 along and 2.303509133928742 across. Published: a student's notebook on a public code host.
#[test]
fn gap_of_a_guessed_loop() {
    let linkage = FourBar {
        a: 20.0,
        b: 35.0_f64.hypot(30.0 * 60.0_f64.to_radians().sin()),
        c: 30.0,
        d: 40.0,
    };
    let levers = linkage.levers(0.0, Sides::both(60.0));
    let corner = levers.assemble().unwrap().static_pose().corners.left;
    let rod = corner.steering_arm - corner.rod_inner;
    let guessed = 40.0 * 45.0_f64.to_radians().sin();
    near(rod.x - guessed, 6.715_728_752_538_098, 1e-12);
    near(guessed - rod.y, 2.303_509_133_928_742, 1e-12);
}

/// The first linkage with a rocker of 20 does not close: the crank's tip is 4.38 from the rocker's pivot, and a
/// rocker and a coupler of 20 and 7 need 13 at least. Triangle inequality; computed here. So a coupler misses by
/// 20 - 4.38 - 7.
#[test]
fn rocker_too_long_to_close() {
    let linkage = FourBar {
        a: 2.0,
        b: 7.0,
        c: 20.0,
        d: 6.0,
    };
    let gap = (6.0 - 3.0_f64.sqrt()).hypot(1.0);
    near(gap, 4.38, 0.005);
    let error = linkage.levers(30.0, Sides::both(100.0)).assemble();
    let Err(SolveError::OutOfReach(miss)) = error else {
        panic!("{error:?}");
    };
    assert_eq!(miss.member, Member::TieRod);
    assert_eq!(miss.miss, Miss::TooShort);
    near(miss.shortfall, 20.0 - gap - 7.0, 1e-9);
}

/// Circle and sphere: A cos f + B sin f = C has the roots atan2(B, A) +- acos(C / hypot(A, B)); for 3, 4, 2.5 they
/// are 113.1301 and -6.8699. Elementary; computed here. A steering arm of 0.5 with its rod's inner ball at (3, 4)
/// meets it with a rod of sqrt(25 + 0.25 - 2.5).
#[test]
fn circle_and_sphere() {
    let levers = Levers {
        crank_pivot: Point::new(3.0, 3.0, 0.0),
        crank_axis: Vector::z(),
        crank_ball: Point::new(3.0, 4.0, 0.0),
        rocker_pivot: Point::origin(),
        rocker_axis: Vector::z(),
        rocker_arm: Vector::new(0.5, 0.0, 0.0),
        drawn: Sides::new(100.0, 0.0),
        rod: 22.75_f64.sqrt(),
    };
    let assembly = levers.assemble().unwrap();
    let angles = levers.rocker_angles(&assembly, 0.0);
    near(angles.left, 113.1301, 1e-4);
    near(angles.right, -6.8699, 1e-4);
}

/// Two spheres: x = (d^2 - r^2 + R^2) / (2 d), h = sqrt(R^2 - x^2). Published: mathworld.wolfram.com, Sphere-Sphere
/// Intersection; the unit case at math.stackexchange, question 4866088 (0.5 and sqrt(3) / 2); R = 5, r = 4, d = 6
/// gives 3.75 and 3.3071891 (computed here).
#[test]
fn two_spheres() {
    for (arm, rod, gap, x, h) in [
        (1.0, 1.0, 1.0, 0.5, 0.866_025_4),
        (5.0, 4.0, 6.0, 3.75, 3.307_189_1),
    ] {
        let levers = Levers {
            crank_pivot: Point::new(gap, 1.0, 0.0),
            crank_axis: Vector::z(),
            crank_ball: Point::new(gap, 0.0, 0.0),
            rocker_pivot: Point::origin(),
            rocker_axis: Vector::z(),
            rocker_arm: Vector::new(arm, 0.0, 0.0),
            drawn: Sides::new(50.0, -50.0),
            rod,
        };
        let balls = levers.assemble().unwrap().static_pose().corners;
        near(
            (balls.left.steering_arm - Point::new(x, h, 0.0)).norm(),
            0.0,
            1e-7,
        );
        near(
            (balls.right.steering_arm - Point::new(x, -h, 0.0)).norm(),
            0.0,
            1e-7,
        );
    }
}
