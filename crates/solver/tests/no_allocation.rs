//! Assembling, posing and taking figures need no heap memory, for every suspension kind and every drive.
#![allow(clippy::unwrap_used)]

mod common;

use std::hint::black_box;

use allocation_counter::{AllocationInfo, measure};
use common::{front_axle, input, numbers, table};
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::instant_centre::{
    front_view_instant_centre, instant_axis, roll_centre, side_view_instant_centre,
};
use steerloft_solver::figures::linkage::{inner_share, outer_transmission};
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::{
    arm_lines, corner_figures, inner_outer, rod_angles, roll_gradient, steering_ratio,
    straight_ahead_share, travel_gradient, turning,
};
use steerloft_solver::{Assembly, AxlePose, Sides};

fn figures(assembly: &Assembly, pose: &AxlePose) {
    let road = &assembly.axle().road;
    for corner in [&pose.corners.left, &pose.corners.right] {
        black_box(corner_figures(corner, road));
        black_box(travel_gradient(corner, road));
        black_box(roll_gradient(corner, road));
        black_box(steer_per_input(corner, road));
        black_box(rod_angles(corner));
        black_box(outer_transmission(corner));
        black_box(inner_share(pose, corner));
        black_box(instant_axis(corner));
        black_box(front_view_instant_centre(corner, road));
        black_box(side_view_instant_centre(corner, road));
    }
    black_box(inner_outer(assembly, pose));
    black_box(steering_ratio(pose, road));
    black_box(turning(pose, road, assembly.axle().rear_axle_behind()));
    black_box(roll_centre(pose, road));
    black_box(straight_ahead_share(assembly));
    black_box(arm_lines(assembly));
    black_box(holding_effort(pose, &Sides::both(50.0)));
}

#[track_caller]
fn nothing_allocated(what: &str, name: &str, info: &AllocationInfo) {
    assert_eq!(info.count_total, 0, "{name}: {what} allocated {info:?}");
}

/// Holds one car to it.
fn stays_off_the_heap(name: &str) {
    let case = table("independent", name);
    let axle = front_axle(&case);
    let mut assembled = None;
    let info = measure(|| assembled = Some(Assembly::new(black_box(&axle))));
    nothing_allocated("assembling", name, &info);
    let assembly = assembled.unwrap().unwrap();

    let inputs = numbers(&case["input_sweep"]);
    for shown in [inputs[0], inputs[inputs.len() / 3], *inputs.last().unwrap()] {
        let at = input(&case, shown);
        let travel = if assembly.has_travel() {
            Sides::new(0.5, -0.5)
        } else {
            Sides::both(0.0)
        };
        let mut posed = None;
        let info = measure(|| posed = Some(assembly.pose(black_box(at), travel)));
        nothing_allocated("a pose", name, &info);
        let pose = posed.unwrap().unwrap();

        let info = measure(|| figures(&assembly, black_box(&pose)));
        nothing_allocated("figures", name, &info);

        if assembly.has_travel() {
            let road = assembly.axle().road;
            let info = measure(|| {
                black_box(assembly.pose_on_road(&pose, at, &road)).unwrap();
            });
            nothing_allocated("a pose on the road", name, &info);
        }
    }

    // Nor does finding out how far a member does not reach.
    let info = measure(|| {
        black_box(assembly.pose(black_box(3.0 * input(&case, inputs[0])), Sides::both(0.0))).ok();
    });
    nothing_allocated("a pose out of reach", name, &info);
}

/// The counter counts: a boxed number is one allocation.
#[test]
fn counter_counts() {
    let info = measure(|| {
        black_box(Box::new(black_box(1.0)));
    });
    assert_eq!(info.count_total, 1);
}

#[test]
fn fixed_kingpin_with_swing_arm() {
    stays_off_the_heap("fk_sa_02.json");
}

#[test]
fn sliding_kingpin_with_swing_arm() {
    stays_off_the_heap("sk_sa_01.json");
}

#[test]
fn swinging_upper_arm_with_swing_arm() {
    stays_off_the_heap("sua_sa_01.json");
}

#[test]
fn double_wishbone_with_twin_crank() {
    stays_off_the_heap("dw_tc_01.json");
}

#[test]
fn double_wishbone_with_slider() {
    stays_off_the_heap("dw_sl_01.json");
}

#[test]
fn strut_with_slider() {
    stays_off_the_heap("st_sl_01.json");
}
