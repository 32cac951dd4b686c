"""What carries a knuckle: points and constraints of every suspension kind."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from .bodies import Hinge, on_chassis_line
from .demand import Demand
from .sketch import Constraint, OnLine, Places
from .space import Vector, distance, minus, plus, vector

Data = Mapping[str, Any]
"""One corner of a case file."""


@dataclass(frozen=True)
class Arm:
    """An arm that swings about a hinge and carries a point of the knuckle."""

    hinge: Hinge
    ends: tuple[Vector, Vector]
    point: str
    drawn: Vector
    """The knuckle's point as drawn."""
    ball: Vector
    """The arm's ball as drawn: elsewhere than ``drawn`` where the arm has been made longer or shorter."""

    def holds(self, demand: Demand) -> Iterator[Constraint]:
        """The point keeps the ball's distances from the hinge."""
        ball = plus(self.drawn, minus(self.ball, self.drawn), demand.arms)
        yield from self.hinge.holds(self.point, *(distance(ball, end) for end in self.ends))


@dataclass
class Suspension:
    """One corner's suspension."""

    body: list[str]
    """Points of the knuckle that the suspension takes hold of."""
    axis: tuple[str, str]
    """Lower and upper point of the steering axis."""
    travels: bool = True
    fixed: frozenset[str] = frozenset()
    arms: list[Arm] = field(default_factory=list)
    joints: list[Constraint] = field(default_factory=list)

    def constraints(self, demand: Demand) -> Iterator[Constraint]:
        """Everything between chassis and knuckle."""
        yield from self.joints
        for arm in self.arms:
            yield from arm.holds(demand)


def suspension(places: Places, side: str, kind: str, data: Data) -> Suspension:
    """The suspension of one corner; its points are added to ``places`` as drawn."""
    lower, upper = f"{side} lower", f"{side} upper"
    places[lower], places[upper] = vector(data["kingpin_lower"]), vector(data["kingpin_upper"])
    made = Suspension([lower, upper], (lower, upper))
    along = minus(places[upper], places[lower])
    if kind == "FixedKingpin":
        made.travels = False
        made.fixed = frozenset((lower, upper))
    elif kind == "SlidingKingpin":
        for point in (lower, upper):
            made.joints += on_chassis_line(point, places[lower], along)
    elif kind == "SwingingUpperArm":
        guide = f"{side} guide"
        places[guide] = places[lower]
        made.fixed = frozenset((guide,))
        made.axis = (guide, upper)
        made.joints.append(OnLine(guide, lower, upper))
        _add_arm(made, places, side, data, "upper")
    elif kind == "DoubleWishbone":
        _add_arm(made, places, side, data, "lower")
        _add_arm(made, places, side, data, "upper")
    elif kind == "Strut":
        mount, slide = f"{side} mount", f"{side} slide"
        places[mount] = places[upper]
        way = along if data.get("slide_dir") is None else vector(data["slide_dir"])
        places[slide] = plus(places[upper], way, -distance(places[lower], places[upper]) / distance(way, (0, 0, 0)))
        made.body.append(slide)
        made.fixed = frozenset((mount,))
        made.axis = (lower, mount)
        made.joints.append(OnLine(mount, upper, slide))
        _add_arm(made, places, side, data, "lower")
    else:
        raise ValueError(f"suspension kind {kind!r} is not known")
    return made


def _add_arm(made: Suspension, places: Places, side: str, data: Data, which: str) -> None:
    """Adds the lower or the upper arm."""
    first, second = (vector(point) for point in data[f"{which}_hinge"])
    hinge = Hinge(f"{side} {which} hinge front", f"{side} {which} hinge rear")
    places[hinge.first], places[hinge.second] = first, second
    made.fixed |= {hinge.first, hinge.second}
    drawn = vector(data[f"kingpin_{which}"])
    ball = vector(data.get(f"{which}_ball") or drawn)
    made.arms.append(Arm(hinge, (first, second), f"{side} {which}", drawn, ball))
