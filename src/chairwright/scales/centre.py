"""From readings to results: centre of mass, tipping angles, the occupant's share."""

from __future__ import annotations

import numpy as np

from chairwright.scales.formulas import Number, ahead, height, raised, to_frame
from chairwright.scales.model import CASTERS, PADS, REAR, Readings

Results = Readings
"""Value of every result by name: those of the whole chair as the figures are named."""


def axle_load(values: Readings, stance: str, axle: str) -> Number:
    """Load on one axle [kg], or None when it was not read.

    Parameters
    ----------
    values : Readings
    stance : str
        For example ``occupied.level``.
    axle : {"rear", "casters"}
    """
    pads = REAR if axle == "rear" else CASTERS
    if f"{stance}.{axle}" in values:
        return values[f"{stance}.{axle}"]
    if all(f"{stance}.{pad}" in values for pad in pads):
        return sum(values[f"{stance}.{pad}"] for pad in pads)
    return None


def total_load(values: Readings, stance: str) -> Number:
    """Load on all wheels [kg]: the sum of the axles, else the total as read; None without."""
    rear, casters = (axle_load(values, stance, axle) for axle in ("rear", "casters"))
    if rear is not None and casters is not None:
        return rear + casters
    return values.get(f"{stance}.total")


def centre(values: Readings, state: str) -> Results:
    """Mass and centre of mass of the occupied or the empty chair, floor axes.

    Parameters
    ----------
    values : Readings
    state : {"occupied", "empty"}

    Returns
    -------
    dict
        ``mass`` [kg], ``x`` [mm]; ``y`` when four pads were read, ``z`` when casters were raised.
    """
    level = f"{state}.level"
    casters, total = axle_load(values, level, "casters"), total_load(values, level)
    found: Results = {"mass": total, "x": ahead(values["wheelbase"], casters, total)}
    if all(f"{level}.{pad}" in values for pad in PADS):
        found["y"] = _sideways(values, level) / total
    if f"{state}.block" in values:
        at = raised(
            values["wheelbase"], values["rear_height"], values["caster_height"],
            values[f"{state}.block"],
        )  # fmt: skip
        up = axle_load(values, f"{state}.raised", "casters")
        found["z"] = height(found["x"], up / total, values["rear_height"], at)
    return found


def _sideways(values: Readings, level: str) -> Number:
    load = {pad: values[f"{level}.{pad}"] for pad in PADS}
    return (
        values["rear_track"] / 2.0 * (load["rear_left"] - load["rear_right"])
        + values["caster_track"] / 2.0 * (load["caster_left"] - load["caster_right"])
    )  # fmt: skip


def results(values: Readings) -> Results:
    """Every result that the readings allow.

    Parameters
    ----------
    values : Readings
        Numbers, complex numbers or arrays.

    Returns
    -------
    dict
        ``total_mass_kg``, ``com_x_mm`` and so on; ``occupant_mass_kg``, ``occupant_x_mm`` in floor
        axes; ``occupant_frame_x_mm`` and ``occupant_frame_z_mm`` from the seat corner.
    """
    whole = centre(values, "occupied")
    found: Results = {"total_mass_kg": whole["mass"]}
    found |= {f"com_{axis}_mm": whole[axis] for axis in "xyz" if axis in whole}
    found["caster_share"] = whole["x"] / values["wheelbase"]
    if "z" in whole:
        found |= _tips(values, whole)
    chair = _chair(values)
    if chair is not None:
        found |= _occupant(values, whole, chair)
    return found


def _angle(across: Number, up: Number) -> Number:
    return np.degrees(1.0) * np.arctan(across / up)


def _tips(values: Readings, whole: Results) -> Results:
    """Tipping angles [deg]. Rear wheels add nothing about the axle, whatever they weigh."""
    x, z, length = whole["x"], whole["z"], values["wheelbase"]
    found = {
        "tip_rear_locked_deg": _angle(x, z),
        "tip_rear_free_deg": _angle(x, z - values["rear_height"]),
        "tip_forward_deg": _angle(length - x, z),
        "tip_forward_caster_axle_deg": _angle(length - x, z - values["caster_height"]),
    }
    return found | (_sideways_tips(values, whole) if "y" in whole else {})


def _sideways_tips(values: Readings, whole: Results) -> Results:
    x, y, z, length = whole["x"], whole["y"], whole["z"], values["wheelbase"]
    narrowing = (values["rear_track"] - values["caster_track"]) / (2.0 * length)
    reach = values["rear_track"] / 2.0 - x * narrowing
    cos = 1.0 / np.sqrt(1.0 + narrowing**2)
    found = {}
    for side, room in (("left", reach - y), ("right", reach + y)):
        found[f"tip_{side}_deg"] = _angle(room, z)
        found[f"tip_{side}_line_deg"] = _angle(room * cos, z)
    return found


def _chair(values: Readings) -> Results | None:
    if "chair.mass" in values:
        return {name: values[f"chair.{name}"] for name in ("mass", "x", "y", "z")}
    if "empty.level.casters" in values or "empty.level.caster_left" in values:
        return centre(values, "empty")
    return None


def _occupant(values: Readings, whole: Results, chair: Results) -> Results:
    mass = whole["mass"] - chair["mass"]
    place = {
        axis: (whole["mass"] * whole[axis] - chair["mass"] * chair[axis]) / mass
        for axis in "xyz"
        if axis in whole and axis in chair
    }
    found: Results = {"chair_mass_kg": chair["mass"], "occupant_mass_kg": mass}
    found |= {f"occupant_{axis}_mm": value for axis, value in place.items()}
    if "seat.x" in values and "z" in place:
        angle = values["seat.angle_deg"] / np.degrees(1.0)
        seat = values["seat.x"], values["seat.z"], angle
        along, up = to_frame(place["x"], place["z"], seat)
        found |= {"occupant_frame_x_mm": along, "occupant_frame_z_mm": up}
    return found
