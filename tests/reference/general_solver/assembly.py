"""The axle put together at input 0 and travel 0, or let down on the road."""

from __future__ import annotations

import numpy as np

from .axle import ROD, STEER, TRAVEL, Axle, Height, Steering
from .constraints import Setting
from .continuation import BranchTurnsBack, NotClosed, Pose, System
from .figures import Row, View
from .mechanisms import SIDES
from .vectors import Real, dot

ON_ROAD = 1e-6
"""Height above the road, mm, from which the road's own equations take over."""


class CannotAssemble(Exception):
    """A member does not reach at input 0 and travel 0; ``report`` is the row that says which and by how much."""

    def __init__(self, report: Row) -> None:
        super().__init__(f"{report['side'] or ''} {report['member']} cannot reach".strip())
        self.report = report


def steer_angles(axle: Axle, pose: Pose) -> Real:
    """Steer angles of the left and the right wheel, rad."""
    view = View(axle, pose.state, pose.settings)
    return np.array([float(view.steer(corner)) for corner in axle.corners])


def static_pose(axle: Axle) -> Pose:
    """Input 0, travel 0, rods as the case wants them; raises ``CannotAssemble``.

    The drive's own links and the arms are brought to length first, the wheels keeping their direction; then the wheels
    are turned to the toe held, which gives the rod lengths, or the rods are brought to length one after the other.
    """
    pose = _with_arms(axle, _with_drive_links(axle))
    rods = axle.case["rods"]
    if rods["kind"] == "HoldToe":
        target = pose.settings.copy()
        for index, corner in enumerate(axle.corners):
            target[STEER[index]] = -corner.side * np.radians(float(rods["angle"]))
        return _measured(axle, axle.system(Height.TRAVEL, Steering.ANGLES).follow(pose, target))
    if rods["kind"] == "FixedLength":
        system = axle.system(Height.TRAVEL, Steering.RODS)
        for index, side in enumerate(SIDES):
            pose = _with_length(axle, system, pose, ROD[index], float(rods[side]), "tie rod")
        return pose
    raise ValueError(f"rods {rods['kind']!r} are not known")


def pose_on_road(axle: Axle, static: Pose) -> Pose:
    """The static pose moved along its travel until both contact centres lie on the road plane."""
    system = axle.system(Height.TRAVEL, Steering.RODS)
    pose = static
    for _ in range(20):
        view = View(axle, pose.state, pose.settings)
        gaps = [float(dot(view.contact(c) - view.road.point, view.road.normal)) for c in axle.corners]
        if max(map(abs, gaps)) < ON_ROAD:
            break
        target = pose.settings.copy()
        target[list(TRAVEL)] -= gaps
        pose = system.follow(pose, target)
    else:
        raise NotClosed("the tyres could not be brought onto the road plane")
    return Pose(axle.system(Height.ROAD, Steering.RODS).correct(pose.state, pose.settings), pose.settings)


def _with_drive_links(axle: Axle) -> Pose:
    """The reference pose with the drive's own links brought to the lengths given, and the rods measured."""
    pose, system = axle.reference, axle.system(Height.TRAVEL, Steering.ANGLES)
    for name, setting, member in (
        ("cross_length", Setting.CROSS_LINK, "cross link"),
        ("drag_length", Setting.DRAG_LINK, "drag link"),
    ):
        length = axle.case["drive"].get(name)
        if length is not None:
            pose = _with_length(axle, system, pose, setting, float(length), member)
    return _measured(axle, pose)


def _with_arms(axle: Axle, pose: Pose) -> Pose:
    """The pose with arms that are longer or shorter than drawn brought to their length, and the rods measured."""
    if not axle.has_set_arms:
        return pose
    target = pose.settings.copy()
    target[Setting.ARMS] = 1.0
    return _measured(axle, axle.system(Height.TRAVEL, Steering.ANGLES).follow(pose, target))


def _measured(axle: Axle, pose: Pose) -> Pose:
    """The pose with the rod lengths that hold in it among its settings."""
    settings = pose.settings.copy()
    for index in range(2):
        settings[ROD[index]] = axle.rod_length(index, pose.state)
    return Pose(pose.state, settings)


def _with_length(axle: Axle, system: System, pose: Pose, setting: Setting, length: float, member: str) -> Pose:
    """One link brought to a length; raises ``CannotAssemble`` with the nearest length that can be reached."""
    target = pose.settings.copy()
    target[setting] = length
    try:
        return system.follow(pose, target)
    except BranchTurnsBack as failure:
        reach = float(failure.pose.settings[setting])
        report: Row = {
            "member": member,
            "side": None,
            "joint": "crank ball",
            "input": 0.0,
            "travel": 0.0,
            "length": length,
            "reach_min" if length < reach else "reach_max": reach,
            "shortfall": abs(reach - length),
        }
        if setting in ROD:
            index = ROD.index(setting)
            angle = float(np.degrees(steer_angles(axle, failure.pose)[index]))
            report |= {"side": SIDES[index], "joint": "outer ball (steering_arm)", "steer_at_reach": angle}
        raise CannotAssemble(report) from failure
