"""Points and geometric constraints, and the constraint solver that closes them.

Nothing here knows of cars. Every coordinate of every free point is an unknown; chassis points are fixed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from py_slvs import slvs  # type: ignore[import-untyped]

from .space import Vector, distance, unit

Places = dict[str, Vector]
"""Positions by the name of the point, mm."""

FIXED, FREE = 1, 2
"""Groups of the solver: what it must not move, and what it solves for."""

SOLVED = 0
"""The solver's answer when it has closed every constraint."""

STILL = 1e-11
"""Movement of a point, mm, below which another round of the solver changes nothing.

The solver ends a round once every constraint holds to 1e-8 mm. A round always makes at least one Newton step, so a few
rounds more leave nothing but rounding.
"""

MOST_ROUNDS = 8


@dataclass(frozen=True)
class Distance:
    """Two points keep a distance, mm; it is never zero."""

    first: str
    second: str
    length: float


@dataclass(frozen=True)
class InPlane:
    """A point lies at a height, mm, over a plane fixed in the chassis, along its unit normal."""

    point: str
    origin: Vector
    normal: Vector
    height: float = 0.0


@dataclass(frozen=True)
class OnLine:
    """A point lies on the line through two others."""

    point: str
    start: str
    end: str


@dataclass(frozen=True)
class Perpendicular:
    """The line through two points is at right angles to the line through two others."""

    first: tuple[str, str]
    second: tuple[str, str]


@dataclass(frozen=True)
class AcrossDirection:
    """The line through two points is at right angles to a direction fixed in the chassis."""

    line: tuple[str, str]
    direction: Vector


Constraint = Distance | InPlane | OnLine | Perpendicular | AcrossDirection


class NotClosed(Exception):
    """The solver found no places at which every constraint holds."""


@dataclass
class _Session:
    """One system handed to the solver."""

    places: Places
    fixed: frozenset[str]
    system: slvs.System = field(default_factory=slvs.System)
    points: dict[str, int] = field(default_factory=dict)

    def point(self, name: str) -> int:
        """The solver's handle of a point."""
        if name not in self.points:
            group = FIXED if name in self.fixed else FREE
            self.points[name] = self.system.addPoint3dV(*self.places[name], group)
        return self.points[name]

    def line(self, ends: tuple[str, str]) -> int:
        """The solver's handle of the line through two points."""
        return int(self.system.addLineSegment(self.point(ends[0]), self.point(ends[1]), FREE))

    def chassis_point(self, place: Vector) -> int:
        """A fixed point without a name."""
        return int(self.system.addPoint3dV(*place, FIXED))

    def add(self, constraint: Constraint) -> None:
        """Puts one constraint into the system."""
        system = self.system
        if isinstance(constraint, Distance):
            ends = self.point(constraint.first), self.point(constraint.second)
            system.addPointsDistance(constraint.length, *ends, 0, FREE)
        elif isinstance(constraint, InPlane):
            normal = system.addNormal3dV(*_quaternion_to(constraint.normal), FIXED)
            plane = system.addWorkplane(self.chassis_point(constraint.origin), normal, FIXED)
            system.addPointPlaneDistance(constraint.height, self.point(constraint.point), plane, FREE)
        elif isinstance(constraint, OnLine):
            line = self.line((constraint.start, constraint.end))
            system.addPointOnLine(self.point(constraint.point), line, 0, FREE)
        elif isinstance(constraint, Perpendicular):
            system.addPerpendicular(self.line(constraint.first), self.line(constraint.second), 0, FREE)
        else:
            ends = self.chassis_point((0.0, 0.0, 0.0)), self.chassis_point(unit(constraint.direction))
            line = system.addLineSegment(*ends, FIXED)
            system.addPerpendicular(self.line(constraint.line), line, 0, FREE)

    def place(self, name: str) -> Vector:
        """Where a point is now."""
        x, y, z = (self.system.getParam(self.system.getEntityParam(self.points[name], index)).val for index in range(3))
        return (x, y, z)


def closed(places: Places, fixed: frozenset[str], constraints: Sequence[Constraint]) -> Places:
    """Places near the given ones at which every constraint holds; raises ``NotClosed``.

    Points that no constraint names keep their places.
    """
    session = _Session(places, fixed)
    for constraint in constraints:
        session.add(constraint)
    moved = dict(places)
    for _ in range(MOST_ROUNDS):
        answer = session.system.solve(FREE)
        if answer != SOLVED:
            raise NotClosed(f"the solver answers {answer}")
        if session.system.Dof != 0:
            raise NotClosed(f"{session.system.Dof} motions are left free")
        before, moved = moved, places | {name: session.place(name) for name in session.points}
        if max(distance(before[name], moved[name]) for name in moved) < STILL:
            break
    if not all(math.isfinite(number) for place in moved.values() for number in place):
        raise NotClosed("a point has run off")
    return moved


def _quaternion_to(normal: Vector) -> tuple[float, float, float, float]:
    """A rotation (w, x, y, z) that takes the z axis to a unit normal: half a turn about the line between the two."""
    x, y, z = normal
    if z < 0.0:
        # The line between them would vanish at z = -1: a half turn about x comes first.
        w, i, j, k = _quaternion_to((x, -y, -z))
        return (-i, w, -k, j)
    return (0.0, *unit((x, y, z + 1.0)))
