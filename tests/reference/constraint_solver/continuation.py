"""Following a closed sketch from one demand to another in small steps, so that it stays on its branch."""

from __future__ import annotations

from dataclasses import dataclass

from .demand import Demand
from .linkage import Linkage
from .sketch import NotClosed, Places, closed
from .space import distance

LARGEST_MOVE = 0.15
"""Largest movement of a point in one step, as a share of the wheel radius."""

SMALLEST_SHARE = 1e-3
"""Step, as a share of the way, below which the demand counts as out of reach."""


class OutOfReach(Exception):
    """The sketch cannot be closed all the way to a demand; ``reached`` is how far it got, as a share."""

    def __init__(self, reached: float) -> None:
        super().__init__(f"the sketch closes only up to {100.0 * reached:.1f} % of the way")
        self.reached = reached


@dataclass(frozen=True)
class Pose:
    """A closed sketch and the demand it answers."""

    places: Places
    demand: Demand


def follow(linkage: Linkage, start: Pose, goal: Demand) -> Pose:
    """The pose at a demand of the same kind as that of ``start``; raises ``OutOfReach``."""
    most = LARGEST_MOVE * min(corner.wheel.radius for corner in linkage.corners)
    pose, done, share = start, 0.0, 0.5
    while done < 1.0:
        following = min(1.0, done + share)
        demand = start.demand.towards(goal, following)
        moved = _closed_near(linkage, pose.places, demand, most)
        if moved is None:
            share *= 0.5
            if share < SMALLEST_SHARE:
                raise OutOfReach(done)
            continue
        pose, done, share = Pose(moved, demand), following, 1.6 * share
    return pose


def _closed_near(linkage: Linkage, places: Places, demand: Demand, most: float) -> Places | None:
    """The closed sketch if it is near the given places."""
    try:
        moved = closed(places, linkage.fixed, linkage.constraints(demand))
    except NotClosed:
        return None
    return moved if max(distance(places[name], moved[name]) for name in places) <= most else None
