"""What a set-up says about the chair under the client: its masses, and where the frame stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from chairwright.chair.occupant import Occupant, own_points
from chairwright.chair.rows import Rows
from chairwright.mass_points import MassPoints
from chairwright.person.posture import centre_of_mass
from chairwright.scales.model import ChairShare, SeatPlace, Session


def of_body(point: MassPoints, occupant: Occupant) -> bool:
    """Whether a point is a segment of the body."""
    return bool(own_points([point], occupant))


def estimate(
    points: Sequence[MassPoints], occupant: Occupant
) -> tuple[float, tuple[float, float, float]]:
    """Mass [kg] and centre of mass in frame axes [mm] that the body model gives in one set-up."""
    mass, *place = centre_of_mass(own_points(points, occupant))
    x, y, z = (_one(value) for value in place)
    return _one(mass), (x, y, z)


def with_setup(
    session: Session,
    rows: Rows,
    points: Sequence[MassPoints],
    occupant: Occupant,
    *,
    loads_on: bool,
) -> Session:
    """Add to a session what follows from the set-up that was weighed.

    Parameters
    ----------
    session : Session
    rows : Rows, shape (1,)
        A complete set-up, from ``figures.evaluate.realise``.
    points : sequence of MassPoints
        Frame axes, from the same.
    occupant : Occupant
        As estimated.
    loads_on : bool
        Whether what the client carries was on the chair.

    Returns
    -------
    Session
    """
    bags = {item.name for item in occupant.carries} if not loads_on else set()
    chair = [point for point in points if not of_body(point, occupant) and point.name not in bags]
    mass, x, y, z = (_one(value) for value in centre_of_mass(_on_floor(rows, chair)))
    corner_x, corner_z = rows.to_floor(0.0, 0.0)
    pitch_deg = float(np.degrees(rows["pitch"][0]))
    return replace(
        session,
        chair=ChairShare(mass, x, y, z),
        seat=SeatPlace(_one(corner_x), _one(corner_z), pitch_deg, by_tape=False),
    )


def _on_floor(rows: Rows, points: Sequence[MassPoints]) -> list[MassPoints]:
    found = []
    for point in points:
        x_mm, z_mm = rows.to_floor(point.x_mm, point.z_mm)
        found.append(replace(point, x_mm=x_mm, z_mm=z_mm))
    return found


def _one(value: object) -> float:
    return float(np.ravel(np.asarray(value, dtype=float))[0])
