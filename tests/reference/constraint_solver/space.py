"""Three-vectors as tuples of floats, in millimetres, and a few operations on them."""

from __future__ import annotations

import math
from collections.abc import Iterable

Vector = tuple[float, float, float]


def vector(values: Iterable[float]) -> Vector:
    """A vector from any three numbers."""
    x, y, z = (float(value) for value in values)
    return (x, y, z)


def plus(a: Vector, b: Vector, times: float = 1.0) -> Vector:
    """``a + times * b``."""
    return (a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2])


def minus(a: Vector, b: Vector) -> Vector:
    """``a - b``."""
    return plus(a, b, -1.0)


def dot(a: Vector, b: Vector) -> float:
    """Scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector, b: Vector) -> Vector:
    """Vector product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def distance(a: Vector, b: Vector) -> float:
    """Distance between two points."""
    return math.dist(a, b)


def unit(a: Vector) -> Vector:
    """The vector scaled to length one."""
    length = math.hypot(*a)
    return (a[0] / length, a[1] / length, a[2] / length)


def across(direction: Vector) -> tuple[Vector, Vector]:
    """Two unit vectors at right angles to a direction and to each other."""
    along = unit(direction)
    least = min(range(3), key=lambda index: abs(along[index]))
    helper = vector(1.0 if index == least else 0.0 for index in range(3))
    first = unit(cross(helper, along))
    return first, cross(along, first)


def foot(point: Vector, axis_point: Vector, direction: Vector) -> Vector:
    """The place of an axis (unit direction) nearest to a point."""
    return plus(axis_point, direction, dot(minus(point, axis_point), direction))


def turned(a: Vector, axis: Vector, angle: float) -> Vector:
    """A vector at right angles to a unit axis, turned right-handed about it by an angle in rad."""
    return plus(scaled(a, math.cos(angle)), cross(axis, a), math.sin(angle))


def scaled(a: Vector, times: float) -> Vector:
    """``times * a``."""
    return (times * a[0], times * a[1], times * a[2])
