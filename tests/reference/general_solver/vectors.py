"""Three-vectors as numpy arrays of shape (3,) or (3, columns), real or complex.

Every function here is analytic in its arguments: a derivative can be read off the imaginary part after
adding a tiny imaginary step. Dot products therefore never conjugate.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

Array = NDArray[Any]
"""Real or complex numbers; shapes are stated where they matter."""

Real = NDArray[np.float64]
"""Real numbers only."""

X_AXIS = np.array([1.0, 0.0, 0.0])
Y_AXIS = np.array([0.0, 1.0, 0.0])
Z_AXIS = np.array([0.0, 0.0, 1.0])


def vector(values: ArrayLike) -> Real:
    """A real three-vector from any sequence of three numbers."""
    return np.asarray(values, dtype=float).reshape(3)


def columns(values: Array) -> Array:
    """The vector as a column that broadcasts against a batch of shape (3, columns)."""
    return values.reshape(3, 1)


def dot(a: Array, b: Array) -> Array:
    """Scalar product over the first axis, without conjugation."""
    return (a * b).sum(axis=0)


def cross(a: Array, b: Array) -> Array:
    """Vector product over the first axis."""
    return np.stack(
        [
            a[1] * b[2] - a[2] * b[1],
            a[2] * b[0] - a[0] * b[2],
            a[0] * b[1] - a[1] * b[0],
        ]
    )


def norm(a: Array) -> Array:
    """Length; the analytic square root, so that complex steps pass through it."""
    return np.sqrt(dot(a, a))


def unit(a: Array) -> Array:
    """The vector scaled to length one."""
    return a / norm(a)


def perpendiculars(direction: Array) -> tuple[Real, Real]:
    """Two unit vectors that complete a real direction to a right-handed triad (first, second, direction)."""
    along = unit(vector(direction))
    helper = np.eye(3)[int(np.argmin(np.abs(along)))]
    first = unit(cross(helper, along))
    return first, cross(along, first)


def arctan2(y: Any, x: Any) -> Any:
    """Four-quadrant arc tangent whose imaginary part carries the derivative of a complex step."""
    real = np.arctan2(np.real(y), np.real(x))
    if not (np.iscomplexobj(y) or np.iscomplexobj(x)):
        return real
    square = np.real(x) ** 2 + np.real(y) ** 2
    return real + 1j * (np.real(x) * np.imag(y) - np.real(y) * np.imag(x)) / square
