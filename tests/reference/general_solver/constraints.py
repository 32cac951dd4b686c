"""Equations that joints, links, drives and the road put on the bodies.

Each constraint returns its residuals as an array of shape (equations, columns). Residuals are in millimetres:
equations between directions are multiplied by a length typical of the car, so that one tolerance serves all.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from typing import Protocol

import numpy as np

from .bodies import BodyPoint, Point, Poses
from .vectors import X_AXIS, Array, Real, columns, cross, dot, perpendiculars, unit


class Setting(IntEnum):
    """Places in the vector of what is demanded of the axle. Angles in radians, lengths in millimetres."""

    INPUT = 0
    TRAVEL_LEFT = 1
    TRAVEL_RIGHT = 2
    STEER_LEFT = 3
    STEER_RIGHT = 4
    ROD_LEFT = 5
    ROD_RIGHT = 6
    DRAG_LINK = 7
    CROSS_LINK = 8
    PITCH = 9
    ROLL = 10
    ARMS = 11
    """Share, 0 to 1, by which arms made longer or shorter than drawn have come to their length."""


@dataclass(frozen=True)
class Road:
    """The road plane seen from the chassis, in chassis axes, for given settings."""

    normal: Array
    forward: Array
    left: Array
    point: Real

    @classmethod
    def seen_at(cls, settings: Array, ride_height: float) -> Road:
        """Plane through (0, 0, -ride_height), tilted by pitch (nose down +) and roll (right side down +)."""
        pitch, roll = settings[Setting.PITCH], settings[Setting.ROLL]
        normal = np.array([-np.sin(pitch), np.cos(pitch) * np.sin(roll), np.cos(pitch) * np.cos(roll)])
        forward = unit(X_AXIS - dot(X_AXIS, normal) * normal)
        return cls(normal, forward, cross(normal, forward), np.array([0.0, 0.0, -ride_height]))


class Constraint(Protocol):
    """A set of equations on the bodies."""

    def residual(self, poses: Poses, settings: Array) -> Array:
        """Residuals, mm, shape (equations, columns); zero when the equations hold."""
        ...


@dataclass(frozen=True)
class UnitQuaternion:
    """A body's quaternion has length one (1 equation)."""

    body: int
    length: float

    def residual(self, poses: Poses, settings: Array) -> Array:
        quaternion = poses.quaternion[self.body]
        return self.length * (dot(quaternion, quaternion) - 1.0)[None]


@dataclass(frozen=True)
class BallJoint:
    """Two points coincide (3 equations)."""

    first: Point
    second: Point

    def residual(self, poses: Poses, settings: Array) -> Array:
        return self.first.at(poses) - self.second.at(poses)


@dataclass(frozen=True)
class ArmBall:
    """A point coincides with an arm's ball, which goes from where it is drawn to where the arm has it (3 equations)."""

    point: Point
    arm: int
    drawn: Real
    ball: Real

    def residual(self, poses: Poses, settings: Array) -> Array:
        local = self.drawn + settings[Setting.ARMS] * (self.ball - self.drawn)
        return self.point.at(poses) - poses.point(self.arm, local)


@dataclass(frozen=True)
class PointOnLine:
    """A point lies on a line fixed in a body or in the chassis (2 equations)."""

    point: Point
    line_point: Point
    line_body: int | None
    line_direction: Real

    def residual(self, poses: Poses, settings: Array) -> Array:
        offset = self.point.at(poses) - self.line_point.at(poses)
        across = perpendiculars(self.line_direction)
        return np.stack([dot(poses.direction(self.line_body, side), offset) for side in across])


@dataclass(frozen=True)
class KeepsDirection:
    """A direction fixed in a body keeps its reference direction in the chassis (2 equations)."""

    body: int
    direction: Real
    length: float

    def residual(self, poses: Poses, settings: Array) -> Array:
        turned = poses.direction(self.body, unit(self.direction))
        return self.length * np.stack([dot(columns(side), turned) for side in perpendiculars(self.direction)])


