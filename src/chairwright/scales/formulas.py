"""Centre of mass from wheel loads: level, and with the casters raised on a block.

x is ahead of the rear axle, y left, z above the floor of the level chair [mm]. Every formula is
algebraic: it takes numbers, arrays, and complex numbers for the derivatives.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

Number = Any
"""A float, a complex number or an array of either."""


class Raised(NamedTuple):
    """How a chair stands with its casters on a block.

    Parameters
    ----------
    sin, cos : number
        Of the angle by which it is turned nose-up from the level.
    wheelbase_mm : number [mm]
        Rear contact to caster contact, along the floor.
    """

    sin: Number
    cos: Number
    wheelbase_mm: Number


def raised(
    wheelbase_mm: Number, rear_height_mm: Number, caster_height_mm: Number, block_mm: Number
) -> Raised:
    """Turn a chair by raising its casters.

    Parameters
    ----------
    wheelbase_mm : number [mm]
        On the level.
    rear_height_mm, caster_height_mm : number [mm]
        Axles above what their wheels stand on.
    block_mm : number [mm]

    Returns
    -------
    Raised
        NaN where the block is too high to stand on.

    References
    ----------
    First principles (theory: scales): the line between the axles keeps its length and rises by
    the block. Wheels roll, so contacts stay under the axles.
    """
    drop = rear_height_mm - caster_height_mm
    between = np.sqrt(wheelbase_mm**2 + drop**2)
    level_sin, level_cos = drop / between, wheelbase_mm / between
    new_sin = (block_mm - drop) / between
    with np.errstate(invalid="ignore"):
        new_cos = np.sqrt(1.0 - new_sin**2)
    return Raised(
        sin=level_sin * new_cos + level_cos * new_sin,
        cos=level_cos * new_cos - level_sin * new_sin,
        wheelbase_mm=between * new_cos,
    )


def ahead(wheelbase_mm: Number, caster_kg: Number, total_kg: Number) -> Number:
    """Centre of mass ahead of the rear axle, from loads on the level [mm]: L Fc / W.

    Parameters
    ----------
    wheelbase_mm : number [mm]
    caster_kg, total_kg : number [kg]
        Load on the casters, and on all wheels.
    """
    return wheelbase_mm * caster_kg / total_kg


def height(ahead_mm: Number, raised_share: Number, rear_height_mm: Number, at: Raised) -> Number:
    """Height of the centre of mass above the floor of the level chair [mm].

    Parameters
    ----------
    ahead_mm : number [mm]
        Ahead of the rear axle, on the level.
    raised_share : number
        Load on the raised casters over the whole.
    rear_height_mm : number [mm]
        Rear axle above the floor.
    at : Raised

    Returns
    -------
    number [mm]

    References
    ----------
    First principles (theory: scales): moments about the rear contact. For equal wheels the form
    of the road-vehicle method, ISO 10392 (from memory, unverified).
    """
    return rear_height_mm + (ahead_mm * at.cos - raised_share * at.wheelbase_mm) / at.sin


def raised_share(ahead_mm: Number, height_mm: Number, rear_height_mm: Number, at: Raised) -> Number:
    """Share of the load that raised casters carry: what `height` undoes.

    Parameters
    ----------
    ahead_mm, height_mm : number [mm]
        Centre of mass, on the level.
    rear_height_mm : number [mm]
    at : Raised
    """
    return (ahead_mm * at.cos - (height_mm - rear_height_mm) * at.sin) / at.wheelbase_mm


def to_frame(x_mm: Number, z_mm: Number, seat: tuple[Number, Number, Number]) -> Any:
    """Floor axes to frame axes, side view [mm].

    Parameters
    ----------
    x_mm, z_mm : number [mm]
    seat : tuple of number
        Seat corner ahead of the axle and above the floor [mm], pitch of the frame [rad].

    Returns
    -------
    tuple of number [mm]
        Along the seat rail and square to it, from the seat corner.
    """
    along, up, sin, cos = x_mm - seat[0], z_mm - seat[1], np.sin(seat[2]), np.cos(seat[2])
    return along * cos + up * sin, up * cos - along * sin
