"""A chair of given figures as one of the program's rows: printed cases meet its formulas."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band, known
from chairwright.figures.mass import MassBox
from chairwright.line.model import Choice, Line, Option

from .lines import everyday


def one(value: float) -> np.ndarray:
    """An array of one value."""
    return np.array([float(value)])


def about(value: float, spread: float) -> Band:
    """A value with its tolerance as a band."""
    return Band(one(value - spread), one(value + spread)) if spread else known(one(value))


def chair(
    *,
    wheelbase: float,
    rear_radius: float,
    track: float = 560.0,
    caster_track: float = 440.0,
    trail: float = 0.0,
    spin_inertia: float = 0.0,
    caster_spin: float = 0.0,
    **columns: float,
) -> Rows:
    """Make rows of one chair with wheels upright; mm and kg m2.

    Spin inertias are of both wheels; rolling lengths are 2.4 and 1.5 mm, casters of 75 mm radius.
    Further keywords set further columns.
    """
    held = {
        "wheelbase": wheelbase,
        "rear_radius": rear_radius,
        "rear_height": rear_radius,
        "rear_track": track,
        "caster_track": caster_track,
        "trail": trail,
        "caster_radius": 75.0,
        "camber": 0.0,
        "pitch": 0.0,
        **columns,
    }
    line = with_wheel(
        {"spin_inertia_kgm2": caster_spin, "rolling_mm": 1.5},
        spin_inertia_kgm2=spin_inertia,
        rolling_mm=2.4,
        air=1.0,
    )
    index = {name: np.zeros(1, dtype=np.intp) for name in ("rear_wheel", "caster")}
    return Rows(line, index, {name: one(value) for name, value in held.items()})


def with_wheel(caster: dict[str, float] | None = None, **numbers: float) -> Line:
    """Make a line whose only rear wheel, and whose only caster, have these numbers."""
    line, choices = everyday(), {}
    for name, held in (("rear_wheel", numbers), ("caster", caster or {})):
        choices[name] = Choice(name, name, (Option("W", "the wheel", held),))
    return replace(line, choices={**line.choices, **choices}, _columns={})


def masses(
    x: float,
    z: float,
    *,
    y: float = 0.0,
    mass: float = 90.0,
    frame: tuple[float, float] | None = None,
    spread: float = 0.0,
) -> MassBox:
    """Make a centre of mass [mm], in floor axes.

    Parameters
    ----------
    x, z, y : float [mm]
    mass : float [kg]
    frame : tuple of float or None [mm]
        Centre of mass without the rear wheels; None takes the whole one.
    spread : float [mm]
        Tolerance of x and z.
    """
    frame_x, frame_z = frame or (x, z)
    return MassBox(
        mass=known(one(mass)),
        chair=known(one(20.0)),
        x=about(x, spread),
        y=known(one(y)),
        z=about(z, spread),
        tilting_x=about(frame_x, spread),
        tilting_z=about(frame_z, spread),
    )
