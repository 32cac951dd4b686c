"""What moves the inner tie-rod balls: points and constraints of every steering drive."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Protocol

from .bodies import Axis, on_chassis_line
from .demand import Demand, Pair
from .sketch import Constraint, Distance, InPlane, OnLine, Places
from .space import Vector, distance, dot, minus, unit, vector

Data = Mapping[str, Any]
"""The drive of a case file."""

SIDES = ("left", "right")
INNER = {side: f"{side} inner" for side in SIDES}
"""Names of the inner tie-rod balls."""


class Drive(Protocol):
    """A steering drive; its points are in the places it was made with."""

    @property
    def fixed(self) -> frozenset[str]:
        """Points it has in the chassis."""
        ...

    @property
    def links(self) -> tuple[Pair, Pair]:
        """Lengths of its cross link and drag link, as drawn and as given; zeros where it has none."""
        ...

    def constraints(self, demand: Demand) -> Iterator[Constraint]:
        """Everything between chassis, drive and inner balls."""
        ...


NO_LINKS: tuple[Pair, Pair] = ((0.0, 0.0), (0.0, 0.0))


def drive(places: Places, data: Data) -> Drive:
    """The drive of a case; its points are added to ``places`` as drawn."""
    for side in SIDES:
        places[INNER[side]] = vector(data["rod_inner"][side])
    kind = data["kind"]
    if kind == "SwingArm":
        balls = [places[INNER[side]] for side in SIDES]
        return SwingArm(Axis.made(places, "arm", vector(data["axis_point"]), vector(data["axis_dir"]), balls), places)
    if kind == "Slider":
        return Slider(unit(vector(data["direction"])), places)
    if kind == "TwinCrank":
        return TwinCrank(places, data)
    raise ValueError(f"drive kind {kind!r} is not known")


@dataclass(frozen=True)
class SwingArm:
    """Both inner balls on one arm that turns by the input."""

    axis: Axis
    drawn: Places

    @property
    def fixed(self) -> frozenset[str]:
        return self.axis.fixed

    @property
    def links(self) -> tuple[Pair, Pair]:
        return NO_LINKS

    def constraints(self, demand: Demand) -> Iterator[Constraint]:
        for ball in INNER.values():
            yield from self.axis.turned_point(self.drawn, ball, demand.input)


@dataclass(frozen=True)
class Slider:
    """Both inner balls move along a direction by the input."""

    direction: Vector
    drawn: Places

    @property
    def fixed(self) -> frozenset[str]:
        return frozenset()

    @property
    def links(self) -> tuple[Pair, Pair]:
        return NO_LINKS

    def constraints(self, demand: Demand) -> Iterator[Constraint]:
        for ball in INNER.values():
            yield from on_chassis_line(ball, self.drawn[ball], self.direction)
            yield InPlane(ball, self.drawn[ball], self.direction, demand.input)


class TwinCrank:
    """Two cranks tied by a cross link; a drag link from a servo arm, which turns by the input, moves one of them."""

    def __init__(self, places: Places, data: Data) -> None:
        self.drawn = places
        self.on_cross_link = data.get("inner_on") == "cross_link"
        self.cross = ("left cross", "right cross")
        self.drag = ("servo drag", "crank drag")
        for side, name in zip(SIDES, self.cross):
            places[name] = vector(data[f"cross_{side}"])
        places[self.drag[0]], places[self.drag[1]] = vector(data["drag_servo"]), vector(data["drag_crank"])
        self.carried: dict[str, list[str]] = {}
        self.axes: dict[str, Axis] = {}
        for side, cross_ball in zip(SIDES, self.cross):
            points = [cross_ball] + ([] if self.on_cross_link else [INNER[side]])
            if data["driven"] == side:
                points.append(self.drag[1])
            self._add_axis(data, f"crank_{side}", points)
        self._add_axis(data, "servo", [self.drag[0]])
        drawn = (self._length(self.cross), self._length(self.drag))
        given = tuple(float(data.get(key) or old) for key, old in zip(("cross_length", "drag_length"), drawn))
        self.links: tuple[Pair, Pair] = (drawn, (given[0], given[1]))
        # Crank bodies add a helper point where they need one, so it must be there before the first demand.
        self._bodies = [
            constraint
            for name in ("crank_left", "crank_right")
            for constraint in self.axes[name].turning_body(places, name, self.carried[name])
        ]

    @property
    def fixed(self) -> frozenset[str]:
        return frozenset().union(*(axis.fixed for axis in self.axes.values()))

    def constraints(self, demand: Demand) -> Iterator[Constraint]:
        yield from self.axes["servo"].turned_point(self.drawn, self.drag[0], demand.input)
        yield from self._bodies
        yield Distance(*self.cross, demand.links[0])
        yield Distance(*self.drag, demand.links[1])
        if self.on_cross_link:
            for ball in INNER.values():
                yield from self._on_cross_link(ball, demand.links[0])

    def _on_cross_link(self, ball: str, length: float) -> Iterator[Constraint]:
        """An inner ball keeps its share of the cross link; told by its distance from the farther end."""
        start, end = (self.drawn[name] for name in self.cross)
        way = minus(end, start)
        share = dot(minus(self.drawn[ball], start), way) / dot(way, way)
        yield OnLine(ball, *self.cross)
        if share > 0.5:
            yield Distance(ball, self.cross[0], share * length)
        else:
            yield Distance(ball, self.cross[1], (1.0 - share) * length)

    def _add_axis(self, data: Data, name: str, points: list[str]) -> None:
        given = data[name]
        carried = [self.drawn[point] for point in points]
        self.carried[name] = points
        self.axes[name] = Axis.made(self.drawn, name, vector(given["axis_point"]), vector(given["axis_dir"]), carried)

    def _length(self, ends: tuple[str, str]) -> float:
        return distance(self.drawn[ends[0]], self.drawn[ends[1]])
