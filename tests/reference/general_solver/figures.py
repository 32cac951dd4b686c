"""What is read off a solved axle.

Signs, stated once for the whole folder. Chassis axes: x forward, y to the left, z up; mm. All wheel angles are
taken against the road, in degrees. With n the road normal (up), h the direction in which a wheel rolls and
side = +1 on the left, -1 on the right:

* steer: angle of h from straight ahead about n, positive to the left; toe = -side * steer, toe-in positive;
* camber: positive when the wheel's top leans outboard;
* caster: positive when the steering axis leans back at the top; kpi: positive when it leans inboard;
* scrub: from the steering axis' ground point to the contact centre, outboard positive, the ground plane being
  parallel to the road through this wheel's own contact centre;
* trail: from the contact centre to that ground point, forward positive; ``scrub_rh`` and ``trail_rh`` are the same
  with the static road plane instead;
* axis_offset, castor_offset: the same two distances at wheel-centre height.

Every figure is analytic in the state and the settings, so its derivative follows from a complex step.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from .axle import Axle, Corner
from .bodies import Poses
from .constraints import Road, Setting
from .continuation import COMPLEX_STEP, Pose, System
from .vectors import Array, arctan2, cross, dot, norm, unit

Row = dict[str, Any]
"""Row by name, ready for JSON once rounded."""

STRAIGHT = 1e-10
"""Steer angle, rad, below which a wheel counts as pointing straight ahead and has no turn centre."""


def degrees(angle: Any) -> Any:
    """Radians to degrees for real or complex numbers."""
    return angle * (180.0 / np.pi)


class View:
    """An axle in one state under one road, with one column squeezed out of every vector."""

    def __init__(self, axle: Axle, state: Array, settings: Array) -> None:
        self.axle = axle
        self.settings = settings
        self.poses = Poses(state[:, None])
        self.road: Road = axle.road(settings)

    def heading(self, corner: Corner) -> Array:
        """Unit vector along which the wheel rolls."""
        return corner.wheel.heading(self.poses, self.road)[:, 0]

    def steer(self, corner: Corner) -> Any:
        """Steer angle, rad."""
        heading = self.heading(corner)
        return arctan2(dot(heading, self.road.left), dot(heading, self.road.forward))

    def centre(self, corner: Corner) -> Array:
        """Wheel centre."""
        return corner.wheel.centre.at(self.poses)[:, 0]

    def contact(self, corner: Corner) -> Array:
        """Contact centre."""
        return corner.wheel.contact(self.poses, self.road)[:, 0]

    def axis(self, corner: Corner) -> tuple[Array, Array]:
        """A point of the steering axis and its unit direction pointing up."""
        point, direction = corner.axis.at(self.poses)
        return point[:, 0], direction[:, 0]

    def axis_meets(self, corner: Corner, plane_point: Array) -> Array:
        """Where the steering axis meets the plane parallel to the road through a point."""
        point, direction = self.axis(corner)
        normal = self.road.normal
        return point + direction * (dot(normal, plane_point - point) / dot(normal, direction))

    def ground_point(self, corner: Corner) -> Array:
        """Ground point in the plane through this wheel's contact centre."""
        return self.axis_meets(corner, self.contact(corner))

    def static_ground_point(self, corner: Corner) -> Array:
        """Ground point in the static road plane."""
        return self.axis_meets(corner, self.road.point)

    def balls(self, corner: Corner) -> tuple[Array, Array]:
        """Inner and outer ball centre of the tie rod."""
        return corner.inner_ball.at(self.poses)[:, 0], corner.outer_ball.at(self.poses)[:, 0]

    def offsets(self, corner: Corner, on_axis: Array, on_wheel: Array) -> tuple[Any, Any]:
        """Outboard distance from an axis point to a wheel point, and forward distance the other way."""
        heading = self.heading(corner)
        outboard = corner.side * cross(self.road.normal, heading)
        return dot(on_wheel - on_axis, outboard), dot(on_axis - on_wheel, heading)


def corner_angles(view: View, corner: Corner) -> Row:
    """Steer, toe, camber, caster and kingpin inclination, deg."""
    road, steer = view.road, view.steer(corner)
    outboard = corner.side * view.poses.direction(corner.wheel.body, corner.wheel.axis_left)[:, 0]
    sine = dot(outboard, road.normal)
    _, up = view.axis(corner)
    height = dot(up, road.normal)
    return {
        "steer": degrees(steer),
        "toe": degrees(-corner.side * steer),
        "camber": degrees(-arctan2(sine, np.sqrt(1.0 - sine * sine))),
        "caster": degrees(arctan2(-dot(up, road.forward), height)),
        "kpi": degrees(arctan2(-corner.side * dot(up, road.left), height)),
    }


