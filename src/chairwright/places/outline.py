"""The occupied chair in plan, for one chair: a convex polygon in floor axes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from chairwright.errors import InputError, Problem
from chairwright.figures.turning import Corner, stacked
from chairwright.mass_points import FloatArray


def hull(points: ArrayLike) -> FloatArray:
    """Convex hull of points in the plane, counter-clockwise, without points on its edges.

    Shape (k, 2) from shape (m, 2); Andrew's monotone chain.
    """
    ordered = sorted({(float(x), float(y)) for x, y in np.asarray(points, dtype=np.float64)})
    if len(ordered) < 3:
        return np.array(ordered)
    below, above = _chain(ordered), _chain(reversed(ordered))
    return np.array(below[:-1] + above[:-1])


def _chain(points: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    chain: list[tuple[float, float]] = []
    for x, y in points:
        while len(chain) > 1:
            (ax, ay), (bx, by) = chain[-2:]
            if (bx - ax) * (y - ay) > (by - ay) * (x - ax):
                break
            chain.pop()
        chain.append((x, y))
    return chain


def edge_normals(polygon: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Outward unit normals of a counter-clockwise polygon, (k, 2), and their offsets, (k,)."""
    edges = np.roll(polygon, -1, axis=0) - polygon
    normals = np.column_stack([edges[:, 1], -edges[:, 0]])
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    return normals, np.einsum("ij,ij->i", normals, polygon)


@dataclass(frozen=True, eq=False)
class Outline:
    """The occupied chair seen from above.

    Parameters
    ----------
    points : ndarray, shape (k, 2) [mm]
        Convex polygon, counter-clockwise; x ahead of the rear axle, y to the left.
    """

    points: FloatArray

    @classmethod
    def around(cls, points: ArrayLike) -> Outline:
        """Smallest convex outline round given points, shape (m, 2) [mm].

        Raises
        ------
        InputError
            When a coordinate is not a number, or the points have no area.
        """
        given = np.asarray(points, dtype=np.float64)
        ring = hull(given) if np.isfinite(given).all() else np.empty((0, 2))
        if len(ring) < 3:
            problem = Problem(
                "outline",
                "an outline needs at least three points that are not on one line",
                f"{given.tolist()}",
                "Give the outermost points of feet, wheels and handles.",
            )
            raise InputError(problem)
        return cls(ring)

    @classmethod
    def box(cls, ahead: float, behind: float, width: float) -> Outline:
        """Box round a chair.

        Parameters
        ----------
        ahead, behind : float [mm]
            Front and rear overhang from the rear axle, both positive.
        width : float [mm]
        """
        half = width / 2
        return cls.around([(ahead, half), (ahead, -half), (-behind, half), (-behind, -half)])

    @classmethod
    def of(cls, corners: Sequence[Corner], row: int = 0) -> Outline:
        """Outline of one chair of an array: each corner with its mirror image.

        Parameters
        ----------
        corners : sequence of Corner
            As the functions on arrays take them.
        row : int
            Which chair.
        """
        x, y = (each[:, row] for each in stacked(corners))
        return cls.around(np.column_stack([np.tile(x, 2), np.concatenate([y, -y])]))

    @property
    def corners(self) -> tuple[Corner, ...]:
        """Corners for the functions on arrays; of a lopsided outline both sides count wide."""
        return tuple((x, abs(y)) for x, y in self.points)

    @property
    def ahead(self) -> float:
        """Front overhang from the rear axle [mm]."""
        return float(self.points[:, 0].max())

    @property
    def behind(self) -> float:
        """Rear overhang from the rear axle [mm]."""
        return float(-self.points[:, 0].min())

    @property
    def width(self) -> float:
        """Overall width [mm]."""
        return float(np.ptp(self.points[:, 1]))

    @property
    def reach(self) -> float:
        """Farthest point from the middle of the axle [mm]."""
        return float(np.hypot(*self.points.T).max())

    def mirrored(self) -> Outline:
        """Outline with left and right exchanged."""
        return Outline.around(self.points * [1.0, -1.0])
