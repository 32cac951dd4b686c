"""A case file turned into bodies, joints and the systems of equations that describe the axle."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any

import numpy as np

from .bodies import BodyPoint, Point, Poses, reference_state
from .constraints import Constraint, KeepsPlace, Link, Road, Setting, TyreOnRoad, Wheel, WheelSteered
from .continuation import Pose, System
from .mechanisms import Builder, Case, Drive, SteeringAxis, TurningAxis, drive_joints, suspension_joints
from .vectors import Z_AXIS, Array, Real, arctan2, dot, norm, unit, vector

TRAVEL = (Setting.TRAVEL_LEFT, Setting.TRAVEL_RIGHT)
STEER = (Setting.STEER_LEFT, Setting.STEER_RIGHT)
ROD = (Setting.ROD_LEFT, Setting.ROD_RIGHT)


class Height(Enum):
    """What fixes the height of the wheels."""

    TRAVEL = "wheel centres at a given travel"
    ROAD = "contact centres on the road plane"


class Steering(Enum):
    """What fixes the direction of the wheels."""

    RODS = "tie rods of given length"
    ANGLES = "each wheel at a given steer angle"


@dataclass(frozen=True)
class Corner:
    """One corner: its wheel, steering axis, rod balls and joints. The wheel's body is the knuckle."""

    side: int
    """+1 left, -1 right."""
    wheel: Wheel
    wheel_reference: Real
    axis: SteeringAxis
    outer_ball: Point
    inner_ball: Point
    inner_axis: TurningAxis | None
    """``None`` where the inner ball does not turn about a chassis axis."""
    joints: tuple[Constraint, ...]
    fixed_height: bool
    """The kind has no travel."""


def mirrored(value: Any) -> Any:
    """A left corner's data with every point and direction mirrored in the car's centre plane."""
    if isinstance(value, Mapping):
        return {key: mirrored(item) for key, item in value.items()}
    if isinstance(value, list) and len(value) == 3 and not isinstance(value[0], list):
        return [value[0], -value[1], value[2]]
    return [mirrored(item) for item in value] if isinstance(value, list) else value


def axis_to_the_left(side: int, data: Mapping[str, Any]) -> Real:
    """Unit spin axis towards the car's left: from ``spin_axis`` (outboard) if it is given, else from ``camber``."""
    given = data.get("spin_axis")
    if given is not None:
        return side * unit(vector(given))
    camber = np.radians(float(data["camber"]))
    return np.array([0.0, np.cos(camber), -side * np.sin(camber)])


class Axle:
    """The whole front axle of one case: bodies, joints, and settings of the reference pose."""

    def __init__(self, case: Case) -> None:
        suspension = case["suspension"]
        left = suspension["left"]
        data = [left, suspension.get("right") or mirrored(left)]
        kind = suspension["kind"]
        self.case = case
        self.length = float(left["tyre_radius"])
        self.wheelbase = float(case["wheelbase"])
        self.station = float(case.get("station", 0.0))
        self.ride_height = float(case["ride_height"])
        self.input_in_degrees = case["drive"]["kind"] != "Slider"
        builder = Builder(self.length)
        drive = drive_joints(builder, case["drive"])
        self.drive_bodies = builder.bodies
        self._drive_joints = tuple(builder.joints)
        self.corners = [self._corner(builder, drive, kind, data[index], index) for index in range(2)]
        self.bodies = builder.bodies
        self.has_set_arms = any(f"{which}_ball" in corner for corner in data for which in ("lower", "upper"))
        self.has_travel = kind != "FixedKingpin"
        self.reference = self._reference_pose(drive.link_lengths)
        self._systems: dict[tuple[Height, Steering], System] = {}

    @staticmethod
    def _corner(builder: Builder, drive: Drive, kind: str, data: Mapping[str, Any], index: int) -> Corner:
        """One corner with its knuckle; ``index`` is 0 on the left, 1 on the right."""
        builder.joints = []
        side, knuckle = (1, -1)[index], builder.body()
        centre = vector(data["wheel_centre"])
        axis = suspension_joints(builder, kind, data, knuckle)
        return Corner(
            side=side,
            wheel=Wheel(knuckle, BodyPoint(knuckle, centre), axis_to_the_left(side, data), float(data["tyre_radius"])),
            wheel_reference=centre,
            axis=axis,
            outer_ball=BodyPoint(knuckle, vector(data["steering_arm"])),
            inner_ball=drive.inner_balls[index],
            inner_axis=drive.inner_axes[index],
            joints=tuple(builder.joints),
            fixed_height=kind == "FixedKingpin",
        )

    def road(self, settings: Array) -> Road:
        """The road plane for given settings."""
        return Road.seen_at(settings, self.ride_height)

    def input_value(self, shown: float) -> float:
        """An input as files give it (degrees, or mm of a slider) in the solver's unit."""
        return float(np.radians(shown)) if self.input_in_degrees else float(shown)

    def shown_input(self, value: float) -> float:
        """The inverse of ``input_value``."""
        return float(np.degrees(value)) if self.input_in_degrees else float(value)

    def system(self, height: Height, steering: Steering) -> System:
        """The equations of the whole axle under the given rules."""
        key = (height, steering)
        if key not in self._systems:
            constraints = list(self._drive_joints)
            for index in range(2):
                constraints += self._corner_constraints(index, height, steering)
            self._systems[key] = System(self.bodies, constraints, self.length)
        return self._systems[key]

    def _corner_constraints(self, index: int, height: Height, steering: Steering) -> list[Constraint]:
        corner = self.corners[index]
        constraints = list(corner.joints)
        if not corner.fixed_height and height is Height.TRAVEL:
            constraints.append(KeepsPlace(corner.wheel.centre, corner.wheel_reference, Z_AXIS, TRAVEL[index]))
        if not corner.fixed_height and height is Height.ROAD:
            constraints.append(TyreOnRoad(corner.wheel, self.ride_height))
        if steering is Steering.RODS:
            constraints.append(Link(corner.inner_ball, corner.outer_ball, ROD[index]))
        else:
            constraints.append(WheelSteered(corner.wheel, STEER[index], self.ride_height))
        return constraints

    def _reference_pose(self, link_lengths: Mapping[Setting, float]) -> Pose:
        """Everything as the case file gives it, with the settings that hold in that pose."""
        state = reference_state(self.bodies)
        settings = np.zeros(len(Setting))
        settings[Setting.PITCH] = np.radians(float(self.case.get("pitch", 0.0)))
        settings[Setting.ROLL] = np.radians(float(self.case.get("roll", 0.0)))
        for setting, value in link_lengths.items():
            settings[setting] = value
        poses, road = Poses(state[:, None]), self.road(settings)
        for index, corner in enumerate(self.corners):
            settings[ROD[index]] = self.rod_length(index, state)
            heading = corner.wheel.heading(poses, road)[:, 0]
            settings[STEER[index]] = arctan2(dot(heading, road.left), dot(heading, road.forward))
        return Pose(state, settings)

    def rod_length(self, index: int, state: Real) -> float:
        """Distance between the two balls of a tie rod, mm."""
        poses, corner = Poses(state[:, None]), self.corners[index]
        return float(norm(corner.outer_ball.at(poses) - corner.inner_ball.at(poses))[0])