def corner_places(view: View, corner: Corner) -> Row:
    """Contact centre, wheel centre, and the offsets of the steering axis from them."""
    contact, centre = view.contact(corner), view.centre(corner)
    scrub, trail = view.offsets(corner, view.ground_point(corner), contact)
    scrub_static, trail_static = view.offsets(corner, view.static_ground_point(corner), contact)
    axis_offset, castor_offset = view.offsets(corner, view.axis_meets(corner, centre), centre)
    return {
        "contact": contact,
        "wheel_centre": centre,
        "scrub": scrub,
        "trail": trail,
        "scrub_rh": scrub_static,
        "trail_rh": trail_static,
        "axis_offset": axis_offset,
        "castor_offset": castor_offset,
    }


def turn_centre(view: View, corner: Corner) -> dict[str, float | None]:
    """Where the wheel's axis meets the rear-axle line (y in road-levelled axes) and how far that is, mm."""
    steer = float(np.real(view.steer(corner)))
    if abs(steer) < STRAIGHT:
        return {"turn_y": None, "radius": None}
    contact = view.contact(corner)
    ahead = float(dot(contact, view.road.forward)) + view.axle.wheelbase - view.axle.station
    return {
        "turn_y": float(dot(contact, view.road.left)) + ahead / np.tan(steer),
        "radius": abs(ahead / np.sin(steer)),
    }


def angle_between(a: Array, b: Array) -> float:
    """Angle between two real vectors, deg, 0 to 180."""
    return float(degrees(np.arctan2(norm(cross(a, b)), dot(a, b))))


def lever(ball: Array, axis_point: Array, axis_direction: Array) -> Array:
    """Perpendicular from a turning axis to a ball."""
    offset = ball - axis_point
    return offset - dot(offset, axis_direction) * axis_direction


def outer_transmission(view: View, corner: Corner) -> dict[str, float]:
    """At the outer ball: angle between rod and lever, and effective share |cos| between rod and ball motion."""
    inner, outer = view.balls(corner)
    axis_point, axis_direction = view.axis(corner)
    arm = lever(outer, axis_point, axis_direction)
    return {
        "mu_outer": angle_between(arm, outer - inner),
        "sin_outer": abs(float(dot(unit(outer - inner), unit(cross(axis_direction, arm))))),
    }


def inner_transmission(view: View, corner: Corner, motion: Array) -> dict[str, float | None]:
    """The same two figures at the inner ball, whose velocity with the input is ``motion``."""
    inner, outer = view.balls(corner)
    angle = None
    if corner.inner_axis is not None:
        arm = lever(inner, corner.inner_axis.point, corner.inner_axis.direction)
        angle = angle_between(arm, inner - outer)
    return {"mu_inner": angle, "sin_inner": abs(float(dot(unit(outer - inner), unit(motion))))}


def rod_angles(view: View, corner: Corner) -> dict[str, float]:
    """Angles of the rod in top and front view, chassis axes, from the inner to the outer ball, deg."""
    inner, outer = view.balls(corner)
    x, y, z = outer - inner
    return {
        "rod_top": float(degrees(np.arctan2(x, corner.side * y))),
        "rod_front": float(degrees(np.arctan2(z, corner.side * y))),
    }


class Rate:
    """Derivatives of figures along a change of one or more settings, at a solved pose."""

    def __init__(self, axle: Axle, system: System, pose: Pose, change: Mapping[Setting, float]) -> None:
        self.settings_change = np.zeros_like(pose.settings)
        for setting, value in change.items():
            self.settings_change[setting] = value
        self.state_change = system.rate(pose, self.settings_change)
        self.view = View(
            axle,
            pose.state + 1j * COMPLEX_STEP * self.state_change,
            pose.settings + 1j * COMPLEX_STEP * self.settings_change,
        )

    @staticmethod
    def of(value: Any) -> Any:
        """The derivative carried by a figure that was read off ``view``."""
        return np.imag(value) / COMPLEX_STEP

    def figures(self, figures: Row) -> Row:
        """Derivative of every figure of a set."""
        return {name: self.of(value) for name, value in figures.items()}

    def inner_ball_motion(self, corner: Corner) -> Array:
        """Velocity of the inner ball along the change."""
        return self.of(self.view.balls(corner)[0])
