"""Derivatives of figures with the input, the travel and the roll, and the limit that follows from them."""

from __future__ import annotations

import numpy as np

from .axle import TRAVEL, Axle, Height, Steering
from .constraints import Setting
from .continuation import Pose, richardson
from .figures import Rate, Row, corner_angles
from .mechanisms import SIDES
from .vectors import Real


def rate_with(axle: Axle, pose: Pose, change: dict[Setting, float], height: Height = Height.TRAVEL) -> Rate:
    """Derivatives at a pose along a change of settings, rods keeping their lengths."""
    return Rate(axle, axle.system(height, Steering.RODS), pose, change)


def steer_rates(axle: Axle, pose: Pose) -> Real:
    """d steer / d input of the left and the right wheel in the solver's units (rad, or mm of a slider)."""
    rate = rate_with(axle, pose, {Setting.INPUT: 1.0})
    return np.array([float(rate.of(rate.view.steer(corner))) for corner in axle.corners])


def shown_rates(axle: Axle, pose: Pose) -> Real:
    """The same in degrees a degree, or degrees a millimetre of a slider."""
    rates = steer_rates(axle, pose)
    return rates if axle.input_in_degrees else np.degrees(rates)


def bump_gradient(axle: Axle, pose: Pose) -> Row:
    """Derivatives of a corner's angles and places with its wheel travel, a millimetre."""
    rate = rate_with(axle, pose, dict.fromkeys(TRAVEL, 1.0))
    row: Row = {}
    for side, corner in zip(SIDES, axle.corners):
        angles = rate.figures(corner_angles(rate.view, corner))
        centre = rate.of(rate.view.centre(corner))
        contact = rate.of(rate.view.contact(corner))
        row[side] = {name: angles[name] for name in ("toe", "camber", "caster", "kpi")}
        row[side] |= {"wheel_centre_x": centre[0], "wheel_centre_y": centre[1]}
        row[side] |= {f"contact_{letter}": contact[i] for i, letter in enumerate("xyz")}
    return row


def roll_gradient(axle: Axle, pose_on_road: Pose) -> Row:
    """Derivatives with the roll of the chassis, both tyres on the road, a degree of roll."""
    rate = rate_with(axle, pose_on_road, {Setting.ROLL: float(np.radians(1.0))}, Height.ROAD)
    row: Row = {}
    for side, corner in zip(SIDES, axle.corners):
        angles = rate.figures(corner_angles(rate.view, corner))
        row[side] = {name: angles[name] for name in ("steer", "camber")}
        row[side]["travel"] = rate.of(rate.view.centre(corner))[2]
    return row


def ackermann_limit(axle: Axle, static: Pose, base_distance: float) -> float:
    """Ackermann share as the input goes to 0, for wheels that start alike; derived here.

    With s the input, the steer angles are ``rate * s + curve * s**2``, the rate being the same on both sides. In a
    left turn inner minus outer is ``(curve_left - curve_right) * s**2``; for the ideal pair, cot(outer) - cot(inner)
    = B / L makes it ``(B / L) * (rate * s)**2``. The share is the quotient; a right turn gives the same.
    """
    system = axle.system(Height.TRAVEL, Steering.RODS)

    def rates_at(offset: float) -> Real:
        target = static.settings.copy()
        target[Setting.INPUT] += offset
        return steer_rates(axle, system.follow(static, target))

    step = 0.05 * axle.input_value(max(abs(value) for value in axle.case["input_sweep"]))
    curves = 0.5 * richardson(rates_at, step)
    ideal = base_distance / axle.wheelbase * float(rates_at(0.0).mean()) ** 2
    return 100.0 * float(curves[0] - curves[1]) / ideal
