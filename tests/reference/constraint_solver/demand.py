"""What is asked of the axle, and the road it stands on."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from .space import Vector, cross, dot, plus, scaled, unit

Pair = tuple[float, float]
"""A number for the left and one for the right."""


@dataclass(frozen=True)
class Demand:
    """One pose asked for. Angles in rad, lengths in mm; pairs are left, right."""

    input: float
    """Turn of the arm or servo arm, or displacement of the slider."""
    heights: Pair
    """Travel of the wheel centres, or height of the contact centres over the road."""
    on_road: bool
    """Which of the two ``heights`` are."""
    rods: Pair
    """Lengths of the tie rods, or steer angles of the wheels."""
    toe_held: bool
    """Whether ``rods`` are steer angles."""
    links: Pair
    """Lengths of cross link and drag link of a drive that has them."""
    arms: float
    """Share, 0 to 1, by which arms made longer or shorter than drawn have come to their length."""
    pitch: float
    """Of the chassis against the road, nose down positive."""
    roll: float
    """Of the chassis against the road, right side down positive."""

    def towards(self, goal: Demand, share: float) -> Demand:
        """The demand at a share of the way to another one of the same kind."""
        if (self.on_road, self.toe_held) != (goal.on_road, goal.toe_held):
            raise ValueError("demands of different kinds have nothing between them")

        def number(start: float, end: float) -> float:
            return start + share * (end - start)

        def pair(start: Pair, end: Pair) -> Pair:
            return (number(start[0], end[0]), number(start[1], end[1]))

        if share >= 1.0:
            return goal
        return replace(
            goal,
            input=number(self.input, goal.input),
            heights=pair(self.heights, goal.heights),
            rods=pair(self.rods, goal.rods),
            links=pair(self.links, goal.links),
            arms=number(self.arms, goal.arms),
            pitch=number(self.pitch, goal.pitch),
            roll=number(self.roll, goal.roll),
        )


@dataclass(frozen=True)
class Road:
    """The road seen from the chassis: unit vectors, chassis axes."""

    normal: Vector
    forward: Vector
    left: Vector

    @classmethod
    def under(cls, demand: Demand) -> Road:
        """The normal is that of a chassis rolled about its x axis, then pitched about the road's y axis."""
        sine, cosine = math.sin(demand.pitch), math.cos(demand.pitch)
        normal = (-sine, cosine * math.sin(demand.roll), cosine * math.cos(demand.roll))
        forward = unit(plus((1.0, 0.0, 0.0), normal, -dot((1.0, 0.0, 0.0), normal)))
        return cls(normal, forward, cross(normal, forward))

    def heading(self, steer: float) -> Vector:
        """Direction of a wheel steered by an angle, rad, positive to the left."""
        return plus(scaled(self.forward, math.cos(steer)), self.left, math.sin(steer))
