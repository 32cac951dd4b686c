"""The figures of a case, gathered into plain dictionaries ready for JSON."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from .assembly import CannotAssemble, pose_on_road, static_pose, steer_angles
from .axle import TRAVEL, Axle, Corner, Height, Steering
from .constraints import Setting
from .continuation import BranchTurnsBack, Pose, System
from .figures import (
    Row,
    View,
    corner_angles,
    corner_places,
    inner_transmission,
    outer_transmission,
    rod_angles,
    turn_centre,
)
from .gradients import ackermann_limit, bump_gradient, rate_with, roll_gradient, shown_rates
from .mechanisms import SIDES, Case
from .sweeps import lock_row, sweep
from .vectors import Real, arctan2, dot, norm

SAME_RATE = 1e-9
"""Difference of the two wheels' steer rates, relative to their sum, below which they start alike."""

NO_TURN = 1e-12
"""Angle between inner and ideal outer wheel, rad, below which the Ackermann share has no value."""


def reference_table(case: Case) -> Row:
    """Everything computed for one case: ``static``, the sweeps, ``lock`` where one is met, or ``error``."""
    axle = Axle(case)
    try:
        static = static_pose(axle)
    except CannotAssemble as failure:
        return {"error": [failure.report]}
    return _Tables(axle, static).all()


