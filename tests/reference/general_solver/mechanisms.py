"""The joints of every suspension kind and steering drive."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from .bodies import BodyPoint, Point, PointBetween, Poses
from .constraints import (
    ArmBall,
    Constraint,
    KeepsPlace,
    Link,
    PointOnLine,
    Setting,
    TurnedBy,
    UnitQuaternion,
    hinge,
    sleeve,
)
from .vectors import Array, Real, dot, norm, unit, vector

Case = Mapping[str, Any]
SIDES = ("left", "right")


@dataclass(frozen=True)
class SteeringAxis:
    """The steering axis of a corner: the line from a lower to an upper point."""

    lower: Point
    upper: Point

    def at(self, poses: Poses) -> tuple[Array, Array]:
        """A point of the axis and its unit direction pointing up, each of shape (3, columns)."""
        low, high = self.lower.at(poses), self.upper.at(poses)
        return low, unit(high - low)


@dataclass(frozen=True)
class TurningAxis:
    """The chassis axis about which the body with the inner rod ball turns."""

    point: Real
    direction: Real


@dataclass(frozen=True)
class Drive:
    """What a steering drive offers to the corners, left then right."""

    inner_balls: Sequence[Point]
    inner_axes: Sequence[TurningAxis | None]
    """Chassis axes the inner balls turn about; ``None`` where they do not turn about one."""
    link_lengths: dict[Setting, float]
    """Lengths of the drive's own links in the reference pose, mm."""


@dataclass
class Builder:
    """Hands out body numbers and collects joints; ``length`` is a length typical of the car, mm."""

    length: float
    bodies: int = 0
    joints: list[Constraint] = field(default_factory=list)

    def body(self) -> int:
        self.joints.append(UnitQuaternion(self.bodies, self.length))
        self.bodies += 1
        return self.bodies - 1


def _swinging_arm(builder: Builder, data: Mapping[str, Any], which: str, knuckle: int) -> BodyPoint:
    """The ``upper`` or ``lower`` arm, swinging about the line through two chassis points; its ball on the knuckle."""
    first, second = (vector(point) for point in data[f"{which}_hinge"])
    drawn = vector(data[f"kingpin_{which}"])
    on_knuckle, arm = BodyPoint(knuckle, drawn), builder.body()
    builder.joints += hinge(arm, first, second - first, builder.length)
    builder.joints.append(ArmBall(on_knuckle, arm, drawn, vector(data.get(f"{which}_ball") or drawn)))
    return on_knuckle


def suspension_joints(builder: Builder, kind: str, data: Mapping[str, Any], knuckle: int) -> SteeringAxis:
    """The joints between chassis, arms and knuckle for one kind; returns the steering axis."""
    lower, upper = vector(data["kingpin_lower"]), vector(data["kingpin_upper"])
    line = upper - lower
    if kind in ("FixedKingpin", "SlidingKingpin"):
        bearing = hinge if kind == "FixedKingpin" else sleeve
        builder.joints += bearing(knuckle, lower, line, builder.length)
        return SteeringAxis(BodyPoint(None, lower), BodyPoint(None, upper))
    if kind == "SwingingUpperArm":
        on_knuckle, on_chassis = _swinging_arm(builder, data, "upper", knuckle), BodyPoint(None, lower)
        builder.joints.append(PointOnLine(on_chassis, on_knuckle, knuckle, line))
        return SteeringAxis(on_chassis, on_knuckle)
    low_ball = _swinging_arm(builder, data, "lower", knuckle)
    if kind == "DoubleWishbone":
        return SteeringAxis(low_ball, _swinging_arm(builder, data, "upper", knuckle))
    if kind == "Strut":
        slide = data.get("slide_dir")
        direction = line if slide is None else vector(slide)
        mount = BodyPoint(None, upper)
        builder.joints.append(PointOnLine(mount, BodyPoint(knuckle, upper), knuckle, direction))
        return SteeringAxis(low_ball, mount)
    raise ValueError(f"suspension kind {kind!r} is not known")


def drive_joints(builder: Builder, drive: Case) -> Drive:
    """The bodies and joints of the steering drive; its input is ``Setting.INPUT``."""
    inner = [vector(drive["rod_inner"][side]) for side in SIDES]
    kind = drive["kind"]
    if kind == "SwingArm":
        arm = builder.body()
        axis = TurningAxis(vector(drive["axis_point"]), unit(vector(drive["axis_dir"])))
        builder.joints += hinge(arm, axis.point, axis.direction, builder.length)
        builder.joints.append(TurnedBy(arm, axis.direction, Setting.INPUT, builder.length))
        return Drive([BodyPoint(arm, point) for point in inner], [axis, axis], {})
    if kind == "Slider":
        rack, direction = builder.body(), unit(vector(drive["direction"]))
        on_rack, start = BodyPoint(rack, inner[0]), inner[0]
        builder.joints += sleeve(rack, start, direction, builder.length)
        builder.joints.append(KeepsPlace(on_rack, start, direction, Setting.INPUT))
        builder.joints.append(TurnedBy(rack, direction, None, builder.length))
        return Drive([BodyPoint(rack, point) for point in inner], [None, None], {})
    if kind == "TwinCrank":
        return _twin_crank(builder, drive, inner)
    raise ValueError(f"drive kind {kind!r} is not known")


def _twin_crank(builder: Builder, drive: Case, inner: list[Real]) -> Drive:
    """Two cranks tied by a cross link; one is turned by a drag link from a servo arm."""
    axes, cranks = [], []
    for name in ("crank_left", "crank_right", "servo"):
        axis = TurningAxis(vector(drive[name]["axis_point"]), unit(vector(drive[name]["axis_dir"])))
        body = builder.body()
        builder.joints += hinge(body, axis.point, axis.direction, builder.length)
        axes.append(axis)
        cranks.append(body)
    servo = cranks[2]
    builder.joints.append(TurnedBy(servo, axes[2].direction, Setting.INPUT, builder.length))
    driven = cranks[SIDES.index(drive["driven"])]
    ends = [BodyPoint(cranks[i], vector(drive[f"cross_{side}"])) for i, side in enumerate(SIDES)]
    drag = [BodyPoint(servo, vector(drive["drag_servo"])), BodyPoint(driven, vector(drive["drag_crank"]))]
    builder.joints.append(Link(ends[0], ends[1], Setting.CROSS_LINK))
    builder.joints.append(Link(drag[0], drag[1], Setting.DRAG_LINK))
    base = {
        Setting.CROSS_LINK: float(norm(ends[1].local - ends[0].local)),
        Setting.DRAG_LINK: float(norm(drag[1].local - drag[0].local)),
    }
    if drive.get("inner_on", "crank") == "crank":
        return Drive([BodyPoint(cranks[i], inner[i]) for i in range(2)], [axes[0], axes[1]], base)
    line = ends[1].local - ends[0].local
    shares = [float(dot(point - ends[0].local, line) / dot(line, line)) for point in inner]
    off_line = [float(norm(point - ends[0].local - share * line)) for point, share in zip(inner, shares)]
    if max(off_line) > 1e-9:
        raise ValueError("an inner ball on the cross link must lie on the line between its two joints")
    return Drive([PointBetween(ends[0], ends[1], share) for share in shares], [None, None], base)
