"""Mass, centre of mass, and the box in which the centre of mass lies while choices are open."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from chairwright.chair.occupant import SIDES, Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.steps import hanger_pair_kg
from chairwright.figures.band import Band, corner_band, known, merged
from chairwright.figures.floor_ends import floor_along, floor_height
from chairwright.mass_points import FloatArray


class OpenMass(NamedTuple):
    """What the open choices can still add: mass [kg] and first moments in frame axes [kg mm].

    The moments are about the point ``about`` [mm]. Near the centre of mass, what is not known of
    the mass hardly matters.
    """

    mass: Band
    x: Band
    y: Band
    z: Band
    about: tuple[float, float, float] = (0.0, 0.0, 0.0)


class MassBox(NamedTuple):
    """Where the centre of mass lies in floor axes [mm], total mass and the chair's own [kg].

    ``tilting_x``, ``tilting_z`` are of the part that tips about the axle: all but the rear wheels.
    """

    mass: Band
    chair: Band
    x: Band
    y: Band
    z: Band
    tilting_x: Band
    tilting_z: Band


def mass_box(rows: Rows, still_open: OpenMass | None = None) -> MassBox:
    """Centre of mass of the occupied chair, with and without the rear wheels.

    Parameters
    ----------
    rows : Rows
        Loaded with the masses of every choice made, shape (n,).
    still_open : OpenMass or None
        None when every choice is made; then low and high end are the same array.

    Returns
    -------
    MassBox

    References
    ----------
    First principles: first moments over masses.
    """
    frame, wheels = rows["frame_mass"], rows["wheel_mass"]
    sums = tuple(rows[f"frame_mass_{axis}"] for axis in "xyz")
    nothing = known(np.zeros(len(rows)))
    added = still_open or OpenMass(nothing, nothing, nothing, nothing)
    mass = added.mass
    moments = added.x, added.y, added.z
    frame_x, frame_y, frame_z = (
        _mean(total, moment, frame, mass, origin)
        for total, moment, origin in zip(sums, moments, added.about, strict=True)
    )
    tilting_x = floor_along(rows, frame_x, frame_z)
    tilting_z = floor_height(rows, frame_x, frame_z)
    whole = corner_band(lambda extra: frame + wheels + extra, mass)
    share = corner_band(lambda extra: (frame + extra) / (frame + wheels + extra), mass)
    axle_height = rows["rear_height"]
    return MassBox(
        mass=whole,
        chair=corner_band(lambda total: total - rows["load"], whole),
        x=corner_band(lambda x_mm, part: x_mm * part, tilting_x, share),
        y=merged(corner_band(lambda y_mm, part: y_mm * part, frame_y, share)),
        z=corner_band(
            lambda z_mm, part: axle_height + (z_mm - axle_height) * part, tilting_z, share
        ),
        tilting_x=tilting_x,
        tilting_z=tilting_z,
    )


def _mean(total: FloatArray, moment: Band, mass: FloatArray, extra: Band, origin: float) -> Band:
    about = total - origin * mass if origin else total

    def mean(added: FloatArray, weight: FloatArray) -> FloatArray:
        return np.asarray(origin + (about + added) / (mass + weight))

    return corner_band(mean, moment, extra)


def heaviest_part(rows: Rows, occupant: Occupant) -> FloatArray:
    """Mass of the heaviest piece once wheels, cushion, hangers and arm supports are off [kg]."""
    rims = rows.option("hand_rim", "mass_kg")
    wheel = (rows["wheel_mass"] + rims) / 2
    arm = rows.option("arm_support", "mass_kg") / 2
    cushion = rows.option("cushion", "mass_kg")
    hanger = (hanger_pair_kg(rows) + rows.option("foot_plate", "mass_kg")) / 2
    hangers = sum(np.where(rows[f"plate_{side}"] > 0, hanger, 0.0) for side in SIDES)
    chair = rows["frame_mass"] + rows["wheel_mass"] - rows["load"]
    frame = chair - 2 * wheel - 2 * arm - cushion - hangers
    return np.asarray(np.maximum.reduce([frame, wheel, arm, cushion, hanger]))
