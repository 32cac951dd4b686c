"""A case file turned into one sketch of the whole front axle."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from .bodies import rigid_body
from .demand import Demand, Pair, Road
from .drives import INNER, SIDES, drive
from .sketch import Constraint, Distance, Places
from .space import distance, dot, minus, vector
from .suspensions import Suspension, suspension
from .wheels import Wheel, wheel

Case = Mapping[str, Any]


@dataclass(frozen=True)
class Corner:
    """One corner of the axle."""

    side: str
    wheel: Wheel
    suspension: Suspension
    outer: str
    """The outer tie-rod ball."""
    knuckle: tuple[Constraint, ...]
    """What holds the knuckle's points together."""

    def constraints(self, demand: Demand, index: int) -> Iterator[Constraint]:
        """Everything at this corner; ``index`` is its place in the demand's pairs."""
        yield from self.knuckle
        yield from self.suspension.constraints(demand)
        yield from self.wheel.constraints(demand)
        if self.suspension.travels:
            yield self.wheel.stands(demand, demand.heights[index])
        if demand.toe_held:
            yield self.wheel.points_to(demand, demand.rods[index])
        else:
            yield Distance(INNER[self.side], self.outer, demand.rods[index])


def mirrored(value: Any) -> Any:
    """A left corner's data with every point and direction mirrored in the car's centre plane."""
    if isinstance(value, dict):
        return {key: mirrored(item) for key, item in value.items()}
    if isinstance(value, list) and value and isinstance(value[0], list):
        return [mirrored(item) for item in value]
    return [value[0], -value[1], value[2]] if isinstance(value, list) else value


class Linkage:
    """The front axle of one case: points as drawn, and the constraints of any demand."""

    def __init__(self, case: Case) -> None:
        self.case = case
        self.turns = case["drive"]["kind"] != "Slider"
        self.places: Places = {}
        self._drive = drive(self.places, case["drive"])
        self.links_given = self._drive.links[1]
        self.drawn = Demand(
            input=0.0,
            heights=(0.0, 0.0),
            on_road=False,
            rods=(0.0, 0.0),
            toe_held=True,
            links=self._drive.links[0],
            arms=0.0,
            pitch=math.radians(float(case.get("pitch", 0.0))),
            roll=math.radians(float(case.get("roll", 0.0))),
        )
        left = case["suspension"]["left"]
        data = {"left": left, "right": case["suspension"].get("right") or mirrored(left)}
        self.corners = [self._corner(side, data[side]) for side in SIDES]
        self.fixed = self._drive.fixed.union(*(corner.suspension.fixed for corner in self.corners))
        self.travels = all(corner.suspension.travels for corner in self.corners)

    def input(self, shown: float) -> float:
        """An input as files give it (degrees, or mm of a slider) in the demand's unit."""
        return math.radians(shown) if self.turns else shown

    def constraints(self, demand: Demand) -> list[Constraint]:
        """Every constraint of the axle for a demand."""
        found = list(self._drive.constraints(demand))
        for index, corner in enumerate(self.corners):
            found += corner.constraints(demand, index)
        return found

    def rod_lengths(self, places: Places) -> Pair:
        """Distances between inner and outer balls."""
        left, right = (distance(places[INNER[corner.side]], places[corner.outer]) for corner in self.corners)
        return (left, right)

    def steer(self, places: Places, demand: Demand) -> Pair:
        """Steer angles of both wheels, rad, positive to the left."""
        road = Road.under(demand)
        ways = [minus(places[corner.wheel.hub], places[corner.wheel.centre]) for corner in self.corners]
        left, right = (math.atan2(dot(way, road.left), dot(way, road.forward)) for way in ways)
        return (left, right)

    def _corner(self, side: str, data: Mapping[str, Any]) -> Corner:
        carried = suspension(self.places, side, self.case["suspension"]["kind"], data)
        on_knuckle = wheel(self.places, side, data, float(self.case["ride_height"]), self.drawn)
        outer = f"{side} outer"
        self.places[outer] = vector(data["steering_arm"])
        names = [*carried.body, on_knuckle.centre, on_knuckle.spin, outer]
        knuckle = tuple(rigid_body(self.places, names, carried.fixed))
        return Corner(side, on_knuckle, carried, outer, knuckle)