class _Tables:
    """The tables of one assembled axle."""

    def __init__(self, axle: Axle, static: Pose) -> None:
        self.axle = axle
        self.case = axle.case
        self.static = static
        self.straight = steer_angles(axle, static)
        self.base_distance = self._base_distance()
        self.at_input = self._at_bump_input() if axle.has_travel else None
        self.on_road = pose_on_road(axle, static) if axle.has_travel else None
        self.locks: list[Row] = []

    def all(self) -> Row:
        """The whole table."""
        table: Row = {"static": self._static_row(), "steer_sweep": self._steer_sweep()}
        if self.axle.has_travel:
            table["steer_sweep_on_road"] = self._steer_sweep_on_road()
            table["bump_sweep"] = self._bump_sweep("bump_sweep", self.static)
        if self.at_input is not None:
            table["bump_sweep_at_input"] = self._bump_sweep("bump_sweep_at_input", self.at_input)
        if self.axle.has_travel and "roll_sweep" in self.case:
            table["roll_sweep"] = self._roll_sweep()
        return table | {"lock": self.locks} if self.locks else table

    def _base_distance(self) -> float:
        """B: distance between the points where the steering axes meet the static road plane, mm."""
        view = View(self.axle, self.static.state, self.static.settings)
        left, right = (view.static_ground_point(corner) for corner in self.axle.corners)
        return float(norm(left - right))

    def _at_bump_input(self) -> Pose | None:
        """The static setting at the case's bump input; ``None`` if none is given or it lies past the lock."""
        if self.case.get("bump_input") is None:
            return None
        target = self.static.settings.copy()
        target[Setting.INPUT] = self.axle.input_value(float(self.case["bump_input"]))
        try:
            return self.axle.system(Height.TRAVEL, Steering.RODS).follow(self.static, target)
        except BranchTurnsBack:
            return None

    # Sweeps.

    def _points(
        self, name: str, system: System, start: Pose, values: list[float], change: Callable[[Real, float], None]
    ) -> list[tuple[float, Pose]]:
        points, locks = sweep(system, start, values, change)
        self.locks += [lock_row(self.axle, name, direction, lock) for direction, lock in locks]
        return points

    def _set_input(self, settings: Real, value: float) -> None:
        settings[Setting.INPUT] = self.axle.input_value(value)

    def _steer_sweep(self) -> list[Row]:
        system = self.axle.system(Height.TRAVEL, Steering.RODS)
        points = self._points("steer_sweep", system, self.static, self.case["input_sweep"], self._set_input)
        return [self._steer_row(value, pose) for value, pose in points]

    def _steer_sweep_on_road(self) -> list[Row]:
        assert self.on_road is not None
        system, values = self.axle.system(Height.ROAD, Steering.RODS), self.case["input_sweep"]
        points = self._points("steer_sweep_on_road", system, self.on_road, values, self._set_input)
        return [{"input": value} | self._both_sides(_road_figures, pose) for value, pose in points]

    def _bump_sweep(self, name: str, start: Pose) -> list[Row]:
        def change(settings: Real, value: float) -> None:
            settings[list(TRAVEL)] = value

        def figures(view: View, corner: Corner) -> Row:
            return corner_angles(view, corner) | corner_places(view, corner) | outer_transmission(view, corner)

        held = self.axle.shown_input(start.settings[Setting.INPUT])
        system = self.axle.system(Height.TRAVEL, Steering.RODS)
        points = self._points(name, system, start, self.case["travel_sweep"], change)
        return [{"travel": value, "input": held} | self._both_sides(figures, pose) for value, pose in points]

    def _roll_sweep(self) -> list[Row]:
        assert self.on_road is not None
        static_roll = self.static.settings[Setting.ROLL]

        def change(settings: Real, value: float) -> None:
            settings[Setting.ROLL] = static_roll + np.radians(value)

        def figures(view: View, corner: Corner) -> Row:
            return _road_figures(view, corner) | {"wheel_centre": view.centre(corner)}

        system = self.axle.system(Height.ROAD, Steering.RODS)
        points = self._points("roll_sweep", system, self.on_road, self.case["roll_sweep"], change)
        return [
            {"roll_added": value, "roll": np.degrees(pose.settings[Setting.ROLL])} | self._both_sides(figures, pose)
            for value, pose in points
        ]

    # Rows.

    def _both_sides(self, figures: Callable[[View, Corner], Row], pose: Pose) -> Row:
        view = View(self.axle, pose.state, pose.settings)
        return {side: figures(view, corner) for side, corner in zip(SIDES, self.axle.corners)}

    def _pose_figures(self, pose: Pose) -> Callable[[View, Corner], Row]:
        """The figures of a corner that need the motion of its inner ball at this pose."""
        rate = rate_with(self.axle, pose, {Setting.INPUT: 1.0})

        def figures(view: View, corner: Corner) -> Row:
            return (
                corner_angles(view, corner)
                | corner_places(view, corner)
                | outer_transmission(view, corner)
                | inner_transmission(view, corner, rate.inner_ball_motion(corner))
                | rod_angles(view, corner)
            )

        return figures

    def _steer_row(self, value: float, pose: Pose) -> Row:
        figures = self._pose_figures(pose)
        row: Row = {"input": value}
        row |= self._both_sides(lambda view, corner: figures(view, corner) | turn_centre(view, corner), pose)
        row |= self._inner_and_outer(pose)
        turn = [row[side]["turn_y"] for side in SIDES]
        mean_rate = float(shown_rates(self.axle, pose).mean())
        row["turn_spread"] = None if None in turn else abs(turn[0] - turn[1])
        return row | {"steer_rate": mean_rate, "ratio": 1.0 / mean_rate}

    def _inner_and_outer(self, pose: Pose) -> Row:
        """Inner and outer wheel from straight ahead, the ideal outer angle and the Ackermann share."""
        names = ("inner_side", "inner", "outer", "ideal_outer", "ackermann")
        if pose.settings[Setting.INPUT] == 0.0:
            return dict.fromkeys(names)
        turned = steer_angles(self.axle, pose) - self.straight
        to_left = turned.mean() > 0.0
        inner, outer = (turned[0], turned[1]) if to_left else (-turned[1], -turned[0])
        lengths = self.base_distance / self.axle.wheelbase
        ideal = float(arctan2(np.sin(inner), np.cos(inner) + lengths * np.sin(inner)))
        share = None if abs(inner - ideal) < NO_TURN else 100.0 * (inner - outer) / (inner - ideal)
        return dict(zip(names, ("left" if to_left else "right", *np.degrees([inner, outer, ideal]), share)))

    def _static_row(self) -> Row:
        rates = shown_rates(self.axle, self.static)
        row: Row = {"steer_per_input": dict(zip(SIDES, rates)), "steering_ratio_at_zero": 1.0 / rates.mean()}
        if self.axle.has_travel:
            row["bump_gradient"] = bump_gradient(self.axle, self.static)
        if self.at_input is not None:
            held = {"input": float(self.case["bump_input"])}
            row["bump_gradient_at_input"] = held | bump_gradient(self.axle, self.at_input)
        if self.on_road is not None:
            row["roll_gradient"] = roll_gradient(self.axle, self.on_road)
        row |= self._both_sides(self._pose_figures(self.static), self.static)
        view = View(self.axle, self.static.state, self.static.settings)
        for index, (side, corner) in enumerate(zip(SIDES, self.axle.corners)):
            row[side] |= {
                "rod_length": self.axle.rod_length(index, self.static.state),
                "ground_point": view.ground_point(corner),
                "ground_point_rh": view.static_ground_point(corner),
                "outer_ball": view.balls(corner)[1],
            }
        return row | self._axle_row(view, rates)

    def _axle_row(self, view: View, rates: Real) -> Row:
        left, right = self.axle.corners
        row: Row = {
            "B": self.base_distance,
            "B_contact_plane": norm(view.ground_point(left) - view.ground_point(right)),
            "track_contact": norm(view.contact(left) - view.contact(right)),
            "track_wheel_centres": norm(view.centre(left) - view.centre(right)),
        }
        if abs(rates[0] - rates[1]) <= SAME_RATE * abs(rates.sum()):
            row["ackermann_limit_straight"] = ackermann_limit(self.axle, self.static, self.base_distance)
        meet = _arm_lines_meet(view)
        if meet is not None:
            row["arm_lines_meet_x_behind_origin"] = meet
            row["arm_lines_share"] = 100.0 * self.axle.wheelbase / meet
        return row


def _road_figures(view: View, corner: Corner) -> Row:
    """The figures of a corner whose tyre is kept on the road."""
    angles = corner_angles(view, corner)
    row: Row = {name: angles[name] for name in ("steer", "toe", "camber")}
    travel = view.centre(corner)[2] - corner.wheel_reference[2]
    return row | {"contact": view.contact(corner), "travel": travel}


def _arm_lines_meet(view: View) -> float | None:
    """How far behind the station the two lines ground point to outer ball meet in top view; ``None`` if parallel.

    Ground points in the static road plane, like those of the base distance.
    """
    starts, ways = [], []
    for corner in view.axle.corners:
        ends = (view.static_ground_point(corner), view.balls(corner)[1])
        start, ball = (np.array([dot(p, view.road.forward), dot(p, view.road.left)]) for p in ends)
        starts.append(start)
        ways.append(ball - start)
    matrix = np.column_stack([ways[0], -ways[1]])
    if abs(np.linalg.det(matrix)) < 1e-9 * float(np.linalg.norm(ways[0]) * np.linalg.norm(ways[1])):
        return None
    shares = np.linalg.solve(matrix, starts[1] - starts[0])
    return view.axle.station - float(starts[0][0] + shares[0] * ways[0][0])
