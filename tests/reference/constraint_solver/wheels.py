"""A wheel on its knuckle, and its contact centre, as points.

The contact centre is a point of the sketch like any other: with ``hub`` at wheel radius level with the wheel centre
across the spin axis, ``contact`` lies at wheel radius across both.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from .demand import Demand, Road
from .sketch import AcrossDirection, Constraint, Distance, InPlane, Perpendicular, Places
from .space import Vector, cross, plus, scaled, unit, vector


@dataclass(frozen=True)
class Wheel:
    """One wheel, with the names of its points."""

    sign: int
    """+1 left, -1 right."""
    radius: float
    centre: str
    spin: str
    """Point of the spin axis at wheel radius towards the car's left."""
    hub: str
    """Point of the wheel circle ahead of the centre."""
    contact: str
    drawn_centre: Vector
    ride_height: float

    def constraints(self, demand: Demand) -> Iterator[Constraint]:
        """Where hub and contact centre lie in the wheel."""
        road = Road.under(demand)
        yield Distance(self.hub, self.centre, self.radius)
        yield Perpendicular((self.centre, self.hub), (self.centre, self.spin))
        yield AcrossDirection((self.centre, self.hub), road.normal)
        yield Distance(self.contact, self.centre, self.radius)
        yield Perpendicular((self.centre, self.contact), (self.centre, self.spin))
        yield Perpendicular((self.centre, self.contact), (self.centre, self.hub))

    def stands(self, demand: Demand, height: float) -> Constraint:
        """The wheel centre at a travel, or the contact centre at a height over the road."""
        if demand.on_road:
            return InPlane(self.contact, (0.0, 0.0, -self.ride_height), Road.under(demand).normal, height)
        return InPlane(self.centre, self.drawn_centre, (0.0, 0.0, 1.0), height)

    def points_to(self, demand: Demand, steer: float) -> Constraint:
        """The wheel at a steer angle, rad."""
        return AcrossDirection((self.centre, self.spin), Road.under(demand).heading(steer))


def wheel(places: Places, side: str, data: Mapping[str, Any], ride_height: float, demand: Demand) -> Wheel:
    """One wheel; its points are added to ``places`` as drawn, on the road of a demand."""
    sign = 1 if side == "left" else -1
    centre, radius = vector(data["wheel_centre"]), float(data["tyre_radius"])
    given = data.get("spin_axis")
    if given is None:
        camber = math.radians(float(data["camber"]))
        leftward = (0.0, math.cos(camber), -sign * math.sin(camber))
    else:
        leftward = scaled(unit(vector(given)), sign)
    made = Wheel(sign, radius, f"{side} centre", f"{side} spin", f"{side} hub", f"{side} contact", centre, ride_height)
    ahead = unit(cross(leftward, Road.under(demand).normal))
    places[made.centre] = centre
    places[made.spin] = plus(centre, leftward, radius)
    places[made.hub] = plus(centre, ahead, radius)
    places[made.contact] = plus(centre, cross(leftward, ahead), radius)
    return made
