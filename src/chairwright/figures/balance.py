"""Static stability.

x is ahead of the rear axle, y left, z above the floor [mm]; angles in degrees. Wheels locked:
the whole chair tips over the tyre contacts. Wheels free: the frame, without the rear wheels,
tips about the axle. The two are never mixed.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band, corner_band, known
from chairwright.figures.mass import MassBox
from chairwright.mass_points import FloatArray

GRAVITY_MPS2 = 9.81
SLOPE_1_TO_12_DEG = float(np.degrees(np.arctan(1 / 12)))


class Edge(NamedTuple):
    """An edge of the support polygon: outward normal, and its distance from the origin [mm]."""

    normal_x: FloatArray
    normal_y: FloatArray
    offset_mm: FloatArray


def support_edges(
    wheelbase_mm: FloatArray, rear_track_mm: FloatArray, caster_track_mm: FloatArray
) -> tuple[Edge, Edge, Edge, Edge]:
    """Rear, front, left and right edge of the polygon of tyre contacts.

    Parameters
    ----------
    wheelbase_mm, rear_track_mm, caster_track_mm : ndarray [mm]

    Returns
    -------
    tuple of Edge
        Floor axes, origin under the middle of the rear axle line.
    """
    zero = np.zeros_like(wheelbase_mm)
    narrowing = np.arctan2(rear_track_mm - caster_track_mm, 2 * wheelbase_mm)
    sin, cos = np.sin(narrowing), np.cos(narrowing)
    side = rear_track_mm / 2 * cos
    return (
        Edge(zero - 1, zero, zero),
        Edge(zero + 1, zero, wheelbase_mm),
        Edge(sin, cos, side),
        Edge(sin, -cos, side),
    )


def edge_angle(
    edge: Edge, share: FloatArray | float, x: FloatArray, y: FloatArray, z: FloatArray
) -> FloatArray:
    """Slope at which the chair tips over one edge [deg].

    Parameters
    ----------
    edge : Edge
    share : ndarray or float
        Scalar product of the edge's normal with the downhill direction, above 0.
    x, y, z : ndarray [mm]
        Centre of mass.

    References
    ----------
    First principles: atan(distance / (height n.u)); negative when it tips on the level.
    """
    distance = edge.offset_mm - edge.normal_x * x - edge.normal_y * y
    return np.asarray(np.degrees(np.arctan2(distance, z * share)))


def tip_angle(
    edges: tuple[Edge, ...],
    x: FloatArray,
    y: FloatArray,
    z: FloatArray,
    direction_deg: float | FloatArray,
) -> FloatArray:
    """Tipping angle, wheels locked, on a floor that falls away in one direction [deg].

    Parameters
    ----------
    edges : tuple of Edge
    x, y, z : ndarray [mm]
    direction_deg : float or ndarray
        From straight ahead, left positive; several for one set-up.

    Returns
    -------
    ndarray [deg]
        The least over the edges that face downhill.
    """
    ahead, left = np.cos(np.radians(direction_deg)), np.sin(np.radians(direction_deg))
    angles = []
    for edge in edges:
        share = edge.normal_x * ahead + edge.normal_y * left
        faces = share > LEAST_SHARE
        angle = edge_angle(edge, np.where(faces, share, 1.0), x, y, z)
        angles.append(np.where(faces, angle, np.inf))
    return np.asarray(np.minimum.reduce(angles))


LEAST_SHARE = 1e-9
"""An edge that faces downhill by less than this is passed over."""


def _least(bands: list[Band]) -> Band:
    low = np.minimum.reduce([band.low for band in bands])
    if all(band.low is band.high for band in bands):
        return known(low)
    return Band(low, np.minimum.reduce([band.high for band in bands]))


def _edges(rows: Rows) -> tuple[Edge, Edge, Edge, Edge]:
    return support_edges(rows["wheelbase"], rows["rear_track"], rows["caster_track"])


def _sideways(edge_number: int) -> Callable[[Rows, MassBox], Band]:
    """Straight to one side only the line of the wheels there faces downhill."""

    def band(rows: Rows, box: MassBox) -> Band:
        edge = _edges(rows)[edge_number]
        share = np.abs(edge.normal_y)
        return corner_band(lambda a, b, c: edge_angle(edge, share, a, b, c), box.x, box.y, box.z)

    return band


def _over_line(edge_number: int) -> Callable[[Rows, MassBox], Band]:
    def band(rows: Rows, box: MassBox) -> Band:
        edge = _edges(rows)[edge_number]
        return corner_band(lambda a, b, c: edge_angle(edge, 1.0, a, b, c), box.x, box.y, box.z)

    return band


def rear_locked(rows: Rows, box: MassBox) -> Band:
    """Rearward over the tyre contacts, wheels locked [deg]: atan(x / h)."""
    return corner_band(lambda x, z: np.degrees(np.arctan2(x, z)), box.x, box.z)


def rear_free(rows: Rows, box: MassBox) -> Band:
    """Rearward about the axle, wheels free and held at the tyre [deg]: atan(x' / (h' - R))."""
    return corner_band(
        lambda x, z: np.degrees(np.arctan2(x, z - rows["rear_height"])),
        box.tilting_x,
        box.tilting_z,
    )


def forward(rows: Rows, box: MassBox) -> Band:
    """Forward over the caster contacts, casters trailing [deg]: atan((L - x) / h)."""
    length = rows["wheelbase"]
    return corner_band(lambda x, z: np.degrees(np.arctan2(length - x, z)), box.x, box.z)


def forward_casters_forward(rows: Rows, box: MassBox) -> Band:
    """Forward with the casters turned ahead, the base longer by twice the trail [deg]."""
    length = rows["wheelbase"] + 2 * rows["trail"]
    return corner_band(lambda x, z: np.degrees(np.arctan2(length - x, z)), box.x, box.z)


def least(rows: Rows, box: MassBox) -> Band:
    """The least tipping angle of all directions, wheels locked [deg]."""
    edges = _edges(rows)
    bands = [
        corner_band(lambda a, b, c, e=edge: edge_angle(e, 1.0, a, b, c), box.x, box.y, box.z)
        for edge in edges
    ]
    return _least(bands)


def least_direction(rows: Rows, box: MassBox) -> Band:
    """Direction of the least tipping angle, from straight ahead, left positive [deg]."""
    edges = _edges(rows)
    angles = np.stack([edge_angle(edge, 1.0, box.x.low, box.y.low, box.z.low) for edge in edges])
    weakest = np.argmin(angles, axis=0)
    normals = np.stack([np.arctan2(edge.normal_y, edge.normal_x) for edge in edges])
    return known(np.degrees(np.take_along_axis(normals, weakest[None], axis=0)[0]))


def caster_share(rows: Rows, box: MassBox) -> Band:
    """Share of the load on the casters on the level: x / L."""
    return corner_band(lambda x: x / rows["wheelbase"], box.x)


tip_left, tip_right = _sideways(2), _sideways(3)
tip_left_line, tip_right_line = _over_line(2), _over_line(3)
