"""Solving a set of constraints, differentiating the solution, and following one branch of solutions.

Derivatives come from complex steps of 1e-30, which lose no digits to cancellation. A branch is followed by a
tangent predictor and a corrector (scipy's hybrid method, then Newton steps until the residual no longer falls).
Where the branch turns back, the turning point is located by continuation in arc length.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from scipy import linalg, optimize

from .bodies import NUMBERS_PER_BODY, Poses
from .constraints import Constraint
from .vectors import Array, Real

COMPLEX_STEP = 1e-30
CLOSURE_TOLERANCE = 1e-9
"""Largest residual of an accepted pose, mm; Newton steps usually end below 1e-12."""

LARGEST_TURN = 0.04
"""Largest change of any quaternion number in one step along a branch (about 4.6 degrees of rotation)."""

SMALLEST_SHARE = 1e-4
"""Step, as a share of the way to the target, below which the branch is taken to turn back."""


@dataclass(frozen=True)
class Pose:
    """A solved state of all bodies with the settings it was solved for."""

    state: Real
    settings: Real


class NotClosed(Exception):
    """The corrector found no solution near its starting point."""


class BranchTurnsBack(Exception):
    """The settings asked for lie beyond a turning point of the branch.

    ``pose`` is the turning point itself; ``motion`` is the direction in which the state moves through it.
    """

    def __init__(self, pose: Pose, motion: Real) -> None:
        super().__init__("the mechanism cannot follow the settings past a turning point")
        self.pose = pose
        self.motion = motion


class System:
    """Constraints on a number of bodies, with as many equations as unknowns."""

    def __init__(self, bodies: int, constraints: Sequence[Constraint], length: float) -> None:
        """``length`` is a length typical of the car, mm: the scale at which a rotation weighs like a movement."""
        self.unknowns = NUMBERS_PER_BODY * bodies
        self.constraints = tuple(constraints)
        self.scale = np.tile([1.0, 1.0, 1.0, length, length, length, length], bodies)

    def residual(self, state: Array, settings: Array) -> Array:
        """Residuals in mm, shape (equations, columns), for a state of shape (unknowns, columns)."""
        poses = Poses(state)
        parts = [constraint.residual(poses, settings) for constraint in self.constraints]
        return np.concatenate([np.broadcast_to(part, (part.shape[0], state.shape[1])) for part in parts])

    def residual_at(self, state: Real, settings: Real) -> Real:
        """Residuals of one real state, shape (equations,)."""
        return self.residual(state[:, None], settings)[:, 0]

    def jacobian(self, state: Real, settings: Real) -> Real:
        """Derivative of the residuals with the state, shape (equations, unknowns), all columns in one batch."""
        stepped = state[:, None] + 1j * COMPLEX_STEP * np.eye(self.unknowns)
        return self.residual(stepped, settings).imag / COMPLEX_STEP

    def along(self, state: Real, settings: Real, change: Real) -> Real:
        """Derivative of the residuals along a change of the settings, shape (equations,)."""
        stepped = settings + 1j * COMPLEX_STEP * change
        return self.residual(state[:, None], stepped)[:, 0].imag / COMPLEX_STEP

    def correct(self, guess: Real, settings: Real) -> Real:
        """The solution near a guess; raises ``NotClosed``."""
        found = optimize.root(
            self.residual_at, guess, args=(settings,), jac=self.jacobian, method="hybr", options={"xtol": 1e-13}
        )
        state = np.asarray(found.x, dtype=float)
        best = float(np.abs(self.residual_at(state, settings)).max())
        for _ in range(6):
            try:
                step = linalg.solve(self.jacobian(state, settings), self.residual_at(state, settings))
            except linalg.LinAlgError:
                break
            polished = state - step
            worst = float(np.abs(self.residual_at(polished, settings)).max())
            if not worst < best:
                break
            state, best = polished, worst
        if not best < CLOSURE_TOLERANCE:
            raise NotClosed(f"residual {best:.3g} mm")
        return state

    def rate(self, pose: Pose, change: Real) -> Real:
        """Derivative of the solved state along a change of the settings (implicit function theorem)."""
        return -linalg.solve(self.jacobian(pose.state, pose.settings), self.along(pose.state, pose.settings, change))

    def orientation(self, pose: Pose) -> float:
        """Sign of the Jacobian's determinant: it changes where two branches meet."""
        return float(np.linalg.slogdet(self.jacobian(pose.state, pose.settings))[0])

    def follow(self, start: Pose, target: Real) -> Pose:
        """The pose at the target settings on the branch of ``start``; raises ``BranchTurnsBack``.

        All settings change in proportion. Steps are halved until the corrector stays near the predictor and on
        the same side of the singular poses.
        """
        change = target - start.settings
        if not change.any():
            return Pose(self.correct(start.state, target), target)
        orientation = self.orientation(start)
        pose, done, share = start, 0.0, 1.0
        while done < 1.0:
            slope = self.rate(pose, change)
            turning = float(np.abs(self.quaternion_part(slope)).max())
            share = min(share, 1.0 - done, LARGEST_TURN / max(turning, 1e-12))
            following = 1.0 if share >= 1.0 - done else done + share
            candidate = self.try_step(pose, slope, start.settings + following * change, following - done)
            if candidate is not None and self.orientation(candidate) == orientation:
                pose, done, share = candidate, following, 2.0 * share
                continue
            share *= 0.5
            if share < SMALLEST_SHARE:
                turning_point, motion = self.turning_point(pose, change)
                raise BranchTurnsBack(turning_point, motion)
        return pose

    def try_step(self, pose: Pose, slope: Real, settings: Real, share: float) -> Pose | None:
        """One predictor-corrector step, or ``None`` if the corrector fails or strays from the predictor."""
        predicted = pose.state + share * slope
        try:
            state = self.correct(predicted, settings)
        except NotClosed:
            return None
        strayed = float(np.abs(self.quaternion_part(state - predicted)).max())
        return Pose(state, settings) if strayed < 0.5 * LARGEST_TURN else None

    @staticmethod
    def quaternion_part(state: Real) -> Real:
        """The quaternion numbers of all bodies, shape (bodies, 4)."""
        return state.reshape(-1, NUMBERS_PER_BODY)[:, 3:7]

    def turning_point(self, start: Pose, change: Real) -> tuple[Pose, Real]:
        """Where the share of ``change`` applied to the settings stops growing along the branch from ``start``.

        Returns the pose there and the direction of the state's motion through it.
        """
        path = _ArcLengthPath(self, start, change)
        near = path.origin
        tangent = path.tangent(near, path.forward)
        length = 0.01
        for _ in range(2000):
            far = path.corrected(near + length * tangent, near + length * tangent, tangent)
            next_tangent = path.tangent(far, tangent)
            if next_tangent[-1] <= 0.0:
                break
            near, tangent = far, next_tangent
        else:
            raise NotClosed("no turning point found along the branch")

        def growth(arc: float) -> float:
            reached = path.corrected(near + arc * tangent, near + arc * tangent, tangent)
            return float(path.tangent(reached, tangent)[-1])

        arc = float(optimize.brentq(growth, 0.0, length, xtol=1e-15, rtol=1e-14))
        place = path.corrected(near + arc * tangent, near + arc * tangent, tangent)
        return path.pose(place), path.tangent(place, tangent)[:-1] / self.scale


