"""What is read off a closed sketch, held against the rows of a table.

Signs and definitions as in the README of the folder above; the figures are read off points of the sketch.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from .continuation import OutOfReach, Pose
from .demand import Pair, Road
from .drives import INNER
from .linkage import Case, Corner, Linkage
from .poses import Sweep, drawn_pose, posed_rows, reaches, static_pose, sweeps, with_rod_lengths
from .space import Vector, distance, dot, minus, scaled, unit

BRACKET = 1e-4
"""How far on either side of a turning point the sketch must close, and must not: deg, or mm for lengths."""

Figures = dict[str, float | Vector]
"""Figures by their key in a table; mm and degrees."""


@dataclass
class Report:
    """What came of one case."""

    tolerance: float
    """Largest difference let through, mm and degrees."""
    poses: int = 0
    figures: int = 0
    millimetres: float = 0.0
    """Largest difference of a length or position."""
    degrees: float = 0.0
    """Largest difference of an angle."""
    turning_points: int = 0
    troubles: list[str] = field(default_factory=list)


def figures(corner: Corner, pose: Pose) -> Figures:
    """Every figure of a corner that follows from the points of the sketch alone."""
    road, places, wheel = Road.under(pose.demand), pose.places, corner.wheel
    centre, inner, outer = places[wheel.centre], places[INNER[corner.side]], places[corner.outer]
    ahead = minus(places[wheel.hub], centre)
    outboard = scaled(unit(minus(places[wheel.spin], centre)), wheel.sign)
    low, high = (places[name] for name in corner.suspension.axis)
    up, rod = minus(high, low), minus(outer, inner)
    steer = math.atan2(dot(ahead, road.left), dot(ahead, road.forward))
    angles = {
        "steer": steer,
        "toe": -wheel.sign * steer,
        "camber": -math.asin(dot(outboard, road.normal)),
        "caster": math.atan2(-dot(up, road.forward), dot(up, road.normal)),
        "kpi": math.atan2(-wheel.sign * dot(up, road.left), dot(up, road.normal)),
        "rod_top": math.atan2(rod[0], wheel.sign * rod[1]),
        "rod_front": math.atan2(rod[2], wheel.sign * rod[1]),
    }
    found: Figures = {key: math.degrees(angle) for key, angle in angles.items()}
    found |= {"wheel_centre": centre, "contact": places[wheel.contact], "outer_ball": outer}
    found |= {"rod_length": distance(inner, outer), "travel": centre[2] - wheel.drawn_centre[2]}
    return found


LENGTHS = frozenset(("wheel_centre", "contact", "outer_ball", "rod_length", "travel"))
"""Figures in mm; all others are angles."""


def compare_row(report: Report, linkage: Linkage, pose: Pose, row: Mapping[str, Any], at: str) -> None:
    """Holds both corners of a row against a pose."""
    report.poses += 1
    for corner in linkage.corners:
        kept = row[corner.side]
        for key, found in figures(corner, pose).items():
            if key not in kept:
                continue
            if isinstance(found, tuple):
                difference = distance(found, kept[key])
            else:
                difference = abs(found - kept[key])
            report.figures += 1
            if key in LENGTHS:
                report.millimetres = max(report.millimetres, difference)
            else:
                report.degrees = max(report.degrees, difference)
            if not difference <= report.tolerance:
                report.troubles.append(f"{at}, {corner.side} {key}: table {kept[key]}, constraints {found}")


def compare_case(case: Case, expected: Mapping[str, Any], tolerance: float) -> Report:
    """Holds every row, lock and error of a table against the sketch; ``tolerance`` in mm and degrees."""
    report, linkage = Report(tolerance), Linkage(case)
    if "error" in expected:
        _compare_error(report, linkage, expected["error"][0])
        return report
    static = static_pose(linkage)
    compare_row(report, linkage, static, expected["static"], "static")
    for sweep in sweeps(linkage, static, expected):
        for row, pose in posed_rows(linkage, sweep):
            compare_row(report, linkage, pose, row, f"{sweep.name} at {row[sweep.key]}")
        for lock in expected.get("lock", []):
            if lock["sweep"] == sweep.name:
                _compare_lock(report, linkage, sweep, lock)
    return report


def _compare_lock(report: Report, linkage: Linkage, sweep: Sweep, lock: Mapping[str, Any]) -> None:
    """Just inside a lock the sketch closes, just outside it does not."""
    value = float(lock[sweep.lock_key]) - sweep.lock_offset
    beyond = BRACKET if lock["direction"] == "positive" else -BRACKET
    closes = [reaches(linkage, sweep.start, sweep.change(value + step)) for step in (-beyond, beyond)]
    _bracket(report, closes, f"{sweep.name}, {lock['direction']} lock at {value}")


def _compare_error(report: Report, linkage: Linkage, error: Mapping[str, Any]) -> None:
    """A rod that does not reach: the sketch closes up to the length within reach, not at the length given."""
    if error["member"] != "tie rod":
        raise ValueError(f"a {error['member']} that does not reach is not known here")
    rods, start = linkage.case["rods"], drawn_pose(linkage)
    reach, sign = (error["reach_max"], 1.0) if "reach_max" in error else (error["reach_min"], -1.0)

    def closes(length: float) -> bool:
        lengths: Pair = (length, rods["right"]) if error["side"] == "left" else (rods["left"], length)
        try:
            with_rod_lengths(linkage, start, lengths)
        except OutOfReach:
            return False
        return True

    outcome = [closes(float(reach) + sign * step) for step in (-BRACKET, BRACKET)]
    _bracket(report, outcome, f"{error['side']} tie rod, nearest length {reach}")


def _bracket(report: Report, closes: list[bool], what: str) -> None:
    report.turning_points += 1
    if closes != [True, False]:
        report.troubles.append(f"{what}: closes {BRACKET} inside: {closes[0]}; {BRACKET} beyond: {closes[1]}")


def lines(report: Report) -> Iterator[str]:
    """What a report says, the first line in short."""
    text = f"{report.poses} poses, {report.figures} figures, largest difference"
    text += f" {report.millimetres:.1e} mm, {report.degrees:.1e} deg"
    if report.turning_points:
        text += f"; {report.turning_points} turning points bracketed to {BRACKET:g}"
    yield text
    yield from (f"    {trouble}" for trouble in report.troubles[:20])