@dataclass(frozen=True)
class KeepsPlace:
    """A point keeps its reference position along one chassis direction, plus an optional setting (1 equation)."""

    point: Point
    reference: Real
    direction: Real
    setting: Setting | None = None

    def residual(self, poses: Poses, settings: Array) -> Array:
        moved = dot(columns(self.direction), self.point.at(poses) - columns(self.reference))
        return (moved if self.setting is None else moved - settings[self.setting])[None]


@dataclass(frozen=True)
class Link:
    """The distance between two points is a setting (1 equation). Stands for a rod between two ball joints."""

    first: Point
    second: Point
    setting: Setting

    def residual(self, poses: Poses, settings: Array) -> Array:
        offset = self.first.at(poses) - self.second.at(poses)
        length = settings[self.setting]
        return ((dot(offset, offset) - length * length) / (2.0 * length))[None]


@dataclass(frozen=True)
class TurnedBy:
    """A body that turns about a direction is turned by a setting, right-handed, or not at all (1 equation)."""

    body: int
    axis: Real
    setting: Setting | None
    length: float

    def residual(self, poses: Poses, settings: Array) -> Array:
        first, second = perpendiculars(self.axis)
        angle = 0.0 if self.setting is None else settings[self.setting]
        across = np.cos(angle) * second - np.sin(angle) * first
        return self.length * dot(columns(across), poses.direction(self.body, first))[None]


@dataclass(frozen=True)
class Wheel:
    """A wheel on its knuckle: centre, unit spin axis pointing to the car's left, loaded radius in mm."""

    body: int
    centre: Point
    axis_left: Real
    radius: float

    def contact(self, poses: Poses, road: Road) -> Array:
        """Lowest point of the wheel circle against the road, shape (3, columns)."""
        axis, normal = poses.direction(self.body, self.axis_left), columns(road.normal)
        up_in_wheel_plane = unit(normal - dot(normal, axis) * axis)
        return self.centre.at(poses) - self.radius * up_in_wheel_plane

    def heading(self, poses: Poses, road: Road) -> Array:
        """Unit vector along which the wheel rolls: (axis to the left) x (road normal)."""
        return unit(cross(poses.direction(self.body, self.axis_left), columns(road.normal)))


@dataclass(frozen=True)
class TyreOnRoad:
    """The contact centre lies on the road plane (1 equation)."""

    wheel: Wheel
    ride_height: float

    def residual(self, poses: Poses, settings: Array) -> Array:
        road = Road.seen_at(settings, self.ride_height)
        offset = self.wheel.contact(poses, road) - columns(road.point)
        return dot(columns(road.normal), offset)[None]


@dataclass(frozen=True)
class WheelSteered:
    """The wheel's heading stands at a steer angle, positive to the left, in the road plane (1 equation)."""

    wheel: Wheel
    setting: Setting
    ride_height: float

    def residual(self, poses: Poses, settings: Array) -> Array:
        road = Road.seen_at(settings, self.ride_height)
        angle = settings[self.setting]
        across = np.cos(angle) * road.left - np.sin(angle) * road.forward
        return self.wheel.radius * dot(columns(across), self.wheel.heading(poses, road))[None]


def hinge(body: int, axis_point: Real, direction: Real, length: float) -> list[Constraint]:
    """A body turns about a chassis axis without sliding along it (5 equations)."""
    on_body, on_chassis = BodyPoint(body, axis_point), BodyPoint(None, axis_point)
    return [BallJoint(on_body, on_chassis), KeepsDirection(body, direction, length)]


def sleeve(body: int, axis_point: Real, direction: Real, length: float) -> list[Constraint]:
    """A body turns about a chassis axis and slides along it (4 equations)."""
    on_body, on_chassis = BodyPoint(body, axis_point), BodyPoint(None, axis_point)
    return [PointOnLine(on_body, on_chassis, None, direction), KeepsDirection(body, direction, length)]
