"""Turning on the spot, and the corner in closed form for boxes.

All functions work on arrays of shape (n,), one entry for each chair. An outline is a list of
corners (x ahead of the rear axle, distance from the mid-plane); each stands for the point and
its mirror image. Corridors meet at 90 degrees; the chair comes by the first and leaves by the
second. Theory: docs/theory/turning.md.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from chairwright.mass_points import FloatArray

Corner = tuple[ArrayLike, ArrayLike]
HALVINGS = 60


def box_corners(ahead: ArrayLike, behind: ArrayLike, width: ArrayLike) -> tuple[Corner, Corner]:
    """Corners of the smallest box round a chair.

    Parameters
    ----------
    ahead, behind : array_like, shape (n,) [mm]
        Front and rear overhang, both from the rear axle and both positive.
    width : array_like, shape (n,) [mm]

    Returns
    -------
    tuple of Corner
        The front corner and the rear corner.
    """
    half = np.asarray(width, dtype=np.float64) / 2
    return (ahead, half), (-np.asarray(behind, dtype=np.float64), half)


def stacked(corners: Sequence[Corner]) -> tuple[FloatArray, FloatArray]:
    """Corners as two arrays of shape (k, n): x, and the distance from the mid-plane [mm]."""
    every = np.broadcast_arrays(*(np.atleast_1d(each) for corner in corners for each in corner))
    whole = np.asarray(every, dtype=np.float64)
    return whole[0::2], np.abs(whole[1::2])


def reach_mm(corners: Sequence[Corner]) -> FloatArray:
    """Distance of the farthest corner from the middle of the axle, shape (n,) [mm]."""
    return np.asarray(np.max(np.hypot(*stacked(corners)), axis=0))


def pivot_diameter_mm(corners: Sequence[Corner]) -> FloatArray:
    """Circle swept when the chair turns about the middle of its axle, shape (n,) [mm]."""
    return 2 * reach_mm(corners)


def wheel_pivot_diameter_mm(corners: Sequence[Corner], track: ArrayLike) -> FloatArray:
    """Circle swept when the chair turns about one held rear wheel, shape (n,) [mm]."""
    x, y = stacked(corners)
    return np.asarray(2 * np.max(np.hypot(x, y + np.asarray(track) / 2), axis=0))


def half_turn_width_mm(corners: Sequence[Corner]) -> FloatArray:
    """Distance of two long walls that a half turn on the spot needs, shape (n,) [mm].

    What is ahead of the axle passes one wall, what is behind it the other.
    """
    x, y = stacked(corners)
    away = np.hypot(x, y)
    ahead = np.max(np.where(x >= 0, away, y), axis=0)
    behind = np.max(np.where(x <= 0, away, y), axis=0)
    return np.asarray(ahead + behind)


def half_turn_free_mm(corners: Sequence[Corner]) -> FloatArray:
    """Distance of two walls below which no motion at all turns the chair, shape (n,) [mm].

    The two points of the outline that are farthest apart must at some time stand square to
    the walls.
    """
    x, y = stacked(corners)
    pairs = [(i, j) for i in range(len(x)) for j in range(i, len(x))]
    apart = [np.hypot(x[i] - x[j], y[i] + y[j]) for i, j in pairs]
    return np.asarray(np.max(apart, axis=0))


def corner_free_box_mm(length: ArrayLike, width: ArrayLike) -> FloatArray:
    """Equal corridors below which no motion at all takes a box round the corner [mm].

    Parameters
    ----------
    length, width : array_like, shape (n,) [mm]
        Overall, feet included.

    Returns
    -------
    ndarray, shape (n,) [mm]
        The greater of the width and (width + length / 2) / sqrt 2: the box stands tightest
        at 45 degrees. Longer than it is wide.
    """
    wide = np.asarray(width, dtype=np.float64)
    return np.asarray(np.maximum(wide, (wide + np.asarray(length) / 2) / np.sqrt(2)))


def corner_free_box_other_mm(
    length: ArrayLike, width: ArrayLike, corridor: ArrayLike
) -> FloatArray:
    """Second corridor below which no motion at all takes a box round the corner [mm].

    Parameters
    ----------
    length, width : array_like, shape (n,) [mm]
        Overall, feet included.
    corridor : array_like, shape (n,) [mm]
        Width of the other corridor.

    Returns
    -------
    ndarray, shape (n,) [mm]
        The greatest of (width + length sin q cos q - corridor sin q) / cos q over all q;
        infinite when the box does not even fit the other corridor. The stationary angle
        solves width sin q + length cos^3 q = corridor and is found by halving.
    """
    long, wide, other = np.broadcast_arrays(*map(np.atleast_1d, (length, width, corridor)))
    low = np.arcsin(np.minimum(2 * wide / (3 * long), 1.0)) / 2
    start, high = low, np.pi / 2 - low

    def surplus(q: FloatArray) -> FloatArray:
        return np.asarray(wide * np.sin(q) + long * np.cos(q) ** 3 - other)

    for _ in range(HALVINGS):
        middle = (low + high) / 2
        rising = surplus(middle) > 0
        low, high = np.where(rising, middle, low), np.where(rising, high, middle)
    sine, cosine = np.sin(low), np.cos(low)
    most = (wide + long * sine * cosine - other * sine) / cosine
    needed = np.where(surplus(start) > 0, np.maximum(most, wide), wide)
    return np.where(other < wide, np.inf, needed)


def longest_box_at_mm(
    corridor_in: ArrayLike, corridor_out: ArrayLike, width: ArrayLike, angle_deg: ArrayLike
) -> FloatArray:
    """Longest box that stands in the corner at one angle [mm].

    Parameters
    ----------
    corridor_in, corridor_out, width : array_like, shape (n,) [mm]
    angle_deg : array_like, shape (n,) [deg]
        Of the box to the corridor of width ``corridor_out``; between 0 and 90.

    Returns
    -------
    ndarray, shape (n,) [mm]

    References
    ----------
    Moretti, College Mathematics Journal 33(3), 196 (read in the source).
    """
    q = np.radians(np.asarray(angle_deg, dtype=np.float64))
    sine, cosine = np.sin(q), np.cos(q)
    across = np.asarray(corridor_in) * sine + np.asarray(corridor_out) * cosine
    return np.asarray((across - width) / (sine * cosine))


def longest_box_mm(
    corridor_in: ArrayLike, corridor_out: ArrayLike, width: ArrayLike
) -> tuple[FloatArray, FloatArray]:
    """Longest box that gets round the corner by any motion, and its tightest angle.

    Parameters
    ----------
    corridor_in, corridor_out : array_like, shape (n,) [mm]
    width : array_like, shape (n,) [mm]
        Less than either corridor.

    Returns
    -------
    length : ndarray, shape (n,) [mm]
    angle_deg : ndarray, shape (n,) [deg]
        Solves in sin^3 q - out cos^3 q + width cos 2 q = 0.
    """
    one, two, wide = np.broadcast_arrays(*map(np.atleast_1d, (corridor_in, corridor_out, width)))
    low, high = np.zeros(one.shape), np.full(one.shape, np.pi / 2)
    for _ in range(HALVINGS):
        q = (low + high) / 2
        below = one * np.sin(q) ** 3 - two * np.cos(q) ** 3 + wide * np.cos(2 * q) < 0
        low, high = np.where(below, q, low), np.where(below, high, q)
    angle = np.degrees((low + high) / 2)
    return longest_box_at_mm(one, two, wide, angle), angle


def longest_ladder_mm(corridor_in: ArrayLike, corridor_out: ArrayLike) -> FloatArray:
    """Longest thing without any width that gets round the corner, shape (n,) [mm]."""
    thirds = np.cbrt(corridor_in) ** 2 + np.cbrt(corridor_out) ** 2
    return np.asarray(thirds**1.5)


def corner_arc_box_mm(ahead: ArrayLike, width: ArrayLike) -> FloatArray:
    """Equal corridors in which one steady arc about the corner's bisector is enough for a box.

    The whole circle of the front corner keeps off both outer walls. An arc with a better
    centre needs less: ``corner.corner_best_arc_mm``.

    Parameters
    ----------
    ahead : array_like, shape (n,) [mm]
        Front overhang from the rear axle, feet included.
    width : array_like, shape (n,) [mm]

    Returns
    -------
    ndarray, shape (n,) [mm]
        (ahead + width) / sqrt 2, or sqrt(ahead^2 + width^2) for a chair wider than that.
    """
    front, wide = np.asarray(ahead, dtype=np.float64), np.asarray(width, dtype=np.float64)
    return np.where(front >= wide, (front + wide) / np.sqrt(2), np.hypot(front, wide))
