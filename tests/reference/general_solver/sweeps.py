"""Poses along a sweep, and the lock at which a sweep ends."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from .assembly import steer_angles
from .axle import Axle
from .constraints import Setting
from .continuation import BranchTurnsBack, Pose, System
from .figures import Row
from .mechanisms import SIDES
from .vectors import Real

STILL = 1e-6
"""Motion, relative to the fastest body, below which a body stands still at a turning point."""


def sweep(
    system: System, start: Pose, values: Sequence[float], change: Callable[[Real, float], None]
) -> tuple[list[tuple[float, Pose]], list[tuple[str, BranchTurnsBack]]]:
    """Poses at the values that can be reached, in ascending order, and the turning points met.

    ``change`` writes a value into a copy of the settings of ``start``, which belongs to value 0. Each direction is
    followed outwards from there and left where the branch turns back.
    """
    points: list[tuple[float, Pose]] = []
    locks: list[tuple[str, BranchTurnsBack]] = []
    for direction, side in (
        ("negative", [value for value in values if value < 0.0]),
        ("positive", [value for value in values if value >= 0.0]),
    ):
        pose = start
        for value in sorted(side, key=abs):
            target = start.settings.copy()
            change(target, value)
            try:
                pose = system.follow(pose, target)
            except BranchTurnsBack as lock:
                locks.append((direction, lock))
                break
            points.append((value, pose))
    return sorted(points, key=lambda point: point[0]), locks


def lock_row(axle: Axle, name: str, direction: str, lock: BranchTurnsBack) -> Row:
    """Where a sweep ends, and the member that ends it.

    At a turning point the bodies beyond the locking member still move while those before it stand still: a moving
    drive points to its own links, a moving knuckle alone to its tie rod.
    """
    settings = lock.pose.settings
    motion = np.abs(System.quaternion_part(lock.motion)).max(axis=1)
    moving = motion > STILL * motion.max()
    row: Row = {"sweep": name, "direction": direction, "input": axle.shown_input(settings[Setting.INPUT])}
    if name.startswith("bump"):
        row["travel"] = float(settings[Setting.TRAVEL_LEFT])
    if name == "roll_sweep":
        row["roll"] = float(np.degrees(settings[Setting.ROLL]))
    if moving[: axle.drive_bodies].any():
        driven = SIDES.index(axle.case["drive"]["driven"])
        return row | {"member": "drag link" if moving[driven] else "cross link", "side": None}
    index = 0 if moving[axle.corners[0].wheel.body] else 1
    steer = float(np.degrees(steer_angles(axle, lock.pose)[index]))
    return row | {"member": "tie rod", "side": SIDES[index], "steer": steer}
