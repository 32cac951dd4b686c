"""Rigid bodies: seven numbers each (translation, quaternion), and points that ride on them.

The local axes of every body are the chassis axes in the reference pose, so a body's local coordinates are
the coordinates given in the case file, and the reference state is translation 0, quaternion (1, 0, 0, 0).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from .vectors import Array, Real, columns

NUMBERS_PER_BODY = 7


def reference_state(bodies: int) -> Real:
    """State vector of all bodies in the reference pose, shape (7 * bodies,)."""
    return np.tile([0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0], bodies)


class Poses:
    """Translations and rotation matrices of all bodies, for one state or for a batch of states.

    The state has shape (7 * bodies, columns). The quaternion is not normalised here: its unit length is one
    of the equations to be solved, which keeps every residual a polynomial of the state.
    """

    def __init__(self, state: Array) -> None:
        numbers = state.reshape(-1, NUMBERS_PER_BODY, state.shape[1])
        self.translation = numbers[:, 0:3]
        self.quaternion = numbers[:, 3:7]
        w, x, y, z = (self.quaternion[:, i] for i in range(4))
        rows = [
            [w * w + x * x - y * y - z * z, 2 * (x * y - w * z), 2 * (x * z + w * y)],
            [2 * (x * y + w * z), w * w - x * x + y * y - z * z, 2 * (y * z - w * x)],
            [2 * (x * z - w * y), 2 * (y * z + w * x), w * w - x * x - y * y + z * z],
        ]
        self.rotation = np.array(rows).transpose(2, 0, 1, 3)

    def direction(self, body: int | None, local: Array) -> Array:
        """A direction fixed in a body, in chassis axes, shape (3, columns). Body ``None`` is the chassis."""
        if body is None:
            return columns(local)
        return np.tensordot(self.rotation[body], local, axes=(1, 0))

    def point(self, body: int | None, local: Array) -> Array:
        """A point fixed in a body, in chassis coordinates, shape (3, columns)."""
        if body is None:
            return columns(local)
        return self.translation[body] + self.direction(body, local)


class Point(Protocol):
    """Anything with a position once the bodies are placed."""

    def at(self, poses: Poses) -> Array:
        """Position in chassis coordinates, mm, shape (3, columns)."""
        ...


@dataclass(frozen=True)
class BodyPoint:
    """A point fixed in a body (or in the chassis when ``body`` is ``None``)."""

    body: int | None
    local: Real

    def at(self, poses: Poses) -> Array:
        return poses.point(self.body, self.local)


@dataclass(frozen=True)
class PointBetween:
    """A point on the line through two others: ``first + share * (second - first)``."""

    first: Point
    second: Point
    share: float

    def at(self, poses: Poses) -> Array:
        start = self.first.at(poses)
        return start + self.share * (self.second.at(poses) - start)
