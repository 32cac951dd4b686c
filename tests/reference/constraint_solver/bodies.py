"""Rigid bodies, hinges and chassis lines, expressed by distances and planes.

A body is four of its points with all six distances between them; any further point keeps its distances to three of
those four. A mirrored body would keep them too: the small steps of ``continuation`` keep the one that was drawn.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from .sketch import Constraint, Distance, InPlane, Places
from .space import Vector, across, cross, distance, dot, foot, minus, plus, turned, unit

FLAT = 0.3
"""Sine of the angle at a hinge between two points below which the distance between them says too little."""


def rigid_body(places: Places, names: Sequence[str], fixed: frozenset[str]) -> Iterator[Constraint]:
    """Distances that hold a body together, as drawn; fixed points keep theirs without being told."""
    base = max(combinations(names, 4), key=lambda four: _spread(places, four))
    pairs = list(combinations(base, 2))
    for name in names:
        if name not in base:
            nearby = max(combinations(base, 3), key=lambda three: _sharpness(places, name, three))
            pairs += [(name, other) for other in nearby]
    for first, second in pairs:
        if not {first, second} <= fixed:
            yield Distance(first, second, distance(places[first], places[second]))


def _spread(places: Places, four: Sequence[str]) -> float:
    """How far four points are from lying in a plane: volume over the cube of the longest edge."""
    first, *others = (places[name] for name in four)
    sides = [minus(other, first) for other in others]
    longest = max(distance(places[a], places[b]) for a, b in combinations(four, 2))
    return abs(dot(cross(sides[0], sides[1]), sides[2])) / longest**3


def _sharpness(places: Places, name: str, three: Sequence[str]) -> float:
    """How sharply three distances fix a point; 0 if it lies in the plane of the other three."""
    ways = [minus(places[other], places[name]) for other in three]
    if any(dot(way, way) == 0.0 for way in ways):
        return 0.0
    a, b, c = (unit(way) for way in ways)
    return abs(dot(cross(a, b), c))


def on_chassis_line(point: str, through: Vector, direction: Vector) -> Iterator[Constraint]:
    """A point stays on a line fixed in the chassis: in two planes that meet there."""
    for normal in across(direction):
        yield InPlane(point, through, normal)


@dataclass(frozen=True)
class Hinge:
    """An axis fixed in the chassis, as two fixed points of it."""

    first: str
    second: str

    def holds(self, point: str, first: float, second: float) -> Iterator[Constraint]:
        """A point turns about the axis, at given distances from its two points."""
        yield Distance(point, self.first, first)
        yield Distance(point, self.second, second)

    def carries(self, places: Places, point: str) -> Iterator[Constraint]:
        """A point turns about the axis, at its distances as drawn."""
        drawn = (distance(places[point], places[end]) for end in (self.first, self.second))
        yield from self.holds(point, *drawn)


@dataclass(frozen=True)
class Axis:
    """A turning axis given by a point and a direction, with a hinge made of two of its points."""

    point: Vector
    direction: Vector
    hinge: Hinge

    @classmethod
    def made(cls, places: Places, name: str, point: Vector, direction: Vector, carried: Sequence[Vector]) -> Axis:
        """Adds the hinge's two points to ``places``, on both sides of what the axis carries."""
        along = unit(direction)
        feet = [foot(place, point, along) for place in carried]
        lever = max(distance(place, at) for place, at in zip(carried, feet))
        low = min(feet, key=lambda at: dot(at, along))
        high = max(feet, key=lambda at: dot(at, along))
        hinge = Hinge(f"{name} axis low", f"{name} axis high")
        places[hinge.first] = plus(low, along, -lever)
        places[hinge.second] = plus(high, along, lever)
        return cls(point, along, hinge)

    @property
    def fixed(self) -> frozenset[str]:
        """The hinge's points."""
        return frozenset((self.hinge.first, self.hinge.second))

    def lever(self, place: Vector) -> Vector:
        """Unit vector from the axis to a place, at right angles to the axis."""
        return unit(minus(place, foot(place, self.point, self.direction)))

    def turned_point(self, drawn: Places, point: str, angle: float) -> Iterator[Constraint]:
        """A carried point stands turned by an angle, rad, from where it is drawn: in the turned plane of its lever."""
        normal = turned(cross(self.direction, self.lever(drawn[point])), self.direction, angle)
        yield from self.hinge.carries(drawn, point)
        yield InPlane(point, self.point, normal)

    def turning_body(self, places: Places, name: str, points: Sequence[str]) -> Iterator[Constraint]:
        """Carried points turn together. Adds a helper point to ``places`` where two of them are in line."""
        first, *others = points
        lever = self.lever(places[first])
        yield from self.hinge.carries(places, first)
        helper: str | None = None
        for point in others:
            yield from self.hinge.carries(places, point)
            partner = first
            if dot(cross(lever, self.lever(places[point])), self.direction) ** 2 < FLAT**2:
                if helper is None:
                    helper = f"{name} helper"
                    at = foot(places[first], self.point, self.direction)
                    length = distance(places[first], at)
                    places[helper] = plus(at, cross(self.direction, lever), length)
                    yield from self.hinge.carries(places, helper)
                    yield Distance(helper, first, distance(places[helper], places[first]))
                partner = helper
            yield Distance(point, partner, distance(places[point], places[partner]))
