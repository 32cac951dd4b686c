"""The poses that the rows of a table belong to, each followed from the axle as drawn."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from .continuation import OutOfReach, Pose, follow
from .demand import Demand, Pair, Road
from .linkage import Linkage
from .space import dot, plus

Row = Mapping[str, Any]
Change = Callable[[float], Demand]
"""The demand at a value of what is swept."""


def drawn_pose(linkage: Linkage) -> Pose:
    """The axle as drawn: wheels held where they point, links and arms as drawn."""
    demand = replace(linkage.drawn, rods=linkage.steer(linkage.places, linkage.drawn))
    return follow(linkage, Pose(linkage.places, demand), demand)


def with_rods(linkage: Linkage, pose: Pose) -> Pose:
    """The same pose, held by rods of the lengths they have in it."""
    return Pose(pose.places, replace(pose.demand, rods=linkage.rod_lengths(pose.places), toe_held=False))


def static_pose(linkage: Linkage) -> Pose:
    """Input 0, travel 0, rods as the case wants them; raises ``OutOfReach``.

    Links and arms come to their lengths first, the wheels held where they point; then the toe or the rods.
    """
    drawn = drawn_pose(linkage)
    pose = follow(linkage, drawn, replace(drawn.demand, links=linkage.links_given, arms=1.0))
    rods = linkage.case["rods"]
    if rods["kind"] == "HoldToe":
        toe = math.radians(float(rods["angle"]))
        return with_rods(linkage, follow(linkage, pose, replace(pose.demand, rods=(-toe, toe))))
    return with_rod_lengths(linkage, pose, (float(rods["left"]), float(rods["right"])))


def with_rod_lengths(linkage: Linkage, pose: Pose, lengths: Pair) -> Pose:
    """The pose with rods brought to given lengths, the left one first; raises ``OutOfReach``."""
    pose = with_rods(linkage, pose)
    pose = follow(linkage, pose, replace(pose.demand, rods=(lengths[0], pose.demand.rods[1])))
    return follow(linkage, pose, replace(pose.demand, rods=lengths))


def on_road(linkage: Linkage, static: Pose) -> Pose:
    """The static pose let down, or lifted, until both contact centres lie on the road."""
    normal = Road.under(static.demand).normal

    def height(index: int) -> float:
        wheel = linkage.corners[index].wheel
        return dot(plus(static.places[wheel.contact], (0.0, 0.0, wheel.ride_height)), normal)

    start = replace(static.demand, on_road=True, heights=(height(0), height(1)))
    return follow(linkage, Pose(static.places, start), replace(start, heights=(0.0, 0.0)))


@dataclass(frozen=True)
class Sweep:
    """One sweep of a table: its rows by value, where it starts, and the demand at a value."""

    name: str
    start: Pose
    change: Change
    key: str
    """Key of the value in a row."""
    rows: list[Row]
    lock_key: str
    """Key of the value in a lock."""
    lock_offset: float = 0.0
    """What a lock's value has more than a row's."""


def sweeps(linkage: Linkage, static: Pose, expected: Mapping[str, Any]) -> Iterator[Sweep]:
    """The sweeps that a table has."""

    def steered(start: Pose) -> Change:
        return lambda value: replace(start.demand, input=linkage.input(value))

    def bumped(start: Pose) -> Change:
        return lambda value: replace(start.demand, heights=(value, value))

    def rolled(start: Pose) -> Change:
        return lambda value: replace(start.demand, roll=static.demand.roll + math.radians(value))

    for name in ("steer_sweep", "bump_sweep", "bump_sweep_at_input"):
        rows = expected.get(name)
        if not rows:
            continue
        if name == "steer_sweep":
            yield Sweep(name, static, steered(static), "input", rows, "input")
            continue
        start = follow(linkage, static, steered(static)(float(rows[0]["input"])))
        yield Sweep(name, start, bumped(start), "travel", rows, "travel")
    level = on_road(linkage, static) if "steer_sweep_on_road" in expected else static
    if rows := expected.get("steer_sweep_on_road"):
        yield Sweep("steer_sweep_on_road", level, steered(level), "input", rows, "input")
    if rows := expected.get("roll_sweep"):
        offset = math.degrees(static.demand.roll)
        yield Sweep("roll_sweep", level, rolled(level), "roll_added", rows, "roll", offset)


def posed_rows(linkage: Linkage, sweep: Sweep) -> Iterator[tuple[Row, Pose]]:
    """Every row with its pose; each direction is followed outwards from the sweep's start, at value 0."""
    for rows in (
        [row for row in reversed(sweep.rows) if row[sweep.key] < 0.0],
        [row for row in sweep.rows if row[sweep.key] >= 0.0],
    ):
        pose = sweep.start
        for row in rows:
            pose = follow(linkage, pose, sweep.change(float(row[sweep.key])))
            yield row, pose


def reaches(linkage: Linkage, start: Pose, goal: Demand) -> bool:
    """Whether the axle can be led to a demand."""
    try:
        follow(linkage, start, goal)
    except OutOfReach:
        return False
    return True