class _ArcLengthPath:
    """A branch as a curve in (scaled state, share of the change of settings), followed by its arc length."""

    def __init__(self, system: System, start: Pose, change: Real) -> None:
        self.system = system
        self.start = start
        self.change = change
        self.metric = system.scale / system.scale.max()
        self.origin = np.append(start.state * self.metric, 0.0)
        self.forward = np.append(np.zeros(system.unknowns), 1.0)

    def pose(self, place: Real) -> Pose:
        """The pose at a place on the curve."""
        return Pose(place[:-1] / self.metric, self.start.settings + place[-1] * self.change)

    def tangent(self, place: Real, previous: Real) -> Real:
        """Unit tangent at a place, on the same side as the previous one."""
        direction = linalg.null_space(self.derivative(place))[:, 0]
        return direction if direction @ previous > 0.0 else -direction

    def derivative(self, place: Real) -> Real:
        """Derivative of the residuals with the place, shape (unknowns, unknowns + 1)."""
        pose = self.pose(place)
        by_state = self.system.jacobian(pose.state, pose.settings) / self.metric
        by_share = self.system.along(pose.state, pose.settings, self.change)
        return np.column_stack([by_state, by_share])

    def corrected(self, guess: Real, anchor: Real, normal: Real) -> Real:
        """The place on the curve in the plane through ``anchor`` across ``normal``, by Newton steps."""
        place = guess
        for _ in range(30):
            pose = self.pose(place)
            misfit = np.append(self.system.residual_at(pose.state, pose.settings), (place - anchor) @ normal)
            step = linalg.solve(np.vstack([self.derivative(place), normal]), misfit)
            place = place - step
            if float(np.abs(step).max()) < 1e-14:
                break
        pose = self.pose(place)
        if not float(np.abs(self.system.residual_at(pose.state, pose.settings)).max()) < CLOSURE_TOLERANCE:
            raise NotClosed("the branch could not be followed by arc length")
        return place


def richardson(slope: Callable[[float], Real], step: float, levels: int = 4) -> Real:
    """Derivative at 0 of a smooth function by central differences, extrapolated over halved steps."""
    table = [(slope(step / 2**i) - slope(-step / 2**i)) / (2.0 * step / 2**i) for i in range(levels)]
    for order in range(1, levels):
        table = [(4.0**order * fine - coarse) / (4.0**order - 1.0) for coarse, fine in zip(table, table[1:])]
    return table[0]
