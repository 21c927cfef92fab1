"""Yaw inertia of an occupied chair about the middle of its rear axle, from parts and segments.

What a part of a pair or a stretched part turns with about its own middle is told by name; the
person's segments turn with their published radii of gyration. The set-ups of one ultralight chair
differed by 28 percent: solid tyres, cast wheels and the axle back against air tyres, spokes and
the axle forward (Caspall 2013, read in the abstract only).
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.mass_points import FloatArray, MassPoints
from chairwright.person.client import Sex
from chairwright.person.segments import SEX_LETTER, Link, Segment
from chairwright.tables.load import find_row

REAR_WHEELS, HAND_RIMS = "rear wheels", "hand rims"

BESIDE_SEAT = (
    "side frames", "axle plates", "arm supports", "back posts", "push handles", "wheel locks",
    "anti-tip device",
)  # fmt: skip
BESIDE_CASTERS = ("casters", "caster forks", "stem spacers", "caster housings")
ACROSS = ("cross-brace", "camber tube", "back upholstery")
ALONG = ("side frames", "seat sling", "cushion")

LONG_AXIS_ROWS: Mapping[Link, tuple[str, str]] = {
    "trunk": ("MIDS", "MIDH"),
    "head_and_trunk": ("MIDS", "MIDH"),
    "head": ("VERT", "CERV"),
    "upper_arm": ("SJC", "EJC"),
    "forearm": ("EJC", "WJC"),
    "hand": ("WJC", "MET3"),
    "thigh": ("HJC", "KJC"),
    "shank": ("KJC", "AJC"),
    "foot": ("HEEL", "TTIP"),
}


@cache
def long_axis_share(sex: Sex, link: Link) -> float:
    """Radius of gyration of a segment about its own long axis, over its length.

    Parameters
    ----------
    sex : {"female", "male"}
    link : str

    Returns
    -------
    float

    References
    ----------
    de Leva 1996, Table 4.
    """
    end_from, end_to = LONG_AXIS_ROWS[link]
    row = find_row(
        "body", "de_leva1996_segments", sex=SEX_LETTER[sex], end_from=end_from, end_to=end_to
    )
    return float(row["rg_longitudinal_pct"]) / 100.0


def segment_yaw_mm2(segment: Segment, sex: Sex, off_vertical_rad: FloatArray) -> FloatArray:
    """Square of a segment's radius of gyration about the vertical through its middle [mm2].

    Parameters
    ----------
    segment : Segment
    sex : {"female", "male"}
    off_vertical_rad : ndarray [rad]
        Its long axis off the vertical.

    Returns
    -------
    ndarray [mm2]

    References
    ----------
    First principles: principal axes turned in the side view.
    """
    long_axis = segment.length_mm * long_axis_share(sex, segment.link)
    lies = np.square(np.sin(off_vertical_rad))
    return np.asarray(segment.gyration_mm**2 * lies + long_axis**2 * (1.0 - lies))


def brought(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Every mass of complete set-ups, in frame axes, as the steps bring them."""
    again = rows.alike()
    return [point for step in STEPS for point in step.follow(again, occupant)]


def yaw_inertia(rows: Rows, occupant: Occupant) -> FloatArray:
    """What a turn about the middle of the axle has to set going, the wheels' spin included [kg m2].

    References
    ----------
    First principles: sum of m (x2 + y2) about the axle's middle, each part's own inertia, and
    that of the rear wheels as they roll.
    """
    total, sex = _wheel_inertia(rows), occupant.body.sex
    segments = {segment.name: segment for segment in occupant.body.segments}
    for point in brought(rows, occupant):
        if point.name in {REAR_WHEELS, HAND_RIMS}:
            continue
        x_mm, _ = rows.to_floor(point.x_mm, point.z_mm)
        own = _part_mm2(rows, point.name)
        if point.name in segments:
            segment = segments[point.name]
            own = segment_yaw_mm2(segment, sex, _off_vertical(rows, segment))
        total = total + point.mass_kg * (x_mm**2 + np.square(point.y_mm) + own) * 1e-6
    return np.asarray(total)


def _wheel_inertia(rows: Rows) -> FloatArray:
    """Rear wheels and hand rims: their place, and what they turn with while they roll.

    A wheel that leans by g turns about its axle hub / R times as fast as the chair about the
    vertical, and about its diameter by cos g of it.
    """
    lean, hub = np.radians(rows["camber"]), rows["hub_half"]
    rims = rows.option("hand_rim", "mass_kg")
    spin = rows.option("rear_wheel", "spin_inertia_kgm2")
    spin = spin + rims * np.square(rows["rim_radius"] / 1000.0)
    turns = np.square(hub / rows["rear_radius"]) + np.square(np.cos(lean)) / 2.0
    places = rows["wheel_mass"] * hub**2 + rims * np.square(hub + rows["rim_standoff"])
    return np.asarray(places * 1e-6 + spin * turns)


def _part_mm2(rows: Rows, name: str) -> FloatArray | float:
    """Mean square distance, in plan, of a part's mass from its middle [mm2]."""
    square: FloatArray | float = 0.0
    if name in BESIDE_SEAT:
        square = np.square(rows["width"] / 2.0)
    if name in BESIDE_CASTERS:
        square = np.square(rows["caster_track"] / 2.0)
    if name in ACROSS or name in {"seat sling", "cushion"}:
        square = np.square(rows["width"]) / 12.0
    if name in ALONG:
        square = square + np.square(rows["depth"]) / 12.0
    return square


def _off_vertical(rows: Rows, segment: Segment) -> FloatArray:
    """Long axis of a segment off the vertical [rad]."""
    pitch, link = rows["pitch"], segment.link
    if link in {"trunk", "head_and_trunk", "head"}:
        return rows["lean"] + pitch
    if link == "upper_arm":
        return pitch
    if link in {"forearm", "hand"}:
        return np.pi / 2.0 + pitch
    if link == "thigh":
        return np.pi / 2.0 + rows["seat_slope"] + pitch
    turned = rows[f"{'shank' if link == 'shank' else 'sole'}_{segment.side}"]
    return turned + pitch if link == "shank" else np.pi / 2.0 + turned + pitch
